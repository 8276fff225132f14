// @ts-check
// One task: what is done, with what, and how much of it.
import {h, cls} from '../ui/h.js';
import {problemHead} from '../ui/around.js';
import {choice} from '../ui/choice.js';
import {amend} from './amend.js';
import {areaOf} from './area.js';
import {backfill} from './backfill.js';
import {anyWrong, control, hasAny, leftOver, more} from './control.js';
import {cover} from './cover.js';
import {fill} from './fill.js';
import {filling} from './filling.js';
import {FocusComponent} from './focus.js';
import {flag} from './list.js';
import {textOf} from './mix.js';
import {copyRow, moveRow, removeRow} from './rows.js';
import {kinds, objects, otherFields, rowOf, taskObjects} from '../state/fields.js';
import {pathText} from '../state/path.js';
import {problemsAt} from '../state/problems.js';
import {toggle} from '../state/state.js';
import {say} from '../text/say.js';

/**
 * @import {Child} from '../ui/h.js'
 * @import {Path} from '../state/path.js'
 * @import {Doc} from '../store/record.js'
 * @import {State} from '../state/types.d.ts'
 * @import {Context, NamedContext} from './control.js'
 */

/** What the form of a task needs; for the lines of what is filled, less. @typedef {NamedContext & {lines: Context}} TaskContext */

/**
 * The form of a kind of task: what it is for, what a new one has, its fields and
 * those of the kind's own that it asks for among them.
 * @typedef {object} KindForm
 * @property {string} about
 * @property {() => Doc} [start]
 * @property {string[]} asks
 * @property {(state: State, path: Path, task: Doc, ctx: TaskContext) => Child} fields
 */

/** @type {Record<string, KindForm | undefined>} */
export const forms = {fill, amend, backfill, cover};

/** The form of a kind that nobody wrote one for: its fields in their order, and what goes in. @param {string} kind @returns {KindForm} */
const plainForm = kind => {
  const asks = otherFields(kind, []);
  return {about: '', asks, fields: (state, path, task, ctx) => [
    asks.map(name => name === 'area' ? areaOf(state, path, task, ctx) : control(state, path, task, kind, name, ctx)),
    filling(state, path, task, ctx, {label: say('What goes in')}),
  ]};
};

/** What a task of a kind starts with. @param {string} kind @returns {Doc} */
export const newTask = kind => ({kind, ...forms[kind]?.start?.()});

/** What a task is called. @param {any} task @param {number} index */
export const taskTitle = (task, index) => textOf(task?.name) || kindName(task?.kind) || say('Task {n}', {n: index + 1});

/** @param {unknown} kind */
function kindName(kind) {
  const found = kinds.find(([word]) => word === kind);
  return found ? say(found[1]) : '';
}

/**
 * @typedef {object} Props
 * @property {State} state
 * @property {Path} path
 * @property {any} task of the document: it may be anything
 * @property {TaskContext} ctx
 * @property {string} name what it is folded out by
 * @property {boolean} open
 * @property {boolean} last
 * @property {string} [figure] what it takes, in a few words
 * @property {string} mark another when a problem below is
 */

/**
 * A task, folded to one line or open.
 * @extends {FocusComponent<Props>}
 */
export class TaskForm extends FocusComponent {
  /** @param {Props} props */
  render({state, path, task, ctx, name, open, last, figure}) {
    const index = Number(path.at(-1)), text = pathText(path), title = taskTitle(task, index);
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
const goesIn = ['mix', 'material'];
const others = otherFields('task', ['kind', 'name', ...goesIn, ...allowances]);

/** @param {State} state @param {Path} path @param {any} task @param {TaskContext} ctx */
function taskFields(state, path, task, ctx) {
  const tables = taskObjects(task?.kind);
  if (!kindName(task?.kind)) return [kindChoice(state, path, task), leftOver(state, path, task, tables, ['kind'], ctx)];
  const form = forms[task.kind] ?? plainForm(task.kind);
  const own = otherFields(task.kind, form.asks), inside = [...allowances, ...others, ...own];
  const under = ['name', 'kind', ...inside];
  return [
    form.fields(state, path, task, ctx),
    more(state, path, say('Name and allowances'), () => [
      control(state, path, task, 'task', 'name', ctx),
      ...allowances.map(name => control(state, path, task, 'task', name, ctx)),
      kindChoice(state, path, task),
      ...others.map(name => control(state, path, task, 'task', name, ctx)),
      ...own.map(name => control(state, path, task, task.kind, name, ctx)),
    ], {filled: hasAny(task, inside), wrong: anyWrong(state, path, under)}),
    leftOver(state, path, task, tables, [...under, ...goesIn, ...objects[task.kind].fields.map(r => r.name)], ctx),
  ];
}

/** Another kind of work: what it does not have is left out. @param {State} state @param {Path} path @param {any} task */
function kindChoice(state, path, task) {
  return choice({state, path: [...path, 'kind'], row: rowOf('task', 'kind'), value: task?.kind, empty: task?.kind === undefined ? say('Choose') : undefined, onPick: kind => {
    const takes = taskObjects(kind).flatMap(name => objects[name].fields.map(r => r.name));
    const kept = Object.entries(task ?? {}).filter(([key]) => takes.includes(key) && (objects.task.fields.some(r => r.name === key) || ['area', 'layer', 'soil', 'ball'].includes(key)));
    state.job.set(path, {...newTask(kind), ...Object.fromEntries(kept), kind}, {label: say('Changed')});
  }});
}
