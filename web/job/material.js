// @ts-check
// A choice of material, with a box for an id that is not in the list.
import {h} from '../ui/h.js';
import {Part} from '../ui/memo.js';
import {Field, choice, put} from '../ui/field.js';
import {materialGroups} from './names.js';
import {addRow} from '../ui/rows.js';
import {say} from '../text/say.js';

const other = '\u0000other';

/** Props: desk, path, row, value, names, writing, mark; groups, taken, onPut. */
export class MaterialField extends Part {
  constructor(/** @type {any} */ props) {
    super(props);
    this.state = {other: false};
  }

  render({desk, path, row, value, names, writing, onPut, groups = materialGroups(names), taken, label, hideLabel, wants, late}) {
    const listed = groups.some((/** @type {any} */ g) => g.options.some((/** @type {any} */ o) => o[0] === value));
    const byHand = this.state.other || value !== undefined && value !== '' && !listed && names.materials.length > 0;
    const keep = onPut ?? ((/** @type {any} */ id) => put(desk, path, id));
    const options = [...groups.map((/** @type {any} */ g) => ({label: g.label, options: g.options.map((/** @type {any} */ o) => [o[0], o[1], taken?.has(o[0]) && o[0] !== value])})), [other, say('Something else…')]];
    return h('div', {class: 'pick'},
      choice({desk, path, row, label, hideLabel, wants: wants && !byHand, suffix: byHand ? '-list' : undefined, empty: say('Choose'), options, value: byHand ? other : value,
        test: byHand ? 'field-list' : 'field',
        onPick: (/** @type {string} */ id) => {
          this.setState({other: id === other});
          if (id !== other) keep(id || undefined);
          else if (listed) keep(undefined);
        }}),
      byHand && h(Field, {desk, path, row: {...row, kind: 'id'}, value, label: say('Its short name'), writing, onPut: keep, wants, late}),
      byHand && typeof value === 'string' && !listed && describe(desk, value));
  }
}

/** Offers to make a material of one's own of an id that no list has. @param {any} desk @param {string} id */
export const describe = (desk, id) => h('button', {type: 'button', class: 'add', onClick: () => {
  desk.open.add('section own');
  addRow(desk, ['materials'], {id, name: id}, say('Added'));
}}, say('Describe {id} as a material of your own', {id}));
