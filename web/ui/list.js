// @ts-check
// Rows of a list: each with its own form, some folded to one line.
import {h, cls} from './h.js';
import {PureComponent} from './memo.js';
import {Field, problemHead} from './field.js';
import {toggle} from '../state/state.js';
import {pathText} from '../state/path.js';
import {say} from '../text/say.js';
import {addRow, giveFocus, nameRows, remover, removeRow, someRows} from './rows.js';
import {problemsAt} from '../state/problems.js';

/**
 * A list and the button that adds to it. Props: state, path, list, ctx, form
 * (what draws a row), one (its title), add {label, row}; fold: rows are one
 * line until they are opened.
 */
export class Rows extends PureComponent {
  componentDidMount() { giveFocus(this.props.state, this.props.path, this.base); }
  componentDidUpdate() { giveFocus(this.props.state, this.props.path, this.base); }

  render({state, path, list, ctx, form, one, add, fold, class: name}) {
    const rows = Array.isArray(list) ? list : [], text = pathText(path);
    const first = this.known === undefined;
    this.known = nameRows(this.known, rows);
    // A row that somebody adds is open; those of a job that comes in are not.
    if (fold && !first && this.known.fresh.length === 1) state.open.add(this.known.fresh[0]);
    const {most, more} = someRows(this, rows, !first && this.known.fresh.length === 1);
    return h('div', {class: cls('rows', name)},
      problemHead(state, path),
      rows.length > 0 && h('ol', {class: 'rows-list'}, rows.slice(0, most).map((value, i) => {
        const key = /** @type {any} */ (this.known).keys[i], at = [...path, i];
        return h(RowPart, {key, state, path: at, value, ctx, form, one, name: key, fold, open: !fold || state.open.has(key), mark: problemsAt(state, `${text}[${i}]`).mark});
      })),
      more,
      h('button', {type: 'button', class: 'add', 'data-test': 'add-row', 'data-path': text, 'data-act': 'add', onClick: () => addRow(state, path, add.row(state), say('Added'))}, add.label));
  }
}

class RowPart extends PureComponent {
  componentDidMount() { giveFocus(this.props.state, this.props.path, this.base); }
  componentDidUpdate() { giveFocus(this.props.state, this.props.path, this.base); }

  render({state, path, value, ctx, form, one, name, fold, open}) {
    const title = one(value, path.at(-1), ctx);
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

/** What is to be done under something folded. @param {import('../state/problems.js').ProblemCount} problems */
export function flag({wrong, waiting}) {
  if (wrong > 0) return h('span', {class: 'flag wrong'}, h('span', {class: 'bang', 'aria-hidden': 'true'}, '!'), say('see what is marked'));
  return waiting > 0 && h('span', {class: 'flag'}, say('needed'));
}

/**
 * A list of single values: lengths, volumes. Props: state, path, list, row (of
 * one value), writing, mark, addLabel.
 */
export class Values extends PureComponent {
  componentDidMount() { giveFocus(this.props.state, this.props.path, this.base); }
  componentDidUpdate() { giveFocus(this.props.state, this.props.path, this.base); }

  render({state, path, list, row, writing, label, addLabel}) {
    const rows = Array.isArray(list) ? list : [];
    const text = pathText(path), {most, more} = someRows(this, rows, this.count + 1 === rows.length);
    this.count = rows.length;
    return h('fieldset', {class: 'values'},
      h('legend', null, label),
      problemHead(state, path),
      rows.slice(0, most).map((value, i) => h(ValuePart, {key: i, state, path: [...path, i], value, row, writing, label: say('{what} {n}', {what: label, n: i + 1}), mark: problemsAt(state, pathText([...path, i])).mark})),
      more,
      h('button', {type: 'button', class: 'add', 'data-test': 'add-row', 'data-path': text, 'data-act': 'add', onClick: () => addRow(state, path, '', say('Added'))}, addLabel));
  }
}

class ValuePart extends PureComponent {
  componentDidMount() { giveFocus(this.props.state, this.props.path, this.base); }
  componentDidUpdate() { giveFocus(this.props.state, this.props.path, this.base); }

  render({state, path, value, row, writing, label}) {
    return h('div', {class: 'value-row', tabIndex: -1},
      h(Field, {state, path, row, value, writing, label, hideLabel: true, onPut: (/** @type {any} */ to) => state.job.set(path, to ?? '', {typing: true})}),
      remover(say('Remove {what}', {what: label}), pathText(path), () => removeRow(state, path, label)));
  }
}
