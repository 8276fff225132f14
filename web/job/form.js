// @ts-check
// The Job place, where a job is entered: its work, its mixes, what is there,
// what the yard sells and what a drive carries.
import {h, cls, Component} from '../ui/h.js';
import {Part} from '../ui/memo.js';
import {Field, Speaker, choice, tick, troubleHead, writingOf} from '../ui/field.js';
import {Either} from '../ui/either.js';
import {Rows, flag} from '../ui/list.js';
import {KeyedRows} from './keyed_rows.js';
import {TaskForm, newTask} from './task.js';
import {entriesOf, mixForm, mixTitle, newMix, objectOf} from './mix.js';
import {newOffer, offerForm, offerTitle} from './offer.js';
import {materialForm, materialTitle, newMaterial, newOwnContainer, ownContainerForm, ownContainerTitle} from './own.js';
import {control, leftOver} from './control.js';
import {kinds, objects, rowOf} from '../state/fields.js';
import {namesOf} from './names.js';
import {addRow, giveFocus, nameRows, rowName, someRows} from '../ui/rows.js';
import {toggle} from '../state/state.js';
import {pathText} from '../state/path.js';
import {mark, say, sayCount} from '../text/say.js';
import {troubleAt} from '../state/problems.js';
import {taskResult} from '../result/task.js';

/** The entry of the whole job. @param {any} desk */
export const formView = desk => h(Form, {desk, key: 'form'});

class Form extends Component {
  /** What the parts are given; the same object while nothing in it changes. @param {any} desk */
  given(desk) {
    const writing = writingOf(desk);
    const names = namesOf(desk);
    const key = JSON.stringify([writing, ...desk.open]); // what is folded out is drawn by all parts
    if (this.key !== key) {
      this.key = key;
      this.lines = {writing};
      this.ctx = undefined;
    }
    if (!this.ctx || this.ctx.names !== names) this.ctx = {writing: /** @type {any} */ (this.lines).writing, names, lines: this.lines};
    return this.ctx;
  }

  render({desk}) {
    const ctx = this.given(desk), {doc} = desk.slate;
    return h('form', {class: 'job-form', autocomplete: 'off', onSubmit: (/** @type {any} */ e) => e.preventDefault(), onKeyDown: next},
      h(Speaker, {desk}),
      h('datalist', {id: 'sizes'}, ctx.names.sizes.map(([id, name]) => h('option', {value: id, key: id}, name))),
      troubleHead(desk, []),
      troubleHead(desk, ['schema']),
      h(Field, {desk, path: ['name'], row: rowOf('job', 'name'), writing: ctx.writing}),
      choice({desk, path: ['measure'], row: rowOf('job', 'measure'), value: doc.measure ?? 'us', test: 'measure'}),
      h(Tasks, {desk, tasks: doc.tasks, ctx}),
      sections.map(section => h(Section, {key: section.name, desk, section, ctx, open: desk.open.has('section ' + section.name), mark: section.paths.map(p => troubleAt(desk, p).mark).join('\n'), ...parts(doc, section.paths)})),
      leftOver(desk, [], doc, [], objects.job.fields.map(r => r.name), ctx));
  }
}

/** Enter goes on to the next box, as the key of a phone says. @param {any} event */
function next(event) {
  const {target, currentTarget} = event;
  if (event.key !== 'Enter' || event.isComposing || !target.matches('input[type="text"]')) return;
  const boxes = [...currentTarget.querySelectorAll('input, select')];
  event.preventDefault();
  boxes[boxes.indexOf(target) + 1]?.focus();
}

/** What a section is about, so that it is drawn again when that changes. @param {any} doc @param {string[]} paths */
const parts = (doc, paths) => Object.fromEntries(paths.map(path => ['doc_' + path, doc[path]]));

/** The tasks, with what each takes beside it. */
class Tasks extends Component {
  componentDidMount() { giveFocus(this.props.desk, ['tasks'], this.base); }
  componentDidUpdate() { giveFocus(this.props.desk, ['tasks'], this.base); }

  render({desk, tasks, ctx}) {
    const rows = Array.isArray(tasks) ? tasks : [];
    this.known = nameRows(this.known, rows);
    const {keys, fresh} = /** @type {any} */ (this.known);
    if (rows.length <= few || fresh.length === 1) for (const name of fresh) desk.open.add(name);
    const {most, more} = someRows(this, rows, fresh.length === 1);
    return h('section', {class: 'part tasks', 'aria-labelledby': 'the-work'},
      h('h2', {id: 'the-work'}, say('The work')),
      troubleHead(desk, ['tasks']),
      rows.length > 0 && h('ol', {class: 'task-list'}, rows.slice(0, most).map((task, i) => {
        const path = ['tasks', i], open = desk.open.has(keys[i]);
        return h('li', {key: keys[i], class: 'task', 'data-test': 'task', 'data-path': pathText(path)},
          h(TaskForm, {desk, path, task, ctx, name: keys[i], open, last: i === rows.length - 1, figure: open ? undefined : figureOf(desk, task, i), mark: troubleAt(desk, pathText(path)).mark}),
          open && taskResult(desk, i));
      })),
      more,
      h(Adder, {desk, none: rows.length === 0}));
  }
}

const few = 2; // tasks that all stand open when a job comes in

/** What a task takes, in a few words, of the plan of just this task. @param {any} desk @param {any} task @param {number} i */
function figureOf(desk, task, i) {
  const of = desk.planFor?.tasks;
  const index = of?.[i] === task ? i : of?.indexOf?.(task) ?? -1;
  const takes = index < 0 ? undefined : desk.plan?.tasks?.[index];
  return takes?.filling ? takes.loose_shown : undefined;
}

/** The choice of what to add to the work. */
class Adder extends Component {
  constructor(/** @type {any} */ props) {
    super(props);
    this.state = {open: false};
  }

  render({desk, none}, {open}) {
    const add = (/** @type {string} */ kind) => {
      this.setState({open: false});
      addRow(desk, ['tasks'], newTask(kind), say('Added'));
    };
    const shows = open || none;
    return h('div', {class: 'adder'},
      none && h('p', {class: 'help'}, say('What is to be done first?')),
      !none && h('button', {type: 'button', class: 'add big', 'data-test': 'add-task', 'data-act': 'add', 'data-path': 'tasks', 'aria-expanded': String(open), onClick: () => this.setState({open: !open})}, say('Add a task')),
      shows && h('ul', {class: 'kinds'}, kinds.map(([kind, name], i) => h('li', {key: kind},
        h('button', {type: 'button', 'data-test': 'add-' + kind, 'data-act': none && i === 0 ? 'add' : undefined, 'data-path': 'tasks', onClick: () => add(kind)}, h('strong', null, say(name)), h('span', null, say(abouts[kind])))))));
  }
}

/** @type {Record<string, string>} */
const abouts = {
  fill: mark('Mix for pots, cell trays and boxes.'),
  amend: mark('A layer of bark or compost dug into the soil.'),
  backfill: mark('Planting holes round their root balls.'),
  cover: mark('A layer on top, with stems kept clear.'),
};

/** @typedef {{name: string, title: string, about: string, paths: string[], sum: (doc: any, ctx: any) => string, form: (desk: any, ctx: any) => any}} SectionOf */

/** The rest of the job, each part folded to a line. */
class Section extends Part {
  render({desk, section, ctx, open}) {
    const sum = section.sum(desk.slate.doc, ctx);
    const troubles = section.paths.map((/** @type {string} */ p) => troubleAt(desk, p));
    const all = {mark: '', wrong: total(troubles, 'wrong'), waiting: total(troubles, 'waiting')};
    const id = 'section-' + section.name;
    return h('section', {class: cls('part', 'section', {open}), 'aria-labelledby': id},
      h('h2', {id}, h('button', {type: 'button', class: 'opener', 'aria-expanded': String(open), 'data-test': 'section', 'data-path': section.paths[0], onClick: () => toggle(desk, 'section ' + section.name)},
        h('span', {class: 'opener-body'}, h('span', {class: 'opener-title'}, say(section.title)), !open && sum && h('span', {class: 'opener-figure'}, sum), !open && flag(all)))),
      open && h('div', {class: 'section-inside'},
        h('p', {class: 'help'}, say(section.about)),
        section.form(desk, ctx)));
  }
}

/** Whether any of them has some; counted only to tell none from some. @param {any[]} troubles @param {'wrong' | 'waiting'} what */
const total = (troubles, what) => troubles.some(t => t[what] > 0) ? 1 : 0;

/** @param {any} value */
const lengthOf = value => Array.isArray(value) ? value.length : entriesOf(value).length;

/** @param {any} desk @param {string} name @param {any} ctx @param {any} props */
const rowsOf = (desk, name, ctx, props) => h(Rows, {key: name, desk, path: [name], list: desk.slate.doc[name], ctx, fold: true, mark: troubleAt(desk, name).mark, ...props});

const stockRow = {name: 'on_hand', kind: 'stock', unit: 'bag', label: mark('How much')};

const limits = [
  {name: 'payload', label: mark('The payload'), keys: ['payload']},
  {name: 'placard', label: mark('Door placard, less the people'), keys: ['placard', 'people']},
];

/** @type {SectionOf[]} */
const sections = [
  {
    name: 'mixes', title: mark('Mixes of your own'), about: mark('Recipes by volume, besides the ones that come with Barrow.'), paths: ['mixes'],
    sum: doc => lengthOf(doc.mixes) > 0 ? sayCount(lengthOf(doc.mixes), '{n} mix', '{n} mixes') : '',
    form: (desk, ctx) => rowsOf(desk, 'mixes', ctx, {form: mixForm, one: mixTitle, add: {label: say('Add a mix'), row: newMix}}),
  },
  {
    name: 'on-hand', title: mark('What you have'), about: mark('Loose, such as 2 cu ft, or in packs, such as 2 x 3.8 cu ft. It is used before anything is bought.'), paths: ['on_hand'],
    sum: doc => lengthOf(doc.on_hand) > 0 ? sayCount(lengthOf(doc.on_hand), '{n} material', '{n} materials') : '',
    form: (desk, ctx) => h(KeyedRows, {desk, path: ['on_hand'], entries: entriesOf(desk.slate.doc.on_hand), figure: stockRow, names: ctx.names, writing: ctx.writing, addLabel: say('Add what you have'), mark: troubleAt(desk, 'on_hand').mark,
      pathOf: (/** @type {string} */ id) => ['on_hand', id],
      keep: (/** @type {any} */ entries, /** @type {any} */ how) => desk.slate.set(['on_hand'], entries.length > 0 ? objectOf(entries) : undefined, how)}),
  },
  {
    name: 'offers', title: mark('What the yard sells'), about: mark('With these the order of least cost is found: how many of which, bags or bulk.'), paths: ['offers', 'currency', 'tax', 'aim'],
    sum: doc => lengthOf(doc.offers) > 0 ? sayCount(lengthOf(doc.offers), '{n} offer', '{n} offers') : '',
    form: (desk, ctx) => [
      rowsOf(desk, 'offers', ctx, {form: offerForm, one: offerTitle, add: {label: say('Add an offer'), row: newOffer}}),
      h('div', {class: 'pair', key: 'money'}, control(desk, [], desk.slate.doc, 'job', 'currency', ctx), control(desk, [], desk.slate.doc, 'job', 'tax', ctx)),
      control(desk, [], desk.slate.doc, 'job', 'aim', ctx, {empty: undefined, value: desk.slate.doc.aim ?? 'cost'}),
    ],
  },
  {
    name: 'haul', title: mark('Getting it home'), about: mark('What your vehicle carries, what a drive costs, and whether the yard delivers.'), paths: ['haul', 'delivery'],
    sum: doc => [doc.haul?.payload, doc.haul?.room].filter(text => typeof text === 'string' && text !== '').join(', '),
    form: haulForm,
  },
  {
    name: 'own', title: mark('Materials and pots of your own'), about: mark('What the built-in lists do not have, or have differently.'), paths: ['materials', 'containers'],
    sum: doc => [lengthOf(doc.materials) > 0 && sayCount(lengthOf(doc.materials), '{n} material', '{n} materials'), lengthOf(doc.containers) > 0 && sayCount(lengthOf(doc.containers), '{n} container', '{n} containers')].filter(Boolean).join(', '),
    form: (desk, ctx) => [
      rowsOf(desk, 'materials', ctx, {form: materialForm, one: materialTitle, add: {label: say('Add a material'), row: newMaterial}}),
      rowsOf(desk, 'containers', ctx, {form: ownContainerForm, one: ownContainerTitle, add: {label: say('Add a container'), row: newOwnContainer}}),
    ],
  },
];

/** @param {any} desk @param {any} ctx */
function haulForm(desk, ctx) {
  const {haul, delivery} = desk.slate.doc;
  const field = (/** @type {string} */ name) => control(desk, ['haul'], haul, 'haul', name, ctx, {hideLabel: name === 'payload', onPut: (/** @type {any} */ value) => desk.slate.set(['haul', name], value, {typing: true, prune: true})});
  return [
    troubleHead(desk, ['haul']),
    h(Either, {key: 'limit', desk, path: ['haul'], value: haul, ways: limits, legend: say('Weight limit of one drive'), draw: (/** @type {any} */ way) => [
      h('div', {class: 'pair', key: 'limit'}, way.keys.map(field)),
      h('div', {class: 'pair', key: 'rest'}, field('room'), field('trip_cost')),
      leftOver(desk, ['haul'], haul, ['haul'], [...way.keys, 'room', 'trip_cost'], ctx),
    ]}),
    h(Delivery, {key: 'delivery', desk, value: delivery, ctx, mark: troubleAt(desk, 'delivery').mark}),
  ];
}

class Delivery extends Part {
  render({desk, value, ctx}) {
    const on = value !== undefined, path = ['delivery'];
    return h('div', {class: 'optional'},
      tick({desk, path, suffix: on ? '' : '-tick', label: say('The yard delivers'), checked: on, onTick: yes => desk.slate.set(path, yes ? {} : undefined)}),
      on && h('p', {class: 'help'}, say('At each offer, say whether the yard brings it.')),
      on && h('div', {class: 'pair', role: 'group', 'aria-label': say('The yard delivers')}, objects.delivery.fields.map(r => control(desk, path, value, 'delivery', r.name, ctx))),
      on && leftOver(desk, path, value, ['delivery'], objects.delivery.fields.map(r => r.name), ctx));
  }
}

/**
 * Opens what a path is in, and goes there: to its control, or to the nearest
 * thing that it is a part of.
 * @param {any} desk @param {string} text a path as the library writes it
 */
export function reveal(desk, text) {
  const path = desk.slate.find(text) ?? [];
  const section = sections.find(s => s.paths.includes(String(path[0])));
  if (section) desk.open.add('section ' + section.name);
  openRows(desk, path);
  desk.redraw();
  requestAnimationFrame(() => {
    openRows(desk, path); // rows have no name until they are drawn
    desk.redraw();
    requestAnimationFrame(() => goTo(path));
  });
}

/** Folds out the rows that hold a path, it being one of them or not. @param {any} desk @param {any[]} path */
function openRows(desk, path) {
  path.forEach((_, i) => {
    const name = rowName(desk.slate.get(path.slice(0, i + 1)));
    if (name) desk.open.add(name);
    desk.open.add('more ' + pathText(path.slice(0, i)));
  });
}

/** Goes to the control of a path, or to the nearest thing that it is a part of. @param {any[]} path */
function goTo(path) {
  const shown = /** @type {HTMLElement[]} */ ([...document.querySelectorAll('.job-form [data-path]')]);
  const isControl = (/** @type {HTMLElement} */ el) => el.matches('input, select');
  for (let here = path; here.length > 0; here = here.slice(0, -1)) {
    const at = pathText(here), found = shown.filter(el => el.dataset.path === at);
    const words = found.find(el => el.dataset.test === 'problem');
    const control = found.find(el => isControl(el) && el.dataset.test === 'field') ?? (words ? undefined : shown.find(el => isControl(el) && waitsIn(el, at)) ?? found.find(isControl));
    if (control) return control.focus();
    if (found[0]) return (words ?? found[0]).scrollIntoView({block: 'center'});
  }
}

/** Whether a control waits to be filled in for an object. @param {HTMLElement} el @param {string} at the object's path */
const waitsIn = (el, at) => el.dataset.path?.startsWith(at + '.') && el.getAttribute('aria-describedby')?.split(' ').some(id => id.endsWith('-wants'));
