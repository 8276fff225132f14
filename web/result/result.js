// @ts-check
// What the whole job takes: needs, what packs they come in, how sure, cautions.
import {h} from '../ui/h.js';
import {language, say} from '../text/say.js';
import {Memo} from '../ui/memo.js';
import {leavesOut} from './bill.js';
import {count, facts, fold, money, nameOf, packName, working} from '../ui/figure.js';
import {drawing, drawingsOf} from '../ui/drawing.js';
import {hasPlan} from '../state/state.js';

/**
 * @import {Caution, Need, TripPack} from '../plan.d.ts'
 * @import {Planned, State} from '../state/types.d.ts'
 */

/** Goes to the control of a field. @typedef {(state: State, path: string) => void} Reveal */

/** The result side of the Job place. @param {State} state @param {Reveal} reveal */
export function resultView(state, reveal) {
  if (!hasPlan(state)) return null;
  const {plan} = state;
  return h('section', {class: 'result', 'aria-labelledby': 'result-head'},
    h('h2', {id: 'result-head'}, say('What it takes')),
    h('p', {class: 'note'}, say('Loose, as it leaves the shovel.')),
    plan.needs.map(n => need(state, n)),
    h(Memo, {of: wholeOf(state), draw: () => [sure(state), choices(state)]}),
    h(Memo, {of: [JSON.stringify(plan.notes), state.stale, language()], draw: () => notes(state, reveal)}),
    h(Memo, {of: [JSON.stringify(plan.cautions), language()], draw: () => cautions(plan.cautions)}));
}

/** All that sure and choices are drawn from: a key changes none of it. @param {Planned} state */
const wholeOf = state => [
  state.full, state.drawings, state.costs, state.plan.currency, !state.plan.bought, leavesOut(state.plan), JSON.stringify(state.plan.needs.map(n => [n.material, n.name])),
  state.comma, language(), state.open.has('sure'), state.open.has('choices'),
];

/** One material over all tasks. @param {Planned} state @param {Need} n */
function need(state, n) {
  const id = n.material;
  return h('article', {class: 'need', key: id, 'data-test': 'need', 'data-material': id},
    h('h3', null, n.name),
    h('p', null, h('strong', {class: 'figure'}, n.shown), n.range_shown && [' ', h('span', {class: 'range'}, say('as makes differ, {range}', {range: n.range_shown}))]),
    facts([
      n.on_hand_shown && [say('Besides, on hand'), n.on_hand_shown],
      n.mass_shown && [say('Weight, dry to wet'), n.mass_shown],
    ]),
    n.packs.length > 0 && fold(state, 'packs ' + id, [say('In common packs'), h('span', {class: 'unseen'}, ': ' + n.name)], () =>
      facts(n.packs.map(p => [packName(p), say('{count}, {left} over', {count: count(p), left: p.left_shown})]))),
    working(state, 'need ' + id, n.name, s => s.task === undefined && s.material === id));
}

/** How sure the order is, and what would make it surer. @param {Planned} state */
export function sure(state) {
  const s = state.full?.sure;
  if (!s) return null;
  return h('section', {class: 'sure'},
    h('h2', null, say('How sure')),
    h('p', null, leavesOut(state.plan) ? say('If the ranges are right, of what it has this order is enough {odds}.', {odds: s.shown}) : say('If the ranges are right, this order is enough {odds}.', {odds: s.shown})),
    s.assumes.map((text, i) => h('p', {key: i, class: 'assumes'}, text + '.')),
    s.enough && h('p', null, say('To have enough 9 times in 10: {order}.', {order: s.enough.map(l => buys(state, l)).join('; ')}),
      s.enough_total && [' ', state.plan.bought ? say('{total} still to pay', {total: money(state, s.enough_total)}) + '.' : say('{total} in all.', {total: money(state, s.enough_total)})]),
    s.matters.length > 0 && h('ul', null, s.matters.map((m, i) => h('li', {key: i}, say('{name} may change the need by {volume}. To be surer, {measure}.', {name: upper(m.name), volume: m.moves_shown, measure: m.measure})))),
    fold(state, 'sure', say('How that is worked out'), () => [h('p', null, s.method), h('ul', null, s.ranges.map((r, i) => h('li', {key: i}, r)))]));
}

/** An order's line in words. @param {State} state @param {TripPack} l */
export const buys = (state, l) => say('{count} x {pack} {material}', {count: count(l), pack: packName(l), material: nameOf(state, l.material)});

/** Bags or bulk, and other orders that could be chosen. @param {Planned} state */
function choices(state) {
  const {bags_or_bulk: crossings = [], choices: options = []} = state.full ?? {};
  if (crossings.length === 0 && options.length < 2) return null;
  return h('section', {class: 'choices'},
    h('h2', null, say('Bags or bulk')),
    h('ul', null, crossings.map((c, i) => h('li', {key: i}, c.text))),
    drawingsOf(state, d => d.kind === 'cost').map((d, i) => drawing(d, 'cost-' + i)),
    options.length > 1 && fold(state, 'choices', say('Other orders to choose from'), () =>
      h('ul', {class: 'options'}, options.map((o, i) => h('li', {key: i},
        h('p', null, o.total && [h('strong', {class: 'figure'}, money(state, o.total)), ' '],
          say('{left} over, packs to lift: {packs}, trips: {trips}', {left: o.left_shown, packs: o.packs, trips: o.trips})),
        h('p', null, i === 0 ? say('As planned.') : o.order.map(l => buys(state, l)).join('; ')))))));
}

/** What is worth knowing, with the way to the field that it is about. @param {Planned} state @param {Reveal} reveal */
function notes(state, reveal) {
  const list = state.plan.notes;
  if (list.length === 0) return null;
  return h('section', {class: 'notes'},
    h('h2', null, say('Worth knowing')),
    h('ul', null, list.map(({text, path}, i) => h('li', {key: i}, sentence(text), ' ',
      !state.stale && path && !path.startsWith('yard') && h('button', {type: 'button', class: 'there', onClick: () => reveal(state, path)}, say('Show where'), h('span', {class: 'unseen'}, ': ' + text))))));
}

/** What to take care of. @param {Caution[]} list @param {(caution: Caution) => boolean} [which] */
export function cautions(list, which = () => true) {
  const some = list.filter(which);
  if (some.length === 0) return null;
  return h('section', {class: 'cautions'},
    h('h2', null, say('Take care')),
    h('ul', null, some.map(c => h('li', {key: c.code, 'data-test': 'caution', 'data-code': c.code}, c.text,
      c.source && h('small', {class: 'source'}, c.source)))));
}

/** A note as a sentence of its own. @param {string} text */
const sentence = text => upper(text) + (/[.!?]$/.test(text) ? '' : '.');

/** @param {string} text */
const upper = text => text.charAt(0).toUpperCase() + text.slice(1);
