// What can happen at the yard, and what it does to the job in hand.
import {offerName, offerWords} from '../ui/figure.js';
import {asText} from '../ui/entry.js';
import {tell} from '../state/state.js';
import {isObject} from '../state/path.js';
import {say} from '../text/say.js';

/** Remembers the job as it left home, before the first change at the yard. */
function leaveHome(desk) {
  if (!desk.home) desk.home = desk.slate.doc;
}

/** Whether an offer, by its name, is said to be sold out. */
export const isSoldOut = (desk, name) => listOf(desk, 'without').includes(name);

/** A list of the yard's, which a job that came in may have as anything. */
export function listOf(desk, key) {
  const list = desk.slate.get(['yard', key]);
  return Array.isArray(list) ? list : [];
}

/** Says that an offer is sold out, or that it is there after all. */
export function setSoldOut(desk, name, out) {
  leaveHome(desk);
  const rest = listOf(desk, 'without').filter(n => n !== name);
  setYard(desk, 'without', out ? [...rest, name] : rest, out ? say('Sold out: {offer}', {offer: offerWords(desk, asText(name))}) : say('There after all: {offer}', {offer: offerWords(desk, asText(name))}));
  requestAnimationFrame(() => document.getElementById('changed')?.focus()); // the line that was tapped goes
}

/** Takes what is ticked as bought, so that the rest is worked out without it. */
export function buyTicked(desk) {
  leaveHome(desk);
  const bought = [...listOf(desk, 'bought')];
  for (const line of desk.plan.order) {
    const name = offerName(line);
    if (desk.ticks[name] === line.count) bought.push({offer: name, count: line.count});
  }
  desk.ticks = {};
  setYard(desk, 'bought', bought, say('Bought what is ticked'));
}

/** Takes one purchase back. */
export function unbuy(desk, index) {
  leaveHome(desk);
  const bought = listOf(desk, 'bought').filter((_, i) => i !== index);
  setYard(desk, 'bought', bought, say('Not bought after all'));
}

/** Changes what an offer costs, or how many there are. */
export function setOffer(desk, index, field, value) {
  leaveHome(desk);
  desk.slate.set(['offers', index, field], value);
}

/** Says how many are left of every offer that does not say. */
export function setOnlyStock(desk, value) {
  leaveHome(desk);
  setYard(desk, 'only_stock', value, say('Changed how many are left'));
}

/** Ticks a line, or unticks it. A tick is a mark: it changes no figure. */
export function setTick(desk, line, on) {
  const name = offerName(line);
  desk.ticks = {...desk.ticks};
  if (on) desk.ticks[name] = line.count;
  else delete desk.ticks[name];
  desk.ticked?.();
  desk.redraw();
}

/** Goes back to the job as it left home. */
export function goHome(desk) {
  const {home, ticks} = desk;
  Object.assign(desk, {home: null, changes: null, ticks: {}});
  desk.slate.replace(home, {label: say('Undo what changed at the yard')});
  tell(desk, say('What changed at the yard is undone.'), {undo: () => Object.assign(desk, {home, ticks})});
}

/** Takes the job as it stands for the one to compare with from now on. */
export function settle(desk) {
  desk.home = null;
  desk.changes = null;
  desk.ticked?.();
  desk.redraw();
}

/** Sets a part of doc.yard; what is left empty goes. */
function setYard(desk, key, value, label) {
  const was = desk.slate.get(['yard']), yard = isObject(was) ? {...was} : {};
  if (value === undefined || Array.isArray(value) && value.length === 0) delete yard[key];
  else yard[key] = value;
  desk.slate.set(['yard'], Object.keys(yard).length > 0 ? yard : undefined, {label});
}
