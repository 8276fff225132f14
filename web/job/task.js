// @ts-check
// One task: what is done, with what, and how much of it.
import {h, cls} from '../ui/h.js';
import {Part} from '../ui/memo.js';
import {Field, choice, tick, trouble, troubleHead} from '../ui/field.js';
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
import {needed, shown, troubleAt} from '../state/problems.js';

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
 * A task, folded to one line or open. Props: desk, path, task, ctx, name, open,
 * last, figure (what it takes, in a few words), mark.
 */
export class TaskForm extends Part {
  componentDidMount() { giveFocus(this.props.desk, this.props.path, this.base); }
  componentDidUpdate() { giveFocus(this.props.desk, this.props.path, this.base); }

  render({desk, path, task, ctx, name, open, last, figure}) {
    const index = path.at(-1), text = pathText(path), title = taskTitle(task, index);
    const kind = kindName(task?.kind);
    return h('div', {class: cls('task-entry', {open}), tabIndex: -1},
      h('h3', null, h('button', {type: 'button', class: 'opener', 'aria-expanded': String(open), 'data-test': 'open-row', 'data-path': text, onClick: () => toggle(desk, name)},
        h('span', {class: 'number'}, index + 1),
        h('span', {class: 'opener-body'},
          h('span', {class: 'opener-title'}, title, kind !== title && h('small', null, kind)),
          !open && figure && h('span', {class: 'opener-figure'}, figure),
          !open && flag(troubleAt(desk, text))))),
      open && h('div', {class: 'row-inside', role: 'group', 'aria-label': title},
        troubleHead(desk, path),
        taskFields(desk, path, task, ctx),
        h('div', {class: 'task-acts'},
          act('copy', say('Duplicate'), say('Duplicate {what}', {what: title}), () => copyRow(desk, path)),
          index > 0 && act('up', say('Move up'), say('Move up: {what}', {what: title}), () => moveRow(desk, path, 'up')),
          !last && act('down', say('Move down'), say('Move down: {what}', {what: title}), () => moveRow(desk, path, 'down')),
          h('button', {type: 'button', class: 'take-out', 'data-test': 'remove-row', 'data-path': text, 'aria-label': say('Remove {what}', {what: title}), onClick: () => removeRow(desk, path, title)}, say('Remove')))));
  }
}

/** @param {string} name @param {string} label @param {string} full @param {() => void} onClick */
const act = (name, label, full, onClick) => h('button', {type: 'button', class: 'act', 'data-act': name, 'data-test': 'task-' + name, 'aria-label': full, onClick}, label);

const allowances = ['settle', 'blend_loss', 'spare'];

/** @param {any} desk @param {any[]} path @param {any} task @param {any} ctx */
function taskFields(desk, path, task, ctx) {
  const form = kindName(task?.kind) && forms[task.kind];
  const tables = taskObjects(task?.kind);
  const under = ['name', 'kind', ...allowances];
  if (!form) return [kindChoice(desk, path, task), leftOver(desk, path, task, tables, ['kind'], ctx)];
  return [
    form(desk, path, task, ctx),
    more(desk, path, say('Name and allowances'), () => [
      control(desk, path, task, 'task', 'name', ctx),
      ...allowances.map(name => control(desk, path, task, 'task', name, ctx)),
      kindChoice(desk, path, task),
    ], {filled: hasAny(task, allowances), wrong: anyWrong(desk, path, under)}),
    leftOver(desk, path, task, tables, [...under, 'mix', 'material', ...objects[task.kind].fields.map(r => r.name)], ctx),
  ];
}

/** Another kind of work: what it does not have is left out. @param {any} desk @param {any[]} path @param {any} task */
function kindChoice(desk, path, task) {
  return choice({desk, path: [...path, 'kind'], row: rowOf('task', 'kind'), value: task?.kind, empty: task?.kind === undefined ? say('Choose') : undefined, onPick: (/** @type {string} */ kind) => {
    const takes = taskObjects(kind).flatMap(name => objects[name].fields.map(r => r.name));
    const kept = Object.entries(task ?? {}).filter(([key]) => takes.includes(key) && (objects.task.fields.some(r => r.name === key) || ['area', 'layer', 'soil', 'ball'].includes(key)));
    desk.slate.set(path, {...newTask(kind), ...Object.fromEntries(kept), kind}, {label: say('Changed')});
  }});
}

/** The form of each kind of task. @type {Record<string, (desk: any, path: any[], task: any, ctx: any) => any>} */
const forms = {
  fill: (desk, path, task, ctx) => [
    h(Filling, {key: 'filling', desk, path, ...filled(task), ctx, label: say('Filled with'), mark: troubleAt(desk, pathText(path)).mark}),
    h('div', {key: 'lines', class: 'filled-lines'},
      h('p', {class: 'subhead'}, say('What is filled')),
      h(Rows, {desk, path: [...path, 'containers'], list: task.containers, ctx: ctx.lines, form: containerForm, one: containerTitle, add: {label: say('Add containers'), row: newContainer}, mark: troubleAt(desk, pathText([...path, 'containers'])).mark})),
  ],
  amend: (desk, path, task, ctx) => [
    h(Filling, {key: 'filling', desk, path, ...filled(task), ctx, label: say('What is dug in'), mark: troubleAt(desk, pathText(path)).mark}),
    area(desk, path, task, ctx),
    h(Either, {key: 'layer', desk, path, value: task, ways: layers, legend: say('How much'), inline: true, draw: (/** @type {any} */ way) => one(desk, path, task, way, ['layer', 'share'], ctx)}),
    h(Either, {key: 'into', desk, path, value: task, ways: depths, legend: say('Into what'), inline: true, draw: (/** @type {any} */ way) => one(desk, path, task, way, ['into', 'over'], ctx)}),
    control(desk, path, task, 'amend', 'soil', ctx),
  ],
  backfill: (desk, path, task, ctx) => [
    h('div', {key: 'holes', class: 'pair'}, ['holes', 'width', 'depth', 'ball', 'above_grade', 'soil'].map(name => control(desk, path, task, 'backfill', name, ctx, {empty: say('Clay, when not said')}))),
    h(Filling, {key: 'filling', desk, path, ...filled(task), ctx, label: say('Mixed into the soil'), nothing: say('Nothing, only soil goes back'), mark: troubleAt(desk, pathText(path)).mark}),
    (hasAny(task, ['mix', 'material', 'share']) || needed(desk, pathText([...path, 'share']))) && control(desk, path, task, 'backfill', 'share', ctx),
  ],
  cover: (desk, path, task, ctx) => [
    h(Filling, {key: 'filling', desk, path, ...filled(task), ctx, label: say('Covered with'), mark: troubleAt(desk, pathText(path)).mark}),
    area(desk, path, task, ctx),
    control(desk, path, task, 'cover', 'layer', ctx),
    optional(desk, path, task, 'stems', ['count', 'clear'], ctx),
    optional(desk, path, task, 'sheet', ['size', 'overlap'], ctx),
  ],
};

const layers = [{name: 'layer', label: mark('A layer of'), keys: ['layer']}, {name: 'share', label: mark('A share of the finished bed'), keys: ['share']}];
const depths = [{name: 'into', label: mark('A finished depth of'), keys: ['into']}, {name: 'over', label: mark('Soil loosened to'), keys: ['over']}];

/** The one of two fields that is given, and the other where a job has both. @param {any} desk @param {any[]} path @param {any} task @param {any} way @param {string[]} two @param {any} ctx */
const one = (desk, path, task, way, two, ctx) => [
  control(desk, path, task, 'amend', way.name, ctx, {hideLabel: true}),
  leftOver(desk, path, Object.fromEntries(Object.entries(task).filter(([key]) => two.includes(key))), ['amend'], way.keys, ctx),
];

/** @param {any} desk @param {any[]} path @param {any} task @param {any} ctx */
function area(desk, path, task, ctx) {
  const at = [...path, 'area'];
  return h(AreaForm, {key: 'area', desk, path: at, value: task.area, writing: ctx.writing, label: say('Ground'), mark: troubleAt(desk, pathText(at)).mark});
}

/** An object that is there or not: a box to tick, and its fields. @param {any} desk @param {any[]} path @param {any} task @param {string} name @param {string[]} fields @param {any} ctx */
function optional(desk, path, task, name, fields, ctx) {
  const at = [...path, name], value = task[name], has = value !== undefined;
  return h('div', {key: name, class: 'optional'},
    tick({desk, path: at, suffix: has ? '' : '-tick', label: say(rowOf('cover', name).label), checked: has, onTick: on => desk.slate.set(at, on ? {} : undefined)}),
    has && h('div', {class: 'pair', role: 'group', 'aria-label': say(rowOf('cover', name).label)}, fields.map(field => control(desk, at, value, name, field, ctx))),
    has && leftOver(desk, at, value, [name], fields, ctx));
}

/** What of a task says what goes in. @param {any} task */
const filled = ({kind, mix, material}) => ({kind, mix, material});

/** What goes in: a mix by name, a material, or parts of one's own. */
class Filling extends Part {
  constructor(/** @type {any} */ props) {
    super(props);
    this.state = {parts: null, mode: null};
  }

  /** @param {string} picked */
  pick(picked) {
    const {desk, path} = this.props, task = desk.slate.get(path);
    const [what, id] = [picked.slice(0, picked.indexOf(':')), picked.slice(picked.indexOf(':') + 1)];
    this.setState({mode: what === 'parts' || what === 'other' ? what : null, parts: null});
    const rest = Object.fromEntries(Object.entries(task).filter(([key]) => key !== 'mix' && key !== 'material'));
    const named = what === 'mix' ? {mix: id} : what === 'material' ? {material: id} : {};
    // Fields keep their order: what goes in stands after kind and name.
    const {kind, name, ...others} = rest;
    desk.slate.set(path, {kind, ...name === undefined ? {} : {name}, ...named, ...others}, {label: say('Changed'), typing: false});
  }

  /** @param {[string, any][]} parts */
  keep(parts) {
    this.setState({parts});
    this.props.desk.slate.set([...this.props.path, 'mix'], writeParts(parts), {typing: true});
  }

  render({desk, path, kind, mix, material, ctx, label, nothing}) {
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
      choice({desk, path: at, row: {}, label, options, value, empty: nothing ?? say('Choose'), suffix: inParts || inOther ? '-list' : undefined, test: inParts || inOther ? 'field-list' : 'field', onPick: (/** @type {string} */ picked) => this.pick(picked)}),
      inParts && (parts
        ? h(KeyedRows, {desk, path: [...path, 'mix'], entries: parts, keep: (/** @type {any} */ next) => this.keep(next), pathOf: (/** @type {string} */ id) => [...path, 'mix', id], figure: partRow, names, groups: partGroups(names), writing, first: 1, addLabel: say('Add a part'), mark: troubleAt(desk, text).mark})
        : h(Field, {desk, path: [...path, 'mix'], row: {...rowOf('task', 'mix'), kind: 'parts'}, writing, label: say('Parts by volume')})),
      unknown && mix === undefined && typeof material === 'string' && names.materials.length > 0 && describe(desk, material),
      inOther && h(Field, {desk, path: [...path, 'material'], row: {...rowOf('task', 'material'), kind: 'id'}, writing, label: say('Its short name')}),
      both && h('div', {class: 'extra'}, trouble(pathText([...path, 'mix']), shown(desk, pathText([...path, 'mix']))),
        h('button', {type: 'button', class: 'take-out', 'data-test': 'remove-row', 'data-path': pathText([...path, 'mix']), onClick: () => { desk.slate.set([...path, 'mix'], undefined); desk.redraw(); }}, say('Take out {what}', {what: asText(mix)}))));
  }
}
