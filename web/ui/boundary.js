// @ts-check
// What keeps a place that cannot be drawn from taking the page with it.
import {h, Component} from './h.js';
import {say} from '../text/say.js';

/**
 * @import {Child} from './h.js'
 * @import {State} from '../state/types.d.ts'
 */

/** @typedef {{state: State, draw: (state: State) => Child}} Props */

/**
 * Draws what `draw` gives. Where that fails with a plan kept from before, which
 * may be anything, it is drawn without; where it fails all the same, it says so
 * until the job or its plan is another.
 * @extends {Component<Props, {failed?: unknown[]}>}
 */
export class Boundary extends Component {
  /** @param {unknown} error */
  componentDidCatch(error) {
    const {state} = this.props;
    (globalThis.reportError ?? console.error)(error);
    // More than one component may fail of one drawing: they all fail of what was drawn.
    if (!this.drewSaved) this.setState({failed: [state.job.doc, state.plan, state.place]});
    else if (state.planFor === 'saved') Object.assign(state, {plan: null, planText: '', planFor: null});
    state.redraw();
    this.forceUpdate();
  }

  /** @param {Props} props */
  render({state, draw}) {
    const now = [state.job.doc, state.plan, state.place];
    this.drewSaved = state.planFor === 'saved';
    if (this.state.failed?.every((part, i) => part === now[i])) return h('p', {class: 'note', role: 'alert', 'data-test': 'undrawn'}, say('This cannot be shown. What you typed is kept: save it as a file under “Jobs”.'));
    return h(Drawn, {state, draw});
  }
}

/** A component of its own, since none is asked about its own failure. @param {Props} props */
const Drawn = ({state, draw}) => draw(state);
