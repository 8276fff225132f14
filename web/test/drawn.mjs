// What a view draws, without a document.
import {createState} from '../state/state.js';

/** A state whose every part is folded out. @param {any} doc */
export function stateOf(doc) {
  const state = createState(doc);
  state.open = Object.assign(new Set(), {has: () => true});
  return state;
}

/** Every element that a view draws, each time as it is drawn first. @param {any} node @returns {any[]} */
export function drawn(node) {
  if (Array.isArray(node)) return node.flatMap(drawn);
  if (typeof node !== 'object' || node === null) return [];
  const {type, props} = node;
  if (typeof type !== 'function') return [node, ...drawn(props.children)];
  if (!type.prototype?.render) return drawn(type(props));
  const part = new type(props);
  return drawn(part.render(props, part.state));
}
