// @ts-check
// The Ground place: at the tarp and the bed, task by task.
import {h} from '../ui/h.js';
import {say} from '../text/say.js';
import {nameOf} from '../ui/figure.js';
import {factsOf, takes} from '../result/task.js';
import {drawing, drawingsOf} from '../ui/drawing.js';
import {cautions} from '../result/result.js';
import {hasPlan} from '../state/state.js';

/**
 * @import {Part, Task} from '../plan.d.ts'
 * @import {Planned, State} from '../state/types.d.ts'
 */

/** What the steps of a task say: its figures by code, and the task with its materials by name. @typedef {(f: Record<string, string>, task: Task & {parts: Part[]}) => (string | undefined)[]} Steps */

/** What is done, step by step, in a kind of task. @type {Partial<Record<string, Steps>>} */
const steps = {
  fill: (f, task) => [
    task.parts.length > 1 ? say('Measure the parts loose, by volume: {parts}.', {parts: task.parts.map(p => `${p.shown} ${p.material}`).join(', ')}) : say('Loosen it before it is measured.'),
    say('Dampen what is dry, turn it together on the tarp until it is one colour.'),
    say('Fill to the line, set the root ball, do not tread or press it down.'),
    say('Water in, let it settle, and top up to the line.'),
  ],
  amend: (f, task) => [
    say('Have buried lines located before you dig.'),
    say('Clear the bed and loosen {native} of native soil, when it crumbles and not when it is wet.', f),
    say('Spread {layer} of {material}, level, over {area}.', {...f, material: task.filling}),
    say('Dig or till it in until the bed is {finished} deep, evenly. The ground rises by {fresh}, and by {settled} once it has settled.',
      {...f, fresh: f['rise-fresh'], settled: f['rise-settled']}),
  ],
  backfill: f => [
    say('Dig the holes, {holes}: no deeper than the ball; roughen the sides.', f),
    say('Set the ball on firm soil, its top above the ground.'),
    say('Put the soil back round it, firm it by hand, and water it in.'),
    say('Take away what is left over: {left}, loose.', {left: f['soil-left']}),
  ],
  cover: (f, task) => [
    say('Weed and water first.'),
    f.sheets && say('Lay the sheets, {sheets}, with their overlap.', f),
    say('Spread {layer} of {material} over {area}, and draw it back from the stems.', {...f, material: task.filling}),
  ],
};

/** What warnings belong to a kind of task; the others stand below all tasks. @type {Partial<Record<string, string[]>>} */
const warnings = {
  fill: ['legionella', 'dust', 'soil-in-pots', 'salt'],
  amend: ['digging', 'over-half', 'sand-clay', 'nitrogen', 'dust'],
  backfill: ['digging', 'hole-only', 'nitrogen'],
  cover: ['mulch-deep', 'mulch-stems', 'dust'],
};

/** The whole place. @param {State} state */
export function bedView(state) {
  if (!hasPlan(state)) return h('p', {class: 'note'}, say('Nothing to place yet: enter the work under Job.'));
  const {plan} = state;
  return h('div', {class: 'ground'},
    h('h1', null, say('What goes where')),
    plan.tasks.map((task, i) => bedTask(state, task, i)),
    cautions(plan.cautions));
}

/** One task, as it is done. @param {Planned} state @param {Task} task @param {number} index */
export function bedTask(state, task, index) {
  const figures = Object.fromEntries(task.facts.map(f => [f.code, f.figure]));
  const shown = {...task, parts: (task.parts ?? []).map(p => ({...p, material: nameOf(state, p.material)}))};
  return h('section', {class: 'ground-task', key: index, 'data-test': 'ground-task'},
    h('h2', null, `${index + 1}. ${task.title}`),
    takes(state, task),
    factsOf(state, task, 'ground facts ' + index),
    drawingsOf(state, d => d.task === index).map((d, i) => drawing(d, `ground-${index}-${i}`)),
    stepsOf(steps[task.kind]?.(figures, shown)),
    cautionLines(state, task));
}

/** @param {(string | undefined)[]} [list] none for a kind that nobody wrote steps for */
const stepsOf = list => list && h('ol', {class: 'steps-to-do'}, list.filter(Boolean).map((s, i) => h('li', {key: i}, s)));

/** @param {Planned} state @param {Task} task */
function cautionLines(state, task) {
  const list = state.plan.cautions.filter(c => warnings[task.kind]?.includes(c.code) && (task.filling || c.code !== 'nitrogen'));
  return list.length > 0 && h('ul', {class: 'mind'}, list.map(c => h('li', {key: c.code, 'data-test': 'caution', 'data-code': c.code}, c.text)));
}
