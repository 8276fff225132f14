// @ts-check
// Documents made of others: a change makes new objects along its path and shares
// the rest. Keys such as __proto__ are plain data here. What a document has
// anywhere is any JSON.

import {child, isObject} from './path.js';

/** @import {Path} from './path.js' */

/** @param {unknown} value @returns {any[]} */
export const listAt = value => Array.isArray(value) ? value : [];

/** A list like list, with count elements from at replaced. @param {any[]} list @param {number} at @param {number} count @param {any[]} values */
export const spliced = (list, at, count, ...values) => [...list.slice(0, at), ...values, ...list.slice(at + count)];

/**
 * A document like doc with value at path.
 * @param {any} doc
 * @param {Path} path
 * @param {unknown} value
 * @returns {any}
 */
export function put(doc, path, value) {
  if (path.length === 0) return value;
  const [key, ...rest] = path;
  const old = child(doc, key);
  const next = put(old, rest, value);
  if (Object.is(next, old) && next !== undefined) return doc;
  return withKey(doc, key, next);
}

/**
 * @param {any} holder
 * @param {string | number} key
 * @param {unknown} value
 */
function withKey(holder, key, value) {
  if (typeof key === 'number') {
    const list = [...listAt(holder)];
    if (!(Number.isInteger(key) && key >= 0 && key <= list.length)) throw new RangeError(`no place ${key} in a list of ${list.length}`);
    list[key] = value;
    return list;
  }
  const object = isObject(holder) ? {...holder} : {};
  // Assigning would call the setter that __proto__ is.
  Object.defineProperty(object, key, {value, writable: true, enumerable: true, configurable: true});
  return object;
}

/**
 * A document like doc with nothing at path; with prune, what is left empty by
 * that goes too, up to an element of a list.
 * @param {any} doc
 * @param {Path} path
 * @param {boolean} prune
 * @returns {any}
 */
export function without(doc, path, prune) {
  const key = path.at(-1), above = path.slice(0, -1);
  if (key === undefined) return doc;
  const holder = above.reduce(child, doc);
  const has = typeof key === 'number' ? Array.isArray(holder) && Object.hasOwn(holder, key) : isObject(holder) && Object.hasOwn(holder, key);
  if (!has) return doc;
  const left = typeof key === 'number'
    ? spliced(/** @type {unknown[]} */ (holder), key, 1)
    : Object.fromEntries(Object.entries(/** @type {object} */ (holder)).filter(([k]) => k !== key));
  const empty = Object.keys(left).length === 0;
  if (prune && empty && typeof above.at(-1) === 'string') return without(doc, above, true);
  return put(doc, above, left);
}
