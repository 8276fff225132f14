// @ts-check
// Rows of a material and a figure: the parts of a mix, and what is on hand.
import {h, cls} from '../ui/h.js';
import {problemHead} from '../ui/around.js';
import {Field} from '../ui/field.js';
import {FocusComponent, wantFocus} from './focus.js';
import {MaterialField} from './material.js';
import {called} from './names.js';
import {remover, someRows} from './some_rows.js';
import {pathText} from '../state/path.js';
import {say} from '../text/say.js';

/**
 * @import {Group} from '../ui/choice.js'
 * @import {Value} from '../ui/entry.js'
 * @import {Writing} from '../ui/writing.js'
 * @import {How} from '../state/document.js'
 * @import {Row} from '../state/fields.js'
 * @import {Path} from '../state/path.js'
 * @import {State} from '../state/types.d.ts'
 * @import {Names} from './names.js'
 */

/** A material's id, and what the document has for it. @typedef {[string, unknown]} Entry */

/**
 * @typedef {object} Props
 * @property {State} state
 * @property {Path} path
 * @property {Entry[]} entries
 * @property {(entries: Entry[], how?: How) => void} write
 * @property {(id: string) => Path} pathOf
 * @property {Row} figure of the figure
 * @property {Names} names
 * @property {Group[]} [groups]
 * @property {Writing} writing
 * @property {string} addLabel
 * @property {number} [first] the figure of a new row; there is always a row
 * @property {string} mark another when a problem below is
 */

/** @extends {FocusComponent<Props, {draft: boolean}>} */
export class KeyedRows extends FocusComponent {
  /** @param {Props} props */
  constructor(props) {
    super(props);
    this.state = {draft: false}; // a row whose material is still to be chosen
  }

  add() {
    const {state, path} = this.props;
    this.setState({draft: true});
    wantFocus(state, path, 'draft');
  }

  /** @param {Value} id the material of the row that was still without one */
  choose(id) {
    const {entries, write, first} = this.props;
    if (id === undefined || entries.some(e => e[0] === id)) return;
    this.setState({draft: false});
    write([...entries, [/** @type {string} */ (id), first ?? '']]);
  }

  drop() {
    this.setState({draft: false});
    wantFocus(this.props.state, this.props.path, 'add');
  }

  /** @param {number} index @param {Value} id */
  rename(index, id) {
    const {entries, write} = this.props;
    if (id === undefined || entries.some(([key], i) => key === id && i !== index)) return;
    write(entries.map((e, i) => i === index ? [/** @type {string} */ (id), e[1]] : e));
  }

  /** @param {number} index */
  remove(index) {
    const {state, path, entries, write, names} = this.props;
    const what = called(names, entries[index][0]);
    write(entries.filter((_, i) => i !== index));
    state.message = {text: say('Removed: {what}', {what}), undo: true};
    wantFocus(state, path, 'add');
    state.redraw();
  }

  /** @param {Props} props */
  render({state, path, entries, write, pathOf, figure, names, groups, writing, addLabel, first}) {
    const taken = new Set(entries.map(e => e[0]));
    const text = pathText(path);
    const rows = this.state.draft || first && entries.length === 0 ? [...entries, null] : entries;
    /** @param {number} at @param {Entry} entry */
    const change = (at, entry) => entries.map((e, i) => i === at ? entry : e);
    const {most, more} = someRows(this, rows, Number(this.count) + 1 === rows.length);
    /** @type {number | undefined} */
    this.count = rows.length;
    return h('div', {class: cls('keyed', 'keyed-' + figure.kind)},
      problemHead(state, path),
      h('ul', {class: 'keyed-rows'}, rows.slice(0, most).map((entry, i) => {
        const at = entry ? pathOf(entry[0]) : [...path, '#'];
        return h('li', {key: i, class: 'keyed-row', 'data-act': entry ? undefined : 'draft'},
          h(MaterialField, {state, path: [...at, '#'], row: pick, value: entry?.[0], names, groups, taken, writing, hideLabel: i > 0, label: say('Material'), wants: !entry, late: true,
            onPut: to => entry ? this.rename(i, to) : this.choose(to)}),
          entry && h(Field, {state, path: at, row: figure, value: entry[1], writing, hideLabel: i > 0, onPut: to => write(change(i, [entry[0], to ?? '']), {typing: true})}),
          (entry || this.state.draft) && remover(entry ? say('Remove {what}', {what: called(names, entry[0])}) : say('Remove this row'), pathText(at), () => entry ? this.remove(i) : this.drop()));
      })),
      more,
      h('button', {type: 'button', class: 'add', 'data-test': 'add-row', 'data-path': text, 'data-act': 'add', onClick: () => this.add()}, addLabel));
  }
}

/** @type {Row} */
const pick = {name: 'material', kind: 'material', label: 'Material'};

/** The parts of a mix that is written in one line, or null when it is not understood. @param {unknown} text @returns {Entry[] | null} */
export function readParts(text) {
  if (typeof text !== 'string') return null;
  /** @type {Entry[]} */
  const entries = [];
  for (const part of text.split(',')) {
    const words = part.trim().split(/\s+/).filter(Boolean);
    const figures = words.filter(word => /^[.\d\p{No}]/u.test(word));
    const id = words.filter(word => !figures.includes(word)).join('-');
    if (id === '' || figures.length === 0 || entries.some(([known]) => known === id)) return null;
    entries.push([id, figures.join(' ')]);
  }
  return entries;
}

/** One line for the parts of a mix. @param {Entry[]} entries */
export const writeParts = entries => entries.map(([id, figure]) => `${id} ${figure}`.trim()).join(', ') || undefined;
