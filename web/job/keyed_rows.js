// @ts-check
// Rows of a material and a figure: the parts of a mix, and what is on hand.
import {h, cls} from '../ui/h.js';
import {PureComponent} from '../ui/memo.js';
import {Field, problemHead} from '../ui/field.js';
import {MaterialField} from './material.js';
import {giveFocus, remover, someRows, wantFocus} from '../ui/rows.js';
import {called} from './names.js';
import {pathText} from '../state/path.js';
import {say} from '../text/say.js';

/** @typedef {[string, any][]} Entries */

/**
 * Props: state, path, entries, write(entries, how), pathOf(key), figure (the row
 * of the figure), names, groups, writing, mark; addLabel, legend.
 */
export class KeyedRows extends PureComponent {
  constructor(/** @type {any} */ props) {
    super(props);
    this.state = {draft: false}; // a row whose material is still to be chosen
  }

  componentDidMount() { giveFocus(this.props.state, this.props.path, this.base); }
  componentDidUpdate() { giveFocus(this.props.state, this.props.path, this.base); }

  add() {
    const {state, path} = this.props;
    this.setState({draft: true});
    wantFocus(state, path, 'draft');
  }

  /** @param {string} id the material of the row that was still without one */
  choose(id) {
    const {entries, write, first} = this.props;
    if (id === undefined || entries.some((/** @type {any} */ e) => e[0] === id)) return;
    this.setState({draft: false});
    write([...entries, [id, first ?? '']]);
  }

  drop() {
    this.setState({draft: false});
    wantFocus(this.props.state, this.props.path, 'add');
  }

  /** @param {number} index @param {string} id */
  rename(index, id) {
    const {entries, write} = this.props;
    if (id === undefined || entries.some(([key], /** @type {number} */ i) => key === id && i !== index)) return;
    write(entries.map((/** @type {any} */ e, /** @type {number} */ i) => i === index ? [id, e[1]] : e));
  }

  /** @param {number} index */
  remove(index) {
    const {state, path, entries, write, names} = this.props;
    const what = called(names, entries[index][0]);
    write(entries.filter((/** @type {any} */ _, /** @type {number} */ i) => i !== index));
    state.message = {text: say('Removed: {what}', {what}), undo: true};
    wantFocus(state, path, 'add');
    state.redraw();
  }

  render({state, path, entries, write, pathOf, figure, names, groups, writing, addLabel, first}) {
    const taken = new Set(entries.map((/** @type {any} */ e) => e[0]));
    const text = pathText(path);
    const rows = this.state.draft || first && entries.length === 0 ? [...entries, null] : entries;
    const change = (/** @type {number} */ at, /** @type {any} */ entry) => entries.map((/** @type {any} */ e, /** @type {number} */ i) => i === at ? entry : e);
    const {most, more} = someRows(this, rows, this.count + 1 === rows.length);
    this.count = rows.length;
    return h('div', {class: cls('keyed', 'keyed-' + figure.kind)},
      problemHead(state, path),
      h('ul', {class: 'keyed-rows'}, rows.slice(0, most).map((/** @type {any} */ entry, /** @type {number} */ i) => {
        const id = entry?.[0];
        const at = entry ? pathOf(id) : [...path, '#'];
        return h('li', {key: i, class: 'keyed-row', 'data-act': entry ? undefined : 'draft'},
          h(MaterialField, {state, path: [...at, '#'], row: pick, value: id, names, groups, taken, writing, hideLabel: i > 0, label: say('Material'), wants: !entry, late: true,
            onPut: (/** @type {string} */ to) => entry ? this.rename(i, to) : this.choose(to)}),
          entry && h(Field, {state, path: at, row: figure, value: entry[1], writing, hideLabel: i > 0, onPut: (/** @type {any} */ to) => write(change(i, [id, to ?? '']), {typing: true})}),
          (entry || this.state.draft) && remover(entry ? say('Remove {what}', {what: called(names, id)}) : say('Remove this row'), pathText(at), () => entry ? this.remove(i) : this.drop()));
      })),
      more,
      h('button', {type: 'button', class: 'add', 'data-test': 'add-row', 'data-path': text, 'data-act': 'add', onClick: () => this.add()}, addLabel));
  }
}

const pick = {name: 'material', kind: 'material', label: 'Material'};

/** The parts of a mix that is written in one line, or null when it is not understood. @param {unknown} text @returns {Entries | null} */
export function readParts(text) {
  if (typeof text !== 'string') return null;
  /** @type {Entries} */
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

/** One line for the parts of a mix. @param {Entries} entries */
export const writeParts = entries => entries.map(([id, figure]) => `${id} ${figure}`.trim()).join(', ') || undefined;
