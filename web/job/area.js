// @ts-check
// A piece of ground: a shape with its lengths, or an object with what is added
// to it and left out of it.
import {h} from '../ui/h.js';
import {problemHead} from '../ui/around.js';
import {choice} from '../ui/choice.js';
import {Field} from '../ui/field.js';
import {PureComponent} from '../ui/memo.js';
import {anyWrong, control, hasAny, leftOver, more} from './control.js';
import {rows} from './list.js';
import {names, readLine, shapes, worded, writeLine} from './shapes.js';
import {cornersForm, stripForm} from './strip.js';
import {otherFields, rowOf} from '../state/fields.js';
import {isObject, pathText} from '../state/path.js';
import {needed, problemsAt} from '../state/problems.js';
import {say} from '../text/say.js';

/**
 * @import {Path} from '../state/path.js'
 * @import {Doc} from '../store/record.js'
 * @import {State} from '../state/types.d.ts'
 * @import {Writing} from '../ui/writing.js'
 * @import {Context} from './control.js'
 */

const others = otherFields('area', [...names, 'count', 'plus', 'less']);
const beside = ['count', 'plus', 'less', ...others];

/** The value is of the document: it may be anything. @typedef {{state: State, path: Path, value: any, writing: Writing, label: string, mark: string}} Props */

/** @extends {PureComponent<Props, {shape: string | null}>} */
export class AreaForm extends PureComponent {
  /** What was written last: text that somebody goes on with. @type {unknown} */
  wrote;

  /** @param {Props} props */
  constructor(props) {
    super(props);
    this.state = {shape: null}; // picked, or what was there when the box was filled
  }

  /** The shape that is shown. */
  shape() {
    const {value} = this.props;
    if (isObject(value)) return names.find(name => value[name] !== undefined) ?? this.state.shape ?? 'rectangle';
    // What is being typed may look like another shape on the way: 60, 60 x 4.
    if (this.state.shape && (!value || this.wrote === value)) return this.state.shape;
    return typeof value === 'string' && value !== '' ? readLine(value).shape : 'rectangle';
  }

  /** @param {string} shape */
  pick(shape) {
    const {state, path, value} = this.props;
    this.setState({shape});
    const rest = isObject(value) ? Object.fromEntries(Object.entries(value).filter(([key]) => !names.includes(key))) : {};
    const old = this.lengths(this.shape());
    const kept = typeof old === 'string' && old !== '' && worded.includes(shape) && worded.includes(this.shape()) ? old : undefined;
    if (shape === 'strip') state.job.set(path, {...rest, strip: {along: ['']}}, {typing: false});
    else if (shape === 'corners') state.job.set(path, {...rest, corners: [['', ''], ['', ''], ['', '']]}, {typing: false});
    else if (Object.keys(rest).length > 0) state.job.set(path, kept === undefined ? rest : {...rest, [shape]: kept}, {typing: false});
    else {
      this.wrote = writeLine(shape, kept) ?? (typeof path.at(-1) === 'number' ? '' : undefined);
      state.job.set(path, this.wrote, {typing: false});
    }
  }

  /** The lengths of a shape, as the document has them. @param {string} shape */
  lengths(shape) {
    const {value} = this.props;
    if (isObject(value)) return value[shape];
    if (typeof value !== 'string' || value === '') return value || undefined;
    const line = readLine(value);
    return line.shape === shape ? line.lengths : value;
  }

  /** @param {string} shape @param {unknown} lengths */
  write(shape, lengths) {
    const {state, path, value} = this.props;
    if (isObject(value)) {
      state.job.set([...path, shape], lengths, {typing: true});
      return;
    }
    const empty = typeof path.at(-1) === 'number' ? '' : undefined; // an area of a list keeps its place
    this.wrote = writeLine(shape, lengths) ?? empty;
    if (this.state.shape !== shape) this.setState({shape});
    state.job.set(path, this.wrote, {typing: true});
  }

  /** Room for what stands beside a shape. */
  object() {
    const {state, path, value} = this.props;
    if (isObject(value)) return;
    const shape = this.shape(), lengths = this.lengths(shape);
    state.job.set(path, lengths === undefined || lengths === '' ? {} : {[shape]: lengths}, {typing: false});
  }

  /** @param {Props} props */
  render({state, path, value, writing, label}) {
    const shape = this.shape();
    const at = isObject(value) ? [...path, shape] : path;
    const row = rowOf('area', shape);
    const wants = needed(state, pathText(path));
    const ctx = {writing};
    return h('fieldset', {class: 'area'},
      h('legend', {class: 'unseen'}, label),
      at !== path && problemHead(state, path),
      h('div', {class: 'pair shape'},
        choice({state, path, suffix: '-shape', test: 'way', label, options: shapes.map(([name, text]) => [name, say(text)]), value: shape, onPick: name => this.pick(name)}),
        shape !== 'strip' && shape !== 'corners' && !(shape === 'ring' && isObject(value?.ring)) &&
          h(Field, {state, path: at, row, value: this.lengths(shape), writing, label: shape === 'area' ? say('Area') : say('Measures'), wants, onPut: lengths => this.write(shape, lengths)})),
      shape === 'ring' && isObject(value?.ring) && h('div', {class: 'pair'}, otherFields('ring', []).map(name => control(state, [...path, 'ring'], value.ring, 'ring', name, ctx))),
      shape === 'strip' && stripForm(state, [...path, 'strip'], value?.strip, ctx),
      shape === 'corners' && cornersForm(state, [...path, 'corners'], value?.corners, ctx),
      more(state, path, say('More ground, or less'), () => this.beside(ctx), {filled: hasAny(value, beside), wrong: anyWrong(state, path, beside)}),
      leftOver(state, path, value, ['area'], [shape, ...beside], ctx));
  }

  /** How many of it, more ground, ground left out. @param {Context} ctx */
  beside(ctx) {
    const {state, path, value} = this.props;
    /** @param {'plus' | 'less'} name @param {string} adds */
    const list = (name, adds) => h('div', {class: 'values', key: name},
      h('p', {class: 'subhead'}, say(rowOf('area', name).label)),
      rows({state, path: [...path, name], list: value?.[name], ctx, form: areaRow, one: (_, i) => say('{what} {n}', {what: say(rowOf('area', name).label), n: i + 1}), mark: problemsAt(state, pathText([...path, name])).mark,
        add: {label: adds, row: () => { this.object(); return ''; }}}));
    return [
      h(Field, {key: 'count', state, path: [...path, 'count'], row: rowOf('area', 'count'), value: isObject(value) ? value.count : undefined, writing: ctx.writing, onPut: n => {
        if (n === undefined && !isObject(value)) return;
        this.object();
        state.job.set([...path, 'count'], n, {typing: true});
      }}),
      list('plus', say('Add more ground')),
      list('less', say('Leave some out')),
      others.length > 0 && h('div', {key: 'others', onInputCapture: () => this.object(), onChangeCapture: () => this.object()}, others.map(name => control(state, path, isObject(value) ? value : undefined, 'area', name, ctx))),
    ];
  }
}

/** @param {State} state @param {Path} path @param {any} value @param {Context} ctx */
const areaRow = (state, path, value, ctx) => h(AreaForm, {state, path, value, writing: ctx.writing, label: say('Ground'), mark: problemsAt(state, pathText(path)).mark});

/** The ground of a task. @param {State} state @param {Path} path of the task @param {Doc} task @param {Context} ctx */
export function areaOf(state, path, task, ctx) {
  const at = [...path, 'area'];
  return h(AreaForm, {key: 'area', state, path: at, value: task.area, writing: ctx.writing, label: say('Ground'), mark: problemsAt(state, pathText(at)).mark});
}
