// @ts-check
// A piece of ground: a shape with its lengths, or an object with what is added
// to it and left out of it.
import {h} from '../ui/h.js';
import {PureComponent} from '../ui/memo.js';
import {Field, choice, problemHead} from '../ui/field.js';
import {asText} from '../ui/entry.js';
import {Rows, Values} from '../ui/list.js';
import {anyWrong, control, hasAny, leftOver, more} from './control.js';
import {rowOf} from '../state/fields.js';
import {pathText} from '../state/path.js';
import {mark, say} from '../text/say.js';
import {needed, problemsAt} from '../state/problems.js';

/** @type {[string, string][]} */
const shapes = [
  ['rectangle', mark('Rectangle')],
  ['circle', mark('Circle')],
  ['area', mark('Area already known')],
  ['ellipse', mark('Ellipse')],
  ['triangle', mark('Triangle')],
  ['ring', mark('Ring')],
  ['strip', mark('Strip along a line')],
  ['corners', mark('Corner by corner')],
];
const names = shapes.map(([name]) => name);
const worded = ['rectangle', 'circle', 'ellipse', 'triangle', 'ring'];
const inSpanish = new Map(Object.entries({rectangulo: 'rectangle', circulo: 'circle', elipse: 'ellipse', triangulo: 'triangle', anillo: 'ring'}));
const beside = ['count', 'plus', 'less'];

/** @param {unknown} value @returns {value is Record<string, any>} */
const isObject = value => typeof value === 'object' && value !== null && !Array.isArray(value);

/** The shape that an area in one line has, and its lengths. @param {string} text */
export function readLine(text) {
  const [, word, rest] = /^\s*(\p{L}+)(?:\s+(.*))?$/su.exec(text) ?? [];
  const plain = word?.toLowerCase().normalize('NFD').replace(/\p{M}/gu, '') ?? '', shape = inSpanish.get(plain) ?? plain;
  if (worded.includes(shape)) return {shape, lengths: rest ?? ''};
  return {shape: /[x×✕*]|\s(?:by|por)\s/i.test(text) ? 'rectangle' : 'area', lengths: text};
}

/** One line for a shape. @param {string} shape @param {unknown} lengths */
const writeLine = (shape, lengths) => lengths === undefined ? undefined : shape === 'rectangle' || shape === 'area' ? lengths : `${shape} ${asText(lengths)}`;

/** Props: state, path, value, writing, label, mark. */
export class AreaForm extends PureComponent {
  constructor(/** @type {any} */ props) {
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

  /** @param {string} shape @param {any} lengths */
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
        choice({state, path, suffix: '-shape', test: 'way', row: {}, label, options: shapes.map(([name, text]) => [name, say(text)]), value: shape, onPick: (/** @type {string} */ name) => this.pick(name)}),
        shape !== 'strip' && shape !== 'corners' && !(shape === 'ring' && isObject(value?.ring)) &&
          h(Field, {state, path: at, row, value: this.lengths(shape), writing, label: shape === 'area' ? say('Area') : say('Measures'), wants, onPut: (/** @type {any} */ lengths) => this.write(shape, lengths)})),
      shape === 'ring' && isObject(value?.ring) && h('div', {class: 'pair'}, ['outer', 'inner'].map(name => control(state, [...path, 'ring'], value.ring, 'ring', name, ctx))),
      shape === 'strip' && stripForm(state, [...path, 'strip'], value?.strip, ctx),
      shape === 'corners' && cornersForm(state, [...path, 'corners'], value?.corners, ctx),
      more(state, path, say('More ground, or less'), () => this.beside(ctx), {filled: hasAny(value, beside), wrong: anyWrong(state, path, beside)}),
      leftOver(state, path, value, ['area'], [shape, ...beside], ctx));
  }

  /** How many of it, more ground, ground left out. @param {any} ctx */
  beside(ctx) {
    const {state, path, value} = this.props;
    const list = (/** @type {'plus' | 'less'} */ name, /** @type {string} */ adds) => h('div', {class: 'values', key: name},
      h('p', {class: 'subhead'}, say(rowOf('area', name).label)),
      h(Rows, {state, path: [...path, name], list: value?.[name], ctx, form: areaRow, one: (/** @type {any} */ _, /** @type {number} */ i) => say('{what} {n}', {what: say(rowOf('area', name).label), n: i + 1}), mark: problemsAt(state, pathText([...path, name])).mark,
        add: {label: adds, row: () => { this.object(); return ''; }}}));
    return [
      h(Field, {key: 'count', state, path: [...path, 'count'], row: rowOf('area', 'count'), value: isObject(value) ? value.count : undefined, writing: ctx.writing, onPut: (/** @type {any} */ n) => {
        if (n === undefined && !isObject(value)) return;
        this.object();
        state.job.set([...path, 'count'], n, {typing: true});
      }}),
      list('plus', say('Add more ground')),
      list('less', say('Leave some out')),
    ];
  }
}

/** @param {any} state @param {any[]} path @param {any} value @param {any} ctx */
const areaRow = (state, path, value, ctx) => h(AreaForm, {state, path, value, writing: ctx.writing, label: say('Ground'), mark: problemsAt(state, pathText(path)).mark});

/** @param {any} state @param {any[]} path @param {any} value @param {any} ctx */
function stripForm(state, path, value, ctx) {
  const one = (/** @type {string} */ name) => ({...rowOf('strip', name), kind: 'length'});
  const rest = ['edge', 'corners', 'gaps'];
  const lengths = (/** @type {string} */ name, /** @type {string} */ addLabel) => h(Values, {key: name, state, path: [...path, name], list: value?.[name], row: one(name), writing: ctx.writing, label: say(rowOf('strip', name).label), addLabel, mark: problemsAt(state, pathText([...path, name])).mark});
  return h('div', {class: 'strip'},
    problemHead(state, path),
    lengths('along', say('Add a run')),
    control(state, path, value, 'strip', 'width', ctx),
    more(state, path, say('Corners and gaps'), () => [
      control(state, path, value, 'strip', 'edge', ctx, {empty: say('The middle')}),
      control(state, path, value, 'strip', 'corners', ctx),
      lengths('gaps', say('Add a gap')),
    ], {filled: hasAny(value, rest), wrong: anyWrong(state, path, rest)}),
    leftOver(state, path, value, ['strip'], ['along', 'width', ...rest], ctx));
}

/** @param {any} state @param {any[]} path @param {any} value @param {any} ctx */
function cornersForm(state, path, value, ctx) {
  return h('div', {class: 'corners'},
    h('p', {class: 'help'}, say('Measured from one corner: how far to the right, how far up. List the corners in order, one way round.')),
    h(Rows, {state, path, list: value, ctx, form: cornerRow, one: (/** @type {any} */ _, /** @type {number} */ i) => say('Corner {n}', {n: i + 1}), class: 'tight', mark: problemsAt(state, pathText(path)).mark,
      add: {label: say('Add a corner'), row: () => ['', '']}}));
}

const offset = {name: 'offset', kind: 'offset', unit: 'side', label: mark('Right')};

/** @param {any} state @param {any[]} path @param {any} value @param {any} ctx */
const cornerRow = (state, path, value, ctx) => h('div', {class: 'pair'}, [say('Right'), say('Up')].map((label, i) =>
  h(Field, {key: i, state, path: [...path, i], row: offset, value: value?.[i], writing: ctx.writing, label, onPut: (/** @type {any} */ to) => state.job.set([...path, i], to ?? '', {typing: true})})));
