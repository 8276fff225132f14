// @ts-check
// What the views draw with: Preact's elements, made by calls.
export {h, render, Component} from '../vendor/preact.js';

/** @typedef {import('../vendor/preact.js').Child} Child what may stand inside an element */
/** @typedef {import('../vendor/preact.js').VNode} VNode */

/**
 * Class names that hold: cls('line', {ticked: true}) is "line ticked".
 * @param {(string | undefined | null | false | Record<string, unknown>)[]} names
 */
export function cls(...names) {
  return names.flatMap(n => typeof n === 'string' ? n : Object.keys(n ?? {}).filter(k => /** @type {Record<string, unknown>} */ (n)[k])).join(' ') || undefined;
}
