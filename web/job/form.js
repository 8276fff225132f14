// @ts-check
// The Job place, where a job is entered: its work, its mixes, what is there,
// what the yard sells and what a drive carries.
import {h, cls, Component} from '../ui/h.js';
import {PureComponent} from '../ui/memo.js';
import {Field, Announcer, choice, tick, problemHead, writingOf} from '../ui/field.js';
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
import {problemsAt} from '../state/problems.js';
import {taskResult} from '../result/task.js';

/** The entry of the whole job. @param {any} state */
export const formView = state => h(Form, {state, key: 'form'});

class Form extends Component {
  /** What the parts are given; the same object while nothing in it changes. @param {any} state */
  given(state) {
    const writing = writingOf(state);
    const names = namesOf(state);
    const key = JSON.stringify([writing, ...state.open]); // what is folded out is drawn by all parts
    if (this.key !== key) {
      this.key = key;
      this.lines = {writing};
      this.ctx = undefined;
    }
    if (!this.ctx || this.ctx.names !== names) this.ctx = {writing: /** @type {any} */ (this.lines).writing, names, lines: this.lines};
    return this.ctx;
  }

  render({state}) {
    const ctx = this.given(state), {doc} = state.job;
    return h('form', {class: 'job-form', autocomplete: 'off', onSubmit: (/** @type {any} */ e) => e.preventDefault(), onKeyDown: next},
      h(Announcer, {state}),
      h('datalist', {id: 'sizes'}, ctx.names.sizes.map(([id, name]) => h('option', {value: id, key: id}, name))),
      problemHead(state, []),
      problemHead(state, ['schema']),
      h(Field, {state, path: ['name'], row: rowOf('job', 'name'), writing: ctx.writing}),
      choice({state, path: ['measure'], row: rowOf('job', 'measure'), value: doc.measure ?? 'us', test: 'measure'}),
      h(Tasks, {state, tasks: doc.tasks, ctx}),
      sections.map(section => h(Section, {key: section.name, state, section, ctx, open: state.open.has('section ' + section.name), mark: section.paths.map(p => problemsAt(state, p).mark).join('\n'), ...parts(doc, section.paths)})),
      leftOver(state, [], doc, [], objects.job.fields.map(r => r.name), ctx));
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
  componentDidMount() { giveFocus(this.props.state, ['tasks'], this.base); }
  componentDidUpdate() { giveFocus(this.props.state, ['tasks'], this.base); }

  render({state, tasks, ctx}) {
    const rows = Array.isArray(tasks) ? tasks : [];
    this.known = nameRows(this.known, rows);
    const {keys, fresh} = /** @type {any} */ (this.known);
    if (rows.length <= few || fresh.length === 1) for (const name of fresh) state.open.add(name);
    const {most, more} = someRows(this, rows, fresh.length === 1);
    return h('section', {class: 'part tasks', 'aria-labelledby': 'the-work'},
      h('h2', {id: 'the-work'}, say('The work')),
      problemHead(state, ['tasks']),
      rows.length > 0 && h('ol', {class: 'task-list'}, rows.slice(0, most).map((task, i) => {
        const path = ['tasks', i], open = state.open.has(keys[i]);
        return h('li', {key: keys[i], class: 'task', 'data-test': 'task', 'data-path': pathText(path)},
          h(TaskForm, {state, path, task, ctx, name: keys[i], open, last: i === rows.length - 1, figure: open ? undefined : figureOf(state, task, i), mark: problemsAt(state, pathText(path)).mark}),
          open && taskResult(state, i));
      })),
      more,
      h(Adder, {state, none: rows.length === 0}));
  }
}

const few = 2; // tasks that all stand open when a job comes in

/** What a task takes, in a few words, of the plan of just this task. @param {any} state @param {any} task @param {number} i */
function figureOf(state, task, i) {
  const of = state.planFor?.tasks;
  const index = of?.[i] === task ? i : of?.indexOf?.(task) ?? -1;
  const takes = index < 0 ? undefined : state.plan?.tasks?.[index];
  return takes?.filling ? takes.loose_shown : undefined;
}

/** The choice of what to add to the work. */
class Adder extends Component {
  constructor(/** @type {any} */ props) {
    super(props);
    this.state = {open: false};
  }

  render({state, none}, {open}) {
    const add = (/** @type {string} */ kind) => {
      this.setState({open: false});
      addRow(state, ['tasks'], newTask(kind), say('Added'));
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

/** @typedef {{name: string, title: string, about: string, paths: string[], sum: (doc: any, ctx: any) => string, form: (state: any, ctx: any) => any}} SectionOf */

/** The rest of the job, each part folded to a line. */
class Section extends PureComponent {
  render({state, section, ctx, open}) {
    const sum = section.sum(state.job.doc, ctx);
    const counts = section.paths.map((/** @type {string} */ p) => problemsAt(state, p));
    const all = {mark: '', wrong: total(counts, 'wrong'), waiting: total(counts, 'waiting')};
    const id = 'section-' + section.name;
    return h('section', {class: cls('part', 'section', {open}), 'aria-labelledby': id},
      h('h2', {id}, h('button', {type: 'button', class: 'opener', 'aria-expanded': String(open), 'data-test': 'section', 'data-path': section.paths[0], onClick: () => toggle(state, 'section ' + section.name)},
        h('span', {class: 'opener-body'}, h('span', {class: 'opener-title'}, say(section.title)), !open && sum && h('span', {class: 'opener-figure'}, sum), !open && flag(all)))),
      open && h('div', {class: 'section-inside'},
        h('p', {class: 'help'}, say(section.about)),
        section.form(state, ctx)));
  }
}

/** Whether any of them has some; counted only to tell none from some. @param {any[]} counts @param {'wrong' | 'waiting'} what */
const total = (counts, what) => counts.some(t => t[what] > 0) ? 1 : 0;

/** @param {any} value */
const lengthOf = value => Array.isArray(value) ? value.length : entriesOf(value).length;

/** @param {any} state @param {string} name @param {any} ctx @param {any} props */
const rowsOf = (state, name, ctx, props) => h(Rows, {key: name, state, path: [name], list: state.job.doc[name], ctx, fold: true, mark: problemsAt(state, name).mark, ...props});

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
    form: (state, ctx) => rowsOf(state, 'mixes', ctx, {form: mixForm, one: mixTitle, add: {label: say('Add a mix'), row: newMix}}),
  },
  {
    name: 'on-hand', title: mark('What you have'), about: mark('Loose, such as 2 cu ft, or in packs, such as 2 x 3.8 cu ft. It is used before anything is bought.'), paths: ['on_hand'],
    sum: doc => lengthOf(doc.on_hand) > 0 ? sayCount(lengthOf(doc.on_hand), '{n} material', '{n} materials') : '',
    form: (state, ctx) => h(KeyedRows, {state, path: ['on_hand'], entries: entriesOf(state.job.doc.on_hand), figure: stockRow, names: ctx.names, writing: ctx.writing, addLabel: say('Add what you have'), mark: problemsAt(state, 'on_hand').mark,
      pathOf: (/** @type {string} */ id) => ['on_hand', id],
      write: (/** @type {any} */ entries, /** @type {any} */ how) => state.job.set(['on_hand'], entries.length > 0 ? objectOf(entries) : undefined, how)}),
  },
  {
    name: 'offers', title: mark('What the yard sells'), about: mark('With these the order of least cost is found: how many of which, bags or bulk.'), paths: ['offers', 'currency', 'tax', 'aim'],
    sum: doc => lengthOf(doc.offers) > 0 ? sayCount(lengthOf(doc.offers), '{n} offer', '{n} offers') : '',
    form: (state, ctx) => [
      rowsOf(state, 'offers', ctx, {form: offerForm, one: offerTitle, add: {label: say('Add an offer'), row: newOffer}}),
      h('div', {class: 'pair', key: 'money'}, control(state, [], state.job.doc, 'job', 'currency', ctx), control(state, [], state.job.doc, 'job', 'tax', ctx)),
      control(state, [], state.job.doc, 'job', 'aim', ctx, {empty: undefined, value: state.job.doc.aim ?? 'cost'}),
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
    form: (state, ctx) => [
      rowsOf(state, 'materials', ctx, {form: materialForm, one: materialTitle, add: {label: say('Add a material'), row: newMaterial}}),
      rowsOf(state, 'containers', ctx, {form: ownContainerForm, one: ownContainerTitle, add: {label: say('Add a container'), row: newOwnContainer}}),
    ],
  },
];

/** @param {any} state @param {any} ctx */
function haulForm(state, ctx) {
  const {haul, delivery} = state.job.doc;
  const field = (/** @type {string} */ name) => control(state, ['haul'], haul, 'haul', name, ctx, {hideLabel: name === 'payload', onPut: (/** @type {any} */ value) => state.job.set(['haul', name], value, {typing: true, prune: true})});
  return [
    problemHead(state, ['haul']),
    h(Either, {key: 'limit', state, path: ['haul'], value: haul, ways: limits, legend: say('Weight limit of one drive'), draw: (/** @type {any} */ way) => [
      h('div', {class: 'pair', key: 'limit'}, way.keys.map(field)),
      h('div', {class: 'pair', key: 'rest'}, field('room'), field('trip_cost')),
      leftOver(state, ['haul'], haul, ['haul'], [...way.keys, 'room', 'trip_cost'], ctx),
    ]}),
    h(Delivery, {key: 'delivery', state, value: delivery, ctx, mark: problemsAt(state, 'delivery').mark}),
  ];
}

class Delivery extends PureComponent {
  render({state, value, ctx}) {
    const on = value !== undefined, path = ['delivery'];
    return h('div', {class: 'optional'},
      tick({state, path, suffix: on ? '' : '-tick', label: say('The yard delivers'), checked: on, onTick: yes => state.job.set(path, yes ? {} : undefined)}),
      on && h('p', {class: 'help'}, say('At each offer, say whether the yard brings it.')),
      on && h('div', {class: 'pair', role: 'group', 'aria-label': say('The yard delivers')}, objects.delivery.fields.map(r => control(state, path, value, 'delivery', r.name, ctx))),
      on && leftOver(state, path, value, ['delivery'], objects.delivery.fields.map(r => r.name), ctx));
  }
}

/**
 * Opens what a path is in, and goes there: to its control, or to the nearest
 * thing that it is a part of.
 * @param {any} state @param {string} text a path as the library writes it
 */
export function reveal(state, text) {
  const path = state.job.find(text) ?? [];
  const section = sections.find(s => s.paths.includes(String(path[0])));
  if (section) state.open.add('section ' + section.name);
  openRows(state, path);
  state.redraw();
  requestAnimationFrame(() => {
    openRows(state, path); // rows have no name until they are drawn
    state.redraw();
    requestAnimationFrame(() => goTo(path));
  });
}

/** Folds out the rows that hold a path, it being one of them or not. @param {any} state @param {any[]} path */
function openRows(state, path) {
  path.forEach((_, i) => {
    const name = rowName(state.job.get(path.slice(0, i + 1)));
    if (name) state.open.add(name);
    state.open.add('more ' + pathText(path.slice(0, i)));
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
