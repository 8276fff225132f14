// @ts-check
// What is wrong with a part of the job, for the part of the form that shows it.

/**
 * @import {Problem} from '../plan.d.ts'
 * @import {State} from './types.d.ts'
 */

/** What says only that something is still to be filled in. */
const waiting = new Set(['field.missing', 'area.missing', 'container.missing', 'quantity.empty', 'mix.empty', 'job.empty']);

/** Whether a problem only says that something is not there yet. @param {Problem | undefined} problem */
export const waits = problem => problem !== undefined && waiting.has(problem.code);

/** The problem at a field: nothing is said of a field that is new. @param {State} state @param {string} path */
export function problemAt(state, path) {
  const problem = state.problems.get(path);
  if (!problem || problem.code === 'field.missing' && !state.touched.has(path)) return undefined;
  return problem;
}

/**
 * The problem to show at a path: what waits is not called wrong until it was left.
 * @param {State} state
 * @param {string} path
 * @returns {Problem | undefined}
 */
export function shown(state, path) {
  const problem = problemAt(state, path);
  return waits(problem) && !state.touched.has(path) ? undefined : problem;
}

/** Whether something at a path waits to be filled in. @param {State} state @param {string} path */
export const needed = (state, path) => waits(state.problems.get(path));

/**
 * What is wrong at a path and below it: how many are shown, how many wait, and
 * a text that is another when any of it is.
 * @typedef {{mark: string, wrong: number, waiting: number}} ProblemCount
 */

/** @type {ProblemCount} */
const none = Object.freeze({mark: '', wrong: 0, waiting: 0});

/** @type {WeakMap<object, {touched: number, all: Map<string, ProblemCount>}>} */
const memory = new WeakMap();

/**
 * @param {State} state
 * @param {string} path
 * @returns {ProblemCount}
 */
export function problemsAt(state, path) {
  let known = memory.get(state.problems);
  if (!known || known.touched !== state.touched.size) {
    known = {touched: state.touched.size, all: gather(state)};
    memory.set(state.problems, known);
  }
  return known.all.get(path) ?? none;
}

/** Every path that has a problem at it or below it. @param {State} state */
function gather(state) {
  /** @type {Map<string, ProblemCount>} */
  const all = new Map();
  for (const [path, problem] of state.problems) {
    const wrong = shown(state, path) !== undefined;
    for (const above of holders(path)) {
      const was = all.get(above) ?? none;
      all.set(above, {
        mark: `${was.mark}\n${path}\t${problem.code}\t${wrong}\t${problem.hint}`,
        wrong: was.wrong + (wrong ? 1 : 0),
        waiting: was.waiting + (wrong ? 0 : 1),
      });
    }
  }
  return all;
}

/** The path, all that holds it, and the job itself. @param {string} path */
function holders(path) {
  const all = new Set(['', path]);
  for (const {index} of path.matchAll(/[.[]/g)) all.add(path.slice(0, index));
  return all;
}
