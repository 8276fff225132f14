// @ts-check
// Components that are drawn again only when what they show is another.
import {Component} from './h.js';
import {samePath} from '../state/path.js';

/**
 * @import {Child} from './h.js'
 * @import {Path} from '../state/path.js'
 */

/**
 * Drawn again when its props are others, or its own state is.
 * @template {object} Props
 * @template {object} [Own={}]
 * @extends {Component<Props, Own>}
 */
export class PureComponent extends Component {
  /** @param {Props} next @param {Own} own */
  shouldComponentUpdate(next, own) {
    return own !== this.state || differ(this.props, next);
  }
}

/**
 * Draws what `draw` gives, again only once any of `of` is another.
 * @extends {Component<{of: readonly unknown[], draw: () => Child}>}
 */
export class Memo extends Component {
  /** @param {Memo['props']} next */
  shouldComponentUpdate(next) {
    return next.of.some((part, i) => part !== this.props.of[i]);
  }

  /** @param {Memo['props']} props */
  render({draw}) { return draw(); }
}

/**
 * Whether two sets of properties differ. Paths are new arrays each time, and
 * are compared step by step.
 * @param {object} before
 * @param {object} after
 */
export function differ(before, after) {
  const a = /** @type {Record<string, unknown> & {path?: Path}} */ (before), b = /** @type {typeof a} */ (after);
  const keys = Object.keys(b);
  return keys.length !== Object.keys(a).length || keys.some(k => a[k] !== b[k] && !(k === 'path' && a.path && b.path && samePath(a.path, b.path)));
}
