// @ts-check
// What is printed: one sheet for the yard, one for the tarp and the bed. They
// are on the page only while they are printed.
import {h} from '../ui/h.js';
import {say} from '../text/say.js';
import {bill} from '../result/bill.js';
import {count, money, nameOf, offerName, packName} from '../ui/figure.js';
import {bedTask} from '../bed/bed.js';
import {hasPlan} from '../state/state.js';

/**
 * @import {Plan} from '../plan.d.ts'
 * @import {Planned, State} from '../state/types.d.ts'
 */

/** The sheet that is being printed, if any. @param {State} state */
export function printView(state) {
  if (!state.printing || !hasPlan(state)) return null;
  const sheet = state.printing === 'yard' ? yardSheet : bedSheet;
  return h('div', {class: 'paper', key: 'sheet', 'data-test': 'sheet-' + state.printing}, sheet(state));
}

/** @param {Planned} state */
function yardSheet(state) {
  const {plan} = state;
  return [
    h('h1', null, say('To buy: {name}', {name: plan.name || say('Unnamed job')})),
    h('table', null,
      h('thead', null, h('tr', null, [say('Got it'), say('Count'), say('Pack'), say('Material'), say('Cost'), say('Weight')].map((t, i) => h('th', {key: i, scope: 'col'}, t)))),
      h('tbody', null, plan.order.map(l => h('tr', {key: l.offer},
        h('td', {class: 'box'}, state.ticks[offerName(l)] === l.count ? '☑' : '☐'),
        h('td', null, count(l)), h('td', null, packName(l)), h('td', null, nameOf(state, l.material)),
        h('td', null, l.cost !== undefined ? money(state, l.cost) : ''), h('td', null, l.mass_shown ?? ''))))),
    (plan.left_out ?? []).map(m => h('p', {key: m.material}, h('strong', null, say('Not on the list')), ': ', m.name, ', ', m.shown)),
    plan.needs.filter(n => n.grade).map(n => h('p', {key: n.material, class: 'note'}, n.name, ': ', say('Ask for: {grade}', {grade: n.grade}))),
    bill(state),
    plan.trips.length > 0 && [h('h2', null, say('Trips')), plan.load?.drives_shown && h('p', null, plan.load.drives_shown),
      h('ol', null, plan.trips.map((t, i) => h('li', {key: i}, (t.times ?? 1) > 1 ? say('{n} times:', {n: t.times}) + ' ' : '', t.packs.map(p => `${p.count} × ${packName(p)} ${nameOf(state, p.material)}`).join(', '), '. ', t.mass_shown ?? '')))],
    warnings(plan, ['authority', 'vehicle', 'lifting', 'legionella', 'dust']),
  ];
}

/** @param {Planned} state */
function bedSheet(state) {
  return [
    h('h1', null, say('What goes where: {name}', {name: state.plan.name || say('Unnamed job')})),
    state.plan.tasks.map((t, i) => bedTask(state, t, i)),
    warnings(state.plan, ['authority', 'legionella', 'dust', 'digging', 'nitrogen', 'salt']),
  ];
}

/** @param {Plan} plan @param {string[]} codes */
function warnings(plan, codes) {
  const list = plan.cautions.filter(c => codes.includes(c.code));
  return h('ul', {class: 'mind'}, list.map(c => h('li', {key: c.code}, c.text)));
}
