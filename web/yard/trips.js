// @ts-check
// The drives, and the yard's own loads.
import {h} from '../ui/h.js';
import {drawing, drawingsOf} from '../ui/drawing.js';
import {nameOf, packName} from '../ui/figure.js';
import {say} from '../text/say.js';

/**
 * @import {Trip} from '../plan.d.ts'
 * @import {Planned, State} from '../state/types.d.ts'
 */

/** The drives and the yard's own loads. @param {Planned} state */
export function trips(state) {
  const {plan} = state, deliveries = plan.deliveries ?? [];
  if (plan.trips.length === 0 && !plan.deliveries) return null;
  return h('section', {class: 'trips', 'data-test': 'trips'},
    h('h2', null, say('Trips')),
    plan.load?.drives_shown && h('p', null, h('strong', {class: 'figure'}, plan.load.drives_shown)),
    h('ol', {class: 'trip-list'}, plan.trips.map((t, i) => trip(state, t, i))),
    deliveries.length > 0 && [h('h3', null, say('Delivered')), h('ol', {class: 'trip-list'}, deliveries.map((t, i) => trip(state, t, 'd' + i)))],
    drawingsOf(state, d => d.kind === 'trips').map((d, i) => drawing(d, 'trip-' + i)));
}

/** One trip, or trips alike. @param {State} state @param {Trip} t @param {string | number} key */
function trip(state, t, key) {
  const limits = {weight: say('weight is the nearer limit'), room: say('room is the nearer limit')};
  return h('li', {key, class: 'trip', 'data-test': 'trip', 'data-count': t.times ?? 1},
    (t.times ?? 1) > 1 && h('p', {class: 'times'}, say('{n} times:', {n: t.times})),
    h('ul', null, t.packs.map((p, i) => h('li', {key: i}, `${p.count} × `, packName(p), ' ', nameOf(state, p.material)))),
    h('p', {class: 'note'}, [t.mass_shown, t.packed_shown, t.limit && limits[t.limit]].filter(Boolean).join(' · ')));
}
