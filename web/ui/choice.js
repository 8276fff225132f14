// @ts-check
// A choice of the browser's own: values and what they are called.
import {h, cls} from './h.js';
import {below, describedBy, helpOf, idOf, leave, wantsMark} from './around.js';
import {asText} from './entry.js';
import {pathText} from '../state/path.js';
import {needed, shown} from '../state/problems.js';
import {say} from '../text/say.js';

/**
 * @import {Row} from '../state/fields.js'
 * @import {Path} from '../state/path.js'
 * @import {State} from '../state/types.d.ts'
 */

/** @typedef {readonly [value: string, label: string, disabled?: boolean]} Option */

/** @typedef {{label: string, options: readonly Option[]}} Group */

/**
 * @typedef {object} Choice
 * @property {State} state
 * @property {Path} path
 * @property {Row} [row] without one, a label and options
 * @property {unknown} [value] when it is not what stands at the path
 * @property {string} [label]
 * @property {boolean} [hideLabel]
 * @property {string} [help]
 * @property {readonly (Option | Group)[]} [options]
 * @property {string} [empty] the name of no choice
 * @property {boolean} [wants] it waits for an answer
 * @property {(value: string) => void} [onPick] when it is kept elsewhere
 * @property {string} [suffix] of its id, where it is not the control of its path
 * @property {string} [test]
 */

/** @param {Choice} props */
export function choice(props) {
  const {state, path, row = /** @type {Row} */ ({}), label = say(row.label), hideLabel, options = chooseFrom(row), empty, wants, onPick, test = 'field'} = props;
  const text = pathText(path), id = idOf(text) + (props.suffix ?? '');
  const value = 'value' in props ? props.value : state.job.get(path);
  const problem = props.suffix ? undefined : shown(state, text);
  const help = helpOf(row, props);
  const waiting = !problem && (wants || !props.suffix && needed(state, text));
  /** @param {Event & {currentTarget: HTMLSelectElement}} event */
  const pick = event => {
    const picked = event.currentTarget.value;
    if (onPick) onPick(picked);
    else state.job.set(path, picked === '' ? undefined : picked);
    state.touched.add(text);
    state.redraw();
  };
  const known = options.flatMap(o => isGroup(o) ? o.options.map(p => p[0]) : [o[0]]);
  const odd = value !== undefined && value !== '' && !known.includes(/** @type {string} */ (value));
  return h('div', {class: cls('field', 'field-choice', {wrong: !!problem})},
    h('label', {for: id, class: cls({unseen: hideLabel})}, label),
    h('div', {class: 'box'},
      h('select', {id, value: asText(value), 'data-test': test, 'data-path': text, name: text, 'aria-invalid': problem ? 'true' : undefined, 'aria-describedby': describedBy(id, problem, help, waiting), onChange: pick, onBlur: () => leave(state, text)},
        empty !== undefined && option('', empty),
        odd && option(asText(value), asText(value)),
        options.map(o => isGroup(o) ? h('optgroup', {label: o.label, key: o.label}, o.options.map(p => option(...p))) : option(...o))),
      waiting && wantsMark(id)),
    below(text, id, help, problem));
}

/** @param {Option | Group} o @returns {o is Group} */
const isGroup = o => !Array.isArray(o);

/** @param {string} value @param {string} label @param {boolean} [disabled] */
const option = (value, label, disabled) => h('option', {value, key: value, disabled}, label);

/** @param {Row} row @returns {Option[]} */
const chooseFrom = row => (row.choices ?? []).map(([value, label]) => [value, say(label)]);
