// @ts-check
// The rows of a list on the page: what each is known by while the list changes,
// adding, removing and moving them.
import {wantFocus} from './focus.js';
import {pathText} from '../state/path.js';
import {say} from '../text/say.js';

/**
 * @import {Path} from '../state/path.js'
 * @import {State} from '../state/types.d.ts'
 */

/** @typedef {{list: readonly unknown[], keys: string[]}} Known */

let made = 0;
const next = () => `row${++made}`;

/** The name that a row had while it was this object. @type {WeakMap<object, string>} */
const names = new WeakMap();

/**
 * Names for the elements of a list that stay with them: an element that is the
 * same object keeps its name wherever it goes; one that was changed in place
 * takes over the name that stood there.
 * @param {Known | undefined} before
 * @param {readonly unknown[]} list
 * @returns {Known & {fresh: string[]}} fresh are the names that are new
 */
export function nameRows(before, list) {
  if (before && before.list === list) return {...before, fresh: []};
  const kept = new Set(list.map(rowName).filter(name => name !== undefined));
  /** @type {string[]} */
  const fresh = [];
  const used = new Set();
  const keys = list.map((row, i) => {
    let name = rowName(row);
    if (name === undefined || used.has(name)) {
      const there = before?.keys[i];
      name = there !== undefined && !kept.has(there) && !used.has(there) ? there : undefined;
    }
    if (name === undefined) fresh.push(name = next());
    used.add(name);
    if (isObject(row)) names.set(row, name);
    return name;
  });
  return {list, keys, fresh};
}

/** @param {unknown} value @returns {value is object} */
const isObject = value => typeof value === 'object' && value !== null;

/** What a row is known by, of the object that it is. @param {unknown} row */
export const rowName = row => isObject(row) ? names.get(row) : undefined;

/**
 * Puts a new row at the end of a list, and the focus into it.
 * @param {State} state
 * @param {Path} list
 * @param {unknown} row
 * @param {string} [label]
 */
export function addRow(state, list, row, label) {
  const index = lengthAt(state, list);
  wantFocus(state, [...list, index]);
  state.job.insert(list, index, row, {label});
  state.redraw();
}

/** @param {State} state @param {Path} list */
function lengthAt(state, list) {
  const value = state.job.get(list);
  return Array.isArray(value) ? value.length : 0;
}

/**
 * Takes a row out, and offers to bring it back.
 * @param {State} state
 * @param {Path} path
 * @param {string} name what it was
 */
export function removeRow(state, path, name) {
  const list = path.slice(0, -1), index = path.at(-1);
  renumber(state, list, i => i === index ? undefined : typeof index === 'number' && i > index ? i - 1 : i);
  state.job.remove(path, {label: say('Removed: {what}', {what: name})});
  state.message = {text: say('Removed: {what}', {what: name}), undo: true};
  const left = lengthAt(state, list);
  if (left === 0) wantFocus(state, list, 'add');
  else wantFocus(state, [...list, Math.min(Number(index), left - 1)], 'row');
  state.redraw();
}

/**
 * Moves a row, and keeps the focus on the button that did it.
 * @param {State} state
 * @param {Path} path
 * @param {'up' | 'down'} way
 */
export function moveRow(state, path, way) {
  const list = path.slice(0, -1), from = Number(path.at(-1)), to = way === 'up' ? from - 1 : from + 1;
  renumber(state, list, i => i === from ? to : i === to ? from : i);
  wantFocus(state, [...list, to], way);
  state.job.move(list, from, to);
  state.redraw();
}

/**
 * Puts a copy of a row after it.
 * @param {State} state
 * @param {Path} path
 */
export function copyRow(state, path) {
  const list = path.slice(0, -1), at = Number(path.at(-1)) + 1;
  renumber(state, list, i => i >= at ? i + 1 : i);
  wantFocus(state, [...list, at]);
  state.job.insert(list, at, structuredClone(state.job.get(path)), {label: say('Copied')});
  state.redraw();
}

/**
 * What was touched and what is folded out in the rows of a list go with them.
 * @param {State} state
 * @param {Path} list
 * @param {(index: number) => number | undefined} to
 */
function renumber(state, list, to) {
  renumberIn(state.touched, pathText(list) + '[', to);
  renumberIn(state.open, 'more ' + pathText(list) + '[', to);
}

/** @param {Set<string>} names @param {string} start @param {(index: number) => number | undefined} to */
function renumberIn(names, start, to) {
  const moved = [];
  for (const name of [...names]) {
    if (!name.startsWith(start)) continue;
    const end = name.indexOf(']', start.length);
    const index = to(Number(name.slice(start.length, end)));
    names.delete(name);
    if (index !== undefined) moved.push(start + index + name.slice(end));
  }
  for (const name of moved) names.add(name);
}
