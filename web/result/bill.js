// @ts-check
// What there is to pay, and how far the truck has to go.
import {h} from '../ui/h.js';
import {say} from '../text/say.js';
import {facts, money} from '../ui/figure.js';

/**
 * @import {Plan} from '../plan.d.ts'
 * @import {Planned, State} from '../state/types.d.ts'
 */

/** The total and the drives, in a line that is always in sight. @param {State} state */
export function totalLine(state) {
  const {plan} = state;
  if (!plan) return null;
  const needs = plan.needs.filter(n => n.litres > 0);
  if (plan.order.length === 0) return [...needs.slice(0, 2).map(n => `${n.name} ${n.shown}`), needs.length > 2 && '…'].filter(Boolean).join(' · ') || say('Nothing to buy.');
  /** @type {(string | false | undefined)[]} */
  const parts = [plan.total === undefined ? say('no prices yet') : plan.bought ? say('{total} still to pay', {total: money(state, plan.total)}) : money(state, plan.total)];
  if (!state.stale) parts.push(plan.load?.drives_shown, leavesOut(plan) && say('not all of it'));
  return parts.filter(Boolean).join(' · ');
}

/** Whether the order leaves out something that is needed. @param {Plan} plan */
export const leavesOut = plan => (plan.left_out ?? []).length > 0;

/** The bill, row by row. @param {Planned} state */
export function bill(state) {
  const {plan} = state;
  if (plan.total === undefined) return null;
  return facts([
    [say('Goods'), money(state, /** @type {string} */ (plan.cost))],
    plan.tax && [say('Tax'), money(state, plan.tax)],
    plan.driving && [say('Driving'), money(state, plan.driving)],
    plan.delivery && [say('Delivery'), money(state, plan.delivery)],
    [plan.bought ? say('Still to pay') : say('In all'), h('strong', {class: 'figure', 'data-test': 'bill-total'}, money(state, plan.total))],
    plan.paid && [say('Paid already'), money(state, plan.paid)],
    plan.in_all && [say('Paid and still to pay'), money(state, plan.in_all)],
    plan.deposit && [say('Deposit, paid back'), money(state, plan.deposit)],
    plan.none_below && [say('No order costs less than'), money(state, plan.none_below)],
  ], {class: 'facts bill'});
}
