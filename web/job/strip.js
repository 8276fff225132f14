// @ts-check
// Ground that is measured along a line, or corner by corner.
import {h} from '../ui/h.js';
import {problemHead} from '../ui/around.js';
import {Field} from '../ui/field.js';
import {anyWrong, control, hasAny, leftOver, more} from './control.js';
import {rows} from './list.js';
import {Values} from './values.js';
import {otherFields, rowOf} from '../state/fields.js';
import {pathText} from '../state/path.js';
import {problemsAt} from '../state/problems.js';
import {mark, say} from '../text/say.js';

/**
 * @import {Row} from '../state/fields.js'
 * @import {Path} from '../state/path.js'
 * @import {State} from '../state/types.d.ts'
 * @import {Context} from './control.js'
 */

const others = otherFields('strip', ['along', 'width', 'edge', 'corners', 'gaps']);

/** @param {State} state @param {Path} path @param {any} value @param {Context} ctx */
export function stripForm(state, path, value, ctx) {
  /** @param {string} name @returns {Row} */
  const one = name => ({...rowOf('strip', name), kind: 'length'});
  const rest = ['edge', 'corners', 'gaps', ...others];
  /** @param {string} name @param {string} addLabel */
  const lengths = (name, addLabel) => h(Values, {key: name, state, path: [...path, name], list: value?.[name], row: one(name), writing: ctx.writing, label: say(rowOf('strip', name).label), addLabel, mark: problemsAt(state, pathText([...path, name])).mark});
  return h('div', {class: 'strip'},
    problemHead(state, path),
    lengths('along', say('Add a run')),
    control(state, path, value, 'strip', 'width', ctx),
    more(state, path, say('Corners and gaps'), () => [
      control(state, path, value, 'strip', 'edge', ctx, {empty: say('The middle')}),
      control(state, path, value, 'strip', 'corners', ctx),
      lengths('gaps', say('Add a gap')),
      ...others.map(name => control(state, path, value, 'strip', name, ctx)),
    ], {filled: hasAny(value, rest), wrong: anyWrong(state, path, rest)}),
    leftOver(state, path, value, ['strip'], ['along', 'width', ...rest], ctx));
}

/** @param {State} state @param {Path} path @param {any} value @param {Context} ctx */
export function cornersForm(state, path, value, ctx) {
  return h('div', {class: 'corners'},
    h('p', {class: 'help'}, say('Measured from one corner: how far to the right, how far up. List the corners in order, one way round.')),
    rows({state, path, list: value, ctx, form: cornerRow, one: (_, i) => say('Corner {n}', {n: i + 1}), class: 'tight', mark: problemsAt(state, pathText(path)).mark,
      add: {label: say('Add a corner'), row: () => ['', '']}}));
}

/** @type {Row} */
const offset = {name: 'offset', kind: 'offset', unit: 'side', label: mark('Right')};

/** @param {State} state @param {Path} path @param {any} value @param {Context} ctx */
const cornerRow = (state, path, value, ctx) => h('div', {class: 'pair'}, [say('Right'), say('Up')].map((label, i) =>
  h(Field, {key: i, state, path: [...path, i], row: offset, value: value?.[i], writing: ctx.writing, label, onPut: to => state.job.set([...path, i], to ?? '', {typing: true})})));
