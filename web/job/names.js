// @ts-check
// What a job may name: the catalogue's rows and the job's own.
import {language, say} from '../text/say.js';

/**
 * @import {Group} from '../ui/choice.js'
 * @import {State} from '../state/types.d.ts'
 */

/** @typedef {[string, string]} Named an id and what people call it */

/** @typedef {{id: string, kind?: string, name?: string}} Row of the catalogue */

/**
 * @typedef {object} Names
 * @property {Named[]} ownMaterials
 * @property {Named[]} materials the catalogue's, without those the job has its own of
 * @property {Group[]} materialKinds the same under their headings, each in the order of names
 * @property {Named[]} ownMixes
 * @property {Named[]} mixes
 * @property {Named[]} sizes
 * @property {Group[]} sizeKinds the same under their headings
 * @property {string} mark another when any of it is
 */

/** @type {WeakMap<State, {of: unknown[], names: Names}>} */
const last = new WeakMap();

/** @param {State} state @returns {Names} */
export function namesOf(state) {
  const {doc} = state.job;
  const of = [doc.materials, doc.mixes, doc.containers, state.catalog, language()], before = last.get(state);
  if (before && of.every((part, i) => part === before.of[i])) return before.names;
  const {materials, mixes, containers} = state.catalog ?? {};
  const ownSizes = own(doc.containers);
  const names = {
    ownMaterials: own(doc.materials), materials: theirs(materials, doc.materials),
    materialKinds: byKind(materials, doc.materials).map(({label, options}) => ({label, options: byName(options)})),
    ownMixes: own(doc.mixes), mixes: byName(theirs(mixes, doc.mixes)),
    sizes: [...ownSizes, ...theirs(containers, doc.containers)],
    sizeKinds: [{label: say('Your own'), options: ownSizes}, ...byKind(containers, doc.containers)].filter(group => group.options.length > 0),
  };
  const mark = JSON.stringify(names);
  const now = before?.names.mark === mark ? before.names : {...names, mark};
  last.set(state, {of, names: now});
  return now;
}

/** Those rows of a list, which may be anything, that have an id. @param {unknown} rows @returns {{id: string, name?: unknown}[]} */
const rowsOf = rows => Array.isArray(rows) ? rows.filter(row => typeof row?.id === 'string' && row.id !== '') : [];

/** So many of a kind a job may have; a list to choose from has no more. */
const most = 1000;

/** @param {unknown} rows @returns {Named[]} */
const own = rows => rowsOf(rows).slice(0, most).map(row => [row.id, typeof row.name === 'string' && row.name.trim() !== '' ? row.name : row.id]);

/** Those rows of the catalogue that the job has no own of. @param {Row[] | undefined} rows @param {unknown} over */
function left(rows, over) {
  const taken = new Set(rowsOf(over).map(row => row.id));
  return (rows ?? []).filter(row => !taken.has(row.id));
}

/** @param {Row} row @returns {Named} */
const named = row => [row.id, row.name ?? row.id];

/** @param {Row[] | undefined} rows @param {unknown} over @returns {Named[]} */
const theirs = (rows, over) => left(rows, over).map(named);

/** The same under their headings, in the order in which these first occur. @param {Row[] | undefined} rows @param {unknown} over */
function byKind(rows, over) {
  /** @type {Map<string, Named[]>} */
  const kinds = new Map();
  for (const row of left(rows, over)) {
    const kind = row.kind ?? say('Materials');
    kinds.set(kind, [...kinds.get(kind) ?? [], named(row)]);
  }
  return [...kinds].map(([label, options]) => ({label, options}));
}

/** As one looks a name up in a list. @param {Named[]} list @returns {Named[]} */
function byName(list) {
  const {compare} = new Intl.Collator(language());
  return list.sort((a, b) => compare(a[1], b[1]));
}

/** Materials to choose from, grouped. @param {Names} names @returns {Group[]} */
export const materialGroups = names => [
  {label: say('Your own'), options: names.ownMaterials},
  ...names.materialKinds,
].filter(group => group.options.length > 0);

/** What a mix may be made of: materials, and other mixes. @param {Names} names */
export const partGroups = names => [...materialGroups(names), {label: say('Mixes'), options: [...names.ownMixes, ...names.mixes]}].filter(group => group.options.length > 0);

/** What an id is called. @param {Names} names @param {unknown} id */
export function called(names, id) {
  for (const list of [names.ownMaterials, names.materials, names.ownMixes, names.mixes]) {
    const found = list.find(([known]) => known === id);
    if (found) return found[1];
  }
  return typeof id === 'string' ? id : '';
}

/** An id that no row of a list has yet: my-mix, my-mix-2. @param {unknown} rows @param {string} stem */
export function freeId(rows, stem) {
  const taken = new Set(rowsOf(rows).map(row => row.id));
  for (let i = 1; ; i++) {
    const id = i === 1 ? stem : `${stem}-${i}`;
    if (!taken.has(id)) return id;
  }
}
