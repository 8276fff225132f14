// @ts-check
// Materials and containers of one's own, over the catalogue's.
import {h} from '../ui/h.js';
import {anyWrong, control, hasAny, leftOver, more} from './control.js';
import {freeId} from './names.js';
import {say} from '../text/say.js';
import {textOf} from './mix.js';

const materialMore = ['id', 'settle', 'packs', 'bulk', 'bales', 'opens_low', 'opens_high', 'traits', 'source'];

/** @param {any} desk @param {any[]} path @param {any} value @param {any} ctx */
export function materialForm(desk, path, value, ctx) {
  return [
    control(desk, path, value, 'material', 'name', ctx),
    control(desk, path, value, 'material', 'grade', ctx),
    h('div', {class: 'pair', key: 'weights'}, control(desk, path, value, 'material', 'dry', ctx), control(desk, path, value, 'material', 'wet', ctx)),
    more(desk, path, say('Packs, cautions, short name, source'), () => materialMore.map(name => control(desk, path, value, 'material', name, ctx)), {filled: hasAny(value, materialMore.slice(1)), wrong: anyWrong(desk, path, materialMore)}),
    leftOver(desk, path, value, ['material'], ['name', 'grade', 'dry', 'wet', ...materialMore], ctx),
  ];
}

/** @param {any} desk */
export const newMaterial = desk => ({id: freeId(desk.slate.doc.materials, 'my-material')});

/** @param {any} value @param {number} index */
export const materialTitle = (value, index) => textOf(value?.name) || textOf(value?.id) || say('Material {n}', {n: index + 1});

const containerMore = ['id', 'cells', 'low', 'high', 'source'];

/** @param {any} desk @param {any[]} path @param {any} value @param {any} ctx */
export function ownContainerForm(desk, path, value, ctx) {
  return [
    control(desk, path, value, 'own_container', 'name', ctx),
    control(desk, path, value, 'own_container', 'holds', ctx),
    more(desk, path, say('Cells, range, short name, source'), () => containerMore.map(name => control(desk, path, value, 'own_container', name, ctx)), {filled: hasAny(value, containerMore.slice(1)), wrong: anyWrong(desk, path, containerMore)}),
    leftOver(desk, path, value, ['own_container'], ['name', 'holds', ...containerMore], ctx),
  ];
}

/** @param {any} desk */
export const newOwnContainer = desk => ({id: freeId(desk.slate.doc.containers, 'my-pot')});

/** @param {any} value @param {number} index */
export const ownContainerTitle = (value, index) => textOf(value?.name) || textOf(value?.id) || say('Container {n}', {n: index + 1});
