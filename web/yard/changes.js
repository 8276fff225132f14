// @ts-check
// What changed at the yard: to the order, to what is bought and what is not had.
import {h} from '../ui/h.js';
import {asText} from '../ui/entry.js';
import {money, offerName, offerWords, packName} from '../ui/figure.js';
import {isPartBought} from '../result/bill.js';
import {acceptChanges, goHome, listOf, setSoldOut, unbuy} from './actions.js';
import {isObject} from '../state/path.js';
import {say} from '../text/say.js';

/**
 * @import {Change} from '../plan.d.ts'
 * @import {Doc} from '../store/record.js'
 * @import {State} from '../state/types.d.ts'
 */

/** What the yard's changes did, line by line. @param {State} state */
export function changes(state) {
  const {changes: c, home} = state;
  if (!home || home === state.job.doc) return null;
  return h('section', {class: 'changes', 'data-test': 'changes', 'aria-label': say('What changed at the yard')},
    h('h2', {id: 'changed', tabIndex: -1}, say('What changed')),
    !c ? h('p', null, say('Working it out.')) : [
      h('ul', null, c.changes.filter(k => k.is !== 'same').map((k, i) => h('li', {key: i},
        packName(k) + ' ' + k.name + ': ', h('strong', null, changedTo(state, k)))),
        prices(state, home)),
      c.changes.every(k => k.is === 'same') && h('p', null, say('The list to buy is the same.')),
      c.before?.total !== undefined && c.after?.total !== undefined && h('p', null, totals(state, money(state, c.before.total), money(state, c.after.total))),
      c.after?.drives_shown && h('p', null, c.before?.drives_shown && c.before.drives_shown !== c.after.drives_shown ? say('{after}, was {before}', {before: c.before.drives_shown, after: c.after.drives_shown}) : c.after.drives_shown),
    ],
    h('p', {class: 'acts'},
      h('button', {type: 'button', class: 'quiet', onClick: () => goHome(state)}, say('Undo what changed at the yard')),
      h('button', {type: 'button', class: 'quiet', onClick: () => acceptChanges(state)}, say('Keep these changes'))));
}

/** How many of an offer are to be bought now. @param {State} state @param {Change} change */
function changedTo(state, {before, after, ...offer}) {
  const name = offerName(offer), isBought = listOf(state, 'bought').some(b => b?.offer === name);
  return isBought ? say('{after} still to buy, was {before}', {before, after}) : say('{after}, was {before}', {before, after});
}

/** Prices that are not what they were at home. @param {State} state @param {Doc} home */
function prices(state, home) {
  const was = Array.isArray(home.offers) ? home.offers : [], is = state.job.doc.offers;
  if (!Array.isArray(is) || is.length !== was.length) return null;
  return is.map((offer, i) => isObject(offer) && offer.price !== was[i]?.price && h('li', {key: 'price ' + i},
    offerWords(state, offerName(offer)) + ': ', h('strong', null, say('{after}, was {before}', {before: priceText(state, was[i]), after: priceText(state, offer)}))));
}

/** @param {State} state @param {any} offer of a job: it may be anything */
const priceText = (state, offer) => offer?.price === undefined ? say('no price') : money(state, asText(offer.price));

/** The two totals; what was bought since is in the second no more. @param {State} state @param {string} before @param {string} after */
const totals = (state, before, after) => isPartBought(state.job.doc) && !isPartBought(state.home) ? say('Still to pay {after}; it was {before} in all', {before, after}) : say('In all {after}, was {before}', {before, after});

/** So many of each the program takes. */
const mostOfAYard = 1000;

/** What is bought already. @param {State} state */
export function bought(state) {
  const list = listOf(state, 'bought').slice(0, mostOfAYard);
  if (list.length === 0) return null;
  return h('section', {class: 'bought'},
    h('h2', null, say('Bought already')),
    h('p', {class: 'note'}, say('What is to pay and the trips are for the rest.')),
    h('ul', {class: 'lines'}, list.map((b, i) => h('li', {key: i, class: 'line'}, h('p', null, `${asText(b?.count)} × ${offerWords(state, asText(b?.offer))}`),
      h('button', {type: 'button', class: 'quiet', onClick: () => unbuy(state, i)}, say('Not bought after all'))))));
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
