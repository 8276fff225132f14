import test from 'node:test';
import assert from 'node:assert/strict';
import {readFileSync} from 'node:fs';
import {putDocument} from './dom.mjs';

const newRoot = putDocument();
const {createState} = await import('../state/state.js');
const {render} = await import('../ui/h.js');
const {yardView} = await import('../yard/yard.js');
const {buyTicked, goHome, setOffer, setTick} = await import('../yard/actions.js');

const read = (/** @type {string} */ name) => JSON.parse(readFileSync(new URL('../../testdata/' + name, import.meta.url), 'utf8'));

function deskAt() {
  const state = /** @type {any} */ (createState(read('jobs/good-stock.json')));
  return Object.assign(state, {plan: read('golden/good-stock.json'), planFor: state.job.doc, place: 'yard'});
}

/** What the page says of the changes. @param {any} state */
function said(state) {
  const root = newRoot();
  render(yardView(state), root);
  return root.all().find((/** @type {any} */ el) => el.getAttribute?.('data-test') === 'changes')?.textContent ?? '';
}

const none = {changes: [], before: {}, after: {}};

test('a price that changed is named, with what it was', () => {
  const state = deskAt();
  const at = state.job.doc.offers.findIndex((/** @type {any} */ offer) => offer.price === undefined);
  setOffer(state, at, 'price', '99.50');
  state.changes = none;
  assert.match(said(state), /: 99\.50, was no price/);
  state.home = state.job.doc;
  setOffer(state, at, 'price', '101');
  assert.match(said(state), /: 101, was 99\.50/);
  assert.doesNotMatch(said(state), /no price/);
});

test('what is bought is still to buy no more, and is not called gone', () => {
  const state = deskAt();
  const line = state.plan.order[0];
  setTick(state, line, true);
  buyTicked(state);
  state.changes = {...none, changes: [{is: 'gone', name: 'It', material: line.material, pack: line.pack, bulk: line.bulk, before: line.count, after: 0}]};
  assert.match(said(state), new RegExp(`0 still to buy, was ${line.count}`));
});

test('what a message offers to take back is the change that it tells of', () => {
  const state = deskAt();
  setOffer(state, 0, 'price', '99.50');
  goHome(state);
  assert.ok(state.message.undo);
  state.job.set(['name'], 'Another');
  assert.equal(state.message, null, 'an undo now would take that back');
});

test('what is undone at the yard can come back, ticks and all', () => {
  const state = deskAt();
  const home = state.job.doc;
  setTick(state, state.plan.order[0], true);
  setOffer(state, 0, 'price', '99.50');
  const changed = state.job.doc, {ticks} = state;
  goHome(state);
  assert.equal(state.job.doc, home);
  const {undo} = state.message;
  state.job.undo();
  undo();
  assert.equal(state.job.doc, changed);
  assert.equal(state.home, home);
  assert.deepEqual(state.ticks, ticks);
});
