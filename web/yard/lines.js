// @ts-check
// The lines to buy: of the order, to tick, and of the offers that it leaves; and
// what can be said of each at the yard.
import {h, cls} from '../ui/h.js';
import {Field} from '../ui/field.js';
import {count, fold, money, nameOf, offerName, packName} from '../ui/figure.js';
import {writingOf} from '../ui/writing.js';
import {buyTicked, isSoldOut, setOffer, setSoldOut, setTick} from './actions.js';
import {rowOf} from '../state/fields.js';
import {pathText} from '../state/path.js';
import {problemAt} from '../state/problems.js';
import {say} from '../text/say.js';

/**
 * @import {Line} from '../plan.d.ts'
 * @import {Row} from '../state/fields.js'
 * @import {Path} from '../state/path.js'
 * @import {Planned, State} from '../state/types.d.ts'
 */

/** The lines of the order, to tick. @param {Planned} state */
export function list(state) {
  const {order} = state.plan;
  const all = order.every(l => state.ticks[offerName(l)] === l.count);
  const some = order.some(l => state.ticks[offerName(l)] === l.count);
  return h('section', null,
    h('h2', {class: 'unseen'}, say('The list')),
    h('ul', {class: 'lines'}, order.map(l => line(state, l))),
    all && h('p', {class: 'done', role: 'status'}, say('All of it is ticked.')),
    some && h('button', {type: 'button', class: 'quiet', onClick: () => buyTicked(state)}, say('I bought what is ticked: plan the rest')));
}

/** One line: so many packs of a material. @param {Planned} state @param {Line} l */
function line(state, l) {
  const name = offerName(l);
  const ticked = state.ticks[name];
  const id = 'tick-' + l.offer;
  const what = h('span', {class: 'what'},
    h('strong', {class: 'figure'}, String(l.count)), l.count_range && h('span', {class: 'range'}, ' ', say('({low} to {high})', {low: l.count_range[0], high: l.count_range[1]})), ' × ', packName(l), ' ', h('span', {class: 'material'}, nameOf(state, l.material)));
  return h('li', {class: cls('line', {ticked: ticked === l.count}), key: l.offer, 'data-test': 'line', 'data-offer': name, 'data-count': l.count},
    h('div', {class: 'line-head'},
      h('input', {type: 'checkbox', id, 'data-test': 'tick', checked: ticked === l.count, onChange: e => setTick(state, l, e.currentTarget.checked)}),
      h('label', {for: id}, what,
        h('span', {class: 'line-side'}, l.cost !== undefined ? money(state, l.cost) : say('no price'), l.mass_shown && h('span', null, l.mass_shown),
          l.left_shown && h('span', {class: 'line-left'}, say('{left} over', {left: l.left_shown})), l.delivered && h('span', null, say('{n} delivered', {n: l.delivered}))))),
    ticked !== undefined && ticked !== l.count && h('p', {class: 'differs', role: 'status'}, say('You ticked {ticked}; the plan now has {count}.', {ticked, count: l.count})),
    lineActs(state, l));
}

/** What can be said of an offer at the yard. @param {Planned} state @param {Line} l */
function lineActs(state, l) {
  const name = offerName(l);
  const which = () => h('span', {class: 'unseen'}, ': ' + packName(l) + ' ' + nameOf(state, l.material));
  return h('div', {class: 'line-acts'},
    h('button', {type: 'button', 'data-test': 'sold-out', onClick: () => setSoldOut(state, name, true)}, say('Sold out?'), which()),
    fold(state, 'line ' + name, [say('Price, stock'), which()], () => offerFields(state, l.offer), {wrong: offerWrong(state, l.offer)}));
}

/** Whether something is wrong with what may have changed about an offer. @param {State} state @param {number} index */
const offerWrong = (state, index) => ['price', 'stock'].some(name => problemAt(state, pathText(['offers', index, name])));

/** What may have changed about an offer. @param {State} state @param {number} index */
function offerFields(state, index) {
  return h('div', {class: 'line-fields'},
    field(state, ['offers', index, 'price'], rowOf('offer', 'price'), {onPut: v => setOffer(state, index, 'price', v)}),
    field(state, ['offers', index, 'stock'], rowOf('offer', 'stock'), {label: say('How many there are'), onPut: v => setOffer(state, index, 'stock', v)}));
}

/** @param {State} state @param {Path} path @param {Row} row @param {Pick<Field['props'], 'label' | 'onPut'>} more */
export const field = (state, path, row, more) => h(Field, {state, path, row, writing: writingOf(state), ...more});

/** Offers that the order does not take. @param {Planned} state */
export function others(state) {
  const list = (state.plan.others ?? []).filter(l => !isSoldOut(state, offerName(l)));
  if (list.length === 0) return null;
  return h('section', {class: 'others'},
    h('h2', null, say('Other packs on offer')),
    h('p', {class: 'note'}, say('Each in place of all that is bought of its material. The figure is the whole order then, with tax, drives and delivery.')),
    h('ul', {class: 'lines'}, list.map(l => {
      const name = offerName(l), worked = alternative(state, l);
      return h('li', {class: 'line', key: l.offer, 'data-test': 'other', 'data-offer': name},
        h('p', {class: 'line-head'}, h('span', {class: 'what'}, count(worked ?? l), ' × ', packName(l), ' ', nameOf(state, l.material)),
          h('span', {class: 'line-side'}, l.stock !== undefined ? say('only {stock} in stock', {stock: l.stock}) : l.cost === undefined ? say('no price') :
            !worked ? '' : worked.none_below ? say('up to {total}', {total: money(state, worked.total)}) : money(state, worked.total))),
        lineActs(state, l));
    })));
}

/** The whole order with an offer that it does not take, once that is worked out. @param {Planned} state @param {Line} l */
const alternative = (state, l) => state.fullFor === state.planFor ? state.full?.alternatives?.find(a => a.offer === l.offer) : undefined;
