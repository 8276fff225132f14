// @ts-check
// Materials and containers of one's own, over the catalogue's.
import {h} from '../ui/h.js';
import {anyWrong, control, hasAny, leftOver, more} from './control.js';
import {freeId} from './names.js';
import {textOf} from './mix.js';
import {otherFields} from '../state/fields.js';
import {say} from '../text/say.js';

/**
 * @import {Path} from '../state/path.js'
 * @import {State} from '../state/types.d.ts'
 * @import {NamedContext} from './control.js'
 */

const materialMore = ['id', ...otherFields('material', ['id', 'name', 'grade', 'dry', 'wet'])];

/** @param {State} state @param {Path} path @param {any} value @param {NamedContext} ctx */
export function materialForm(state, path, value, ctx) {
  return [
    control(state, path, value, 'material', 'name', ctx),
    control(state, path, value, 'material', 'grade', ctx),
    h('div', {class: 'pair', key: 'weights'}, control(state, path, value, 'material', 'dry', ctx), control(state, path, value, 'material', 'wet', ctx)),
    more(state, path, say('Packs, cautions, short name, source'), () => materialMore.map(name => control(state, path, value, 'material', name, ctx)), {filled: hasAny(value, materialMore.slice(1)), wrong: anyWrong(state, path, materialMore)}),
    leftOver(state, path, value, ['material'], ['name', 'grade', 'dry', 'wet', ...materialMore], ctx),
  ];
}

/** @param {State} state */
export const newMaterial = state => ({id: freeId(state.job.doc.materials, 'my-material')});

/** @param {any} value @param {number} index */
export const materialTitle = (value, index) => textOf(value?.name) || textOf(value?.id) || say('Material {n}', {n: index + 1});

const containerMore = ['id', ...otherFields('own_container', ['id', 'name', 'holds'])];

/** @param {State} state @param {Path} path @param {any} value @param {NamedContext} ctx */
export function ownContainerForm(state, path, value, ctx) {
  return [
    control(state, path, value, 'own_container', 'name', ctx),
    control(state, path, value, 'own_container', 'holds', ctx),
    more(state, path, say('Cells, range, short name, source'), () => containerMore.map(name => control(state, path, value, 'own_container', name, ctx)), {filled: hasAny(value, containerMore.slice(1)), wrong: anyWrong(state, path, containerMore)}),
    leftOver(state, path, value, ['own_container'], ['name', 'holds', ...containerMore], ctx),
  ];
}

/** @param {State} state */
export const newOwnContainer = state => ({id: freeId(state.job.doc.containers, 'my-pot')});

/** @param {any} value @param {number} index */
export const ownContainerTitle = (value, index) => textOf(value?.name) || textOf(value?.id) || say('Container {n}', {n: index + 1});
