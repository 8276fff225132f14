// @ts-check
// A text box of the form: its label, the box, its own unit, and what is wrong.
import {h, cls, Component} from './h.js';
import {announce} from './announcer.js';
import {below, describedBy, helpOf, idOf, leave, press, wantsMark} from './around.js';
import {pathText} from '../state/path.js';
import {needed, shown} from '../state/problems.js';
import {say} from '../text/say.js';
import {habitOf, readField, showField} from './writing.js';

/**
 * @import {Value} from './entry.js'
 * @import {Row} from '../state/fields.js'
 * @import {How} from '../state/document.js'
 * @import {Path} from '../state/path.js'
 * @import {State} from '../state/types.d.ts'
 * @import {Writing} from './writing.js'
 */

/**
 * @typedef {object} Props
 * @property {State} state
 * @property {Path} path
 * @property {Row} row
 * @property {Writing} writing
 * @property {string} [label]
 * @property {boolean} [hideLabel]
 * @property {string} [help]
 * @property {boolean} [wants] it waits to be filled in
 * @property {string} [list] the id of what to choose from
 * @property {unknown} [value] when it stands elsewhere than at the path
 * @property {(value: Value) => void} [onPut] when it is kept in a way of its own
 * @property {boolean} [late] kept only once the box was left, as a name is that
 *   other things hang on
 */

const patience = 900; // ms without a key before what is being typed is called wrong

/** Called by their name alone: text that a keyboard must not correct. @type {Set<string>} */
const plainText = new Set(['text']);

/** @param {string} kind */
const keyboard = kind => kind === 'count' ? 'numeric' : kind === 'money' ? 'decimal' : 'text';

/**
 * Puts what was typed into the job; undefined takes it away.
 * @param {State} state @param {Path} path @param {unknown} value @param {How} [how]
 */
export function put(state, path, value, how = {}) {
  state.job.set(path, value, {typing: true, ...how});
}

/** What a box will hold once a key is in it, where that is plain. @param {InputEvent & {currentTarget: HTMLInputElement}} event */
function typedNext({inputType, data, isComposing, currentTarget}) {
  const {value, selectionStart: from, selectionEnd: to} = currentTarget;
  if (isComposing || from === null || to === null) return undefined;
  if (inputType === 'insertText' && data) return value.slice(0, from) + data + value.slice(to);
  if (inputType === 'deleteContentBackward' && from < to) return value.slice(0, from) + value.slice(to);
  if (inputType === 'deleteContentBackward' && /^[\x20-\x7e]$/.test(value.charAt(from - 1))) return value.slice(0, from - 1) + value.slice(to);
  return undefined;
}

/** @extends {Component<Props>} */
export class Field extends Component {
  // Kept here and not as state, so that a key alone draws nothing: the box has it
  // already, and the job that it changed is drawn in its own time.
  /** @type {string | null} */
  typed = null;
  quiet = false; // nothing is called wrong while it is being typed

  componentWillUnmount() { clearTimeout(this.timer); }

  componentDidUpdate() {
    if (this.hint === this.announced) return;
    /** @type {string | undefined} */
    this.announced = this.hint;
    if (this.hint && this.worked) announce(this.props.state, `${this.props.label ?? say(this.props.row.label)}: ${this.hint}`);
  }

  /** @param {{currentTarget: HTMLInputElement}} event */
  input(event) {
    const typed = event.currentTarget.value;
    this.worked = true;
    this.typed = typed;
    this.quiet = !this.hint; // what is shown already stays until it is put right
    this.showProblemIn(patience);
    if (this.props.late) this.forceUpdate(); // nothing else draws it
    else this.write(typed);
  }

  /** A key is on its way into the box. @param {InputEvent & {currentTarget: HTMLInputElement}} event */
  before(event) {
    const {state, path, onPut, late} = this.props;
    const typed = onPut || late ? undefined : typedNext(event);
    if (typed !== undefined) state.expect(state.job.preview(path, this.meant(typed)));
  }

  /** Shows what is wrong, if anything is, after so many ms. @param {number} wait */
  showProblemIn(wait) {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => {
      this.quiet = false;
      this.forceUpdate();
    }, wait);
  }

  /** The value for what was typed. @param {string} typed */
  meant(typed) {
    const {row, writing} = this.props;
    const {text, value} = /** @type {{text: string, value: unknown}} */ (this.kept); // as it stood: the same text means the same
    return /** @type {Value} */ (typed === text ? value : readField(row, typed, writing));
  }

  /** @param {string} typed */
  write(typed) {
    const {state, path, onPut} = this.props;
    const value = this.meant(typed);
    if (onPut) onPut(value);
    else put(state, path, value, {inBox: true});
  }

  blur() {
    if (this.props.late && this.typed !== null) this.write(this.typed);
    this.typed = null;
    this.quiet = !this.hint;
    this.showProblemIn(press);
    this.forceUpdate();
    this.props.state.redraw(); // what comes next may lean on what was typed
    leave(this.props.state, pathText(this.props.path));
  }

  /** @param {Props} props */
  render(props) {
    const {typed, quiet} = this;
    const {state, path, row, writing, label = say(row.label), hideLabel, list, wants, late} = props;
    const text = pathText(path), id = idOf(text);
    const value = 'value' in props ? props.value : state.job.get(path);
    const kept = showField(row, value, writing);
    const mine = typed !== null && (late || readField(row, typed, writing) === value || typed === this.kept?.text && value === this.kept?.value);
    if (typed === null) this.kept = {text: kept, value};
    const shows = mine ? typed : kept;
    const problem = quiet ? undefined : shown(state, text);
    this.hint = problem?.hint;
    const unit = habitOf(row, writing).unit;
    const help = helpOf(row, props);
    const waiting = !problem && shows === '' && (wants || needed(state, text));
    const bare = unit && (shows.trim() === '' || mine && value !== shows.trim());
    return h('div', {class: cls('field', `field-${row.kind}`, {wrong: !!problem})},
      h('label', {for: id, class: cls({unseen: hideLabel})}, label),
      h('div', {class: 'box'},
        h('input', {
          id, type: 'text', value: shows, list, name: text,
          'data-test': text === 'name' ? 'job-name' : 'field', 'data-path': text,
          inputMode: keyboard(row.kind), enterKeyHint: 'next', autocomplete: 'off',
          autocapitalize: plainText.has(row.kind) ? 'sentences' : 'off', spellcheck: plainText.has(row.kind),
          'aria-invalid': problem ? 'true' : undefined,
          'aria-describedby': describedBy(id, problem, help, waiting, bare),
          onbeforeinput: e => this.before(e), onInput: e => this.input(e), onBlur: () => this.blur(),
        }),
        waiting && wantsMark(id),
        unit && h('span', {class: cls('unit', {spare: !bare}), id: id + '-unit', 'aria-hidden': bare ? undefined : 'true'}, say(unit))),
      below(text, id, help, problem));
  }
}
