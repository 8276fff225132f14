// @ts-check
// A part of the form that is drawn again only when what it shows is another.
import {Component} from './h.js';

export class Part extends Component {
  /** @param {any} next @param {any} state */
  shouldComponentUpdate(next, state) {
    return state !== this.state || differ(this.props, next);
  }
}

/**
 * Whether two sets of properties differ. Paths are new arrays each time, and
 * are compared step by step.
 * @param {any} a
 * @param {any} b
 */
export function differ(a, b) {
  const keys = Object.keys(b);
  return keys.length !== Object.keys(a).length || keys.some(k => a[k] !== b[k] && !(k === 'path' && samePath(a[k], b[k])));
}

/** @param {any[] | undefined} a @param {any[] | undefined} b */
const samePath = (a, b) => a !== undefined && b !== undefined && a.length === b.length && a.every((step, i) => step === b[i]);
