// @ts-check
// A task of filling: pots, cell trays, boxes.
import {h} from '../ui/h.js';
import {containerForm, containerTitle, newContainer} from './container.js';
import {filling} from './filling.js';
import {rows} from './list.js';
import {pathText} from '../state/path.js';
import {problemsAt} from '../state/problems.js';
import {mark, say} from '../text/say.js';

/** @import {KindForm} from './task.js' */

/** @type {KindForm} */
export const fill = {
  about: mark('Mix for pots, cell trays and boxes.'),
  start: () => ({containers: [newContainer()]}),
  asks: ['containers'],
  fields: (state, path, task, ctx) => [
    filling(state, path, task, ctx, {label: say('Filled with'), mixesFirst: true}),
    h('div', {key: 'lines', class: 'filled-lines'},
      h('p', {class: 'subhead'}, say('What is filled')),
      rows({state, path: [...path, 'containers'], list: task.containers, ctx: ctx.lines, form: containerForm, one: containerTitle, add: {label: say('Add containers'), row: newContainer}, mark: problemsAt(state, pathText([...path, 'containers'])).mark})),
  ],
};
