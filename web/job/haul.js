// @ts-check
// Getting it home: what a drive carries, and whether the yard delivers.
import {h} from '../ui/h.js';
import {problemHead} from '../ui/around.js';
import {Either} from '../ui/either.js';
import {control, leftOver} from './control.js';
import {otherFields} from '../state/fields.js';
import {mark, say} from '../text/say.js';

/**
 * @import {State} from '../state/types.d.ts'
 * @import {NamedContext} from './control.js'
 */

const limits = [
  {name: 'payload', label: mark('The payload'), keys: ['payload']},
  {name: 'placard', label: mark('Door placard, less the people'), keys: ['placard', 'people']},
];

const rest = otherFields('haul', limits.flatMap(way => way.keys));

/** @param {State} state @param {NamedContext} ctx */
export function haulForm(state, ctx) {
  const {doc} = state.job, {haul} = doc;
  /** @param {string} name */
  const field = name => control(state, ['haul'], haul, 'haul', name, ctx, {hideLabel: name === 'payload', onPut: value => state.job.set(['haul', name], value, {typing: true, prune: true})});
  return [
    problemHead(state, ['haul']),
    h(Either, {key: 'limit', state, path: ['haul'], value: haul, ways: limits, legend: say('Weight limit of one drive'), draw: way => [
      h('div', {class: 'pair', key: 'limit'}, way.keys.map(field)),
      h('div', {class: 'pair', key: 'rest'}, rest.map(field)),
      leftOver(state, ['haul'], haul, ['haul'], [...way.keys, ...rest], ctx),
    ]}),
    control(state, [], doc, 'job', 'delivery', ctx, {help: say('At each offer, say whether the yard brings it.')}),
  ];
}
