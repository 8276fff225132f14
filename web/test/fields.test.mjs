import test from 'node:test';
import assert from 'node:assert/strict';
import {readFileSync} from 'node:fs';
import {pathText} from '../state/path.js';

// Fields of every kind, of every object, and another kind of task, as the library
// might have them one day: no form knows of them. They are put in before any form
// is read.
const {tables} = await import('../state/tables.js');
tables.task.fields.kind.words?.push('dig');
tables.task.fields.kind.called = {...tables.task.fields.kind.called, dig: 'Dig'};
tables.dig = {of: 'a dig task', fields: {area: {kind: 'area'}, deep: {kind: 'length', about: 'How deep'}, edge: {kind: 'object', object: 'dig_edge'}}};
tables.dig_edge = {of: 'an edge', fields: {side: {kind: 'length', about: 'Side'}}};
const before = Object.fromEntries(Object.entries(tables).map(([object, {fields}]) => [object, Object.keys(fields)]));
const kinds = [...new Set(Object.values(tables).flatMap(({fields}) => Object.values(fields).map(field => field.kind)))];

/** Kinds with a box, each of which testdata/entry.json says how to type in, or whose text is kept as it is. */
const typed = new Set([...JSON.parse(readFileSync(new URL('../testdata/entry.json', import.meta.url), 'utf8')).rows.map((/** @type {any} */ row) => row.kind), 'id', 'size', 'mix']);

/** Kinds with a control of their own. */
const own = new Set(['choice', 'switch', 'traits', 'material', 'object', 'list']);

/** Kinds that have a form somebody wrote, or are not asked for. */
const formed = new Set(['keyed', 'fixed']);

const fresh = kinds.filter(kind => !formed.has(kind));
/** @param {string} object @param {string} kind */
const nameOf = (object, kind) => `new_${object}_${kind}`;
for (const [object, {fields}] of Object.entries(tables)) {
  for (const kind of fresh) {
    fields[nameOf(object, kind)] = {kind, about: `New ${kind}`, ...kind === 'choice' || kind === 'traits' ? {words: ['one', 'two']} : {}, ...kind === 'object' ? {object: 'ring'} : {}};
  }
}
const {objects, rowOf} = await import('../state/fields.js');
const {drawn, stateOf} = await import('./drawn.mjs');
const {formView} = await import('../job/form.js');
const {bedView} = await import('../bed/bed.js');

const doc = {
  schema: 1, mixes: [{}], offers: [{breaks: [{}]}], haul: {}, delivery: {}, materials: [{}], containers: [{}],
  tasks: [{kind: 'fill', containers: [{}]}, {kind: 'amend', area: {strip: {}}}, {kind: 'backfill'}, {kind: 'cover', area: {ring: {}}, stems: {}, sheet: {}}],
};

/** Where the document above has each object. @type {Record<string, (string | number)[]>} */
const at = {
  job: [], task: ['tasks', 0], fill: ['tasks', 0], container: ['tasks', 0, 'containers', 0], amend: ['tasks', 1], backfill: ['tasks', 2], cover: ['tasks', 3],
  stems: ['tasks', 3, 'stems'], sheet: ['tasks', 3, 'sheet'], area: ['tasks', 1, 'area'], strip: ['tasks', 1, 'area', 'strip'], ring: ['tasks', 3, 'area', 'ring'],
  offer: ['offers', 0], price_break: ['offers', 0, 'breaks', 0], haul: ['haul'], delivery: ['delivery'], mix: ['mixes', 0], material: ['materials', 0], own_container: ['containers', 0],
};

/** Objects of the Yard place, which writes them from what is tapped there. */
const elsewhere = ['yard', 'bought'];

/** What no form knows of stands in tasks of its own. @param {string} object @param {(string | number)[]} path @param {any} value */
function place(object, path, value) {
  at[object] ??= path;
  for (const name of before[object]) {
    const field = tables[object].fields[name], of = field.object ?? name;
    if (field.kind === 'object' && !at[of] && !elsewhere.includes(of)) place(of, [...path, name], value[name] = {});
  }
}
for (const object of Object.keys(at)) place(object, at[object], at[object].reduce((value, key) => /** @type {any} */ (value)[key], doc));
for (const kind of tables.task.fields.kind.words ?? []) {
  if (at[kind]) continue;
  const index = doc.tasks.push({kind}) - 1;
  place(kind, ['tasks', index], doc.tasks[index]);
}

test('every kind of field has a control', () => {
  assert.deepEqual(kinds.filter(kind => !typed.has(kind) && !own.has(kind) && !formed.has(kind)), []);
});

test('a field that no form lays out is asked for all the same, after the others', () => {
  assert.deepEqual([...Object.keys(at), ...elsewhere].sort(), Object.keys(tables).sort());
  const all = drawn(formView(stateOf(doc))).filter(el => ['input', 'select', 'button'].includes(el.type));
  const paths = all.map(el => el.props['data-path']), ids = all.map(el => el.props.id).filter(id => id !== undefined);
  assert.deepEqual(ids.filter((id, i) => ids.indexOf(id) !== i), [], 'an id twice');
  for (const [object, path] of Object.entries(at)) {
    const places = fresh.map(kind => paths.indexOf(pathText([...path, nameOf(object, kind)])));
    assert.deepEqual(fresh.filter((_, i) => places[i] < 0), [], `${object}: not asked for`);
    const last = Math.max(...before[object].map(name => paths.lastIndexOf(pathText([...path, name]))));
    assert.ok(last < Math.min(...places), `${object}: among the others`);
  }
});

test('a field without a label is called what it is', () => {
  assert.deepEqual(rowOf('cover', 'new_cover_length'), {name: 'new_cover_length', kind: 'length', unit: 'depth', label: 'New length'});
  assert.equal(rowOf('cover', 'new_cover_share').unit, 'share');
  assert.equal(rowOf('cover', 'new_cover_mass').unit, 'weight');
  assert.deepEqual(rowOf('cover', 'new_cover_choice').choices, [['one', 'one'], ['two', 'two']]);
  assert.deepEqual(objects.cover.fields.slice(0, 4).map(row => row.name), ['area', 'layer', 'stems', 'sheet']);
  const label = drawn(formView(stateOf(doc))).find(el => el.type === 'label' && el.props.for === 'f-' + encodeURIComponent('tasks[3].new_cover_length'));
  assert.equal(label.props.children, 'New length');
});

test('a kind of task that has no form of its own is asked for like any other', () => {
  const all = drawn(formView(stateOf({schema: 1, tasks: [{kind: 'dig'}]})));
  const asked = all.filter(el => ['input', 'select'].includes(el.type)).map(el => el.props['data-path']);
  for (const name of ['deep', 'material', 'settle', 'name', 'kind']) assert.ok(asked.includes(`tasks[0].${name}`), name);
  assert.equal(all.find(el => el.type === 'label' && el.props.for === 'f-' + encodeURIComponent('tasks[0].deep')).props.children, 'How deep');
  const empty = drawn(formView(stateOf({schema: 1})));
  assert.equal(empty.find(el => el.props['data-test'] === 'add-dig').props.children[0].props.children, 'Dig');
});

test('a task of a kind that has no steps shows what it takes', () => {
  const state = stateOf({schema: 1, tasks: [{kind: 'dig'}]});
  const task = {kind: 'dig', title: 'Dig it over', facts: [{code: 'deep', label: 'Depth', figure: '3 in'}]};
  const caution = {code: 'digging', text: 'Have lines located.'};
  Object.assign(state, {plan: {tasks: [task], cautions: [caution], drawings: []}, drawings: []});
  const all = drawn(bedView(state));
  assert.ok(all.some(el => el.type === 'h2' && el.props.children === '1. Dig it over'));
  assert.ok(!all.some(el => el.type === 'ol'));
  assert.equal(all.filter(el => el.props['data-code'] === 'digging').length, 1);
});

test('ground in one line becomes an object before something stands beside it', () => {
  const state = stateOf({schema: 1, tasks: [{kind: 'amend', area: '60 ft x 4 ft'}]});
  const around = drawn(formView(state)).find(el => el.props?.onInputCapture);
  around.props.onInputCapture();
  assert.deepEqual(state.job.get(['tasks', 0, 'area']), {rectangle: '60 ft x 4 ft'});
});
