// @ts-check
// What changed at the yard: to the order, to what is bought and what is not had.
import {h} from '../ui/h.js';
import {asText} from '../ui/entry.js';
import {money, offerWords, packName} from '../ui/figure.js';
import {acceptChanges, goHome, listOf, setSoldOut, unbuy} from './actions.js';
import {say} from '../text/say.js';

/**
 * @import {Change, Changes} from '../plan.d.ts'
 * @import {State} from '../state/types.d.ts'
 */

/** What the yard's changes did, line by line. @param {State} state */
export function changes(state) {
  const {changes: c, home} = state;
  if (!home || home === state.job.doc) return null;
  return h('section', {class: 'changes', 'data-test': 'changes', 'aria-label': say('What changed at the yard')},
    h('h2', {id: 'changed', tabIndex: -1}, say('What changed')),
    !c ? h('p', null, say('Working it out.')) : [
      h('ul', null, c.changes.flatMap((k, i) => [orderText(k), priceText(state, k)].map((text, n) => text && h('li', {key: `${i} ${n}`},
        packName(k) + ' ' + k.name + ': ', h('strong', null, text))))),
      c.changes.every(k => k.is === 'same' && !k.bought) && h('p', null, say('The list to buy is the same.')),
      totals(state, c).map((text, i) => h('p', {key: i}, text)),
    ],
    h('p', {class: 'acts'},
      h('button', {type: 'button', class: 'quiet', onClick: () => goHome(state)}, say('Undo what changed at the yard')),
      h('button', {type: 'button', class: 'quiet', onClick: () => acceptChanges(state)}, say('Keep these changes'))));
}

/** What became of an offer in the order, and why. @param {Change} change */
function orderText({is, why, before, after, bought = 0}) {
  if (is === 'same') return bought > 0 ? say('{bought} bought', {bought}) : '';
  if (bought > 0) return say('{bought} bought, {after} still to buy, was {before}', {bought, after, before});
  if (after > 0) return why === 'scarce' ? say('{after}, all there are; was {before}', {after, before}) : say('{after}, was {before}', {after, before});
  return why === 'sold-out' ? say('sold out, was {before}', {before}) : say('not needed now, was {before}', {before});
}

/** A price that is not what it was. @param {State} state @param {Change} change */
function priceText(state, {price_before: before, price_after: after}) {
  if (before === undefined && after === undefined) return '';
  const text = (/** @type {string | undefined} */ price) => price === undefined ? say('no price') : money(state, price);
  return say('price {after}, was {before}', {after: text(after), before: text(before)});
}

/** What there is to pay and to drive, and what it was; what is paid is in the sum. @param {State} state @param {Changes} changes @returns {string[]} */
function totals(state, {before, after}) {
  const was = before?.in_all ?? before?.total, is = after.in_all ?? after.total, drives = after.drives_shown;
  return [
    after.paid !== undefined && after.total !== undefined && say('Paid already {paid}, still to pay {total}.', {paid: money(state, after.paid), total: money(state, after.total)}),
    was !== undefined && is !== undefined && say('In all {after}, was {before}', {after: money(state, is), before: money(state, was)}),
    after.paid !== undefined && before?.driving !== undefined && before.driving !== after.driving && say('Driving in it {after}, was {before}: drives made already are not counted.', {after: money(state, after.driving ?? '0'), before: money(state, before.driving)}),
    drives && (before?.drives_shown && before.drives_shown !== drives ? say('Still to drive: {after}; before: {before}', {after: drives, before: before.drives_shown}) : say('Still to drive: {after}', {after: drives})),
  ].filter(text => !!text).map(String);
}

/** So many of each the program takes. */
const mostOfAYard = 1000;

/** What is bought already. @param {State} state */
export function bought(state) {
  const list = listOf(state, 'bought').slice(0, mostOfAYard);
  if (list.length === 0) return null;
  return h('section', {class: 'bought'},
    h('h2', null, say('Bought already')),
    h('p', {class: 'note'}, say('Taken to be in the truck or at home: no drive counts it, and what is still to pay is for the rest.')),
    h('ul', {class: 'lines'}, list.map((b, i) => h('li', {key: i, class: 'line'}, h('p', null, `${asText(b?.count)} × ${offerWords(state, asText(b?.offer))}`, costOf(state, i)),
      h('button', {type: 'button', class: 'quiet', onClick: () => unbuy(state, i)}, say('Not bought after all'))))));
}

/** What a purchase cost, where that is worked out. @param {State} state @param {number} index */
function costOf(state, index) {
  const cost = !state.stale && state.plan?.bought?.[index]?.cost;
  return cost ? ': ' + money(state, cost) : '';
}

/** What is sold out. @param {State} state */
export function soldOut(state) {
  const list = listOf(state, 'without').slice(0, mostOfAYard);
  if (list.length === 0) return null;
  return h('section', {class: 'sold-out'},
    h('h2', null, say('Sold out')),
    h('ul', {class: 'lines'}, list.map((name, i) => h('li', {key: i, class: 'line', 'data-test': 'gone', 'data-offer': asText(name)}, h('p', null, offerWords(state, asText(name))),
      h('button', {type: 'button', class: 'quiet', 'data-test': 'there-after-all', onClick: () => setSoldOut(state, name, false)}, say('There after all'))))));
}
