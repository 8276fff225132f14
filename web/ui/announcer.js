// @ts-check
// Where a screen reader hears of what is wrong.
import {h, Component} from './h.js';

/** @import {State} from '../state/types.d.ts' */

/** Who announces for a page. @type {WeakMap<State, (text: string) => void>} */
const announcers = new WeakMap();

/** Says something politely. @param {State} state @param {string} text */
export const announce = (state, text) => announcers.get(state)?.(text);

/** @extends {Component<{state: State}, {text: string}>} */
export class Announcer extends Component {
  /** @param {Announcer['props']} props */
  constructor(props) {
    super(props);
    this.state = {text: ''};
    announcers.set(props.state, text => this.setState({text}));
  }

  /** @param {unknown} _ @param {{text: string}} own */
  shouldComponentUpdate(_, own) { return own !== this.state; }

  render() {
    return h('p', {class: 'unseen', 'aria-live': 'polite'}, this.state.text);
  }
}
