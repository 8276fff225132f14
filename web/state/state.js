// @ts-check
// What the page knows and shows: the job in hand, its plan, what is wrong with
// it, which place is open. Views read it; what they do to it goes through the
// functions here, and every one ends in a redraw.
import {openStore} from '../store/jobs.js';
import {createDocument} from './document.js';

/**
 * @import {Doc} from '../store/record.js'
 * @import {Actions, Message, Place, Planned, State} from './types.d.ts'
 */

/**
 * A state with nothing worked out yet. Its actions, and what follows a change,
 * are put into it by who starts the page.
 * @param {Doc} doc
 * @param {import('../store/jobs.js').Store} [store]
 */
export function createState(doc, store = openStore(null)) {
  /** @type {State} */
  const state = {
    job: createDocument(doc),
    plan: null, planText: '', planFor: null, stale: false,
    full: null, fullFor: null, drawings: null, costs: null, changes: null, restFor: null, catalog: null,
    problems: new Map(), problemsFor: null,
    store, record: null, home: null, ticks: {}, conflict: null, deleted: store.deleted(), keptText: '',
    place: 'job', touched: new Set(), open: new Set(), jobsOpen: false, printing: null, shared: null,
    message: null, long: '', announcement: '', language: 'en', comma: false, theme: '', updateReady: false,
    actions: /** @type {Actions} */ ({}),
    redraw() {}, expect() {}, useUpdate() {}, async recompute() {},
  };
  // A message that offers to take the last change back is of that change alone.
  state.job.subscribe(() => { if (state.message?.undo) state.message = null; });
  return state;
}

/** Whether there is a plan to show. @param {State} state @returns {state is Planned} */
export const hasPlan = state => Boolean(state.plan);

/** Opens a place. @param {State} state @param {Place} place */
export function goTo(state, place) {
  state.place = place;
  if (state.message && !state.message.undo && !state.message.bad) state.message = null;
  state.redraw();
  scrollTo(0, 0);
}

/**
 * Says something on the page, until it is closed or something else is said.
 * @param {State} state @param {string} text @param {Omit<Message, 'text'>} [more]
 */
export function showMessage(state, text, more = {}) {
  state.message = {text, ...more};
  state.redraw();
}

/** Folds a part of the page out or in. @param {State} state @param {string} name */
export function toggle(state, name) {
  if (!state.open.delete(name)) state.open.add(name);
  state.redraw();
}
