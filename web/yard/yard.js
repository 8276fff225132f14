// @ts-check
// The Yard place: the list to buy, what changed there, and the trips.
import {h} from '../ui/h.js';
import {Announcer} from '../ui/announcer.js';
import {drawing, drawingsOf} from '../ui/drawing.js';
import {count, facts, fold, packName, working} from '../ui/figure.js';
import {bill} from '../result/bill.js';
import {cautions, sure} from '../result/result.js';
import {setOnlyStock} from './actions.js';
import {bought, changes, soldOut} from './changes.js';
import {field, list, others} from './lines.js';
import {trips} from './trips.js';
import {rowOf} from '../state/fields.js';
import {hasPlan} from '../state/state.js';
import {say} from '../text/say.js';

/** @import {Planned, State} from '../state/types.d.ts' */

/** The whole place. @param {State} state */
export function yardView(state) {
  if (!hasPlan(state)) return h('p', {class: 'note'}, say('Nothing to buy yet: enter the work under Job.'));
  const {plan} = state;
  return h('div', {class: 'yard'},
    h(Announcer, {state}),
    h('h1', null, say('What to buy')),
    changes(state),
    leftOut(state),
    plan.order.length > 0 ? list(state) : plan.needs.some(n => n.litres > 0) ? needsAlone(state) : h('p', {class: 'done'}, say('Nothing more to buy.')),
    stock(state),
    bought(state),
    soldOut(state),
    h('section', {class: 'pay'}, h('h2', null, say('To pay')), bill(state) ?? h('p', null, say('No prices are given.')), working(state, 'load', say('the order'), s => s.task === undefined)),
    others(state),
    trips(state),
    drawingsOf(state, d => d.kind === 'heap').map((d, i) => drawing(d, 'order-' + i)),
    sure(state),
    cautions(plan.cautions, c => c.code !== 'digging'));
}

/** Needs without any order: how many of each common pack. @param {Planned} state */
function needsAlone(state) {
  return h('section', null,
    !state.plan.left_out && h('p', {class: 'note'}, say('No offers yet: what each comes to in common packs.')),
    state.plan.needs.map(n => h('article', {class: 'need', key: n.material}, h('h2', null, n.name),
      h('p', null, h('strong', {class: 'figure'}, n.shown)),
      n.grade && h('p', {class: 'note'}, say('Ask for: {grade}', {grade: n.grade})),
      facts(n.packs.map(p => [packName(p), count(p)])))));
}

/** What the offers do not cover. @param {Planned} state */
function leftOut(state) {
  const out = state.plan.left_out ?? [];
  if (out.length === 0) return null;
  return h('section', {class: 'left-out', role: 'alert'},
    h('h2', null, say('Not on the list')),
    out.map(m => h('div', {key: m.material},
      h('p', null, h('strong', null, m.name), ': ', say('{volume}, which the offers do not cover.', {volume: m.shown})),
      m.stand_ins.length > 0 && h('ul', null, m.stand_ins.map((s, i) => h('li', {key: i}, s))))));
}

/** How much of everything is left, where nobody has counted. @param {State} state */
function stock(state) {
  return fold(state, 'only-stock', say('Little left of everything?'), () => h('div', {class: 'line-fields'},
    field(state, ['yard', 'only_stock'], rowOf('yard', 'only_stock'), {label: say('At most this many of each, where no stock is given'), onPut: v => setOnlyStock(state, v)})));
}
