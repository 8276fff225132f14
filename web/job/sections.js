// @ts-check
// The parts of the job besides its tasks: mixes, stock, offers, the way home,
// materials and pots of one's own.
import {h, cls} from '../ui/h.js';
import {PureComponent} from '../ui/memo.js';
import {control} from './control.js';
import {haulForm} from './haul.js';
import {KeyedRows} from './keyed_rows.js';
import {flag, rows} from './list.js';
import {entriesOf, mixForm, mixTitle, newMix, objectOf} from './mix.js';
import {newOffer, offerForm, offerTitle} from './offer.js';
import {materialForm, materialTitle, newMaterial, newOwnContainer, ownContainerForm, ownContainerTitle} from './own.js';
import {problemsAt} from '../state/problems.js';
import {toggle} from '../state/state.js';
import {mark, say, sayCount} from '../text/say.js';

/**
 * @import {Child} from '../ui/h.js'
 * @import {Row} from '../state/fields.js'
 * @import {ProblemCount} from '../state/problems.js'
 * @import {State} from '../state/types.d.ts'
 * @import {Doc} from '../store/record.js'
 * @import {NamedContext} from './control.js'
 * @import {List} from './list.js'
 */

/**
 * A part of the job besides its tasks.
 * @typedef {object} SectionOf
 * @property {string} name
 * @property {string} title
 * @property {string} about
 * @property {string[]} paths the fields of the job that it asks for
 * @property {(doc: Doc) => string} sum what is in it, in a few words
 * @property {(state: State, ctx: NamedContext) => Child} form
 */

/**
 * What is drawn of it hangs on its part of the document besides, each field
 * under a name of its own.
 * @typedef {{state: State, section: SectionOf, ctx: NamedContext, open: boolean, mark: string}} Props
 */

/**
 * The rest of the job, each part folded to a line.
 * @extends {PureComponent<Props>}
 */
export class Section extends PureComponent {
  /** @param {Props} props */
  render({state, section, ctx, open}) {
    const sum = section.sum(state.job.doc);
    const counts = section.paths.map(p => problemsAt(state, p));
    const all = {wrong: total(counts, 'wrong'), waiting: total(counts, 'waiting')};
    const id = 'section-' + section.name;
    return h('section', {class: cls('part', 'section', {open}), 'aria-labelledby': id},
      h('h2', {id}, h('button', {type: 'button', class: 'opener', 'aria-expanded': String(open), 'data-test': 'section', 'data-path': section.paths[0], onClick: () => toggle(state, 'section ' + section.name)},
        h('span', {class: 'opener-body'}, h('span', {class: 'opener-title'}, say(section.title)), !open && sum && h('span', {class: 'opener-figure'}, sum), !open && flag(all)))),
      open && h('div', {class: 'section-inside'},
        h('p', {class: 'help'}, say(section.about)),
        section.form(state, ctx)));
  }
}

/** Whether any of them has some; counted only to tell none from some. @param {ProblemCount[]} counts @param {'wrong' | 'waiting'} what */
const total = (counts, what) => counts.some(t => t[what] > 0) ? 1 : 0;

/** @param {unknown} value */
const lengthOf = value => Array.isArray(value) ? value.length : entriesOf(value).length;

/** @param {State} state @param {string} name @param {NamedContext} ctx @param {Pick<List<NamedContext>, 'form' | 'one' | 'add'>} props */
const rowsOf = (state, name, ctx, props) => rows({key: name, state, path: [name], list: state.job.doc[name], ctx, fold: true, mark: problemsAt(state, name).mark, ...props});

/** @type {Row} */
const stockRow = {name: 'on_hand', kind: 'stock', unit: 'bag', label: mark('How much')};

/** @type {SectionOf[]} */
export const sections = [
  {
    name: 'mixes', title: mark('Mixes of your own'), about: mark('Recipes by volume, besides the ones that come with Barrow.'), paths: ['mixes'],
    sum: doc => lengthOf(doc.mixes) > 0 ? sayCount(lengthOf(doc.mixes), '{n} mix', '{n} mixes') : '',
    form: (state, ctx) => rowsOf(state, 'mixes', ctx, {form: mixForm, one: mixTitle, add: {label: say('Add a mix'), row: newMix}}),
  },
  {
    name: 'on-hand', title: mark('What you have'), about: mark('Loose, such as 2 cu ft, or in packs, such as 2 x 3.8 cu ft. It is used before anything is bought.'), paths: ['on_hand'],
    sum: doc => lengthOf(doc.on_hand) > 0 ? sayCount(lengthOf(doc.on_hand), '{n} material', '{n} materials') : '',
    form: (state, ctx) => h(KeyedRows, {state, path: ['on_hand'], entries: entriesOf(state.job.doc.on_hand), figure: stockRow, names: ctx.names, writing: ctx.writing, addLabel: say('Add what you have'), mark: problemsAt(state, 'on_hand').mark,
      pathOf: id => ['on_hand', id],
      write: (entries, how) => state.job.set(['on_hand'], entries.length > 0 ? objectOf(entries) : undefined, how)}),
  },
  {
    name: 'offers', title: mark('What the yard sells'), about: mark('With these the cheapest order is found: how many of each, bags or bulk.'), paths: ['offers', 'currency', 'tax', 'aim'],
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
