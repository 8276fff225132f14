// @ts-check
// A choice of material, with a box for an id that is not in the list.
import {h} from '../ui/h.js';
import {choice} from '../ui/choice.js';
import {Field, put} from '../ui/field.js';
import {PureComponent} from '../ui/memo.js';
import {materialGroups} from './names.js';
import {addRow} from './rows.js';
import {say} from '../text/say.js';

/**
 * @import {Group} from '../ui/choice.js'
 * @import {Writing} from '../ui/writing.js'
 * @import {Row} from '../state/fields.js'
 * @import {Path} from '../state/path.js'
 * @import {State} from '../state/types.d.ts'
 * @import {Value} from '../ui/entry.js'
 * @import {Names} from './names.js'
 */

const other = '\u0000other';

/**
 * @typedef {object} Props
 * @property {State} state
 * @property {Path} path
 * @property {Row} row
 * @property {unknown} [value]
 * @property {Names} names
 * @property {Writing} writing
 * @property {string} [mark] another when its problem is
 * @property {Group[]} [groups]
 * @property {Set<string>} [taken] what cannot be chosen again
 * @property {(id: Value) => void} [onPut]
 * @property {string} [label]
 * @property {boolean} [hideLabel]
 * @property {boolean} [wants]
 * @property {boolean} [late]
 */

/** @extends {PureComponent<Props, {other: boolean}>} */
export class MaterialField extends PureComponent {
  /** @param {Props} props */
  constructor(props) {
    super(props);
    this.state = {other: false};
  }

  /** @param {Props} props */
  render({state, path, row, value, names, writing, onPut, groups = materialGroups(names), taken, label, hideLabel, wants, late}) {
    const listed = groups.some(g => g.options.some(o => o[0] === value));
    const byHand = this.state.other || value !== undefined && value !== '' && !listed && names.materials.length > 0;
    /** @param {Value} id */
    const write = id => onPut ? onPut(id) : put(state, path, id);
    /** @type {Group[]} */
    const free = groups.map(g => ({label: g.label, options: g.options.map(o => [o[0], o[1], taken?.has(o[0]) && o[0] !== value])}));
    return h('div', {class: 'pick'},
      choice({state, path, row, label, hideLabel, wants: wants && !byHand, suffix: byHand ? '-list' : undefined, empty: say('Choose'), options: [...free, [other, say('Something else…')]], value: byHand ? other : value,
        test: byHand ? 'field-list' : 'field',
        onPick: id => {
          this.setState({other: id === other});
          if (id !== other) write(id || undefined);
          else if (listed) write(undefined);
        }}),
      byHand && h(Field, {state, path, row: {...row, kind: 'id'}, value, label: say('Its short name'), writing, onPut: write, wants, late}),
      byHand && typeof value === 'string' && !listed && describe(state, value));
  }
}

/** Offers to make a material of one's own of an id that no list has. @param {State} state @param {string} id */
export const describe = (state, id) => h('button', {type: 'button', class: 'add', onClick: () => {
  state.open.add('section own');
  addRow(state, ['materials'], {id, name: id}, say('Added'));
}}, say('Describe {id} as a material of your own', {id}));
