// @ts-check
// The fields of one object of the job: what is asked first, what folds
// out, and whatever else the document has there.
import {h} from '../ui/h.js';
import {Field, choice, tick, yesNo, trouble} from '../ui/field.js';
import {MaterialField} from './material.js';
import {Values} from '../ui/list.js';
import {objects, rowOf} from '../state/fields.js';
import {atOnce} from '../ui/rows.js';
import {toggle} from '../state/state.js';
import {pathText} from '../state/path.js';
import {say} from '../text/say.js';
import {shown, troubleAt} from '../state/problems.js';

/** @typedef {import('../state/path.js').Path} Path */

/** What a row may need: the names of the job, and how its reader writes. @typedef {{names?: any, writing: any}} Context */

/**
 * The control of a field, by its kind.
 * @param {any} desk @param {Path} path of the object @param {any} value the object @param {string} object @param {string} name
 * @param {Context} ctx @param {any} [more] props of the control
 */
export function control(desk, path, value, object, name, ctx, more = {}) {
  const row = rowOf(object, name), at = [...path, name], is = value?.[name];
  const {writing, names} = ctx;
  switch (row.kind) {
    case 'choice': return choice({desk, path: at, row, value: is, empty: say('Not said'), ...more});
    case 'switch': return yesNo({desk, path: at, row, value: is});
    case 'traits': return traits(desk, at, row, is);
    case 'material': return h(MaterialField, {desk, path: at, row, value: is, names, writing, mark: troubleAt(desk, pathText(at)).mark, ...more});
    case 'size':
    case 'ball': return h(Field, {key: name, desk, path: at, row, writing, list: 'sizes', ...more});
    case 'list': return h(Values, {desk, path: at, list: is, row: {...row, kind: kindOf(row)}, writing, label: say(row.label), addLabel: say('Add a size'), mark: troubleAt(desk, pathText(at)).mark, ...more});
    default: return h(Field, {key: name, desk, path: at, row, writing, ...more});
  }
}

/** @param {any} row of a list of values */
const kindOf = row => row.unit === 'side' ? 'length' : 'volume';

/** @param {any} desk @param {Path} path @param {any} row @param {unknown} value */
function traits(desk, path, row, value) {
  const has = Array.isArray(value) ? value : [];
  const order = row.choices.map((/** @type {any} */ c) => c[0]);
  const text = pathText(path);
  return h('fieldset', {class: 'values'},
    h('legend', null, say(row.label)),
    trouble(text, shown(desk, text)),
    row.choices.map((/** @type {any} */ [word, label]) => tick({desk, path, suffix: '-' + word, label: say(label), checked: has.includes(word),
      onTick: on => {
        const rest = has.filter(other => other !== word);
        const next = on ? [...order.filter((/** @type {string} */ w) => w === word || has.includes(w)), ...rest.filter(w => !order.includes(w))] : rest;
        desk.slate.set(path, next.length > 0 ? next : undefined);
      }})));
}

/**
 * What folds out. It stands open while something in it is wrong.
 * @param {any} desk @param {Path} path @param {string} label @param {() => any} inside @param {{filled?: boolean, wrong?: boolean}} [state]
 */
export function more(desk, path, label, inside, {filled = false, wrong = false} = {}) {
  const name = 'more ' + pathText(path), open = wrong || desk.open.has(name);
  return h('div', {class: 'more'},
    h('button', {type: 'button', class: 'more-button', 'aria-expanded': String(open), 'data-test': 'more', 'data-path': pathText(path), onClick: () => toggle(desk, name)},
      h('span', {class: 'more-word'}, label), !open && filled && h('span', {class: 'filled'}, say('filled in'))),
    open && h('div', {class: 'more-inside'}, inside()));
}

/**
 * Fields that the document has here and nobody asks for: what cannot be there
 * at all, or not beside the rest. They can be mended or taken out.
 * @param {any} desk @param {Path} path @param {any} value @param {string[]} tables @param {string[]} asked
 * @param {Context} ctx
 */
export function leftOver(desk, path, value, tables, asked, ctx) {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return null;
  const extra = Object.keys(value).filter(key => !asked.includes(key)).slice(0, atOnce);
  return extra.length > 0 && h('div', {class: 'extras'}, extra.map(key => {
    const table = tables.find(t => objects[t].fields.some(r => r.name === key && !compound.has(r.kind)));
    const at = [...path, key], text = pathText(at);
    return h('div', {key, class: 'extra'},
      table ? control(desk, path, value, table, key, ctx) : h('div', {class: 'field'}, h('p', {class: 'odd'}, key), trouble(text, shown(desk, text) ?? firstBelow(desk, text))),
      h('button', {type: 'button', class: 'take-out', 'data-test': 'remove-row', 'data-path': text, onClick: () => { desk.slate.set(at, undefined); desk.redraw(); }}, say('Take out {what}', {what: table ? say(rowOf(table, key).label) : key})));
  }));
}

const compound = new Set(['object', 'list', 'keyed', 'area', 'fixed']);

/** @param {any} desk @param {string} text */
function firstBelow(desk, text) {
  for (const [path] of desk.problems) if (path.startsWith(text + '.') || path.startsWith(text + '[')) return shown(desk, path);
}

/** Whether an object has any of these. @param {any} value @param {string[]} names */
export const hasAny = (value, names) => names.some(name => value?.[name] !== undefined);

/** Whether something is wrong with any of these. @param {any} desk @param {Path} path @param {string[]} names */
export const anyWrong = (desk, path, names) => names.some(name => troubleAt(desk, pathText([...path, name])).wrong > 0);
