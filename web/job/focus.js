// @ts-check
// Where the focus goes when the rows of a list change.
import {PureComponent} from '../ui/memo.js';
import {pathText} from '../state/path.js';

/**
 * @import {Path} from '../state/path.js'
 * @import {State} from '../state/types.d.ts'
 */

/** Where the focus is to go once it is drawn. @type {WeakMap<State, {path: string, act: string}>} */
const wanted = new WeakMap();

/**
 * Asks for the focus: at the first control of a row ('first'), at the row itself
 * ('row'), or at a button of it ('up', 'add', ...).
 * @param {State} state
 * @param {Path} path
 * @param {string} [act]
 */
export function wantFocus(state, path, act = 'first') {
  wanted.set(state, {path: pathText(path), act});
}

/**
 * Gives the focus that was asked for, when it is for this element of the page.
 * @param {State} state
 * @param {Path} path
 * @param {HTMLElement | undefined} element
 */
export function giveFocus(state, path, element) {
  const want = wanted.get(state);
  if (!want || !element || want.path !== pathText(path)) return;
  /** @param {string} selector @param {HTMLElement} [within] @returns {HTMLElement | null} */
  const first = (selector, within = element) => within.querySelector(selector);
  /** @param {string} act */
  const named = act => /** @type {HTMLButtonElement[]} */ ([...element.querySelectorAll(`[data-act="${act}"]`)]).find(el => (el.dataset.path ?? want.path) === want.path && !el.disabled);
  const at = want.act === 'row' ? first(':scope > h3 > button') ?? element
    : want.act === 'first' ? first('input, select') ?? first('button')
    : named(want.act) ?? named(want.act === 'up' ? 'down' : 'up');
  if (!at) return;
  wanted.delete(state);
  (at.matches('li') && want.act !== 'row' ? first('input, select', at) ?? at : at).focus();
}

/**
 * A component that takes the focus that was asked for at its path.
 * @template {{state: State, path: Path}} Props
 * @template {object} [Own={}]
 * @extends {PureComponent<Props, Own>}
 */
export class FocusComponent extends PureComponent {
  componentDidMount() { giveFocus(this.props.state, this.props.path, this.base); }
  componentDidUpdate() { giveFocus(this.props.state, this.props.path, this.base); }
}
