// @ts-check
// A list of single values: lengths, volumes.
import {h} from '../ui/h.js';
import {problemHead} from '../ui/around.js';
import {Field} from '../ui/field.js';
import {FocusComponent} from './focus.js';
import {addRow, removeRow} from './rows.js';
import {remover, someRows} from './some_rows.js';
import {pathText} from '../state/path.js';
import {problemsAt} from '../state/problems.js';
import {say} from '../text/say.js';

/**
 * @import {Row} from '../state/fields.js'
 * @import {Path} from '../state/path.js'
 * @import {State} from '../state/types.d.ts'
 * @import {Writing} from '../ui/writing.js'
 */

/**
 * @typedef {object} Props
 * @property {State} state
 * @property {Path} path
 * @property {unknown} list
 * @property {Row} row of one value
 * @property {Writing} writing
 * @property {string} label
 * @property {string} addLabel
 * @property {string} mark another when a problem below is
 */

/** @extends {FocusComponent<Props>} */
export class Values extends FocusComponent {
  /** @param {Props} props */
  render({state, path, list, row, writing, label, addLabel}) {
    const rows = Array.isArray(list) ? list : [];
    const text = pathText(path), {most, more} = someRows(this, rows, Number(this.count) + 1 === rows.length);
    /** @type {number | undefined} */
    this.count = rows.length;
    return h('fieldset', {class: 'values'},
      h('legend', null, label),
      problemHead(state, path),
      rows.slice(0, most).map((value, i) => h(Value, {key: i, state, path: [...path, i], value, row, writing, label: say('{what} {n}', {what: label, n: i + 1}), mark: problemsAt(state, pathText([...path, i])).mark})),
      more,
      h('button', {type: 'button', class: 'add', 'data-test': 'add-row', 'data-path': text, 'data-act': 'add', onClick: () => addRow(state, path, '', say('Added'))}, addLabel));
  }
}

/** @typedef {Omit<Props, 'list' | 'addLabel'> & {value: unknown}} ValueProps */

/** @extends {FocusComponent<ValueProps>} */
class Value extends FocusComponent {
  /** @param {ValueProps} props */
  render({state, path, value, row, writing, label}) {
    return h('div', {class: 'value-row', tabIndex: -1},
      h(Field, {state, path, row, value, writing, label, hideLabel: true, onPut: to => state.job.set(path, to ?? '', {typing: true})}),
      remover(say('Remove {what}', {what: label}), pathText(path), () => removeRow(state, path, label)));
  }
}
