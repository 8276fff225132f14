// @ts-check
// A task of amending: something dug into the soil of a bed.
import {h} from '../ui/h.js';
import {Either} from '../ui/either.js';
import {areaOf} from './area.js';
import {control, leftOver} from './control.js';
import {filling} from './filling.js';
import {mark, say} from '../text/say.js';

/**
 * @import {Way} from '../ui/either.js'
 * @import {Path} from '../state/path.js'
 * @import {Doc} from '../store/record.js'
 * @import {State} from '../state/types.d.ts'
 * @import {Context} from './control.js'
 * @import {KindForm} from './task.js'
 */

/** @type {KindForm} */
export const amend = {
  about: mark('A layer of bark or compost dug into the soil.'),
  asks: ['area', 'layer', 'share', 'into', 'over', 'soil'],
  fields: (state, path, task, ctx) => [
    filling(state, path, task, ctx, {label: say('What is dug in')}),
    areaOf(state, path, task, ctx),
    h(Either, {key: 'layer', state, path, value: task, ways: layers, legend: say('How much'), inline: true, draw: way => one(state, path, task, way, ['layer', 'share'], ctx)}),
    h(Either, {key: 'into', state, path, value: task, ways: depths, legend: say('Into what'), inline: true, draw: way => one(state, path, task, way, ['into', 'over'], ctx)}),
    control(state, path, task, 'amend', 'soil', ctx),
  ],
};

const layers = [{name: 'layer', label: mark('A layer of'), keys: ['layer']}, {name: 'share', label: mark('A share of the finished bed'), keys: ['share']}];
const depths = [{name: 'into', label: mark('A finished depth of'), keys: ['into']}, {name: 'over', label: mark('Soil loosened to'), keys: ['over']}];

/** The one of two fields that is given, and the other where a job has both. @param {State} state @param {Path} path @param {Doc} task @param {Way} way @param {string[]} two @param {Context} ctx */
const one = (state, path, task, way, two, ctx) => [
  control(state, path, task, 'amend', way.name, ctx, {hideLabel: true}),
  leftOver(state, path, Object.fromEntries(Object.entries(task).filter(([key]) => two.includes(key))), ['amend'], way.keys, ctx),
];
