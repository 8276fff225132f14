// What the page knows and shows: the job in hand, its plan, what is wrong with
// it, which place is open. Views read it; what they do to it goes through the
// functions here, and every one ends in a redraw.
import {createDocument} from './document.js';

/**
 * @typedef {object} State
 * @property {ReturnType<typeof createDocument>} job the job document in hand
 * @property {any} plan the last good plan, or null
 * @property {any} full the plan with what takes longer, or null
 * @property {any} drawings pictures of the plan, or null
 * @property {any} changes what the yard changed, or null
 * @property {any} catalog what there is to choose from, or null
 * @property {Map<string, {path: string, code: string, value: string, hint: string}>} problems by path
 * @property {any} planFor the document that the plan is of; 'saved' for one kept from before
 * @property {any} problemsFor the document that the problems are of
 * @property {boolean} stale whether the plan is of an older entry
 * @property {any} record what is kept of the job on this device, or null with no job open
 * @property {any} home the document as it left home, or null before anything changed at the yard
 * @property {Record<string, number>} ticks how many of each offer are ticked
 * @property {string} language that the page speaks
 * @property {boolean} comma whether this reader writes 1,5
 * @property {string} spoken what the live region says
 * @property {{text: string, undo?: true | (() => void), bad?: boolean} | null} message with undo, what is to be put back besides the job, if anything
 * @property {'job' | 'yard' | 'ground'} place
 * @property {Set<string>} touched paths whose problems may be shown
 * @property {Set<string>} open what is folded out, by name
 * @property {() => void} redraw
 * @property {(doc: any) => void} expect told of the document that a key is about to make
 */

/** @param {any} doc @returns {State} */
export function createState(doc) {
  /** @type {State} */
  const state = {
    job: createDocument(doc),
    plan: null, planFor: null, full: null, drawings: null, costs: null, changes: null, catalog: null,
    problems: new Map(), problemsFor: null, stale: false,
    record: null, home: null, ticks: {},
    place: 'job', touched: new Set(), open: new Set(),
    language: 'en', comma: false, spoken: '', message: null,
    redraw() {}, expect() {},
  };
  // A message that offers to take the last change back is of that change alone.
  state.job.subscribe(() => { if (state.message?.undo) state.message = null; });
  return state;
}

/** Opens a place. */
export function goTo(state, place) {
  state.place = place;
  if (state.message && !state.message.undo && !state.message.bad) state.message = null;
  state.redraw();
  scrollTo(0, 0);
}

/** Says something on the page, until it is closed or something else is said. */
export function showMessage(state, text, more = {}) {
  state.message = {text, ...more};
  state.redraw();
}

/** Folds a part of the page out or in. */
export function toggle(state, name) {
  if (!state.open.delete(name)) state.open.add(name);
  state.redraw();
}

/** The problem to show at a field: nothing is said of a field that is new. */
export function problemAt(state, path) {
  const problem = state.problems.get(path);
  if (!problem || problem.code === 'field.missing' && !state.touched.has(path)) return undefined;
  return problem;
}

/** Whether a field waits to be filled in. */
export function missing(state, path) {
  return state.problems.get(path)?.code === 'field.missing';
}
