// @ts-check
// One line of what a task fills: so many of one pot, tray or box.
import {h} from '../ui/h.js';
import {Either} from '../ui/either.js';
import {asText} from '../ui/entry.js';
import {anyWrong, control, hasAny, leftOver, more} from './control.js';
import {otherFields} from '../state/fields.js';
import {mark, say} from '../text/say.js';
import {needed} from '../state/problems.js';
import {pathText} from '../state/path.js';

/**
 * @import {Path} from '../state/path.js'
 * @import {State} from '../state/types.d.ts'
 * @import {Context} from './control.js'
 */

const ways = [
  {name: 'size', label: mark('A size'), keys: ['size']},
  {name: 'holds', label: mark('What it holds'), keys: ['holds']},
  {name: 'brim', label: mark('What it holds to the brim'), keys: ['brim', 'below_rim', 'top', 'across', 'shape'], is: ['brim']},
  {name: 'box', label: mark('Box or tray'), keys: ['box']},
  {name: 'across', label: mark('Straight pot'), keys: ['across', 'height', 'shape'], is: ['across']},
  {name: 'top', label: mark('Tapered pot'), keys: ['top', 'bottom', 'height', 'shape'], is: ['top', 'bottom']},
];

/** The ways that measure the pot itself, from which what is free below the rim is taken off. */
const measured = new Set(['box', 'across', 'top']);

const others = otherFields('container', ['count', ...ways.flatMap(way => way.keys), 'below_rim', 'cells', 'ball']);

/** @param {State} state @param {Path} path @param {any} value @param {Context} ctx */
export function containerForm(state, path, value, ctx) {
  const wants = needed(state, pathText(path));
  return h('div', {class: 'container-line'},
    control(state, path, value, 'container', 'count', ctx),
    h(Either, {state, path, value, ways, legend: say('What it is'), draw: way => {
      const extra = [...measured.has(way.name) ? ['below_rim'] : [], 'cells', 'ball', ...others];
      const keys = way.name === 'brim' ? way.keys.filter(key => key !== 'across' || value?.across !== undefined) : way.keys;
      return [
        h('div', {class: 'pair', key: 'fields'}, keys.map((name, i) => control(state, path, value, 'container', name, ctx, {wants: wants && i === 0, empty: say('Round')}))),
        more(state, path, say('Rim, cells, root ball'), () => h('div', {class: 'pair'}, extra.map(name => control(state, path, value, 'container', name, ctx))), {filled: hasAny(value, extra), wrong: anyWrong(state, path, extra)}),
        leftOver(state, path, value, ['container'], ['count', ...way.keys, ...extra], ctx),
      ];
    }}));
}

/** A new line. */
export const newContainer = () => ({});

/** What a line is called. @param {any} value @param {number} index */
export const containerTitle = (value, index) => {
  const what = [value?.size, value?.holds, value?.brim, value?.box, value?.across, value?.top].find(text => typeof text === 'string' && text !== '');
  return what ? say('Line {n}: {what}', {n: index + 1, what: value?.count === undefined ? what : `${asText(value.count)} x ${what}`}) : say('Line {n}', {n: index + 1});
};
