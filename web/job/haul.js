// @ts-check
// Getting it home: what a drive carries, and whether the yard delivers.
import {h} from '../ui/h.js';
import {problemHead} from '../ui/around.js';
import {Either} from '../ui/either.js';
import {PureComponent} from '../ui/memo.js';
import {tick} from '../ui/tick.js';
import {control, leftOver} from './control.js';
import {objects} from '../state/fields.js';
import {problemsAt} from '../state/problems.js';
import {mark, say} from '../text/say.js';

/**
 * @import {State} from '../state/types.d.ts'
 * @import {NamedContext} from './control.js'
 */

const limits = [
  {name: 'payload', label: mark('The payload'), keys: ['payload']},
  {name: 'placard', label: mark('Door placard, less the people'), keys: ['placard', 'people']},
];

/** @param {State} state @param {NamedContext} ctx */
export function haulForm(state, ctx) {
  const {haul, delivery} = state.job.doc;
  /** @param {string} name */
  const field = name => control(state, ['haul'], haul, 'haul', name, ctx, {hideLabel: name === 'payload', onPut: value => state.job.set(['haul', name], value, {typing: true, prune: true})});
  return [
    problemHead(state, ['haul']),
    h(Either, {key: 'limit', state, path: ['haul'], value: haul, ways: limits, legend: say('Weight limit of one drive'), draw: way => [
      h('div', {class: 'pair', key: 'limit'}, way.keys.map(field)),
      h('div', {class: 'pair', key: 'rest'}, field('room'), field('trip_cost')),
      leftOver(state, ['haul'], haul, ['haul'], [...way.keys, 'room', 'trip_cost'], ctx),
    ]}),
    h(Delivery, {key: 'delivery', state, value: delivery, ctx, mark: problemsAt(state, 'delivery').mark}),
  ];
}

/** @typedef {{state: State, value: unknown, ctx: NamedContext, mark: string}} DeliveryProps */

/** @extends {PureComponent<DeliveryProps>} */
class Delivery extends PureComponent {
  /** @param {DeliveryProps} props */
  render({state, value, ctx}) {
    const on = value !== undefined, path = ['delivery'];
    return h('div', {class: 'optional'},
      tick({state, path, suffix: on ? '' : '-tick', label: say('The yard delivers'), checked: on, onTick: yes => state.job.set(path, yes ? {} : undefined)}),
      on && h('p', {class: 'help'}, say('At each offer, say whether the yard brings it.')),
      on && h('div', {class: 'pair', role: 'group', 'aria-label': say('The yard delivers')}, objects.delivery.fields.map(r => control(state, path, value, 'delivery', r.name, ctx))),
      on && leftOver(state, path, value, ['delivery'], objects.delivery.fields.map(r => r.name), ctx));
  }
}
