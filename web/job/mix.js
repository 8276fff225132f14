// @ts-check
// A mix of one's own: a name and parts by volume.
import {h} from '../ui/h.js';
import {asText} from '../ui/entry.js';
import {anyWrong, control, hasAny, leftOver, more} from './control.js';
import {KeyedRows} from './keyed_rows.js';
import {called, freeId, partGroups} from './names.js';
import {otherFields} from '../state/fields.js';
import {pathText} from '../state/path.js';
import {problemsAt} from '../state/problems.js';
import {mark, say} from '../text/say.js';

/**
 * @import {Row} from '../state/fields.js'
 * @import {Path} from '../state/path.js'
 * @import {State} from '../state/types.d.ts'
 * @import {NamedContext} from './control.js'
 * @import {Entry} from './keyed_rows.js'
 */

/** How much of a part there is. @type {Row} */
export const partRow = {name: 'parts', kind: 'number', label: mark('Parts')};

const rest = ['id', ...otherFields('mix', ['id', 'name', 'parts'])];

/** @param {State} state @param {Path} path @param {any} value @param {NamedContext} ctx */
export function mixForm(state, path, value, ctx) {
  const at = [...path, 'parts'], parts = value?.parts;
  return [
    control(state, path, value, 'mix', 'name', ctx),
    h('fieldset', {key: 'parts', class: 'values'},
      h('legend', null, say('Parts by volume')),
      h(KeyedRows, {state, path: at, entries: entriesOf(parts), figure: partRow, names: ctx.names, groups: partGroups(ctx.names), writing: ctx.writing, first: 1, addLabel: say('Add a part'), mark: problemsAt(state, pathText(at)).mark,
        pathOf: id => [...at, id],
        write: (entries, how) => state.job.set(at, objectOf(entries), how)})),
    more(state, path, say('Losses, short name, source'), () => rest.map(name => control(state, path, value, 'mix', name, ctx)), {filled: hasAny(value, rest.slice(1)), wrong: anyWrong(state, path, rest)}),
    leftOver(state, path, value, ['mix'], ['name', 'parts', ...rest], ctx),
  ];
}

/** @param {unknown} value @returns {Entry[]} */
export const entriesOf = value => typeof value === 'object' && value !== null && !Array.isArray(value) ? Object.entries(value) : [];

/** An object with these keys, __proto__ as a key like any other. @param {Entry[]} entries */
export const objectOf = entries => Object.fromEntries(entries);

/** @param {State} state */
export const newMix = state => ({id: freeId(state.job.doc.mixes, 'my-mix'), parts: {}});

/** @param {any} value @param {number} index @param {NamedContext} ctx */
export function mixTitle(value, index, ctx) {
  const parts = entriesOf(value?.parts).map(([id, n]) => `${asText(n)} ${called(ctx.names, id)}`).join(', ');
  const name = textOf(value?.name) || textOf(value?.id) || say('Mix {n}', {n: index + 1});
  return parts ? say('{name}: {parts}', {name, parts}) : name;
}

/** @param {unknown} value */
export const textOf = value => typeof value === 'string' ? value.trim() : '';
