// @ts-check
// What is wrong with a part of the job, for the part of the form that shows it.
import {problemAt} from './state.js';

/** @typedef {{path: string, code: string, value: string, hint: string}} Problem */

/** What says only that something is still to be filled in. */
const waiting = new Set(['field.missing', 'area.missing', 'container.missing', 'quantity.empty', 'mix.empty', 'job.empty']);

/** Whether a problem only says that something is not there yet. @param {Problem | undefined} problem */
export const waits = problem => problem !== undefined && waiting.has(problem.code);

/**
 * The problem to show at a path: what waits is not scolded until it was left.
 * @param {any} desk
 * @param {string} path
 * @returns {Problem | undefined}
 */
export function shown(desk, path) {
  const problem = problemAt(desk, path);
  return waits(problem) && !desk.touched.has(path) ? undefined : problem;
}

/** Whether something at a path waits to be filled in. @param {any} desk @param {string} path */
export const needed = (desk, path) => waits(desk.problems.get(path));

/**
 * What is wrong at a path and below it: how many are shown, how many wait, and
 * a text that is another when any of it is.
 * @typedef {{mark: string, wrong: number, waiting: number}} Trouble
 */

/** @type {Trouble} */
const none = Object.freeze({mark: '', wrong: 0, waiting: 0});

/** @type {WeakMap<object, {touched: number, all: Map<string, Trouble>}>} */
const memory = new WeakMap();

/**
 * @param {any} desk
 * @param {string} path
 * @returns {Trouble}
 */
export function troubleAt(desk, path) {
  let known = memory.get(desk.problems);
  if (!known || known.touched !== desk.touched.size) {
    known = {touched: desk.touched.size, all: gather(desk)};
    memory.set(desk.problems, known);
  }
  return known.all.get(path) ?? none;
}

/** Every path that has a problem at it or below it. @param {any} desk */
function gather(desk) {
  /** @type {Map<string, Trouble>} */
  const all = new Map();
  for (const [path, problem] of desk.problems) {
    const wrong = shown(desk, path) !== undefined;
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
