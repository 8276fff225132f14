// @ts-check
// A task of planting out: holes, and what goes back round the root balls.
import {h} from '../ui/h.js';
import {control, hasAny} from './control.js';
import {filling} from './filling.js';
import {pathText} from '../state/path.js';
import {needed} from '../state/problems.js';
import {mark, say} from '../text/say.js';

/** @import {KindForm} from './task.js' */

const first = ['holes', 'width', 'depth', 'ball', 'above_grade', 'soil'];

/** @type {KindForm} */
export const backfill = {
  about: mark('Planting holes round their root balls.'),
  asks: [...first, 'share'],
  fields: (state, path, task, ctx) => [
    h('div', {key: 'holes', class: 'pair'}, first.map(name => control(state, path, task, 'backfill', name, ctx, {empty: say('Clay, when not said')}))),
    filling(state, path, task, ctx, {label: say('Mixed into the soil'), nothing: say('Nothing, only soil goes back')}),
    (hasAny(task, ['mix', 'material', 'share']) || needed(state, pathText([...path, 'share']))) && control(state, path, task, 'backfill', 'share', ctx),
  ],
};
