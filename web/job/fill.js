// @ts-check
// A task of filling: pots, cell trays, boxes.
import {h} from '../ui/h.js';
import {choice} from '../ui/choice.js';
import {containerForm, containerTitle, newContainer} from './container.js';
import {filling} from './filling.js';
import {wantFocus} from './focus.js';
import {rows} from './list.js';
import {addRow} from './rows.js';
import {pathText} from '../state/path.js';
import {problemsAt} from '../state/problems.js';
import {mark, say} from '../text/say.js';

/**
 * @import {Path} from '../state/path.js'
 * @import {State} from '../state/types.d.ts'
 * @import {Names} from './names.js'
 * @import {KindForm} from './task.js'
 */

/** @type {KindForm} */
export const fill = {
  about: mark('Mix for pots, cell trays and boxes.'),
  start: () => ({containers: [newContainer()]}),
  asks: ['containers'],
  fields: (state, path, task, ctx) => [
    filling(state, path, task, ctx, {label: say('Filled with'), mixesFirst: true}),
    h('div', {key: 'lines', class: 'filled-lines'},
      h('p', {class: 'subhead'}, say('What is filled')),
      rows({state, path: [...path, 'containers'], list: task.containers, ctx: ctx.lines, form: containerForm, one: containerTitle, add: {label: say('Add containers'), row: newContainer}, mark: problemsAt(state, pathText([...path, 'containers'])).mark}),
      known(state, [...path, 'containers'], task.containers, ctx.names)),
  ],
};

/** A choice of the sizes that are known, by kind: one adds a line, or goes in a last line that says nothing yet. @param {State} state @param {Path} path of the lines @param {unknown} lines @param {Names} names */
function known(state, path, lines, names) {
  const last = Array.isArray(lines) ? lines.length - 1 : -1;
  const empty = last >= 0 && Object.keys(Array.isArray(lines) && lines[last] || {}).every(key => key === 'count');
  return names.sizeKinds.length > 0 && choice({state, path, suffix: '-known', test: 'known-size', label: say('Add a known size'), empty: say('Choose'), options: names.sizeKinds, value: '', onPick: size => {
    if (size === '') return;
    if (empty) {
      state.job.set([...path, last, 'size'], size);
      wantFocus(state, [...path, last]);
    } else addRow(state, path, {size}, say('Added'));
  }});
}
