// @ts-check
// The job in hand, saved as it is typed, and taken from what was saved.
import {markResult} from './recompute.js';
import {showMessage} from '../state/state.js';
import {askToStay} from '../store/device.js';
import {say} from '../text/say.js';

/**
 * @import {Place, State} from '../state/types.d.ts'
 * @import {Doc, Outcome, Saved} from '../store/record.js'
 */

/** @type {Place[]} */
const places = ['job', 'yard', 'ground'];

/** How long after the last key the job is saved, in ms: a killed tab loses no more. */
const SAVE_AFTER = 150;

/** How long after that its plan is saved too, to be shown at once next time. */
const PLAN_AFTER = 1500;

/** @param {State} state */
export function createSaving(state) {
  const {store, job} = state;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let saving;
  let asked = false;

  /** What is kept of the job in hand, where there is one. */
  const hand = () => /** @type {Saved} */ (state.record);

  /** Takes a record as the job in hand. @param {Saved} record */
  function take(record) {
    Object.assign(state, {
      record, home: record.home, ticks: record.ticks, place: places.find(place => place === record.place) ?? 'job',
      plan: null, planText: record.plan, full: null, fullFor: null, drawings: null, costs: null, changes: null, restFor: null,
      planFor: null, problems: new Map(), problemsFor: null, conflict: null, touched: new Set(), shared: null, message: null,
    });
    if (record.plan) Object.assign(state, savedPlan(record.plan));
    store.open(record.id);
    job.open(record.doc);
    markResult(state);
  }

  /** Makes a record of a document and takes it. @param {Doc} doc @param {Partial<Saved>} [more] */
  function begin(doc, more = {}) {
    save();
    outcome(store.create(doc, doc.name || say('Unnamed job'), more), take);
  }

  /** Shows what became of saving. @param {Outcome} done @param {(record: Saved) => void} [take] */
  function outcome(done, take = record => { state.record = record; }) {
    if (done.conflict) return differ(done.conflict);
    take(done.record);
    state.keptText = done.text ?? '';
    if (done.kept && !asked) askToStay();
    asked = true;
    state.redraw();
  }

  /** Saves soon; the plan, which is long, once nobody types. */
  function saveSoon() {
    clearTimeout(saving);
    saving = setTimeout(() => {
      save(false);
      saving = setTimeout(() => save(), PLAN_AFTER);
    }, SAVE_AFTER);
  }

  /** Saves what is in hand, if it is not as it was saved. @param {boolean} [whole] with its plan */
  function save(whole = true) {
    clearTimeout(saving);
    const {record} = state;
    if (!record || state.conflict) return;
    const of = state.planFor === 'saved' ? record.doc : state.planFor; // the job that the plan is of
    const plan = of === job.doc ? state.planText ?? '' : '';
    const next = {...record, doc: job.doc, home: state.home, ticks: state.ticks, place: state.place, plan: whole || plan === record.plan ? plan : ''};
    if (typeof job.doc.name === 'string' && job.doc.name !== record.doc.name) next.name = store.freeName(job.doc.name || say('Unnamed job'), record.id);
    if (keysOf(next).every(key => next[key] === record[key])) return;
    outcome(store.save(next));
  }

  /** Another tab saved this job too: nothing is lost, the person chooses. @param {Saved} theirs */
  function differ(theirs) {
    state.conflict = {
      theirs() { take(theirs); },
      mine() {
        state.conflict = null;
        outcome(store.saveAsCopy({...hand(), doc: job.doc, home: state.home, ticks: state.ticks, place: state.place}, job.doc.name || say('Unnamed job')));
        store.open(hand().id);
        showMessage(state, say('Kept as {name}.', {name: hand().name}));
      },
    };
    state.redraw();
  }

  /**
   * Another tab saved the job in hand. Where that one did not know what this one
   * has, saved or not, it is for the person to choose: two tabs that save at one
   * moment give the same rev to two jobs.
   * @param {Saved} record
   */
  function hear(record) {
    const mine = hand(), text = JSON.stringify(record.doc);
    const follows = record.rev > mine.rev, unsaved = job.doc !== mine.doc;
    if (text === JSON.stringify(job.doc)) {
      if (follows) state.record = {...record, doc: job.doc};
    } else if (follows && !unsaved && !state.conflict) take(record);
    else if (follows || text !== JSON.stringify(mine.doc)) differ(record);
  }

  return {
    take, begin, outcome, saveSoon, save,
    /** What is to be saved is not. */
    forget: () => clearTimeout(saving),
    /** Another tab saved or deleted a job. @param {{id: string, record: Saved | null}} change */
    heard({id, record}) {
      if (id === state.record?.id && record) hear(record);
      state.redraw();
    },
  };
}

/** @param {Saved} record */
const keysOf = record => /** @type {(keyof Saved)[]} */ (Object.keys(record));

/** A plan kept from before, to show until it is worked out again. @param {string} text @returns {Partial<State>} */
function savedPlan(text) {
  try {
    const plan = JSON.parse(text);
    return Array.isArray(plan.needs) && Array.isArray(plan.tasks) ? {plan, planFor: 'saved', stale: false} : {};
  } catch {
    return {};
  }
}
