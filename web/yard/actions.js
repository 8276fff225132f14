// @ts-check
// What can happen at the yard, and what it does to the job in hand.
import {offerName, offerWords} from '../ui/figure.js';
import {asText} from '../ui/entry.js';
import {showMessage} from '../state/state.js';
import {isObject} from '../state/path.js';
import {say} from '../text/say.js';

/**
 * @import {Line} from '../plan.d.ts'
 * @import {Doc} from '../store/record.js'
 * @import {Planned, State} from '../state/types.d.ts'
 */

/** Remembers the job as it left home, before the first change at the yard. @param {State} state */
function leaveHome(state) {
  if (!state.home) state.home = state.job.doc;
}

/** Whether an offer, by its name, is said to be sold out. @param {State} state @param {string} name */
export const isSoldOut = (state, name) => listOf(state, 'without').includes(name);

/** A list of the yard's, which a job that came in may have as anything. @param {State} state @param {'without' | 'bought'} key @returns {any[]} */
export function listOf(state, key) {
  const list = state.job.get(['yard', key]);
  return Array.isArray(list) ? list : [];
}

/** Says that an offer is sold out, or that it is there after all. @param {State} state @param {unknown} name @param {boolean} out */
export function setSoldOut(state, name, out) {
  leaveHome(state);
  const rest = listOf(state, 'without').filter(n => n !== name);
  setYard(state, 'without', out ? [...rest, name] : rest, out ? say('Sold out: {offer}', {offer: offerWords(state, asText(name))}) : say('There after all: {offer}', {offer: offerWords(state, asText(name))}));
  requestAnimationFrame(() => document.getElementById('changed')?.focus()); // the line that was tapped goes
}

/** Takes what is ticked as bought, so that the rest is worked out without it. @param {Planned} state */
export function buyTicked(state) {
  leaveHome(state);
  const bought = [...listOf(state, 'bought')];
  for (const line of state.plan.order) {
    const name = offerName(line);
    if (state.ticks[name] === line.count) bought.push({offer: name, count: line.count, ...line.cost !== undefined && {cost: line.cost}});
  }
  state.ticks = {};
  setYard(state, 'bought', bought, say('Bought what is ticked'));
}

/** Takes one purchase back. @param {State} state @param {number} index */
export function unbuy(state, index) {
  leaveHome(state);
  const bought = listOf(state, 'bought').filter((_, i) => i !== index);
  setYard(state, 'bought', bought, say('Not bought after all'));
}

/** Changes what an offer costs, or how many there are. @param {State} state @param {number} index @param {'price' | 'stock'} field @param {unknown} value */
export function setOffer(state, index, field, value) {
  leaveHome(state);
  state.job.set(['offers', index, field], value);
}

/** Says how many are left of every offer that does not say. @param {State} state @param {unknown} value */
export function setOnlyStock(state, value) {
  leaveHome(state);
  setYard(state, 'only_stock', value, say('Changed how many are left'));
}

/** Ticks a line, or unticks it. A tick is a mark: it changes no figure. @param {State} state @param {Line} line @param {boolean} on */
export function setTick(state, line, on) {
  const name = offerName(line);
  state.ticks = {...state.ticks};
  if (on) state.ticks[name] = line.count;
  else delete state.ticks[name];
  state.ticked?.();
  state.redraw();
}

/** Goes back to the job as it left home, which it has. @param {State} state */
export function goHome(state) {
  const {home, ticks} = state;
  Object.assign(state, {home: null, changes: null, ticks: {}});
  state.job.replace(/** @type {Doc} */ (home), {label: say('Undo what changed at the yard')});
  showMessage(state, say('What changed at the yard is undone.'), {undo: () => Object.assign(state, {home, ticks})});
}

/** Takes the job as it stands for the one to compare with from now on. @param {State} state */
export function acceptChanges(state) {
  state.home = null;
  state.changes = null;
  state.ticked?.();
  state.redraw();
}

/** Sets a part of doc.yard; what is left empty goes. @param {State} state @param {'without' | 'bought' | 'only_stock'} key @param {unknown} value @param {string} label */
function setYard(state, key, value, label) {
  const was = state.job.get(['yard']), yard = isObject(was) ? {...was} : {};
  if (value === undefined || Array.isArray(value) && value.length === 0) delete yard[key];
  else yard[key] = value;
  state.job.set(['yard'], Object.keys(yard).length > 0 ? yard : undefined, {label});
}
