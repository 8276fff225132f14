// What one task takes, beside where it is entered and where it is done.
import {h} from './h.js';
import {say} from './say.js';
import {facts, nameOf, working} from './figure.js';
import {drawing, drawingsOf} from './drawing.js';

/** What task `index` of the plan takes, or nothing before there is a plan of it. */
export function taskResult(desk, index) {
  const task = desk.plan?.tasks[index];
  if (!task || task.kind !== desk.slate.doc.tasks?.[index]?.kind) return null;
  return h('div', {class: 'task-result'},
    takes(desk, task),
    task.facts.length > 0 && facts(task.facts.map(f => [f.label, f.figure])),
    drawingsOf(desk, d => d.task === index).map((d, i) => drawing(d, `task-${index}-${i}`)),
    working(desk, 'task ' + index, task.title, s => s.task === index));
}

/** The loose total of a task and its parts. */
export function takes(desk, task) {
  if (!task.filling) return null;
  const parts = task.parts ?? [];
  return h('div', {class: 'takes'},
    h('p', {class: 'takes-all'}, h('strong', {class: 'figure'}, task.loose_shown), ' ', say('{material}, loose', {material: task.filling})),
    parts.length > 1 && facts(parts.map(p => [nameOf(desk, p.material), p.shown])));
}
