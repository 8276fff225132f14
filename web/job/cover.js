// @ts-check
// A task of covering: a layer on top of the ground.
import {areaOf} from './area.js';
import {control} from './control.js';
import {filling} from './filling.js';
import {mark, say} from '../text/say.js';

/** @import {KindForm} from './task.js' */

const afterArea = ['layer', 'stems', 'sheet'];

/** @type {KindForm} */
export const cover = {
  about: mark('A layer on top, with stems kept clear.'),
  asks: ['area', ...afterArea],
  fields: (state, path, task, ctx) => [
    filling(state, path, task, ctx, {label: say('Covered with')}),
    areaOf(state, path, task, ctx),
    ...afterArea.map(name => control(state, path, task, 'cover', name, ctx)),
  ],
};
