// @ts-check
// The job document in hand: read and change it by path, undo, watch its changes.
//
// A document is never changed in place, so two views are equal where they are
// identical: see change.js.

import {listAt, put, spliced, without} from './change.js';
import {child, findPath, parsePath, pathText, samePath} from './path.js';
import {say} from '../text/say.js';

/**
 * @import {Doc} from '../store/record.js'
 * @import {Path} from './path.js'
 */

/**
 * How a change is made.
 * @typedef {object} How
 * @property {string} [label] what the change was, for undo: "Deleted task 2"
 * @property {boolean} [prune] set and remove: what is left empty goes too
 * @property {boolean} [typing] set: one of a run of changes to one field, which
 *   is one step of undo; true when the old and the new value are text
 * @property {boolean} [inBox] set: the box that it was typed into shows it already
 */

/**
 * What subscribers get.
 * @typedef {object} Change
 * @property {Doc} doc
 * @property {Doc} before
 * @property {Path} path where it changed; [] for the whole document
 * @property {string} label
 * @property {boolean} inBox
 * @property {'set' | 'insert' | 'remove' | 'move' | 'replace' | 'open' | 'undo' | 'redo'} cause
 */

/** @typedef {ReturnType<typeof createDocument>} JobDocument */

/**
 * @param {Doc} doc
 * @param {{limit?: number, pause?: number, now?: () => number}} [options]
 *   limit: steps of undo kept; pause: milliseconds without a change that end a
 *   run of typing
 */
export function createDocument(doc, {limit = 200, pause = 5000, now = Date.now} = {}) {
  /** @typedef {{doc: Doc, label: string, path: Path}} Step a document to go back to */
  /** @type {Step[]} */
  let done = [];
  /** @type {Step[]} */
  let undone = [];
  /** @type {{text: string, at: number} | null} */
  let run = null; // the field being typed into
  /** @type {{from: Doc, path: Path, value: unknown, prune: boolean, next: Doc} | null} */
  let placed = null; // what was made last: previewed and then set, it is one document
  /** @type {Set<(change: Change) => void>} */
  const watchers = new Set();
  /** @type {Change[]} */
  const news = [];

  /** @param {Omit<Change, 'doc' | 'before'>} what @param {Doc} next */
  function become(what, next) {
    news.push({...what, doc: next, before: doc});
    doc = next;
    if (news.length > 1) return; // changed by a watcher: passed on after this one
    for (; news.length > 0; news.shift()) {
      for (const watcher of [...watchers]) {
        try {
          watcher(news[0]);
        } catch (error) {
          (globalThis.reportError ?? console.error)(error);
        }
      }
    }
  }

  /**
   * @param {Change['cause']} cause
   * @param {Path} path
   * @param {string} label
   * @param {Doc} next
   * @param {boolean} [typing]
   * @param {boolean} [inBox]
   */
  function change(cause, path, label, next, typing = false, inBox = false) {
    if (next === doc) return false;
    const text = pathText(path), at = now();
    const goesOn = typing && run !== null && run.text === text && at >= run.at && at - run.at < pause && done.length > 0;
    if (!goesOn) done = [...done, {doc, label, path}].slice(-limit);
    undone = [];
    run = typing ? {text, at} : null;
    become({cause, path: [...path], label, inBox}, next);
    return true;
  }

  /** The document with value at path. @param {Path} path @param {unknown} value @param {boolean} [prune] */
  function place(path, value, prune = false) {
    if (placed?.from !== doc || placed.value !== value || placed.prune !== prune || !samePath(placed.path, path)) {
      placed = {from: doc, path: [...path], value, prune, next: value === undefined ? without(doc, path, prune) : put(doc, path, value)};
    }
    return placed.next;
  }

  /** @param {'undo' | 'redo'} cause @param {Step[]} from @param {Step[]} to */
  function back(cause, from, to) {
    const step = from.pop();
    if (!step) return '';
    to.push({...step, doc});
    run = null;
    become({cause, path: [...step.path], label: step.label, inBox: false}, step.doc);
    return step.label;
  }

  return {
    get doc() { return doc; },
    get canUndo() { return done.length > 0; },
    get canRedo() { return undone.length > 0; },
    get undoLabel() { return done.at(-1)?.label ?? ''; },
    get redoLabel() { return undone.at(-1)?.label ?? ''; },
    pathText,
    parsePath,

    /** @param {Path} path @returns {any} */
    get: path => path.reduce(child, /** @type {unknown} */ (doc)),

    /** The path that the library's text means in this document, or null. @param {string} text */
    find: text => findPath(doc, text),

    /**
     * Puts value at path. Lists and objects on the way are made where they are
     * missing or where something else stands. undefined takes the key away.
     * @param {Path} path
     * @param {unknown} value
     * @param {How} [how]
     */
    set(path, value, how = {}) {
      const old = this.get(path);
      const typing = how.typing ?? (typeof value === 'string' && (typeof old === 'string' || old === undefined));
      return change('set', path, how.label ?? say('Changed'), place(path, value, how.prune), typing, how.inBox);
    },

    /**
     * The document that set() would make; that very object, if it does so next.
     * @param {Path} path
     * @param {unknown} value
     * @param {How} [how]
     */
    preview: (path, value, how = {}) => place(path, value, how.prune),

    /**
     * Puts value into the list at path, before index.
     * @param {Path} path
     * @param {number} index
     * @param {unknown} value
     * @param {How} [how]
     */
    insert(path, index, value, how = {}) {
      const list = listAt(this.get(path));
      if (!(Number.isInteger(index) && index >= 0 && index <= list.length)) throw new RangeError(`no place ${index} in ${pathText(path)}`);
      const next = put(doc, path, spliced(list, index, 0, value));
      return change('insert', [...path, index], how.label ?? say('Added'), next);
    },

    /**
     * Takes away the element of a list, or the key of an object, at path.
     * @param {Path} path
     * @param {How} [how]
     */
    remove(path, how = {}) {
      return change('remove', path, how.label ?? say('Deleted'), without(doc, path, how.prune ?? false));
    },

    /**
     * Moves an element of the list at path to another place in it.
     * @param {Path} path
     * @param {number} from
     * @param {number} to its index afterwards
     * @param {How} [how]
     */
    move(path, from, to, how = {}) {
      const list = listAt(this.get(path));
      for (const i of [from, to]) {
        if (!(Number.isInteger(i) && i >= 0 && i < list.length)) throw new RangeError(`no place ${i} in ${pathText(path)}`);
      }
      if (from === to) return false;
      const next = put(doc, path, spliced(spliced(list, from, 1), to, 0, list[from]));
      return change('move', path, how.label ?? say('Moved'), next);
    },

    /** Another document as a step that can be undone. @param {Doc} next @param {How} [how] */
    replace(next, how = {}) {
      return change('replace', [], how.label ?? say('Replaced the job'), next);
    },

    /** Another document, with no way back into this one. @param {Doc} next */
    open(next) {
      done = [];
      undone = [];
      run = null;
      become({cause: 'open', path: [], label: '', inBox: false}, next);
    },

    /** The next change is a step of its own: a field was left. */
    rest() { run = null; },

    /** @returns {string} the label of what was undone, or '' */
    undo: () => back('undo', done, undone),
    /** @returns {string} the label of what was done again, or '' */
    redo: () => back('redo', undone, done),

    /**
     * Calls fn after each change, in order. Returns the way to stop it.
     * @param {(change: Change) => void} fn
     */
    subscribe(fn) {
      const watcher = (/** @type {Change} */ c) => fn(c); // the same fn may watch twice
      watchers.add(watcher);
      return () => { watchers.delete(watcher); };
    },
  };
}
