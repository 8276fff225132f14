// @ts-check
// Figures and what stands behind them.
import {h} from './h.js';
import {say} from '../text/say.js';
import {asText} from './entry.js';
import {toggle} from '../state/state.js';

/**
 * @import {Child} from './h.js'
 * @import {Range, Pack, Sold, Step} from '../plan.d.ts'
 * @import {Planned, State} from '../state/types.d.ts'
 */

/** An amount of money as this reader writes it. @param {State} state @param {string} amount */
export function money(state, amount) {
  const currency = state.plan?.currency ?? '';
  const space = /\p{L}$/u.test(currency) ? ' ' : '';
  return currency + space + (state.comma ? amount.replace('.', ',') : amount);
}

/** A pack as it is sold: "2 cu ft", or "1/2 cu yd, loose". @param {Sold & Pick<Pack, 'bale' | 'bale_shown'>} line */
export function packName(line) {
  const {bulk_shown: bulk = line.bulk, bale_shown: bale = line.bale, pack_shown: pack = line.pack} = line;
  return bulk ? say('{size} loose', {size: asText(bulk)}) : bale ? say('{size} bale', {size: asText(bale)}) : asText(pack);
}

/** The name that a job's yard has for an offer: "bark-fines:1/2 cu yd bulk". @param {{material?: unknown, pack?: unknown, bulk?: unknown}} line of the order, or an offer of the job */
export function offerName(line) {
  return `${asText(line.material)}:${line.bulk ? asText(line.bulk) + ' bulk' : asText(line.pack)}`;
}

/** An offer, by the name that a job's yard has for it, in words: "1/2 cu yd loose Pine bark fines". @param {State} state @param {string} name */
export function offerWords(state, name) {
  const {offers} = state.job.doc;
  const asked = (Array.isArray(offers) ? offers : []).map(o => ({material: asText(o?.material), pack: asText(o?.pack), bulk: asText(o?.bulk)}));
  const lines = [...state.plan?.order ?? [], ...state.plan?.others ?? [], ...asked];
  const line = lines.find(l => offerName(l) === name);
  return line ? `${packName(line)} ${asText(nameOf(state, line.material))}` : name;
}

/** A count, and the range it may be in: "6 (5 to 7)". @param {{count: number, count_range?: Range}} line */
export function count(line) {
  return line.count_range ? say('{n} ({low} to {high})', {n: line.count, low: line.count_range[0], high: line.count_range[1]}) : String(line.count);
}

/** What materials are called, by id. @param {State} state @param {string} id */
export function nameOf(state, id) {
  return state.plan?.needs.find(n => n.material === id)?.name ?? id;
}

/**
 * Something that folds out, under a button that says what it is. It stands open
 * while something in it is wrong.
 * @param {State} state @param {string} name @param {Child} label @param {() => Child} inside @param {{test?: string, wrong?: boolean}} [more]
 */
export function fold(state, name, label, inside, {test, wrong} = {}) {
  const open = wrong || state.open.has(name);
  const id = 'fold-' + name.replace(/[^\w-]+/g, '-');
  return h('div', {class: 'fold'},
    h('button', {type: 'button', class: 'fold-button', 'aria-expanded': String(open), 'aria-controls': id, 'data-test': test, onClick: () => toggle(state, name)}, label),
    h('div', {id, hidden: !open, class: 'fold-inside', 'data-test': test && `${test}-panel`}, open ? inside() : null));
}

/** The steps behind a figure, with where each comes from. @param {Planned} state @param {string} name @param {string} about @param {(step: Step) => boolean} pick */
export function working(state, name, about, pick) {
  const steps = () => state.plan.working.filter(pick);
  return fold(state, 'working ' + name, [say('How it is worked out'), h('span', {class: 'unseen'}, ': ' + about)], () =>
    h('ol', {class: 'steps'}, steps().map((s, i) => h('li', {key: i},
      h('span', {class: 'step'}, s.step), ' ',
      h('span', {class: 'step-figure'}, s.figure),
      s.source && h('small', {class: 'source'}, s.source)))), {test: 'working'});
}

/** Rows of label and figure. @param {([label: Child, figure: Child] | false | '' | null | undefined)[]} rows @param {object} [attrs] */
export function facts(rows, attrs = {}) {
  return h('dl', {class: 'facts', ...attrs}, rows.filter(row => !!row).map(([label, figure], i) =>
    h('div', {key: i}, h('dt', null, label), h('dd', null, figure))));
}
