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

function deskAt(name = 'good-stock.json') {
  const state = /** @type {any} */ (createState(read('jobs/' + name)));
  return Object.assign(state, {plan: read('golden/' + name), planFor: state.job.doc, place: 'yard'});
}

/** What the page says of the changes. @param {any} state */
function said(state) {
  const root = newRoot();
  render(yardView(state), root);
  return root.all().find((/** @type {any} */ el) => el.getAttribute?.('data-test') === 'changes')?.textContent ?? '';
}

/** Changes of one line of the order, as the library answers. @param {any} state @param {object} change */
function changed(state, change) {
  const {material, pack, bulk, count} = state.plan.order[0];
  setOffer(state, 0, 'stock', 1);
  state.changes = {changes: [{is: 'same', name: 'It', material, pack, bulk, before: count, after: count, ...change}], before: {}, after: {}};
  return said(state);
}

test('a price that changed is named, with what it was, also where the list is the same', () => {
  assert.match(changed(deskAt(), {price_after: '99.50'}), /It: price 99\.50, was no price/);
  assert.match(changed(deskAt(), {price_before: '99.50', price_after: '101'}), /It: price 101, was 99\.50The list to buy is the same/);
  assert.match(changed(deskAt(), {price_before: '99.50'}), /It: price no price, was 99\.50/);
});

test('what became of a line says why', () => {
  for (const [change, text] of /** @type {[object, string][]} */ ([
    [{is: 'gone', why: 'sold-out', before: 5, after: 0}, 'It: sold out, was 5'],
    [{is: 'gone', why: 'not-needed', before: 5, after: 0}, 'It: not needed now, was 5'],
    [{is: 'gone', why: 'bought', before: 5, after: 0, bought: 5}, 'It: 5 bought, 0 still to buy, was 5'],
    [{is: 'fewer', why: 'bought', before: 5, after: 2, bought: 3}, 'It: 3 bought, 2 still to buy, was 5'],
    [{is: 'same', before: 0, after: 0, bought: 3}, 'It: 3 bought'],
    [{is: 'fewer', why: 'scarce', before: 5, after: 3}, 'It: 3, all there are; was 5'],
    [{is: 'fewer', why: 'not-needed', before: 5, after: 3}, 'It: 3, was 5'],
    [{is: 'new', before: 0, after: 3}, 'It: 3, was 0'],
    [{is: 'more', before: 3, after: 5, bought: -2}, 'It: 5, was 3'],
  ])) {
    const is = changed(deskAt(), change);
    assert.ok(is.includes(text), `${JSON.stringify(change)}: ${is}`);
    assert.ok(!is.includes('is the same'));
  }
});

test('what is paid and what is still to pay add up, before and after', () => {
  const state = deskAt();
  changed(state, {});
  state.changes.before = {total: '270.65', drives_shown: '5 drives'};
  state.changes.after = {total: '230.65', paid: '40.00', in_all: '270.65', drives_shown: '4 drives'};
  assert.match(said(state), /Paid already 40\.00, still to pay 230\.65\.In all 270\.65, was 270\.65Still to drive: 4 drives; before: 5 drives/);
  state.changes.before.driving = '45.00';
  state.changes.after.driving = '0.00';
  assert.match(said(state), /Driving in it 0\.00, was 45\.00: drives made already are not counted\./);
  state.changes.after.driving = '45.00';
  assert.doesNotMatch(said(state), /Driving/);
  state.changes.before = {total: '250.65', paid: '20.00', in_all: '270.65'};
  assert.match(said(state), /In all 270\.65, was 270\.65Still to drive: 4 drives(?!;)/);
});

test('what is bought keeps what it cost', () => {
  const state = deskAt();
  for (const line of state.plan.order) setTick(state, line, true);
  buyTicked(state);
  const costs = state.job.get(['yard', 'bought']).map((/** @type {any} */ b) => b.cost);
  assert.deepEqual(costs, state.plan.order.map((/** @type {any} */ l) => l.cost));
  assert.ok(costs.some((/** @type {any} */ cost) => cost !== undefined) && costs.some((/** @type {any} */ cost) => cost === undefined));
});

test('the figure of another offer is of the whole order, and only when it is of this job', () => {
  const state = deskAt('good-yard.json');
  state.plan.others.push({...state.plan.others[0], offer: 2, material: 'peat', pack: '3.8 cu ft', stock: 2});
  const shown = () => {
    const root = newRoot();
    render(yardView(state), root);
    return root.all().filter((/** @type {any} */ el) => el.getAttribute?.('data-test') === 'other').map((/** @type {any} */ el) => el.textContent).join('\n');
  };
  const [other] = state.plan.others.filter((/** @type {any} */ l) => l.cost !== undefined && l.stock === undefined);
  assert.ok(!shown().includes(other.cost));
  state.full = {...state.plan, choices: [], bags_or_bulk: [], alternatives: [{...other, count: 77, total: '159.00', trips: 1}]};
  assert.ok(!shown().includes('159.00'), 'of a job before');
  state.fullFor = state.planFor;
  assert.ok(shown().includes('77 × ') && shown().includes('159.00'), shown());
  assert.match(shown(), /only \d+ in stock/);
});

test('where all is bought, there is nothing more to buy', () => {
  const state = deskAt();
  state.plan = {...state.plan, order: [], left_out: undefined, needs: state.plan.needs.map((/** @type {any} */ n) => ({...n, litres: 0})), bought: [], cost: '0.00', total: '0.00', paid: '40.00', in_all: '40.00'};
  const root = newRoot();
  render(yardView(state), root);
  assert.match(root.textContent, /Nothing more to buy\./);
  assert.match(root.textContent, /Still to pay0\.00Paid already40\.00Paid and still to pay40\.00/);
  assert.doesNotMatch(root.textContent, /No offers yet/);
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
