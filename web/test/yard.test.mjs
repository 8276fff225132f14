import test from 'node:test';
import assert from 'node:assert/strict';
import {readFileSync} from 'node:fs';
import {putDocument} from './dom.mjs';

const newRoot = putDocument();
const {createDesk} = await import('../state/state.js');
const {render} = await import('../ui/h.js');
const {yardView} = await import('../yard/yard.js');
const {buyTicked, goHome, setOffer, setTick} = await import('../yard/actions.js');

const read = (/** @type {string} */ name) => JSON.parse(readFileSync(new URL('../../testdata/' + name, import.meta.url), 'utf8'));

function deskAt() {
  const desk = /** @type {any} */ (createDesk(read('jobs/good-stock.json')));
  return Object.assign(desk, {plan: read('golden/good-stock.json'), planFor: desk.slate.doc, place: 'yard'});
}

/** What the page says of the changes. @param {any} desk */
function said(desk) {
  const root = newRoot();
  render(yardView(desk), root);
  return root.all().find((/** @type {any} */ el) => el.getAttribute?.('data-test') === 'changes')?.textContent ?? '';
}

const none = {changes: [], before: {}, after: {}};

test('a price that changed is named, with what it was', () => {
  const desk = deskAt();
  const at = desk.slate.doc.offers.findIndex((/** @type {any} */ offer) => offer.price === undefined);
  setOffer(desk, at, 'price', '99.50');
  desk.changes = none;
  assert.match(said(desk), /: 99\.50, was no price/);
  desk.home = desk.slate.doc;
  setOffer(desk, at, 'price', '101');
  assert.match(said(desk), /: 101, was 99\.50/);
  assert.doesNotMatch(said(desk), /no price/);
});

test('what is bought is still to buy no more, and is not called gone', () => {
  const desk = deskAt();
  const line = desk.plan.order[0];
  setTick(desk, line, true);
  buyTicked(desk);
  desk.changes = {...none, changes: [{is: 'gone', name: 'It', material: line.material, pack: line.pack, bulk: line.bulk, before: line.count, after: 0}]};
  assert.match(said(desk), new RegExp(`0 still to buy, was ${line.count}`));
});

test('what a message offers to take back is the change that it tells of', () => {
  const desk = deskAt();
  setOffer(desk, 0, 'price', '99.50');
  goHome(desk);
  assert.ok(desk.message.undo);
  desk.slate.set(['name'], 'Another');
  assert.equal(desk.message, null, 'an undo now would take that back');
});

test('what is undone at the yard can come back, ticks and all', () => {
  const desk = deskAt();
  const home = desk.slate.doc;
  setTick(desk, desk.plan.order[0], true);
  setOffer(desk, 0, 'price', '99.50');
  const changed = desk.slate.doc, {ticks} = desk;
  goHome(desk);
  assert.equal(desk.slate.doc, home);
  const {undo} = desk.message;
  desk.slate.undo();
  undo();
  assert.equal(desk.slate.doc, changed);
  assert.equal(desk.home, home);
  assert.deepEqual(desk.ticks, ticks);
});
