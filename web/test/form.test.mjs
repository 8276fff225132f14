import test from 'node:test';
import assert from 'node:assert/strict';
import {readFileSync, readdirSync} from 'node:fs';
import {drawn, stateOf} from './drawn.mjs';
import {createState} from '../state/state.js';
import {formView} from '../job/form.js';
import {readLine} from '../job/shapes.js';
import {readParts, writeParts} from '../job/keyed_rows.js';
import {Either} from '../ui/either.js';
import {Field} from '../ui/field.js';
import {readField, showField} from '../ui/writing.js';
import {rowOf} from '../state/fields.js';
import {addRow, copyRow, moveRow, nameRows, removeRow} from '../job/rows.js';
import {Rows} from '../job/list.js';
import {differ} from '../ui/memo.js';
import {pathText} from '../state/path.js';
import {needed, shown, problemsAt} from '../state/problems.js';

const jobs = new URL('../../testdata/jobs/', import.meta.url);
const us = {comma: false, currency: '$', measure: 'us', language: 'en'};

/** The path of everything in a document that is no list and no object. @param {any} value @param {any[]} path @returns {any[][]} */
const leaves = (value, path = []) => typeof value === 'object' && value !== null
  ? Object.entries(value).flatMap(([key, inside]) => leaves(inside, [...path, Array.isArray(value) ? Number(key) : key]))
  : [path];

test('every value of a job has a control, and nothing else changes', () => {
  const names = readdirSync(jobs).filter(name => name.endsWith('.json'));
  assert.ok(names.length > 10);
  let seen = 0;
  /** @type {string[]} */
  const lost = [];
  for (const name of [...names.map(n => new URL(n, jobs)), new URL('../../mix/sample.json', import.meta.url)]) {
    const doc = JSON.parse(readFileSync(name, 'utf8'));
    const state = stateOf(doc);
    const controls = drawn(formView(state)).filter(el => ['input', 'select'].includes(el.type));
    const paths = controls.map(el => el.props['data-path']);
    // What the document cannot have there can at least be taken out.
    const odd = new Set(drawn(formView(state)).filter(el => el.props['data-test'] === 'remove-row').map(el => el.props['data-path']));
    for (const path of leaves(doc)) {
      const text = pathText(path);
      if (path[0] === 'schema' || path[0] === 'yard') continue; // never asked; asked in another place
      const inside = paths.some(p => p === text || p.startsWith(text + '.') || p.startsWith(text + '['));
      const trait = path.includes('traits') && paths.includes(pathText(path.slice(0, -1)));
      const takenOut = path.some((_, i) => typeof path[i] === 'string' && odd.has(pathText(path.slice(0, i + 1))));
      if (!(inside || trait || name.pathname.includes('/bad-') && takenOut)) lost.push(`${name.pathname.split('/').pop()}: ${text}`);
      seen++;
    }
    assert.equal(state.job.doc, doc, `${name}: drawing changes nothing`);
    assert.equal(state.job.canUndo, false);
    const ids = controls.map(el => el.props.id);
    assert.deepEqual(ids.filter((id, i) => ids.indexOf(id) !== i), [], `${name}: an id twice`);
  }
  assert.ok(seen > 300);
  assert.deepEqual(lost, [], 'shown nowhere');
});

test('a box shows what the job has', () => {
  let boxes = 0;
  for (const name of [...readdirSync(jobs).filter(n => n.startsWith('good-')).map(n => new URL(n, jobs)), new URL('../../mix/sample.json', import.meta.url)]) {
    const doc = JSON.parse(readFileSync(name, 'utf8'));
    const values = new Map(leaves(doc).map(path => [pathText(path), path.reduce((at, step) => at[step], doc)]));
    for (const el of drawn(formView(stateOf(doc)))) {
      const value = el.type === 'input' && el.props.type === 'text' ? values.get(el.props['data-path']) : undefined;
      if (value === undefined || value === '') continue;
      assert.notEqual(el.props.value, '', `${name}: ${el.props['data-path']}, ${value}`);
      boxes++;
    }
  }
  assert.ok(boxes > 150);
});

test('a way that was picked stays when it takes over a field of another', () => {
  const state = stateOf({schema: 1, tasks: []});
  const ways = [{name: 'brim', label: 'Brim', keys: ['brim', 'top'], is: ['brim']}, {name: 'top', label: 'Top', keys: ['top', 'bottom'], is: ['top']}];
  /** @param {string | null} picked @param {object} value */
  const way = (picked, value) => {
    let name = '';
    const either = new Either({state, path: ['tasks'], value, ways, legend: '', draw: w => { name = w.name; return null; }});
    either.state = {picked};
    either.render(either.props);
    return name;
  };
  assert.equal(way(null, {top: '6 in'}), 'top');
  assert.equal(way('brim', {top: '6 in'}), 'brim');
  assert.equal(way('brim', {bottom: '6 in', top: '6 in'}), 'brim');
  assert.equal(way('top', {brim: '3 L'}), 'brim');
  assert.equal(way(null, {brim: '3 L', top: '6 in'}), 'brim');
});

test('a box that is kept later is drawn at each key', t => {
  t.mock.timers.enable();
  const state = stateOf({schema: 1, tasks: []});
  const box = new Field({state, path: ['name'], row: rowOf('job', 'name'), writing: us, late: true});
  let drawings = 0;
  box.forceUpdate = () => { drawings++; };
  box.render(box.props);
  box.input({currentTarget: {value: 'a'}});
  assert.equal(drawings, 1);
  assert.equal(state.job.doc.name, undefined, 'not before it is left');
});

test('a box tells what a key is about to make of the job', () => {
  const state = stateOf({schema: 1, name: 'Bed', tasks: []});
  const box = new Field({state, path: ['name'], row: rowOf('job', 'name'), writing: us});
  box.render(box.props);
  /** @type {any} */
  let foreseen;
  state.expect = doc => { foreseen = doc; };
  const key = (/** @type {string} */ value, /** @type {number} */ from, /** @type {number} */ to, /** @type {any} */ event) => {
    foreseen = undefined;
    box.before({...event, currentTarget: {value, selectionStart: from, selectionEnd: to}});
    return foreseen?.name;
  };
  const insert = {inputType: 'insertText', data: 's'}, back = {inputType: 'deleteContentBackward', data: null};
  assert.equal(key('Bed', 3, 3, insert), 'Beds');
  assert.equal(key('Bed', 0, 3, insert), 's');
  assert.equal(key('Bed', 1, 2, insert), 'Bsd');
  assert.equal(key('Bed', 3, 3, back), 'Be');
  assert.equal(key('Bed', 1, 3, back), 'B');
  // What is not plain is left to the key itself.
  assert.equal(key('Bed', 0, 0, back), undefined);
  assert.equal(key('🌱', 2, 2, back), undefined);
  assert.equal(key('e\u0301', 2, 2, back), undefined);
  assert.equal(key('Bed', 3, 3, {...insert, isComposing: true}), undefined);
  assert.equal(key('Bed', 3, 3, {inputType: 'insertFromPaste', data: null}), undefined);
  // And what it tells is what the key then makes.
  foreseen = undefined;
  box.before({...insert, currentTarget: {value: 'Bed', selectionStart: 3, selectionEnd: 3}});
  box.speakUp = () => {};
  box.input({currentTarget: {value: 'Beds'}});
  assert.equal(state.job.doc, foreseen);
});

test('a box left as it is changes nothing', t => {
  t.mock.timers.enable();
  let boxes = 0;
  for (const name of readdirSync(jobs).filter(n => n.startsWith('good-'))) {
    const doc = JSON.parse(readFileSync(new URL(name, jobs), 'utf8'));
    const state = stateOf(doc);
    for (const el of drawn(formView(state))) {
      if (el.type !== 'input' || el.props.type !== 'text' || el.props.value === '') continue;
      el.props.onInput({currentTarget: {value: el.props.value}});
      assert.deepEqual(state.job.doc, doc, `${name}: ${el.props['data-path']}, shown as ${el.props.value}`);
      boxes++;
    }
  }
  assert.ok(boxes > 100);
});

test('every control has a label, and what describes it is there', () => {
  const state = stateOf(JSON.parse(readFileSync(new URL('good-areas.json', jobs), 'utf8')));
  state.problems = new Map([['tasks[0].layer', {path: 'tasks[0].layer', code: 'unit.unknown', value: 'x', hint: 'did you mean <b>"in"</b>?'}], ['tasks[1].material', {path: 'tasks[1].material', code: 'field.missing', value: '', hint: 'say what goes in'}]]);
  const all = drawn(formView(state));
  const labels = new Set(all.filter(el => el.type === 'label').map(el => el.props.for));
  const ids = new Set(all.map(el => el.props.id).filter(Boolean));
  const controls = all.filter(el => ['input', 'select'].includes(el.type));
  assert.ok(controls.length > 100);
  for (const {props} of controls) {
    assert.ok(labels.has(props.id), `${props.id} has no label`);
    for (const id of (props['aria-describedby'] ?? '').split(' ').filter(Boolean)) assert.ok(ids.has(id), `${props.id} is described by ${id}, which is nowhere`);
  }
  const wrong = controls.filter(el => el.props['aria-invalid']);
  assert.deepEqual(wrong.map(el => el.props['data-path']), ['tasks[0].layer'], 'what only waits is not called wrong');
  assert.match(wrong[0].props['aria-describedby'], /-problem/);
  assert.deepEqual(all.filter(el => el.props['data-test'] === 'problem').map(el => el.props.children), ['did you mean <b>"in"</b>?'], 'a hint is text');
});

test('the unit beside a box is the one that what stands there would get', () => {
  // A share of 0.1 is a tenth to the library; a percent sign beside it would lie.
  const state = stateOf({schema: 1, tasks: [{kind: 'cover', area: '', layer: '3 in', spare: '0.1'}]});
  const unit = (/** @type {string} */ path) => drawn(formView(state)).find(el => el.props.id === `f-${encodeURIComponent(path)}-unit`)?.props.class;
  assert.match(unit('tasks[0].spare'), /spare/);
  assert.match(unit('tasks[0].layer'), /spare/);
  assert.doesNotMatch(unit('tasks[0].settle'), /spare/);
});

test('what waits is marked, and shown once it was left', () => {
  const state = createState({});
  const problem = {path: 'tasks[0].layer', code: 'field.missing', value: '', hint: 'how deep?'};
  state.problems = new Map([[problem.path, problem], ['tasks[0].area', {...problem, path: 'tasks[0].area', code: 'unit.unknown'}]]);
  assert.equal(needed(state, 'tasks[0].layer'), true);
  assert.equal(shown(state, 'tasks[0].layer'), undefined);
  assert.equal(needed(state, 'tasks[0].area'), false);
  assert.equal(shown(state, 'tasks[0].area')?.code, 'unit.unknown');
  const before = problemsAt(state, 'tasks[0]');
  assert.deepEqual([before.wrong, before.waiting], [1, 1]);
  assert.equal(problemsAt(state, 'tasks').mark, before.mark);
  assert.deepEqual(problemsAt(state, 'tasks[1]'), {mark: '', wrong: 0, waiting: 0});
  state.touched.add('tasks[0].layer');
  assert.equal(shown(state, 'tasks[0].layer'), problem);
  assert.notEqual(problemsAt(state, 'tasks[0]').mark, before.mark, 'a part is drawn again when a field of it was left');
});

test('rows keep their names while the list changes', () => {
  const a = {n: 1}, b = {n: 2}, c = {n: 3};
  const one = nameRows(undefined, [a, b, c]);
  assert.equal(one.fresh.length, 3);
  assert.deepEqual(nameRows(one, one.list).keys, one.keys);
  const edited = nameRows(one, [a, {n: 20}, c]);
  assert.deepEqual([edited.keys, edited.fresh], [one.keys, []], 'a row that is changed keeps its name');
  const moved = nameRows(edited, [c, a, edited.list[1]]);
  assert.deepEqual(moved.keys, [one.keys[2], one.keys[0], one.keys[1]]);
  const removed = nameRows(moved, [c, moved.list[2]]);
  assert.deepEqual(removed.keys, [one.keys[2], one.keys[1]]);
  const back = nameRows(removed, moved.list);
  assert.deepEqual([back.keys, back.fresh], [moved.keys, []], 'undo brings its name back');
  const copied = nameRows(back, [c, structuredClone(c), a, moved.list[2]]);
  assert.equal(copied.fresh.length, 1);
  assert.equal(new Set(copied.keys).size, 4);
  const texts = nameRows(undefined, ['', '']);
  assert.equal(new Set(texts.keys).size, 2);
  assert.deepEqual(nameRows(texts, ['x', '']).keys, texts.keys);
});

test('rows are added, copied, moved and removed, with what was touched in them', () => {
  const state = createState({tasks: [{kind: 'cover', name: 'a'}, {kind: 'fill', name: 'b', containers: [{count: 1}]}]});
  state.touched.add('tasks[1].layer').add('tasks[0].layer').add('offers[1].price');
  state.open.add('more tasks[1]').add('more tasks[1].containers[0]').add('more offers[0]').add('row7');
  addRow(state, ['tasks'], {kind: 'amend'});
  assert.equal(state.job.doc.tasks.length, 3);
  moveRow(state, ['tasks', 1], 'down');
  assert.deepEqual(state.job.doc.tasks.map(t => t.kind), ['cover', 'amend', 'fill']);
  assert.deepEqual([...state.touched].sort(), ['offers[1].price', 'tasks[0].layer', 'tasks[2].layer']);
  assert.deepEqual([...state.open].sort(), ['more offers[0]', 'more tasks[2]', 'more tasks[2].containers[0]', 'row7']);
  copyRow(state, ['tasks', 2]);
  assert.deepEqual(state.job.doc.tasks[3], state.job.doc.tasks[2]);
  assert.notEqual(state.job.doc.tasks[3].containers, state.job.doc.tasks[2].containers);
  removeRow(state, ['tasks', 0], 'a');
  assert.deepEqual([...state.touched].sort(), ['offers[1].price', 'tasks[1].layer']);
  assert.deepEqual([state.message?.undo, state.message?.text], [true, 'Removed: a']);
  state.job.undo();
  assert.deepEqual(state.job.doc.tasks.map(t => t.kind), ['cover', 'amend', 'fill', 'fill']);
});

test('an area in one line', () => {
  for (const [text, shape, lengths] of [
    ['60 ft x 4 ft', 'rectangle', '60 ft x 4 ft'], ['12 by 4 ft', 'rectangle', '12 by 4 ft'], ['240 sq ft', 'area', '240 sq ft'], ['Circle  14 ft', 'circle', '14 ft'],
    ['ring 20 ft x 14 ft', 'ring', '20 ft x 14 ft'], ['triangle', 'triangle', ''], ['rectangle 3 m x 2 m', 'rectangle', '3 m x 2 m'], ['0.5 acre', 'area', '0.5 acre'],
    ['Círculo 14 pies', 'circle', '14 pies'], ['triangulo 3 m x 2 m', 'triangle', '3 m x 2 m'], ['3 m por 2 m', 'rectangle', '3 m por 2 m'],
  ]) assert.deepEqual(readLine(text), {shape, lengths}, text);
});

test('parts in one line', () => {
  for (const [text, entries] of [
    ['bark-fines 3, peat 1', [['bark-fines', '3'], ['peat', '1']]], ['3 bark fines, ½ peat', [['bark-fines', '3'], ['peat', '½']]], ['sand 1 1/2', [['sand', '1 1/2']]],
    ['peat', null], ['peat 1, peat 2', null], ['peat 1,', null], [7, null],
  ]) assert.deepEqual(readParts(text), entries, String(text));
  assert.equal(writeParts([['bark-fines', 3], ['peat', '1/2']]), 'bark-fines 3, peat 1/2');
  assert.equal(writeParts([]), undefined);
});

test('what is typed, by the row of its field', () => {
  const metric = {...us, measure: 'metric', comma: true};
  for (const [object, name, typed, writing, kept] of [
    ['amend', 'layer', '3', us, '3 in'], ['amend', 'layer', '7,5', metric, '7.5 cm'], ['container', 'count', '64', us, 64], ['container', 'size', ' #1 ', us, '#1'],
    ['offer', 'price', '$4.75', us, '4.75'], ['offer', 'pack', '2', us, '2 cu ft'], ['offer', 'bulk', '1/2', us, '1/2 cu yd'], ['offer', 'bulk', '2', metric, '2 m3'],
    ['haul', 'payload', '500', metric, '500 kg'], ['material', 'dry', '303', us, '303 lb/cu yd'], ['sheet', 'size', '4 x 3', us, '4 ft x 3 ft'], ['task', 'spare', '10', us, '10%'], ['mix', 'id', ' my-mix', us, 'my-mix'],
  ]) assert.equal(readField(rowOf(object, name), typed, writing), kept, `${object}.${name} ${typed}`);
  const offset = {name: 'offset', kind: 'offset', unit: 'side', label: ''};
  for (const [typed, kept] of [['-3', '-3 ft'], ['−3', '-3 ft'], ['3', '3 ft'], ['-', undefined], ['', undefined], ['-3 m', '-3 m']]) assert.equal(readField(offset, typed, us), kept, typed);
  assert.equal(showField(offset, '-3 ft', us), '-3 ft');
  assert.equal(showField(rowOf('container', 'count'), 64, us), '64');
});

test('a key typed in one line of many draws that line alone', () => {
  const lines = Array.from({length: 200}, (_, i) => ({count: i + 1, size: '#1'}));
  const state = createState({tasks: [{kind: 'fill', containers: lines}]});
  const path = ['tasks', 0, 'containers'], ctx = {writing: us};
  const form = () => [], one = () => '';
  const props = () => ({state, path: [...path], list: state.job.get(path), ctx, form, one, add: {label: ''}, mark: problemsAt(state, 'tasks[0].containers').mark});
  const rows = new Rows(props());
  const drawnRows = () => rows.render(props()).props.children.flat(9).find((/** @type {any} */ el) => el?.type === 'ol').props.children;
  const before = drawnRows();
  state.job.set([...path, 100, 'count'], 7);
  state.problems = new Map([['tasks[0].containers[3].size', {path: 'tasks[0].containers[3].size', code: 'container.unknown', value: '#x', hint: 'which?'}]]);
  const after = drawnRows();
  assert.equal(after.length, 200);
  const again = after.flatMap((/** @type {any} */ el, /** @type {number} */ i) => el.key !== before[i].key || new el.type(before[i].props).shouldComponentUpdate.call({props: before[i].props, state: undefined}, el.props, undefined) ? [i] : []);
  assert.deepEqual(again, [3, 100], 'the line that changed, and the one with a new problem');
});

test('a part is drawn again only for another value', () => {
  const value = {};
  assert.equal(differ({path: ['a', 1], value}, {path: ['a', 1], value}), false);
  assert.equal(differ({path: ['a', 1], value}, {path: ['a', 2], value}), true);
  assert.equal(differ({path: ['a', 1], value}, {path: ['a', 1], value: {}}), true);
  assert.equal(differ({value}, {value, more: 1}), true);
});

test('a size that is known is chosen by its kind, and makes a line', () => {
  const state = stateOf({schema: 1, tasks: [{kind: 'fill', mix: 'potting', containers: [{count: 12}]}]});
  state.catalog = {materials: [], mixes: [], soils: [], containers: [{id: '#1', kind: 'Pots', name: '#1 pot'}, {id: 'tray-72', kind: 'Trays', name: 'Cell tray, 72 cells'}]};
  const pick = () => drawn(formView(state)).find(el => el.props['data-test'] === 'known-size');
  const choose = (/** @type {string} */ value) => pick().props.onChange({currentTarget: {value}});
  assert.deepEqual(drawn(pick()).filter(el => el.type === 'optgroup').map(el => el.props.label), ['Pots', 'Trays']);
  choose('tray-72');
  assert.deepEqual(state.job.doc.tasks[0].containers, [{count: 12, size: 'tray-72'}], 'a line that says nothing yet takes it');
  choose('#1');
  assert.deepEqual(state.job.doc.tasks[0].containers, [{count: 12, size: 'tray-72'}, {size: '#1'}]);
  choose('');
  assert.equal(state.job.doc.tasks[0].containers.length, 2);
});
