// @ts-check
// Parts of the page that are drawn again only when what they show is another.
import {Component} from './h.js';
import {samePath} from '../state/path.js';

export class PureComponent extends Component {
  /** @param {any} next @param {any} state */
  shouldComponentUpdate(next, state) {
    return state !== this.state || differ(this.props, next);
  }
}

/** Draws what `draw` gives, again only once any of `of` is another. Props: of, draw. */
export class Memo extends Component {
  /** @param {any} next */
  shouldComponentUpdate(next) {
    return next.of.some((/** @type {any} */ part, /** @type {number} */ i) => part !== this.props.of[i]);
  }

  render({draw}) { return draw(); }
}

/**
 * Whether two sets of properties differ. Paths are new arrays each time, and
 * are compared step by step.
 * @param {any} a
 * @param {any} b
 */
export function differ(a, b) {
  const keys = Object.keys(b);
  return keys.length !== Object.keys(a).length || keys.some(k => a[k] !== b[k] && !(k === 'path' && a[k] && b[k] && samePath(a[k], b[k])));
}
