// @ts-check
// What the yard sells: a material in bags, in bales or loose, with its price.
import {h} from '../ui/h.js';
import {Either} from '../ui/either.js';
import {anyWrong, control, hasAny, leftOver, more} from './control.js';
import {called} from './names.js';
import {pathText} from '../state/path.js';
import {otherFields} from '../state/fields.js';
import {mark, say} from '../text/say.js';
import {needed, problemsAt} from '../state/problems.js';
import {textOf} from './mix.js';
import {rows} from './list.js';

/**
 * @import {Path} from '../state/path.js'
 * @import {State} from '../state/types.d.ts'
 * @import {NamedContext} from './control.js'
 */

const ways = [
  {name: 'pack', label: mark('In bags or bales'), keys: ['pack', 'opens_to'], is: ['pack']},
  {name: 'bulk', label: mark('Loose, in bulk'), keys: ['bulk']},
];
const first = ['price', 'weight', 'stock'];
const rest = ['breaks', 'deposit', 'least', 'deliver'];
const others = otherFields('offer', ['material', ...ways.flatMap(way => way.keys), ...first, ...rest]);

/** @param {State} state @param {Path} path @param {any} value @param {NamedContext} ctx */
export function offerForm(state, path, value, ctx) {
  const sizeless = needed(state, pathText([...path, 'pack'])); // the library asks for a pack whichever way is picked
  return [
    control(state, path, value, 'offer', 'material', ctx),
    h(Either, {state, path, value, ways, legend: say('Sold'), draw: way => {
      const hidden = [...way.name === 'pack' ? ['opens_to'] : [], ...rest, ...others];
      return [
        h('div', {class: 'pair', key: 'first'},
          control(state, path, value, 'offer', way.name, ctx, {wants: sizeless}),
          first.map(name => control(state, path, value, 'offer', name, ctx))),
        more(state, path, way.name === 'pack' ? say('Bales, price breaks, delivery') : say('Price breaks, delivery'), () => [
          way.name === 'pack' && control(state, path, value, 'offer', 'opens_to', ctx),
          breaks(state, [...path, 'breaks'], value?.breaks, ctx),
          h('div', {class: 'pair'}, control(state, path, value, 'offer', 'deposit', ctx), control(state, path, value, 'offer', 'least', ctx)),
          control(state, path, value, 'offer', 'deliver', ctx),
          ...others.map(name => control(state, path, value, 'offer', name, ctx)),
        ], {filled: hasAny(value, hidden), wrong: anyWrong(state, path, hidden)}),
        leftOver(state, path, value, ['offer'], ['material', way.name, ...first, ...hidden], ctx),
      ];
    }}),
  ];
}

/** @param {State} state @param {Path} path @param {unknown} list @param {NamedContext} ctx */
function breaks(state, path, list, ctx) {
  return h('fieldset', {class: 'values'},
    h('legend', null, say('Price breaks')),
    rows({state, path, list, ctx, form: breakForm, one: (_, i) => say('Price {n}', {n: i + 1}), class: 'tight', add: {label: say('Add a price'), row: () => ({})}, mark: problemsAt(state, pathText(path)).mark}));
}

const breakFields = otherFields('price_break', []);

/** @param {State} state @param {Path} path @param {any} value @param {NamedContext} ctx */
const breakForm = (state, path, value, ctx) => h('div', {class: 'pair'},
  breakFields.map(name => control(state, path, value, 'price_break', name, ctx)),
  leftOver(state, path, value, ['price_break'], breakFields, ctx));

export const newOffer = () => ({});

/** @param {any} value @param {number} index @param {NamedContext} ctx */
export function offerTitle(value, index, ctx) {
  const price = textOf(value?.price) || (typeof value?.price === 'number' ? String(value.price) : '');
  const bulk = textOf(value?.bulk);
  const words = [
    called(ctx.names, value?.material),
    bulk ? say('{size} loose', {size: bulk}) : textOf(value?.pack),
    price && ctx.writing.currency + (/\p{L}$/u.test(ctx.writing.currency) ? ' ' : '') + price,
  ].filter(Boolean);
  return words.length > 0 ? words.join(', ') : say('Offer {n}', {n: index + 1});
}
