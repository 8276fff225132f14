// @ts-check
// A choice of material, with a box for an id that is not in the list.
import {h} from '../ui/h.js';
import {PureComponent} from '../ui/memo.js';
import {Field, choice, put} from '../ui/field.js';
import {materialGroups} from './names.js';
import {addRow} from '../ui/rows.js';
import {say} from '../text/say.js';

const other = '\u0000other';

/** Props: state, path, row, value, names, writing, mark; groups, taken, onPut. */
export class MaterialField extends PureComponent {
  constructor(/** @type {any} */ props) {
    super(props);
    this.state = {other: false};
  }

  render({state, path, row, value, names, writing, onPut, groups = materialGroups(names), taken, label, hideLabel, wants, late}) {
    const listed = groups.some((/** @type {any} */ g) => g.options.some((/** @type {any} */ o) => o[0] === value));
    const byHand = this.state.other || value !== undefined && value !== '' && !listed && names.materials.length > 0;
    const write = onPut ?? ((/** @type {any} */ id) => put(state, path, id));
    const options = [...groups.map((/** @type {any} */ g) => ({label: g.label, options: g.options.map((/** @type {any} */ o) => [o[0], o[1], taken?.has(o[0]) && o[0] !== value])})), [other, say('Something else…')]];
    return h('div', {class: 'pick'},
      choice({state, path, row, label, hideLabel, wants: wants && !byHand, suffix: byHand ? '-list' : undefined, empty: say('Choose'), options, value: byHand ? other : value,
        test: byHand ? 'field-list' : 'field',
        onPick: (/** @type {string} */ id) => {
          this.setState({other: id === other});
          if (id !== other) write(id || undefined);
          else if (listed) write(undefined);
        }}),
      byHand && h(Field, {state, path, row: {...row, kind: 'id'}, value, label: say('Its short name'), writing, onPut: write, wants, late}),
      byHand && typeof value === 'string' && !listed && describe(state, value));
  }
}

/** Offers to make a material of one's own of an id that no list has. @param {any} state @param {string} id */
export const describe = (state, id) => h('button', {type: 'button', class: 'add', onClick: () => {
  state.open.add('section own');
  addRow(state, ['materials'], {id, name: id}, say('Added'));
}}, say('Describe {id} as a material of your own', {id}));
