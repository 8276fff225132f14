import test from 'node:test';
import assert from 'node:assert/strict';
import {readFileSync} from 'node:fs';
import {createSlate, parsePath, pathText} from '../state/document.js';
import {anyValue, dice, nasty} from './random.mjs';

const sample = () => JSON.parse(readFileSync(new URL('../../mix/sample.json', import.meta.url), 'utf8'));
const clone = (/** @type {any} */ v) => v === undefined ? v : JSON.parse(JSON.stringify(v));

test('a change shares all that it does not touch', () => {
  const slate = createSlate(sample());
  const before = slate.doc;
  assert.equal(slate.set(['tasks', 2, 'layer'], '4 in'), true);
  assert.equal(slate.get(['tasks', 2, 'layer']), '4 in');
  assert.equal(before.tasks[2].layer, '3 in', 'the document before is as it was');
  assert.notEqual(slate.doc.tasks, before.tasks);
  assert.notEqual(slate.doc.tasks[2], before.tasks[2]);
  assert.equal(slate.doc.tasks[1], before.tasks[1]);
  assert.equal(slate.doc.offers, before.offers);
  assert.deepEqual(Object.keys(slate.doc.tasks[2]), Object.keys(before.tasks[2]), 'fields stay in their order');
});

test('setting what stands there already is no change', () => {
  const slate = createSlate(sample());
  const before = slate.doc;
  assert.equal(slate.set(['tasks', 2, 'layer'], '3 in'), false);
  assert.equal(slate.set(['nowhere', 0, 'x'], undefined), false);
  assert.equal(slate.remove(['tasks', 99]), false);
  assert.equal(slate.move(['tasks'], 1, 1), false);
  assert.equal(slate.doc, before);
  assert.equal(slate.canUndo, false);
});

test('lists and objects on the way are made', () => {
  const slate = createSlate({});
  slate.set(['tasks', 0, 'containers', 0, 'count'], 3);
  slate.insert(['offers'], 0, {material: 'peat'});
  assert.deepEqual(slate.doc, {tasks: [{containers: [{count: 3}]}], offers: [{material: 'peat'}]});
  slate.set(['tasks', 0, 'area'], '60 ft');
  slate.set(['tasks', 0, 'area', 'ring', 'outer'], '6 ft');
  assert.deepEqual(slate.get(['tasks', 0, 'area']), {ring: {outer: '6 ft'}}, 'what cannot hold it gives way');
  assert.throws(() => slate.set(['tasks', 5], {}), RangeError);
  assert.throws(() => slate.insert(['tasks'], 3, {}), RangeError);
  assert.throws(() => slate.move(['tasks'], 0, 1), RangeError);
});

test('undefined takes a key away, and what is left empty only when asked', () => {
  const slate = createSlate({tasks: [{area: {strip: {width: '3 ft'}}, name: 'x'}], on_hand: {peat: '1 L'}});
  slate.set(['on_hand', 'peat'], undefined);
  assert.deepEqual(slate.get(['on_hand']), {});
  slate.undo();
  slate.set(['on_hand', 'peat'], undefined, {prune: true});
  assert.equal('on_hand' in slate.doc, false);
  slate.remove(['tasks', 0, 'area', 'strip', 'width'], {prune: true});
  assert.deepEqual(slate.doc, {tasks: [{name: 'x'}]});
  slate.remove(['tasks', 0, 'name'], {prune: true});
  assert.deepEqual(slate.doc, {tasks: [{}]}, 'an element of a list keeps its place');
  slate.remove(['tasks', 0], {prune: true});
  assert.deepEqual(slate.doc, {});
});

test('rows move', () => {
  const slate = createSlate({tasks: ['a', 'b', 'c', 'd']});
  slate.move(['tasks'], 0, 2);
  assert.deepEqual(slate.doc.tasks, ['b', 'c', 'a', 'd']);
  slate.move(['tasks'], 3, 0);
  assert.deepEqual(slate.doc.tasks, ['d', 'b', 'c', 'a']);
  slate.undo();
  slate.undo();
  assert.deepEqual(slate.doc.tasks, ['a', 'b', 'c', 'd']);
});

test('a run of typing is one step', () => {
  let at = 0;
  const slate = createSlate({name: ''}, {now: () => at, pause: 1000});
  for (const name of ['B', 'Be', 'Ber']) { slate.set(['name'], name, {label: 'Changed the name'}); at += 500; }
  assert.equal(slate.undo(), 'Changed the name');
  assert.equal(slate.doc.name, '');
  assert.equal(slate.redo(), 'Changed the name');
  assert.equal(slate.doc.name, 'Ber');
  slate.set(['name'], 'Berr');
  slate.undo();
  assert.equal(slate.doc.name, 'Ber', 'what was typed after a redo is a step of its own');

  slate.set(['name'], 'x');
  at += 1000;
  slate.set(['name'], 'xy');
  slate.undo();
  assert.equal(slate.doc.name, 'x', 'a pause ends a run');

  slate.set(['name'], 'p');
  slate.rest();
  slate.set(['name'], 'pq');
  slate.undo();
  assert.equal(slate.doc.name, 'p', 'leaving the field ends a run');

  slate.set(['name'], 'one');
  slate.set(['other'], 'z');
  slate.set(['name'], 'two');
  slate.undo();
  assert.equal(slate.doc.name, 'one', 'another field ends a run');

  slate.set(['aim'], 'cost', {typing: false});
  slate.set(['aim'], 'lifting', {typing: false});
  slate.undo();
  assert.equal(slate.doc.aim, 'cost', 'choices are steps');
});

test('what is undone comes back until something else is done', () => {
  const slate = createSlate({a: 1});
  slate.set(['a'], 2, {label: 'two'});
  slate.set(['a'], 3, {label: 'three'});
  assert.equal(slate.undoLabel, 'three');
  slate.undo();
  assert.deepEqual([slate.undoLabel, slate.redoLabel, slate.canRedo], ['two', 'three', true]);
  slate.set(['a'], 9);
  assert.equal(slate.canRedo, false);
  assert.equal(slate.redo(), '');
  slate.undo();
  slate.undo();
  assert.equal(slate.undo(), '');
  assert.deepEqual(slate.doc, {a: 1});
  slate.replace({b: 1}, {label: 'Opened the sample'});
  assert.equal(slate.undo(), 'Opened the sample');
  assert.deepEqual(slate.doc, {a: 1});
  slate.open({c: 1});
  assert.deepEqual([slate.canUndo, slate.canRedo, slate.doc], [false, false, {c: 1}]);
});

test('history is bounded', () => {
  const slate = createSlate({n: 0}, {limit: 10});
  for (let n = 1; n <= 50; n++) slate.set(['n'], n);
  let steps = 0;
  while (slate.canUndo) { slate.undo(); steps++; }
  assert.deepEqual([steps, slate.doc.n], [10, 40]);
});

test('watchers are told of every change in order, and one that fails stops none', t => {
  const slate = createSlate({n: 0});
  const log = t.mock.method(console, 'error', () => {});
  /** @type {any[]} */
  const seen = [];
  slate.subscribe(() => { throw new Error('broken'); });
  const stop = slate.subscribe(({doc, before, path, cause, label}) => {
    seen.push([before.n, doc.n, pathText(path), cause, label]);
    if (doc.n === 1) slate.set(['n'], 2, {label: 'again'});
  });
  slate.set(['n'], 1, {label: 'one'});
  slate.undo();
  stop();
  slate.set(['n'], 7);
  assert.deepEqual(seen, [[0, 1, 'n', 'set', 'one'], [1, 2, 'n', 'set', 'again'], [2, 1, 'n', 'undo', 'again'], [1, 2, 'n', 'set', 'again']]);
  assert.ok(log.mock.callCount() >= 4);
});

test('keys with a meaning in JavaScript are plain data', () => {
  const slate = createSlate(JSON.parse('{"__proto__": {"polluted": 1}, "on_hand": {}}'));
  for (const key of ['__proto__', 'constructor', 'prototype', 'toString']) {
    assert.equal(slate.get(['on_hand', key]), undefined, 'nothing is inherited');
    slate.set(['on_hand', key, 'polluted'], 'yes');
    assert.equal(slate.get(['on_hand', key, 'polluted']), 'yes');
  }
  assert.equal(/** @type {any} */ ({}).polluted, undefined);
  assert.equal(Object.getPrototypeOf(slate.doc.on_hand), Object.prototype);
  assert.match(JSON.stringify(slate.doc), /^\{"__proto__":\{"polluted":1\},"on_hand":\{"__proto__":\{"polluted":"yes"\}/);
  slate.remove(['on_hand', '__proto__']);
  assert.equal(Object.hasOwn(slate.doc.on_hand, '__proto__'), false);
  slate.set(['name'], 'x');
  assert.ok(Object.hasOwn(slate.doc, '__proto__'), 'kept by changes elsewhere');
  assert.equal(createSlate({tasks: []}).get(['tasks', 'length']), undefined);
  assert.equal(createSlate({name: 'abc'}).get(['name', 0]), undefined);
});

test('paths as the library writes them', () => {
  for (const [path, text] of /** @type {[any[], string][]} */ ([
    [[], ''], [['tasks', 1, 'layer'], 'tasks[1].layer'], [['on_hand', 'bark-fines'], 'on_hand.bark-fines'],
    [['on_hand', '#1'], 'on_hand["#1"]'], [['on_hand', ''], 'on_hand[""]'], [['a', '1st', '-x'], 'a["1st"]["-x"]'],
    [['on_hand', 'a"b\\c'], 'on_hand["a\\"b\\\\c"]'], [['on_hand', '0'], 'on_hand["0"]'], [['tasks', 0, 'area', 'corners', 3, 1], 'tasks[0].area.corners[3][1]'],
  ])) {
    assert.equal(pathText(path), text);
    assert.deepEqual(parsePath(text), path);
  }
  for (const text of ['.a', 'a.', 'a..b', 'a[', 'a[]', 'a[-1]', 'a[1', 'a["x]', 'a b', '[x]', 'a[1]b', 'a["\\q"]', '[99999999999999999999]', null, 3]) {
    assert.equal(parsePath(/** @type {any} */ (text)), null, String(text));
  }
});

test('a key that stands cut in a path is found in the document', () => {
  const long = `${'x'.repeat(50)}-1`;
  const slate = createSlate({on_hand: {[long]: '1 L', peat: '2 L'}});
  const text = pathText(['on_hand', long]);
  assert.equal(text, `on_hand["${'x'.repeat(39)}…"]`);
  assert.deepEqual(slate.find(text), ['on_hand', long]);
  assert.deepEqual(slate.find('tasks[3].layer'), ['tasks', 3, 'layer'], 'what is missing has a path too');
  assert.equal(slate.find('['), null);
});

test('any text is a path or none; any path reads back', () => {
  const d = dice(11);
  const pieces = [...nasty, 'tasks', 'a', '[0]', '.b', '["', '"]', '["x"]', '[1', '\\u0000'];
  for (let i = 0; i < 30000; i++) {
    const path = parsePath(d.text(pieces, 8)), text = path && pathText(path);
    if (text !== null && path.every(key => typeof key === 'number' || !/[\ud800-\udfff]/u.test(key))) {
      const again = parsePath(text);
      assert.ok(again, text);
      assert.equal(pathText(again), text);
      if (!text.includes('…')) assert.deepEqual(again, path);
    }
    const keys = Array.from({length: d.roll(5)}, () => d.pick([...nasty.filter(k => k !== '\ud800'), 0, 1, 12, 'layer']));
    assert.deepEqual(parsePath(pathText(keys)), keys);
  }
});

test('what is foreseen is what is set, if nothing else comes between', () => {
  const slate = createSlate({name: 'a', tasks: [{count: 1}]});
  const was = slate.doc;
  const next = slate.foresee(['tasks', 0, 'count'], 12);
  assert.equal(slate.doc, was, 'nothing has changed yet');
  assert.equal(slate.canUndo, false);
  assert.equal(slate.foresee(['tasks', 0, 'count'], 12), next);
  slate.set(['tasks', 0, 'count'], 12);
  assert.equal(slate.doc, next);

  slate.foresee(['tasks', 0, 'count'], 3);
  slate.set(['name'], 'b');
  slate.set(['tasks', 0, 'count'], 3);
  assert.deepEqual(slate.doc, {name: 'b', tasks: [{count: 3}]});

  // Another value, another place, or a key that only looks like the same place.
  slate.foresee(['name'], 'c');
  slate.set(['name'], 'd');
  assert.equal(slate.doc.name, 'd');
  slate.foresee(['x.y'], 'c');
  slate.set(['x', 'y'], 'c');
  assert.deepEqual([slate.doc.x, slate.doc['x.y']], [{y: 'c'}, undefined]);
  slate.foresee(['x', 'y'], undefined);
  slate.set(['x', 'y'], undefined, {prune: true});
  assert.equal(slate.doc.x, undefined);
});

test('random changes: as a plain model does, and undo goes all the way back', () => {
  const d = dice(12);
  const keys = ['a', 'b', '__proto__', 'constructor', 'toString', ''];
  for (let round = 0; round < 300; round++) {
    const first = d.roll(3) === 0 ? {} : anyValue(d, 3);
    const slate = createSlate(first, {limit: 1000});
    const was = JSON.stringify(first);
    const docs = [slate.doc];
    slate.subscribe(({doc}) => docs.push(doc));
    for (let i = 0; i < 20; i++) {
      const path = Array.from({length: 1 + d.roll(3)}, () => d.pick([...keys, 0, 1]));
      const value = clone(anyValue(d, 1));
      try {
        switch (d.roll(5)) {
          case 0: case 1:
            if (d.roll(2) === 0) slate.foresee(path, d.roll(2) === 0 ? value : clone(anyValue(d, 1)));
            slate.set(path, value, {typing: false});
            assert.deepEqual(slate.get(path), value);
            break;
          case 2:
            slate.insert(path, 0, value);
            assert.deepEqual(slate.get([...path, 0]), value);
            break;
          case 3: slate.remove(path, {prune: d.roll(2) === 0}); break;
          default: slate.move(path, 0, 1);
        }
      } catch (error) {
        assert.ok(error instanceof RangeError, String(error));
      }
    }
    const end = JSON.stringify(slate.doc);
    const steps = docs.length - 1;
    for (let i = steps; i > 0; i--) slate.undo();
    assert.equal(JSON.stringify(slate.doc), was);
    assert.equal(slate.canUndo, false);
    for (let i = steps; i > 0; i--) slate.redo();
    assert.equal(JSON.stringify(slate.doc), end);
    assert.equal(JSON.stringify(first), was, 'nothing changed in place');
  }
  assert.deepEqual(Object.keys(Object.prototype), []);
});
