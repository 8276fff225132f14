// @ts-check
// Rows of a list: each with its own form, some folded to one line.
import {h, cls} from '../ui/h.js';
import {problemHead} from '../ui/around.js';
import {FocusComponent} from './focus.js';
import {addRow, nameRows, removeRow} from './rows.js';
import {remover, someRows} from './some_rows.js';
import {pathText} from '../state/path.js';
import {problemsAt} from '../state/problems.js';
import {toggle} from '../state/state.js';
import {say} from '../text/say.js';

/**
 * @import {Child, VNode} from '../ui/h.js'
 * @import {Path} from '../state/path.js'
 * @import {ProblemCount} from '../state/problems.js'
 * @import {State} from '../state/types.d.ts'
 * @import {Known} from './rows.js'
 */

/**
 * What draws a row of a document, which may be anything, and what it is called.
 * @template Context
 * @typedef {object} RowForm
 * @property {State} state
 * @property {Path} path
 * @property {Context} ctx
 * @property {(state: State, path: Path, value: any, ctx: Context) => Child} form
 * @property {(value: any, index: number, ctx: Context) => string} one the title
 * @property {boolean} [fold] rows are one line until they are opened
 * @property {string} mark another when a problem below is
 */

/**
 * @template Context
 * @typedef {RowForm<Context> & {key?: string, list: unknown, add: {label: string, row: (state: State) => unknown}, class?: string}} List
 */

/**
 * A list and the button that adds to it.
 * @template Context
 * @param {List<Context>} props
 * @returns {VNode}
 */
export const rows = props => h(Rows, /** @type {List<unknown>} */ (/** @type {unknown} */ (props)));

/** @extends {FocusComponent<List<unknown>>} */
export class Rows extends FocusComponent {
  /** @param {List<unknown>} props */
  render({state, path, list, ctx, form, one, add, fold, class: name}) {
    const rows = Array.isArray(list) ? list : [], text = pathText(path);
    const first = this.known === undefined;
    const known = nameRows(this.known, rows);
    /** @type {Known | undefined} */
    this.known = known;
    // A row that somebody adds is open; those of a job that comes in are not.
    if (fold && !first && known.fresh.length === 1) state.open.add(known.fresh[0]);
    const {most, more} = someRows(this, rows, !first && known.fresh.length === 1);
    return h('div', {class: cls('rows', name)},
      problemHead(state, path),
      rows.length > 0 && h('ol', {class: 'rows-list'}, rows.slice(0, most).map((value, i) => {
        const key = known.keys[i], at = [...path, i];
        return h(Row, {key, state, path: at, value, ctx, form, one, name: key, fold, open: !fold || state.open.has(key), mark: problemsAt(state, `${text}[${i}]`).mark});
      })),
      more,
      h('button', {type: 'button', class: 'add', 'data-test': 'add-row', 'data-path': text, 'data-act': 'add', onClick: () => addRow(state, path, add.row(state), say('Added'))}, add.label));
  }
}

/** @typedef {RowForm<unknown> & {value: unknown, name: string, open: boolean}} RowProps */

/** @extends {FocusComponent<RowProps>} */
class Row extends FocusComponent {
  /** @param {RowProps} props */
  render({state, path, value, ctx, form, one, name, fold, open}) {
    const title = one(value, Number(path.at(-1)), ctx);
    const text = pathText(path);
    const gone = () => removeRow(state, path, title);
    if (!fold) {
      return h('li', {class: 'row', tabIndex: -1},
        h('fieldset', {'aria-label': title},
          problemHead(state, path),
          form(state, path, value, ctx)),
        remover(say('Remove {what}', {what: title}), text, gone));
    }
    return h('li', {class: cls('row', 'row-fold', {open}), tabIndex: -1},
      h('h3', null, h('button', {type: 'button', class: 'opener', 'aria-expanded': String(open), 'data-test': 'open-row', 'data-path': text, onClick: () => toggle(state, name)},
        h('span', {class: 'opener-body'}, h('span', {class: 'opener-title'}, title), !open && flag(problemsAt(state, text))))),
      open && h('div', {class: 'row-inside', role: 'group', 'aria-label': title},
        problemHead(state, path),
        form(state, path, value, ctx),
        h('button', {type: 'button', class: 'take-out', 'data-test': 'remove-row', 'data-path': text, 'aria-label': say('Remove {what}', {what: title}), onClick: gone}, say('Remove'))));
  }
}

/** What is to be done under something folded. @param {Pick<ProblemCount, 'wrong' | 'waiting'>} problems */
export function flag({wrong, waiting}) {
  if (wrong > 0) return h('span', {class: 'flag wrong'}, h('span', {class: 'bang', 'aria-hidden': 'true'}, '!'), say('see what is marked'));
  return waiting > 0 && h('span', {class: 'flag'}, say('needed'));
}
