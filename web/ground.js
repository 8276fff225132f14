// The Ground place: at the tarp and the bed, task by task.
import {h} from './h.js';
import {say} from './say.js';
import {facts} from './figure.js';
import {takes} from './task_result.js';
import {drawing, drawingsOf} from './drawing.js';
import {cautions} from './result.js';

/** What is done, step by step, in each kind of task. */
const steps = {
  fill: () => [
    say('Measure the parts loose, by volume, in the order listed.'),
    say('Dampen what is dry, turn it together on the tarp until it is one colour.'),
    say('Fill to the line, set the root ball, do not tread or press it down.'),
    say('Water in, let it settle, and top up to the line.'),
  ],
  amend: () => [
    say('Have buried lines located before you dig.'),
    say('Clear the bed and loosen the native soil, when it crumbles and not when it is wet.'),
    say('Spread the layer to its depth, level.'),
    say('Dig or till it in to the finished depth, evenly.'),
  ],
  backfill: () => [
    say('Dig no deeper than the ball; roughen the sides.'),
    say('Set the ball on firm soil, its top above the ground.'),
    say('Put the soil back round it, firm it by hand, and water it in.'),
  ],
  cover: () => [
    say('Weed and water first.'),
    say('Lay the sheets, if there are any, with their overlap.'),
    say('Spread the mulch to its depth and draw it back from the stems.'),
  ],
};

/** What warnings belong to a kind of task. */
const mind = {
  fill: ['legionella', 'dust', 'soil-in-pots', 'salt'],
  amend: ['digging', 'layer-deep', 'over-half', 'sand-clay', 'nitrogen', 'dust'],
  backfill: ['digging', 'hole-only', 'nitrogen'],
  cover: ['mulch-deep', 'mulch-stems', 'dust'],
};

/** The whole place. */
export function groundView(desk) {
  const {plan} = desk;
  if (!plan) return h('p', {class: 'note'}, say('Nothing to place yet: enter what is to be done in the Job place.'));
  return h('div', {class: 'ground'},
    h('h1', null, say('What goes where')),
    plan.tasks.map((task, i) => groundTask(desk, task, i)),
    cautions(plan.cautions));
}

/** One task, as it is done. */
export function groundTask(desk, task, index) {
  return h('section', {class: 'ground-task', key: index, 'data-test': 'ground-task'},
    h('h2', null, `${index + 1}. ${task.title}`),
    takes(desk, task),
    facts(task.facts.map(f => [f.label, f.figure])),
    drawingsOf(desk, d => d.task === index).map((d, i) => drawing(d, `ground-${index}-${i}`)),
    h('ol', {class: 'steps-to-do'}, steps[task.kind]().map((s, i) => h('li', {key: i}, s))),
    cautionLines(desk, task.kind));
}

function cautionLines(desk, kind) {
  const list = desk.plan.cautions.filter(c => mind[kind].includes(c.code));
  return list.length > 0 && h('ul', {class: 'mind'}, list.map(c => h('li', {key: c.code, 'data-test': 'caution', 'data-code': c.code}, c.text)));
}
