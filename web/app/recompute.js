// @ts-check
// Keeps the plan up with the job in hand. One question is under way at a time;
// what is typed meanwhile is asked next, and what nobody sees any more is not
// asked at all.

/** How long nothing must change before what takes longer is asked, in ms. */
const PAUSE = 500;

/** How long a key waits to be drawn with its answer, in ms: the box itself shows it. */
const MOMENT = 100;

/**
 * @import {Plan, Problems} from '../plan.d.ts'
 * @import {Program} from '../shell/program.js'
 * @import {Doc} from '../store/record.js'
 * @import {State} from '../state/types.d.ts'
 */

/** @typedef {ReturnType<typeof setTimeout>} Timer */

/**
 * @param {State} state
 * @param {Program} program
 * @param {{planned?: (text: string) => void, settled?: () => void, failed?: (error: Error) => void}} [on]
 */
export function startRecompute(state, program, on = {}) {
  let busy = false, rests = false, wake = () => {};
  /** @type {Timer | undefined} */
  let timer;
  /** @type {Timer | undefined} */
  let moment;
  /** What is asked before it is typed. @type {{doc: Doc, text: Promise<string>} | undefined} */
  let expected;
  const {job} = state;

  /** What takes longer, in the order in which it is wanted. @type {((doc: Doc) => Promise<Partial<State>>)[]} */
  const slower = [
    async doc => ({changes: state.home && state.home !== doc ? await program.ask('changes', state.home, doc) : null}),
    async doc => ({drawings: (await program.ask('shown', doc)).drawings}),
    () => new Promise(resolve => { const done = () => resolve({}); wake = done; setTimeout(done, PAUSE); }), // the rest is long enough to be in the way of the next tap
    async doc => ({full: await program.ask('full', doc), fullFor: doc}),
    async doc => ({costs: (await program.ask('costs', doc)).drawings}),
  ];

  async function run() {
    if (busy) return;
    busy = true;
    try {
      for (let doc; !answered(doc = job.doc);) take(doc, await planText(doc));
    } catch (error) {
      on.failed?.(/** @type {Error} */ (error));
    } finally {
      busy = false;
    }
    clearTimeout(timer);
    timer = setTimeout(rest, state.place === 'yard' ? 0 : PAUSE); // there, one looks for what a tap changed
  }

  /** @param {Doc} doc */
  const answered = doc => doc === state.planFor || doc === state.problemsFor;

  /** @param {Doc} doc */
  function planText(doc) {
    const early = expected;
    expected = undefined;
    return early?.doc === doc ? early.text : program.text('plan', doc);
  }

  // A browser has work of its own to do between the news of a key and the key in
  // its box: the plan is worked out meanwhile.
  state.expect = doc => {
    if (busy || answered(doc) || doc === expected?.doc) return;
    expected = {doc, text: program.text('plan', doc)};
    expected.text.catch(() => {}); // whoever waits for it gets the error
  };

  function redraw() {
    clearTimeout(moment);
    moment = undefined;
    state.redraw();
  }

  /** Takes an answer, unless the job has changed since: then only its figures. @param {Doc} doc @param {string} text */
  function take(doc, text) {
    /** @type {Plan | Problems} */
    const answer = JSON.parse(text);
    const now = doc === job.doc;
    if ('problems' in answer) {
      state.problems = new Map(answer.problems.map(p => [p.path, p]));
      state.problemsFor = doc;
      state.stale = true;
    } else {
      state.problems = new Map();
      state.problemsFor = null;
      state.plan = answer;
      state.planFor = doc;
      state.stale = !now;
      if (now) on.planned?.(text);
    }
    if (state.message?.again) state.message = null;
    markResult(state);
    redraw();
    on.settled?.();
  }

  /** Asks for what takes longer, once nothing has changed for a while. */
  async function rest() {
    const doc = job.doc;
    if (rests || busy || doc !== state.planFor || doc === state.restFor) return;
    rests = true;
    try {
      for (const more of slower) {
        const found = await more(doc);
        if (busy || doc !== job.doc) break; // what is typed comes first
        Object.assign(state, found);
        state.redraw();
      }
      if (doc === job.doc && !busy) state.restFor = doc;
    } catch (error) {
      on.failed?.(/** @type {Error} */ (error));
    } finally {
      rests = false;
    }
    if (doc !== job.doc) rest(); // asked for meanwhile
  }

  job.subscribe(({cause, inBox}) => {
    // A drawing stays while its figures are typed; with other tasks it is another's.
    wake();
    if (cause !== 'set') Object.assign(state, {drawings: null, costs: null});
    state.stale = state.plan !== null && job.doc !== (state.planFor === 'saved' ? state.record?.doc : state.planFor);
    if (!state.stale) state.problems = new Map();
    markResult(state);
    run(); // first, so that it is worked out while this is drawn
    if (inBox) moment ??= setTimeout(redraw, MOMENT);
    else redraw();
  });
  return run;
}

/** Says on the document how old the result shown is. @param {State} state */
export function markResult(state) {
  const was = document.documentElement.dataset.result;
  const is = !state.plan ? undefined : state.stale ? 'stale' : state.planFor === 'saved' ? 'saved' : 'fresh';
  if (is) document.documentElement.dataset.result = is;
  else delete document.documentElement.dataset.result;
  if (is === 'fresh' && was !== 'fresh') requestAnimationFrame(() => performance.mark('barrow-result'));
}
