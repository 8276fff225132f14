// @ts-check
// What one task takes, beside where it is entered and where it is done.
import {h} from '../ui/h.js';
import {say} from '../text/say.js';
import {facts, fold, nameOf, working} from '../ui/figure.js';
import {drawing, drawingsOf} from '../ui/drawing.js';
import {hasPlan} from '../state/state.js';

/**
 * @import {Task} from '../plan.d.ts'
 * @import {Planned, State} from '../state/types.d.ts'
 */

/** What task `index` of the plan takes, or nothing before there is a plan of it. @param {State} state @param {number} index */
export function taskResult(state, index) {
  const task = hasPlan(state) && state.plan.tasks[index];
  if (!task || task.kind !== state.job.doc.tasks?.[index]?.kind) return null;
  return h('div', {class: 'task-result'},
    takes(state, task),
    tooMuch(state, task),
    factsOf(state, task, 'facts ' + index),
    drawingsOf(state, d => d.task === index).map((d, i) => drawing(d, `task-${index}-${i}`)),
    working(state, 'task ' + index, task.title, s => s.task === index));
}

/** Warnings that a figure typed in a task brings about, where it is typed. @type {Record<string, string[] | undefined>} */
const typed = {amend: ['over-half', 'sand-clay'], backfill: ['hole-only'], cover: ['mulch-deep'], fill: ['soil-in-pots']};

/** @param {Planned} state @param {Task} task */
function tooMuch(state, task) {
  const list = state.plan.cautions.filter(c => typed[task.kind]?.includes(c.code));
  return list.length > 0 && h('ul', {class: 'mind'}, list.map(c => h('li', {key: c.code, 'data-test': 'caution', 'data-code': c.code}, c.text)));
}

/** More facts of a task than this are folded away: a job may have hundreds. */
const MOST = 12;

/** A task's facts, folded where they are many. @param {State} state @param {Task} task @param {string} name */
export function factsOf(state, task, name) {
  const all = () => facts(task.facts.map(f => [f.label, f.figure]));
  if (task.facts.length <= MOST) return task.facts.length > 0 ? all() : null;
  return fold(state, name, say('All {n} lines', {n: task.facts.length}), all);
}

/** The loose total of a task and its parts. @param {State} state @param {Task} task */
export function takes(state, task) {
  if (!task.filling) return null;
  const parts = task.parts ?? [];
  return h('div', {class: 'takes'},
    h('p', {class: 'takes-all'}, h('strong', {class: 'figure'}, task.loose_shown), ' ', say('{material}, loose', {material: task.filling})),
    parts.length > 1 && facts(parts.map(p => [nameOf(state, p.material), p.shown])));
}
