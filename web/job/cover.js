// @ts-check
// A task of covering: a layer on top of the ground.
import {h} from '../ui/h.js';
import {tick} from '../ui/tick.js';
import {areaOf} from './area.js';
import {control, leftOver} from './control.js';
import {filling} from './filling.js';
import {rowOf} from '../state/fields.js';
import {mark, say} from '../text/say.js';

/**
 * @import {Path} from '../state/path.js'
 * @import {Doc} from '../store/record.js'
 * @import {State} from '../state/types.d.ts'
 * @import {Context} from './control.js'
 * @import {KindForm} from './task.js'
 */

/** @type {KindForm} */
export const cover = {
  about: mark('A layer on top, with stems kept clear.'),
  fields: (state, path, task, ctx) => [
    filling(state, path, task, ctx, {label: say('Covered with')}),
    areaOf(state, path, task, ctx),
    control(state, path, task, 'cover', 'layer', ctx),
    optional(state, path, task, 'stems', ['count', 'clear'], ctx),
    optional(state, path, task, 'sheet', ['size', 'overlap'], ctx),
  ],
};

/** An object that is there or not: a box to tick, and its fields. @param {State} state @param {Path} path @param {Doc} task @param {string} name @param {string[]} fields @param {Context} ctx */
function optional(state, path, task, name, fields, ctx) {
  const at = [...path, name], value = task[name], has = value !== undefined;
  return h('div', {key: name, class: 'optional'},
    tick({state, path: at, suffix: has ? '' : '-tick', label: say(rowOf('cover', name).label), checked: has, onTick: on => state.job.set(at, on ? {} : undefined)}),
    has && h('div', {class: 'pair', role: 'group', 'aria-label': say(rowOf('cover', name).label)}, fields.map(field => control(state, at, value, name, field, ctx))),
    has && leftOver(state, at, value, [name], fields, ctx));
}
