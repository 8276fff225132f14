// @ts-check
// One control of the form: its label, the box, its own unit, and what is wrong.
import {h, cls, Component} from './h.js';
import {asText, read, show} from './entry.js';
import {pathText} from '../state/path.js';
import {language, say} from '../text/say.js';
import {needed, shown} from '../state/problems.js';
import {units} from '../state/fields.js';

/**
 * How this reader writes quantities in this job.
 * @typedef {{comma: boolean, currency: string, measure: 'us' | 'metric', language: string}} Writing
 */

/** @param {any} state @returns {Writing} */
export function writingOf(state) {
  const {measure, currency} = state.job.doc;
  return {comma: state.comma === true, currency: typeof currency === 'string' ? currency : '', measure: measure === 'metric' ? 'metric' : 'us', language: language()};
}

const patience = 900; // ms without a key before what is being typed is called wrong
const press = 250; // ms that a tap on what comes next may take: nothing moves under it

/** An id that is one word, as what points at it must be. @param {string} path */
const idOf = path => 'f-' + encodeURIComponent(path);

/** @param {any} row @param {Writing} writing */
const habitOf = (row, writing) => ({unit: row.unit ? units[row.unit][writing.measure] : undefined, comma: writing.comma, currency: writing.currency});

/**
 * The value that the document keeps for what was typed.
 * @param {any} row @param {string} typed @param {Writing} writing
 */
export function readField(row, typed, writing) {
  const habit = habitOf(row, writing);
  if (row.kind === 'offset') {
    const [, sign, rest] = /^\s*([-−]?)\s*(.*)$/s.exec(typed) ?? [];
    const value = read('length', rest, habit);
    return sign && value !== undefined ? '-' + value : value;
  }
  return row.kind === 'id' || row.kind === 'size' ? typed.trim() || undefined : read(row.kind, typed, habit);
}

/** The text for a value of the document. @param {any} row @param {unknown} value @param {Writing} writing */
export function showField(row, value, writing) {
  const kind = row.kind === 'id' || row.kind === 'size' ? 'text' : row.kind === 'offset' ? 'length' : row.kind;
  return show(kind, value, habitOf(row, writing));
}

/** Called by their name alone: text that a keyboard must not correct. */
const plainText = new Set(['text']);

/** @param {string} kind */
const keyboard = kind => kind === 'count' ? 'numeric' : kind === 'money' ? 'decimal' : 'text';

/** What announces for the form. @type {WeakMap<object, (text: string) => void>} */
const announcers = new WeakMap();

/** Says something politely. @param {any} state @param {string} text */
export const announce = (state, text) => announcers.get(state)?.(text);

/** Where a screen reader hears of what is wrong. */
export class Announcer extends Component {
  constructor(/** @type {any} */ props) {
    super(props);
    this.state = {text: ''};
    announcers.set(props.state, text => this.setState({text}));
  }

  shouldComponentUpdate(/** @type {any} */ _, /** @type {any} */ state) { return state !== this.state; }

  render() {
    return h('p', {class: 'unseen', 'aria-live': 'polite'}, this.state.text);
  }
}

/** Puts what was typed into the job; undefined takes it away. @param {any} state @param {any[]} path @param {unknown} value */
export function put(state, path, value, how = {}) {
  state.job.set(path, value, {typing: true, ...how});
}

/** A field was left: soon what is wrong with it is shown. @param {any} state @param {string} path */
export function leave(state, path) {
  state.job.rest();
  if (state.touched.has(path)) return;
  setTimeout(() => {
    state.touched.add(path);
    state.redraw();
  }, press);
}

/** What a box will hold once a key is in it, where that is plain. @param {InputEvent} event */
function typedNext({inputType, data, isComposing, currentTarget}) {
  const {value, selectionStart: from, selectionEnd: to} = /** @type {HTMLInputElement} */ (currentTarget);
  if (isComposing || from === null || to === null) return undefined;
  if (inputType === 'insertText' && data) return value.slice(0, from) + data + value.slice(to);
  if (inputType === 'deleteContentBackward' && from < to) return value.slice(0, from) + value.slice(to);
  if (inputType === 'deleteContentBackward' && /^[\x20-\x7e]$/.test(value.charAt(from - 1))) return value.slice(0, from - 1) + value.slice(to);
  return undefined;
}

/**
 * A text box. Props: state, path, row, writing; label, hideLabel, wants, list;
 * value when it stands elsewhere than at the path, onPut when it is kept in a
 * way of its own; late when it is kept only once the box was left, as a name is
 * that other things hang on.
 */
export class Field extends Component {
  // Kept here and not as state, so that a key alone draws nothing: the box has it
  // already, and the job that it changed is drawn in its own time.
  /** @type {string | null} */
  typed = null;
  quiet = false; // nothing is called wrong while it is being typed

  componentWillUnmount() { clearTimeout(this.timer); }

  componentDidUpdate() {
    if (this.hint === this.announced) return;
    this.announced = this.hint;
    if (this.hint && this.worked) announce(this.props.state, `${this.props.label ?? say(this.props.row.label)}: ${this.hint}`);
  }

  /** @param {any} event */
  input(event) {
    const typed = event.currentTarget.value;
    this.worked = true;
    this.typed = typed;
    this.quiet = !this.hint; // what is shown already stays until it is put right
    this.showProblemIn(patience);
    if (this.props.late) this.forceUpdate(); // nothing else draws it
    else this.write(typed);
  }

  /** A key is on its way into the box. @param {any} event */
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
    const {text, value} = /** @type {any} */ (this.kept); // as it stood: the same text means the same
    return typed === text ? value : readField(row, typed, writing);
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

  /** @param {any} props */
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
          onbeforeinput: (/** @type {any} */ e) => this.before(e), onInput: (/** @type {any} */ e) => this.input(e), onBlur: () => this.blur(),
        }),
        waiting && wantsMark(id),
        unit && h('span', {class: cls('unit', {spare: !bare}), id: id + '-unit', 'aria-hidden': bare ? undefined : 'true'}, say(unit))),
      below(text, id, help, problem));
  }
}

/** @param {any} row @param {any} props */
function helpOf(row, {help, writing}) {
  const about = help ?? (row.help ? say(row.help) : '');
  if (!row.example) return about || undefined;
  const example = say(row.example[writing?.measure] ?? row.example);
  if (about === '') return say('such as {example}', {example});
  return about.endsWith('.') ? `${about} ${say('Such as {example}.', {example})}` : `${about}, ${say('such as {example}', {example})}`;
}

/** @param {string} id @param {any} problem @param {unknown} help @param {unknown} waits @param {unknown} [unit] */
const describedBy = (id, problem, help, waits, unit) => [problem && id + '-problem', waits && id + '-wants', unit && id + '-unit', help && id + '-help'].filter(Boolean).join(' ') || undefined;

/** What says that a box waits to be filled, where it moves nothing. @param {string} id */
const wantsMark = id => h('span', {class: 'wants', id: id + '-wants'}, say('needed'));

/** What stands under a box. @param {string} path @param {string} id @param {any} help @param {any} problem */
const below = (path, id, help, problem) => h('div', {class: 'below'},
  help && h('p', {class: 'help', id: id + '-help'}, help),
  problemText(path, problem));

/** The words of what is wrong, at the control or the head of what it is about. */
export function problemText(path, problem) {
  return problem && h('p', {class: 'problem', id: idOf(path) + '-problem', 'data-test': 'problem', 'data-path': path},
    problem.hint);
}

/** What is wrong with an object or a list, at its head. @param {any} state @param {any[]} path */
export function problemHead(state, path) {
  const text = pathText(path);
  return problemText(text, shown(state, text));
}

/**
 * A choice of the browser's own: values and what they are called.
 * @param {any} props state, path, row, value; options as [value, label] or
 *   {label, options}; onPick when it is kept elsewhere
 */
export function choice(props) {
  const {state, path, row, label = say(row.label), hideLabel, options = chooseFrom(row), empty, wants, onPick, test = 'field'} = props;
  const text = pathText(path), id = idOf(text) + (props.suffix ?? '');
  const value = 'value' in props ? props.value : state.job.get(path);
  const problem = props.suffix ? undefined : shown(state, text);
  const help = helpOf(row, props);
  const waiting = !problem && (wants || !props.suffix && needed(state, text));
  const pick = (/** @type {any} */ event) => {
    const picked = event.currentTarget.value;
    if (onPick) onPick(picked);
    else state.job.set(path, picked === '' ? undefined : picked);
    state.touched.add(text);
    state.redraw();
  };
  const known = options.flatMap((/** @type {any} */ o) => Array.isArray(o) ? [o[0]] : o.options.map((/** @type {any} */ p) => p[0]));
  const odd = value !== undefined && value !== '' && !known.includes(value);
  return h('div', {class: cls('field', 'field-choice', {wrong: !!problem})},
    h('label', {for: id, class: cls({unseen: hideLabel})}, label),
    h('div', {class: 'box'},
      h('select', {id, value: asText(value), 'data-test': test, 'data-path': text, name: text, 'aria-invalid': problem ? 'true' : undefined, 'aria-describedby': describedBy(id, problem, help, waiting), onChange: pick, onBlur: () => leave(state, text)},
        empty !== undefined && option('', empty),
        odd && option(asText(value), asText(value)),
        options.map((/** @type {any} */ o) => Array.isArray(o)
          ? option(o[0], o[1], o[2])
          : h('optgroup', {label: o.label, key: o.label}, o.options.map((/** @type {any} */ p) => option(p[0], p[1], p[2]))))),
      waiting && wantsMark(id)),
    below(text, id, help, problem));
}

/** @param {string} value @param {string} label @param {boolean} [disabled] */
const option = (value, label, disabled) => h('option', {value, key: value, disabled}, label);

/** @param {any} row */
const chooseFrom = row => row.choices.map((/** @type {[string, string]} */ [value, label]) => [value, say(label)]);

/**
 * A box to tick.
 * @param {any} props state, path, label, checked; onTick
 */
export function tick({state, path, label, checked, onTick, test = 'field', suffix = ''}) {
  const text = pathText(path), id = idOf(text) + suffix;
  const problem = suffix ? undefined : shown(state, text);
  return h('div', {class: cls('field', 'field-tick', {wrong: !!problem})},
    h('label', {class: 'tick', for: id},
      h('input', {id, type: 'checkbox', checked, name: text + suffix, 'data-test': test, 'data-path': text, 'aria-invalid': problem ? 'true' : undefined, 'aria-describedby': problem && id + '-problem',
        onChange: (/** @type {any} */ e) => { onTick(e.currentTarget.checked); state.redraw(); }}),
      h('span', null, label)),
    problemText(text, problem));
}

/** A yes or no of the document: no is left out. @param {any} props */
export function yesNo({state, path, row, value}) {
  return tick({state, path, label: say(row.label), checked: value === true, onTick: (/** @type {boolean} */ on) => state.job.set(path, on ? true : undefined)});
}
