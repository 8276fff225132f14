// @ts-check
// What a job may name: the catalogue's rows and the job's own.
import {language, say} from '../text/say.js';

/** @import {State} from '../state/types.d.ts' */

/** @typedef {[string, string]} Named an id and what people call it */

/**
 * @typedef {object} Names
 * @property {Named[]} ownMaterials
 * @property {Named[]} materials the catalogue's, without those the job has its own of
 * @property {Named[]} ownMixes
 * @property {Named[]} mixes
 * @property {Named[]} sizes
 * @property {string} mark another when any of it is
 */

/** @type {WeakMap<State, {of: unknown[], names: Names}>} */
const last = new WeakMap();

/** @param {State} state @returns {Names} */
export function namesOf(state) {
  const {doc} = state.job;
  const of = [doc.materials, doc.mixes, doc.containers, state.catalog, language()], before = last.get(state);
  if (before && of.every((part, i) => part === before.of[i])) return before.names;
  const names = {
    ownMaterials: own(doc.materials), materials: byName(theirs(state.catalog?.materials, doc.materials)),
    ownMixes: own(doc.mixes), mixes: byName(theirs(state.catalog?.mixes, doc.mixes)),
    sizes: [...own(doc.containers), ...theirs(state.catalog?.containers, doc.containers)],
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

/** @param {{id: string, name?: string}[] | undefined} rows @param {unknown} over @returns {Named[]} */
function theirs(rows, over) {
  const taken = new Set(rowsOf(over).map(row => row.id));
  return (rows ?? []).filter(row => !taken.has(row.id)).map(row => [row.id, row.name ?? row.id]);
}

/** As one looks a name up in a list. @param {Named[]} list @returns {Named[]} */
function byName(list) {
  const {compare} = new Intl.Collator(language());
  return list.sort((a, b) => compare(a[1], b[1]));
}

/** Materials to choose from, grouped. @param {Names} names */
export const materialGroups = names => [
  {label: say('Your own'), options: names.ownMaterials},
  {label: say('Materials'), options: names.materials},
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
