// @ts-check
// One task: what is done, with what, and how much of it.
import {h, cls} from '../ui/h.js';
import {PureComponent} from '../ui/memo.js';
import {Field, choice, problemHead, problemText, tick} from '../ui/field.js';
import {Either} from '../ui/either.js';
import {Rows, flag} from '../ui/list.js';
import {AreaForm} from './area.js';
import {KeyedRows, readParts, writeParts} from './keyed_rows.js';
import {containerForm, containerTitle, newContainer} from './container.js';
import {anyWrong, control, hasAny, leftOver, more} from './control.js';
import {kinds, objects, rowOf, taskObjects} from '../state/fields.js';
import {partGroups} from './names.js';
import {partRow, textOf} from './mix.js';
import {describe} from './material.js';
import {copyRow, giveFocus, moveRow, removeRow} from '../ui/rows.js';
import {asText} from '../ui/entry.js';
import {toggle} from '../state/state.js';
import {pathText} from '../state/path.js';
import {mark, say} from '../text/say.js';
import {needed, shown, problemsAt} from '../state/problems.js';

/** What a task of a kind starts with. @param {string} kind */
export const newTask = kind => kind === 'fill' ? {kind, containers: [newContainer()]} : {kind};

/** What a task is called. @param {any} task @param {number} index */
export const taskTitle = (task, index) => textOf(task?.name) || kindName(task?.kind) || say('Task {n}', {n: index + 1});

/** @param {unknown} kind */
function kindName(kind) {
  const found = kinds.find(([word]) => word === kind);
  return found ? say(found[1]) : '';
}

/**
 * A task, folded to one line or open. Props: state, path, task, ctx, name, open,
 * last, figure (what it takes, in a few words), mark.
 */
export class TaskForm extends PureComponent {
  componentDidMount() { giveFocus(this.props.state, this.props.path, this.base); }
  componentDidUpdate() { giveFocus(this.props.state, this.props.path, this.base); }

  render({state, path, task, ctx, name, open, last, figure}) {
    const index = path.at(-1), text = pathText(path), title = taskTitle(task, index);
    const kind = kindName(task?.kind);
    return h('div', {class: cls('task-entry', {open}), tabIndex: -1},
      h('h3', null, h('button', {type: 'button', class: 'opener', 'aria-expanded': String(open), 'data-test': 'open-row', 'data-path': text, onClick: () => toggle(state, name)},
        h('span', {class: 'number'}, index + 1),
        h('span', {class: 'opener-body'},
          h('span', {class: 'opener-title'}, title, kind !== title && h('small', null, kind)),
          !open && figure && h('span', {class: 'opener-figure'}, figure),
          !open && flag(problemsAt(state, text))))),
      open && h('div', {class: 'row-inside', role: 'group', 'aria-label': title},
        problemHead(state, path),
        taskFields(state, path, task, ctx),
        h('div', {class: 'task-acts'},
          act('copy', say('Duplicate'), say('Duplicate {what}', {what: title}), () => copyRow(state, path)),
          index > 0 && act('up', say('Move up'), say('Move up: {what}', {what: title}), () => moveRow(state, path, 'up')),
          !last && act('down', say('Move down'), say('Move down: {what}', {what: title}), () => moveRow(state, path, 'down')),
          h('button', {type: 'button', class: 'take-out', 'data-test': 'remove-row', 'data-path': text, 'aria-label': say('Remove {what}', {what: title}), onClick: () => removeRow(state, path, title)}, say('Remove')))));
  }
}

/** @param {string} name @param {string} label @param {string} full @param {() => void} onClick */
const act = (name, label, full, onClick) => h('button', {type: 'button', class: 'act', 'data-act': name, 'data-test': 'task-' + name, 'aria-label': full, onClick}, label);

const allowances = ['settle', 'blend_loss', 'spare'];

/** @param {any} state @param {any[]} path @param {any} task @param {any} ctx */
function taskFields(state, path, task, ctx) {
  const form = kindName(task?.kind) && forms[task.kind];
  const tables = taskObjects(task?.kind);
  const under = ['name', 'kind', ...allowances];
  if (!form) return [kindChoice(state, path, task), leftOver(state, path, task, tables, ['kind'], ctx)];
  return [
    form(state, path, task, ctx),
    more(state, path, say('Name and allowances'), () => [
      control(state, path, task, 'task', 'name', ctx),
      ...allowances.map(name => control(state, path, task, 'task', name, ctx)),
      kindChoice(state, path, task),
    ], {filled: hasAny(task, allowances), wrong: anyWrong(state, path, under)}),
    leftOver(state, path, task, tables, [...under, 'mix', 'material', ...objects[task.kind].fields.map(r => r.name)], ctx),
  ];
}

/** Another kind of work: what it does not have is left out. @param {any} state @param {any[]} path @param {any} task */
function kindChoice(state, path, task) {
  return choice({state, path: [...path, 'kind'], row: rowOf('task', 'kind'), value: task?.kind, empty: task?.kind === undefined ? say('Choose') : undefined, onPick: (/** @type {string} */ kind) => {
    const takes = taskObjects(kind).flatMap(name => objects[name].fields.map(r => r.name));
    const kept = Object.entries(task ?? {}).filter(([key]) => takes.includes(key) && (objects.task.fields.some(r => r.name === key) || ['area', 'layer', 'soil', 'ball'].includes(key)));
    state.job.set(path, {...newTask(kind), ...Object.fromEntries(kept), kind}, {label: say('Changed')});
  }});
}

/** The form of each kind of task. @type {Record<string, (state: any, path: any[], task: any, ctx: any) => any>} */
const forms = {
  fill: (state, path, task, ctx) => [
    h(Filling, {key: 'filling', state, path, ...filled(task), ctx, label: say('Filled with'), mark: problemsAt(state, pathText(path)).mark}),
    h('div', {key: 'lines', class: 'filled-lines'},
      h('p', {class: 'subhead'}, say('What is filled')),
      h(Rows, {state, path: [...path, 'containers'], list: task.containers, ctx: ctx.lines, form: containerForm, one: containerTitle, add: {label: say('Add containers'), row: newContainer}, mark: problemsAt(state, pathText([...path, 'containers'])).mark})),
  ],
  amend: (state, path, task, ctx) => [
    h(Filling, {key: 'filling', state, path, ...filled(task), ctx, label: say('What is dug in'), mark: problemsAt(state, pathText(path)).mark}),
    area(state, path, task, ctx),
    h(Either, {key: 'layer', state, path, value: task, ways: layers, legend: say('How much'), inline: true, draw: (/** @type {any} */ way) => one(state, path, task, way, ['layer', 'share'], ctx)}),
    h(Either, {key: 'into', state, path, value: task, ways: depths, legend: say('Into what'), inline: true, draw: (/** @type {any} */ way) => one(state, path, task, way, ['into', 'over'], ctx)}),
    control(state, path, task, 'amend', 'soil', ctx),
  ],
  backfill: (state, path, task, ctx) => [
    h('div', {key: 'holes', class: 'pair'}, ['holes', 'width', 'depth', 'ball', 'above_grade', 'soil'].map(name => control(state, path, task, 'backfill', name, ctx, {empty: say('Clay, when not said')}))),
    h(Filling, {key: 'filling', state, path, ...filled(task), ctx, label: say('Mixed into the soil'), nothing: say('Nothing, only soil goes back'), mark: problemsAt(state, pathText(path)).mark}),
    (hasAny(task, ['mix', 'material', 'share']) || needed(state, pathText([...path, 'share']))) && control(state, path, task, 'backfill', 'share', ctx),
  ],
  cover: (state, path, task, ctx) => [
    h(Filling, {key: 'filling', state, path, ...filled(task), ctx, label: say('Covered with'), mark: problemsAt(state, pathText(path)).mark}),
    area(state, path, task, ctx),
    control(state, path, task, 'cover', 'layer', ctx),
    optional(state, path, task, 'stems', ['count', 'clear'], ctx),
    optional(state, path, task, 'sheet', ['size', 'overlap'], ctx),
  ],
};

const layers = [{name: 'layer', label: mark('A layer of'), keys: ['layer']}, {name: 'share', label: mark('A share of the finished bed'), keys: ['share']}];
const depths = [{name: 'into', label: mark('A finished depth of'), keys: ['into']}, {name: 'over', label: mark('Soil loosened to'), keys: ['over']}];

/** The one of two fields that is given, and the other where a job has both. @param {any} state @param {any[]} path @param {any} task @param {any} way @param {string[]} two @param {any} ctx */
const one = (state, path, task, way, two, ctx) => [
  control(state, path, task, 'amend', way.name, ctx, {hideLabel: true}),
  leftOver(state, path, Object.fromEntries(Object.entries(task).filter(([key]) => two.includes(key))), ['amend'], way.keys, ctx),
];

/** @param {any} state @param {any[]} path @param {any} task @param {any} ctx */
function area(state, path, task, ctx) {
  const at = [...path, 'area'];
  return h(AreaForm, {key: 'area', state, path: at, value: task.area, writing: ctx.writing, label: say('Ground'), mark: problemsAt(state, pathText(at)).mark});
}

/** An object that is there or not: a box to tick, and its fields. @param {any} state @param {any[]} path @param {any} task @param {string} name @param {string[]} fields @param {any} ctx */
function optional(state, path, task, name, fields, ctx) {
  const at = [...path, name], value = task[name], has = value !== undefined;
  return h('div', {key: name, class: 'optional'},
    tick({state, path: at, suffix: has ? '' : '-tick', label: say(rowOf('cover', name).label), checked: has, onTick: on => state.job.set(at, on ? {} : undefined)}),
    has && h('div', {class: 'pair', role: 'group', 'aria-label': say(rowOf('cover', name).label)}, fields.map(field => control(state, at, value, name, field, ctx))),
    has && leftOver(state, at, value, [name], fields, ctx));
}

/** What of a task says what goes in. @param {any} task */
const filled = ({kind, mix, material}) => ({kind, mix, material});

/** What goes in: a mix by name, a material, or parts of one's own. */
class Filling extends PureComponent {
  constructor(/** @type {any} */ props) {
    super(props);
    this.state = {parts: null, mode: null};
  }

  /** @param {string} picked */
  pick(picked) {
    const {state, path} = this.props, task = state.job.get(path);
    const [what, id] = [picked.slice(0, picked.indexOf(':')), picked.slice(picked.indexOf(':') + 1)];
    this.setState({mode: what === 'parts' || what === 'other' ? what : null, parts: null});
    const rest = Object.fromEntries(Object.entries(task).filter(([key]) => key !== 'mix' && key !== 'material'));
    const named = what === 'mix' ? {mix: id} : what === 'material' ? {material: id} : {};
    // Fields keep their order: what goes in stands after kind and name.
    const {kind, name, ...others} = rest;
    state.job.set(path, {kind, ...name === undefined ? {} : {name}, ...named, ...others}, {label: say('Changed'), typing: false});
  }

  /** @param {[string, any][]} parts */
  write(parts) {
    this.setState({parts});
    this.props.state.job.set([...this.props.path, 'mix'], writeParts(parts), {typing: true});
  }

  render({state, path, kind, mix, material, ctx, label, nothing}) {
    const {names, writing} = ctx, {mode} = this.state;
    const both = mix !== undefined && material !== undefined;
    const mixes = [...names.ownMixes, ...names.mixes];
    const known = (/** @type {any[]} */ list, /** @type {unknown} */ id) => list.some(([one]) => one === id);
    const spelled = typeof mix === 'string' && /[\s,]/.test(mix) && !known(mixes, mix);
    const parts = this.state.parts && writeParts(this.state.parts) === mix ? this.state.parts : mix === undefined ? [] : readParts(mix);
    const inParts = mode === 'parts' || spelled;
    const inOther = mode === 'other';
    const value = inParts ? 'parts:' : inOther ? 'other:' : mix !== undefined ? 'mix:' + asText(mix) : material !== undefined ? 'material:' + asText(material) : '';
    const at = material !== undefined || mix === undefined ? [...path, 'material'] : [...path, 'mix'];
    const prefixed = (/** @type {string} */ what, /** @type {any[]} */ list) => list.map(([id, name]) => [`${what}:${id}`, name]);
    const mixGroups = [{label: say('Your own mixes'), options: prefixed('mix', names.ownMixes)}, {label: say('Mixes'), options: prefixed('mix', names.mixes)}];
    const plainGroups = [{label: say('Your own materials'), options: prefixed('material', names.ownMaterials)}, {label: say('Materials'), options: prefixed('material', names.materials)}];
    const groups = (kind === 'fill' ? [...mixGroups, ...plainGroups] : [...plainGroups, ...mixGroups]).filter(g => g.options.length > 0);
    // What is in no list stands under its own id.
    const unknown = !inParts && !inOther && value !== '' && !groups.some(g => g.options.some(([one]) => one === value));
    const options = [...unknown ? [[value, asText(mix ?? material)]] : [], ...groups, ['parts:', say('Parts of my own…')], ['other:', say('Something else…')]];
    const text = pathText(at);
    return h('div', {class: 'filling'},
      choice({state, path: at, row: {}, label, options, value, empty: nothing ?? say('Choose'), suffix: inParts || inOther ? '-list' : undefined, test: inParts || inOther ? 'field-list' : 'field', onPick: (/** @type {string} */ picked) => this.pick(picked)}),
      inParts && (parts
        ? h(KeyedRows, {state, path: [...path, 'mix'], entries: parts, write: (/** @type {any} */ next) => this.write(next), pathOf: (/** @type {string} */ id) => [...path, 'mix', id], figure: partRow, names, groups: partGroups(names), writing, first: 1, addLabel: say('Add a part'), mark: problemsAt(state, text).mark})
        : h(Field, {state, path: [...path, 'mix'], row: {...rowOf('task', 'mix'), kind: 'parts'}, writing, label: say('Parts by volume')})),
      unknown && mix === undefined && typeof material === 'string' && names.materials.length > 0 && describe(state, material),
      inOther && h(Field, {state, path: [...path, 'material'], row: {...rowOf('task', 'material'), kind: 'id'}, writing, label: say('Its short name')}),
      both && h('div', {class: 'extra'}, problemText(pathText([...path, 'mix']), shown(state, pathText([...path, 'mix']))),
        h('button', {type: 'button', class: 'take-out', 'data-test': 'remove-row', 'data-path': pathText([...path, 'mix']), onClick: () => { state.job.set([...path, 'mix'], undefined); state.redraw(); }}, say('Take out {what}', {what: asText(mix)}))));
  }
}
