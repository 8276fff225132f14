// @ts-check
// The rows of a list on the page: what each is known by while the list changes,
// adding, removing and moving them, and where the focus goes then.
import {h} from './h.js';
import {pathText} from '../state/path.js';
import {say} from '../text/say.js';

/** @typedef {import('../state/path.js').Path} Path */
/** @typedef {{list: readonly any[], keys: string[]}} Known */

let made = 0;
const next = () => `row${++made}`;

/** The name that a row had while it was this object. @type {WeakMap<object, string>} */
const names = new WeakMap();

/**
 * Names for the elements of a list that stay with them: an element that is the
 * same object keeps its name wherever it goes; one that was changed in place
 * takes over the name that stood there.
 * @param {Known | undefined} before
 * @param {readonly any[]} list
 * @returns {Known & {fresh: string[]}} fresh are the names that are new
 */
export function nameRows(before, list) {
  if (before && before.list === list) return {...before, fresh: []};
  const kept = new Set(list.filter(row => isObject(row) && names.has(row)).map(row => names.get(row)));
  /** @type {string[]} */
  const fresh = [];
  const used = new Set();
  const keys = list.map((row, i) => {
    let name = isObject(row) ? names.get(row) : undefined;
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

/** Where the focus is to go once it is drawn. @type {WeakMap<object, {path: string, act: string}>} */
const wanted = new WeakMap();

/**
 * Asks for the focus: at the first control of a row ('first'), at the row itself
 * ('row'), or at a button of it ('up', 'add', ...).
 * @param {any} state
 * @param {Path} path
 * @param {string} [act]
 */
export function wantFocus(state, path, act = 'first') {
  wanted.set(state, {path: pathText(path), act});
}

/**
 * Gives the focus that was asked for, when it is for this element of the page.
 * @param {any} state
 * @param {Path} path
 * @param {any} element
 */
export function giveFocus(state, path, element) {
  const want = wanted.get(state);
  if (!want || !element || want.path !== pathText(path)) return;
  const named = (/** @type {string} */ act) => [...element.querySelectorAll(`[data-act="${act}"]`)].find(el => (el.dataset.path ?? want.path) === want.path && !el.disabled);
  const at = want.act === 'row' ? element.querySelector(':scope > h3 > button') ?? element
    : want.act === 'first' ? element.querySelector('input, select') ?? element.querySelector('button')
    : named(want.act) ?? named(want.act === 'up' ? 'down' : 'up');
  if (!at) return;
  wanted.delete(state);
  (at.matches('li') && want.act !== 'row' ? at.querySelector('input, select') ?? at : at).focus();
}

/** How many rows of one list are drawn before somebody asks for more. */
export const atOnce = 200;

/**
 * How many rows a list shows, and the button for more of them: a job that came
 * in may have any number. A row that was just added is shown.
 * @param {any} list the component of the list @param {readonly any[]} rows @param {boolean} [added]
 */
export function someRows(list, rows, added = false) {
  const most = list.most = Math.max(list.most ?? atOnce, added ? rows.length : 0);
  return {most, more: rows.length > most && h('button', {type: 'button', class: 'add', 'data-test': 'more-rows', onClick: () => { list.most += atOnce; list.forceUpdate(); }},
    say('Show more: {n} are not shown', {n: rows.length - most}))};
}

/** The button that takes a row out. @param {string} label @param {string} path @param {() => void} act */
export const remover = (label, path, act) => h('button', {type: 'button', class: 'remove', 'data-test': 'remove-row', 'data-path': path, 'aria-label': label, title: say('Remove'), onClick: act}, '×');

/** What a row is known by, of the object that it is. @param {any} row */
export const rowName = row => isObject(row) ? names.get(row) : undefined;

/**
 * Puts a new row at the end of a list, and the focus into it.
 * @param {any} state
 * @param {Path} list
 * @param {any} row
 * @param {string} [label]
 */
export function addRow(state, list, row, label) {
  const index = lengthAt(state, list);
  wantFocus(state, [...list, index]);
  state.job.insert(list, index, row, {label});
  state.redraw();
}

/** @param {any} state @param {Path} list */
function lengthAt(state, list) {
  const value = state.job.get(list);
  return Array.isArray(value) ? value.length : 0;
}

/**
 * Takes a row out, and offers to bring it back.
 * @param {any} state
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
 * @param {any} state
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
 * @param {any} state
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
 * @param {any} state
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
