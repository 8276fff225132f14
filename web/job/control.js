// @ts-check
// The fields of one object of the job: what is asked first, what folds
// out, and whatever else the document has there.
import {h} from '../ui/h.js';
import {problemText} from '../ui/around.js';
import {choice} from '../ui/choice.js';
import {Field} from '../ui/field.js';
import {tick, yesNo} from '../ui/tick.js';
import {MaterialField} from './material.js';
import {atOnce} from './some_rows.js';
import {Values} from './values.js';
import {objects, otherFields, rowOf} from '../state/fields.js';
import {pathText} from '../state/path.js';
import {problemsAt, shown} from '../state/problems.js';
import {toggle} from '../state/state.js';
import {say} from '../text/say.js';

/**
 * @import {Child, VNode} from '../ui/h.js'
 * @import {Value} from '../ui/entry.js'
 * @import {Writing} from '../ui/writing.js'
 * @import {Row} from '../state/fields.js'
 * @import {Path} from '../state/path.js'
 * @import {Doc} from '../store/record.js'
 * @import {State} from '../state/types.d.ts'
 * @import {Names} from './names.js'
 */

/** What a form needs besides its object: how its reader writes. @typedef {{writing: Writing}} Context */

/** The same with what the job may name. @typedef {Context & {names: Names}} NamedContext */

/**
 * What a control is to be otherwise.
 * @typedef {object} More
 * @property {boolean} [hideLabel]
 * @property {string} [help]
 * @property {boolean} [wants]
 * @property {string} [empty]
 * @property {unknown} [value]
 * @property {(value: Value) => void} [onPut]
 */

/**
 * The control of a field, by its kind.
 * @param {State} state @param {Path} path of the object @param {any} value the object @param {string} object @param {string} name
 * @param {Context | NamedContext} ctx @param {More} [more]
 * @returns {VNode}
 */
export function control(state, path, value, object, name, ctx, more = {}) {
  const row = rowOf(object, name), at = [...path, name], is = value?.[name];
  const {writing, names} = /** @type {NamedContext} */ (ctx); // a material's object has names
  // A form that is given no names has its materials typed.
  switch (row.kind === 'material' && !names ? 'id' : row.kind) {
    case 'choice': return choice({state, path: at, row, value: is, empty: say('Not said'), ...more});
    case 'switch': return yesNo({state, path: at, row, value: is});
    case 'traits': return traits(state, at, row, is);
    case 'material': return h(MaterialField, {state, path: at, row, value: is, names, writing, mark: problemsAt(state, pathText(at)).mark, ...more});
    case 'size':
    case 'ball': return h(Field, {key: name, state, path: at, row, writing, list: 'sizes', ...more});
    case 'list': return h(Values, {state, path: at, list: is, row: {...row, kind: kindOf(row)}, writing, label: say(row.label), addLabel: say('Add a size'), mark: problemsAt(state, pathText(at)).mark, ...more});
    case 'object': return optional(state, at, row, is, ctx, more.help);
    default: return h(Field, {key: name, state, path: at, row, writing, ...more});
  }
}

/** An object that is there or not: a box to tick, and its fields. @param {State} state @param {Path} path @param {Row} row @param {unknown} value @param {Context | NamedContext} ctx @param {string} [help] */
function optional(state, path, row, value, ctx, help) {
  const has = value !== undefined, label = say(row.label), object = row.object ?? row.name, fields = otherFields(object, []);
  return h('div', {key: row.name, class: 'optional'},
    tick({state, path, suffix: has ? '' : '-tick', label, checked: has, onTick: on => state.job.set(path, on ? {} : undefined)}),
    has && help && h('p', {class: 'help'}, help),
    has && h('div', {class: 'pair', role: 'group', 'aria-label': label}, fields.map(field => control(state, path, value, object, field, ctx))),
    has && leftOver(state, path, value, [object], fields, ctx));
}

/** @param {Row} row of a list of values */
const kindOf = row => row.unit === 'side' ? 'length' : 'volume';

/** @param {State} state @param {Path} path @param {Row} row @param {unknown} value */
function traits(state, path, row, value) {
  const has = Array.isArray(value) ? value : [], choices = row.choices ?? [];
  const order = choices.map(c => c[0]);
  const text = pathText(path);
  return h('fieldset', {class: 'values'},
    h('legend', null, say(row.label)),
    problemText(text, shown(state, text)),
    choices.map(([word, label]) => tick({state, path, suffix: '-' + word, label: say(label), checked: has.includes(word),
      onTick: on => {
        const rest = has.filter(other => other !== word);
        const next = on ? [...order.filter(w => w === word || has.includes(w)), ...rest.filter(w => !order.includes(w))] : rest;
        state.job.set(path, next.length > 0 ? next : undefined);
      }})));
}

/**
 * What folds out. It stands open while something in it is wrong.
 * @param {State} state @param {Path} path @param {string} label @param {() => Child} inside @param {{filled?: boolean, wrong?: boolean}} [has]
 */
export function more(state, path, label, inside, {filled = false, wrong = false} = {}) {
  const name = 'more ' + pathText(path), open = wrong || state.open.has(name);
  return h('div', {class: 'more'},
    h('button', {type: 'button', class: 'more-button', 'aria-expanded': String(open), 'data-test': 'more', 'data-path': pathText(path), onClick: () => toggle(state, name)},
      h('span', {class: 'more-word'}, label), !open && filled && h('span', {class: 'filled'}, say('filled in'))),
    open && h('div', {class: 'more-inside'}, inside()));
}

/**
 * Fields that the document has here and nobody asks for: what cannot be there
 * at all, or not beside the rest. They can be corrected or taken out.
 * @param {State} state @param {Path} path @param {unknown} value @param {string[]} tables @param {string[]} asked
 * @param {Context} ctx
 */
export function leftOver(state, path, value, tables, asked, ctx) {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return null;
  const extra = Object.keys(value).filter(key => !asked.includes(key)).slice(0, atOnce);
  return extra.length > 0 && h('div', {class: 'extras'}, extra.map(key => {
    const table = tables.find(t => objects[t].fields.some(r => r.name === key && !compound.has(r.kind)));
    const at = [...path, key], text = pathText(at);
    return h('div', {key, class: 'extra'},
      table ? control(state, path, value, table, key, ctx) : h('div', {class: 'field'}, h('p', {class: 'odd'}, key), problemText(text, shown(state, text) ?? firstBelow(state, text))),
      h('button', {type: 'button', class: 'take-out', 'data-test': 'remove-row', 'data-path': text, onClick: () => { state.job.set(at, undefined); state.redraw(); }}, say('Take out {what}', {what: table ? say(rowOf(table, key).label) : key})));
  }));
}

const compound = new Set(['object', 'list', 'keyed', 'area', 'fixed']);

/** @param {State} state @param {string} text */
function firstBelow(state, text) {
  for (const [path] of state.problems) if (path.startsWith(text + '.') || path.startsWith(text + '[')) return shown(state, path);
}

/** Whether an object has any of these. @param {Doc | undefined} value @param {string[]} names */
export const hasAny = (value, names) => names.some(name => value?.[name] !== undefined);

/** Whether something is wrong with any of these. @param {State} state @param {Path} path @param {string[]} names */
export const anyWrong = (state, path, names) => names.some(name => problemsAt(state, pathText([...path, name])).wrong > 0);
