import test from 'node:test';
import assert from 'node:assert/strict';
import {readFileSync, readdirSync} from 'node:fs';
import {anyValue, dice, nasty} from './random.mjs';
import {putDocument} from './dom.mjs';

const newRoot = putDocument();
const {createActions} = await import('../app/actions.js');
const {createState} = await import('../state/state.js');
const {render} = await import('../ui/h.js');
const {openStore} = await import('../store/jobs.js');
const {objects} = await import('../state/fields.js');
const {pageView} = await import('../shell/frame.js');

const read = (/** @type {string} */ name) => JSON.parse(readFileSync(new URL('../../testdata/' + name, import.meta.url), 'utf8'));
const golden = readdirSync(new URL('../../testdata/golden/', import.meta.url)).filter(name => /^good-.*\.json$/.test(name));
const jobs = golden.map(name => ({doc: read('jobs/' + name), plan: read('golden/' + name)}));

/** What is a value like any other in a file, and is none to a page that trusts it. */
const odd = [...nasty, null, true, 0, -1, 1e308, [], {}, [[]], [null], {a: 1}, 'x'.repeat(5000),
  {toString: 1, valueOf: 1}, [{toString: 1, valueOf: 1}], {type: 'img', props: {src: 'x'}, key: null, ref: null, __b: 1, constructor: null},
  {length: 3}, {length: -1}, {__html: '<b>'}, JSON.parse('{"__proto__": null}'), 'javascript:alert(1)', 'fill', 'saved'];

/** Somewhere in a value, something else. @param {any} d @param {any} value @returns {any} */
function spoil(d, value) {
  if (typeof value !== 'object' || value === null || d.roll(12) === 0) return d.roll(4) === 0 ? anyValue(d, 3) : structuredClone(d.pick(odd));
  const keys = Object.keys(value);
  if (keys.length === 0) return structuredClone(d.pick(odd));
  const key = d.pick(keys);
  if (Array.isArray(value)) {
    if (d.roll(8) === 0) return {...value};
    return value.map((item, i) => String(i) === key ? spoil(d, item) : item);
  }
  if (d.roll(10) === 0) return Object.fromEntries(Object.entries(value).filter(([k]) => k !== key));
  if (d.roll(10) === 0) return Object.fromEntries([...Object.entries(value), [d.pick(nasty), structuredClone(d.pick(odd))]]);
  return Object.fromEntries(Object.entries(value).map(([k, v]) => [k, k === key ? spoil(d, v) : v]));
}

/** A state with a job taken from a record, all of it folded out. @param {any} record */
function stateOf(record) {
  const state = /** @type {any} */ (createState({schema: 1, tasks: []}));
  state.open = Object.assign(new Set(), {has: () => true});
  state.store = openStore(null, {events: undefined});
  state.actions = createActions(state, {});
  state.actions.take({id: '1', name: 'x', doc: {}, home: null, ticks: {}, place: 'job', typedAt: 0, rev: 0, plan: '', ...record});
  return state;
}

/** What the page could not draw. @type {any[]} */
const caught = [];
globalThis.reportError = error => caught.push(error);

/** Draws every place of the page, again and again. @param {any} state */
function drawAll(state) {
  const root = newRoot();
  caught.length = 0;
  for (const place of ['job', 'yard', 'ground', 'job']) {
    state.place = place;
    render(pageView(state), root);
  }
  for (state.printing of ['yard', 'ground', undefined]) render(pageView(state), root);
  return root;
}
/** @param {any} root @param {string} name */
const marked = (root, name) => root.all().filter((/** @type {any} */ el) => el.getAttribute?.('data-test') === name);

/** Changes something once or a few times; what comes of it is an object. @param {any} d @param {any} whole */
function spoiled(d, whole) {
  for (let i = d.roll(3); i >= 0; i--) {
    const next = spoil(d, whole);
    if (typeof next === 'object' && next !== null && !Array.isArray(next)) whole = next;
  }
  return whole;
}

/** A state must draw such a document, and leave it as it is. @param {any} doc @param {any} [more] @param {string} [about] */
function holds(doc, more, about = JSON.stringify(doc)) {
  const before = JSON.stringify(doc);
  const root = drawAll(stateOf({doc, ...more}));
  assert.deepEqual(caught.map(error => error.stack), [], about);
  assert.equal(JSON.stringify(doc), before, 'drawing changes nothing: ' + about);
  assert.deepEqual(root.all().filter((/** @type {any} */ el) => ['script', 'img', 'b'].includes(el.localName)), [], about);
  return root;
}

test('any value anywhere in a job is drawn, and stays as it is', () => {
  const {doc, plan} = /** @type {any} */ (jobs[golden.indexOf('good-stock.json')]);
  const saved = {plan: JSON.stringify(plan), home: doc};
  const all = (/** @type {string[]} */ keys, /** @type {any} */ value) => Object.fromEntries(keys.map(key => [key, value]));
  for (const bad of odd) {
    holds({...all(Object.keys(objects), bad), ...all(objects.job.fields.map(row => row.name), bad)}, saved);
    holds({...doc, ...all(['yard', 'name'], bad)}, saved);
    holds({name: bad, yard: all(['without', 'bought', 'only_stock'], bad), mixes: [{id: bad, parts: {peat: bad}}], offers: [all(['material', 'pack', 'price'], bad)],
      tasks: [all(['kind', 'name', 'containers'], bad), {kind: 'fill', ...all(['mix', 'containers'], bad)}, {kind: 'cover', ...all(['material', 'area', 'layer', 'stems'], bad)}]}, saved);
    holds({yard: all(['without', 'bought'], [bad, bad]), tasks: [{kind: 'fill', containers: [bad, all(['size', 'count'], bad)]}, {kind: 'amend', area: {circle: bad, plus: [bad]}}]}, saved);
  }
});

test('jobs changed at random are drawn', () => {
  const d = dice(1);
  for (let n = 0; n < 40; n++) {
    const {doc, plan} = d.pick(jobs);
    holds(spoiled(d, doc), {plan: d.roll(2) ? JSON.stringify(plan) : '', home: d.roll(3) ? null : doc});
  }
});

test('offers that are none, where others had a price at home, are drawn', () => {
  const {doc, plan} = /** @type {any} */ (jobs[golden.indexOf('good-stock.json')]);
  for (const bad of odd) {
    const state = stateOf({doc: {...doc, offers: doc.offers.map(() => bad)}, plan: JSON.stringify(plan), home: doc});
    state.changes = {changes: [], before: {}, after: {}};
    drawAll(state);
    assert.deepEqual(caught.map(error => error.stack), [], JSON.stringify(bad));
  }
});

test('a plan kept from before may be anything', () => {
  const d = dice(2);
  const {doc, plan} = /** @type {any} */ (jobs[golden.indexOf('good-stock.json')]);
  assert.ok(marked(drawAll(stateOf({doc, plan: JSON.stringify(plan)})), 'need').length > 0);
  for (let n = 0; n < 50; n++) {
    const bad = n === 0 ? {needs: [], tasks: []} : spoiled(d, plan);
    const root = drawAll(stateOf({doc, plan: JSON.stringify(bad)}));
    assert.deepEqual(marked(root, 'undrawn'), [], JSON.stringify(bad));
    assert.ok(marked(root, 'job-name').length > 0, 'the form is there');
  }
});

test('what cannot be drawn says so, until it can', () => {
  const state = stateOf({doc: jobs[0].doc});
  const root = newRoot();
  state.plan = {};
  state.planFor = state.job.doc;
  render(pageView(state), root);
  render(pageView(state), root);
  assert.ok(marked(root, 'undrawn').length > 0);
  assert.ok(marked(root, 'menu').length > 0);
  state.plan = jobs[0].plan;
  render(pageView(state), root);
  assert.deepEqual(marked(root, 'undrawn'), []);
  assert.ok(marked(root, 'need').length > 0);
});

test('of a list without end some is drawn, and more when asked for', () => {
  const n = 30_000, list = (/** @type {any} */ value) => Array.from({length: n}, () => value), keyed = Object.fromEntries(list(1).map((one, i) => ['k' + i, one]));
  for (const doc of [{tasks: list(0)}, {tasks: list({kind: 'fill', containers: [{}]})}, {tasks: [{kind: 'fill', containers: list({})}]}, {tasks: [], offers: list({})}, {tasks: [], on_hand: keyed}, {tasks: [], ...keyed},
    {tasks: [{kind: 'cover', area: {strip: {along: list('')}}}]}, {tasks: [{kind: 'cover'}], materials: list(1).map((_, i) => ({id: 'm' + i}))}, {tasks: [], yard: {bought: list(0), without: list('')}}]) {
    const state = stateOf({doc, plan: JSON.stringify(jobs[0].plan)});
    state.open = new Set(['section offers', 'section on-hand']);
    state.place = doc.yard ? 'yard' : 'job';
    const root = newRoot();
    render(pageView(state), root);
    const drawn = root.all().length;
    assert.ok(drawn < 15_000, `${drawn} elements of ${JSON.stringify(doc).slice(0, 60)}`);
  }
});

test('a row that is added is shown, in a long list too', () => {
  const state = stateOf({doc: {tasks: Array.from({length: 500}, () => ({kind: 'cover'}))}});
  state.open = new Set();
  const root = newRoot();
  render(pageView(state), root);
  assert.equal(marked(root, 'task').length, 200);
  state.job.insert(['tasks'], 500, {kind: 'cover'});
  render(pageView(state), root);
  assert.equal(marked(root, 'task').length, 501);
});
