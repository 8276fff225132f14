import test from 'node:test';
import assert from 'node:assert/strict';
import {readFileSync} from 'node:fs';
import {createDocument} from '../state/document.js';
import {parsePath, pathText} from '../state/path.js';
import {anyValue, dice, nasty} from './random.mjs';

const sample = () => JSON.parse(readFileSync(new URL('../../mix/sample.json', import.meta.url), 'utf8'));
const clone = (/** @type {any} */ v) => v === undefined ? v : JSON.parse(JSON.stringify(v));

test('a change shares all that it does not touch', () => {
  const job = createDocument(sample());
  const before = job.doc;
  assert.equal(job.set(['tasks', 2, 'layer'], '4 in'), true);
  assert.equal(job.get(['tasks', 2, 'layer']), '4 in');
  assert.equal(before.tasks[2].layer, '3 in', 'the document before is as it was');
  assert.notEqual(job.doc.tasks, before.tasks);
  assert.notEqual(job.doc.tasks[2], before.tasks[2]);
  assert.equal(job.doc.tasks[1], before.tasks[1]);
  assert.equal(job.doc.offers, before.offers);
  assert.deepEqual(Object.keys(job.doc.tasks[2]), Object.keys(before.tasks[2]), 'fields stay in their order');
});

test('setting what stands there already is no change', () => {
  const job = createDocument(sample());
  const before = job.doc;
  assert.equal(job.set(['tasks', 2, 'layer'], '3 in'), false);
  assert.equal(job.set(['nowhere', 0, 'x'], undefined), false);
  assert.equal(job.remove(['tasks', 99]), false);
  assert.equal(job.move(['tasks'], 1, 1), false);
  assert.equal(job.doc, before);
  assert.equal(job.canUndo, false);
});

test('lists and objects on the way are made', () => {
  const job = createDocument({});
  job.set(['tasks', 0, 'containers', 0, 'count'], 3);
  job.insert(['offers'], 0, {material: 'peat'});
  assert.deepEqual(job.doc, {tasks: [{containers: [{count: 3}]}], offers: [{material: 'peat'}]});
  job.set(['tasks', 0, 'area'], '60 ft');
  job.set(['tasks', 0, 'area', 'ring', 'outer'], '6 ft');
  assert.deepEqual(job.get(['tasks', 0, 'area']), {ring: {outer: '6 ft'}}, 'what cannot hold it gives way');
  assert.throws(() => job.set(['tasks', 5], {}), RangeError);
  assert.throws(() => job.insert(['tasks'], 3, {}), RangeError);
  assert.throws(() => job.move(['tasks'], 0, 1), RangeError);
});

test('undefined takes a key away, and what is left empty only when asked', () => {
  const job = createDocument({tasks: [{area: {strip: {width: '3 ft'}}, name: 'x'}], on_hand: {peat: '1 L'}});
  job.set(['on_hand', 'peat'], undefined);
  assert.deepEqual(job.get(['on_hand']), {});
  job.undo();
  job.set(['on_hand', 'peat'], undefined, {prune: true});
  assert.equal('on_hand' in job.doc, false);
  job.remove(['tasks', 0, 'area', 'strip', 'width'], {prune: true});
  assert.deepEqual(job.doc, {tasks: [{name: 'x'}]});
  job.remove(['tasks', 0, 'name'], {prune: true});
  assert.deepEqual(job.doc, {tasks: [{}]}, 'an element of a list keeps its place');
  job.remove(['tasks', 0], {prune: true});
  assert.deepEqual(job.doc, {});
});

test('rows move', () => {
  const job = createDocument({tasks: ['a', 'b', 'c', 'd']});
  job.move(['tasks'], 0, 2);
  assert.deepEqual(job.doc.tasks, ['b', 'c', 'a', 'd']);
  job.move(['tasks'], 3, 0);
  assert.deepEqual(job.doc.tasks, ['d', 'b', 'c', 'a']);
  job.undo();
  job.undo();
  assert.deepEqual(job.doc.tasks, ['a', 'b', 'c', 'd']);
});

test('a run of typing is one step', () => {
  let at = 0;
  const job = createDocument({name: ''}, {now: () => at, pause: 1000});
  for (const name of ['B', 'Be', 'Ber']) { job.set(['name'], name, {label: 'Changed the name'}); at += 500; }
  assert.equal(job.undo(), 'Changed the name');
  assert.equal(job.doc.name, '');
  assert.equal(job.redo(), 'Changed the name');
  assert.equal(job.doc.name, 'Ber');
  job.set(['name'], 'Berr');
  job.undo();
  assert.equal(job.doc.name, 'Ber', 'what was typed after a redo is a step of its own');

  job.set(['name'], 'x');
  at += 1000;
  job.set(['name'], 'xy');
  job.undo();
  assert.equal(job.doc.name, 'x', 'a pause ends a run');

  job.set(['name'], 'p');
  job.rest();
  job.set(['name'], 'pq');
  job.undo();
  assert.equal(job.doc.name, 'p', 'leaving the field ends a run');

  job.set(['name'], 'one');
  job.set(['other'], 'z');
  job.set(['name'], 'two');
  job.undo();
  assert.equal(job.doc.name, 'one', 'another field ends a run');

  job.set(['aim'], 'cost', {typing: false});
  job.set(['aim'], 'lifting', {typing: false});
  job.undo();
  assert.equal(job.doc.aim, 'cost', 'choices are steps');
});

test('what is undone comes back until something else is done', () => {
  const job = createDocument({a: 1});
  job.set(['a'], 2, {label: 'two'});
  job.set(['a'], 3, {label: 'three'});
  assert.equal(job.undoLabel, 'three');
  job.undo();
  assert.deepEqual([job.undoLabel, job.redoLabel, job.canRedo], ['two', 'three', true]);
  job.set(['a'], 9);
  assert.equal(job.canRedo, false);
  assert.equal(job.redo(), '');
  job.undo();
  job.undo();
  assert.equal(job.undo(), '');
  assert.deepEqual(job.doc, {a: 1});
  job.replace({b: 1}, {label: 'Opened the sample'});
  assert.equal(job.undo(), 'Opened the sample');
  assert.deepEqual(job.doc, {a: 1});
  job.open({c: 1});
  assert.deepEqual([job.canUndo, job.canRedo, job.doc], [false, false, {c: 1}]);
});

test('history is bounded', () => {
  const job = createDocument({n: 0}, {limit: 10});
  for (let n = 1; n <= 50; n++) job.set(['n'], n);
  let steps = 0;
  while (job.canUndo) { job.undo(); steps++; }
  assert.deepEqual([steps, job.doc.n], [10, 40]);
});

test('watchers are told of every change in order, and one that fails stops none', t => {
  const job = createDocument({n: 0});
  const log = t.mock.method(console, 'error', () => {});
  /** @type {any[]} */
  const seen = [];
  job.subscribe(() => { throw new Error('broken'); });
  const stop = job.subscribe(({doc, before, path, cause, label}) => {
    seen.push([before.n, doc.n, pathText(path), cause, label]);
    if (doc.n === 1) job.set(['n'], 2, {label: 'again'});
  });
  job.set(['n'], 1, {label: 'one'});
  job.undo();
  stop();
  job.set(['n'], 7);
  assert.deepEqual(seen, [[0, 1, 'n', 'set', 'one'], [1, 2, 'n', 'set', 'again'], [2, 1, 'n', 'undo', 'again'], [1, 2, 'n', 'set', 'again']]);
  assert.ok(log.mock.callCount() >= 4);
});

test('keys with a meaning in JavaScript are plain data', () => {
  const job = createDocument(JSON.parse('{"__proto__": {"polluted": 1}, "on_hand": {}}'));
  for (const key of ['__proto__', 'constructor', 'prototype', 'toString']) {
    assert.equal(job.get(['on_hand', key]), undefined, 'nothing is inherited');
    job.set(['on_hand', key, 'polluted'], 'yes');
    assert.equal(job.get(['on_hand', key, 'polluted']), 'yes');
  }
  assert.equal(/** @type {any} */ ({}).polluted, undefined);
  assert.equal(Object.getPrototypeOf(job.doc.on_hand), Object.prototype);
  assert.match(JSON.stringify(job.doc), /^\{"__proto__":\{"polluted":1\},"on_hand":\{"__proto__":\{"polluted":"yes"\}/);
  job.remove(['on_hand', '__proto__']);
  assert.equal(Object.hasOwn(job.doc.on_hand, '__proto__'), false);
  job.set(['name'], 'x');
  assert.ok(Object.hasOwn(job.doc, '__proto__'), 'kept by changes elsewhere');
  assert.equal(createDocument({tasks: []}).get(['tasks', 'length']), undefined);
  assert.equal(createDocument({name: 'abc'}).get(['name', 0]), undefined);
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
  const job = createDocument({on_hand: {[long]: '1 L', peat: '2 L'}});
  const text = pathText(['on_hand', long]);
  assert.equal(text, `on_hand["${'x'.repeat(39)}…"]`);
  assert.deepEqual(job.find(text), ['on_hand', long]);
  assert.deepEqual(job.find('tasks[3].layer'), ['tasks', 3, 'layer'], 'what is missing has a path too');
  assert.equal(job.find('['), null);
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
  const job = createDocument({name: 'a', tasks: [{count: 1}]});
  const was = job.doc;
  const next = job.preview(['tasks', 0, 'count'], 12);
  assert.equal(job.doc, was, 'nothing has changed yet');
  assert.equal(job.canUndo, false);
  assert.equal(job.preview(['tasks', 0, 'count'], 12), next);
  job.set(['tasks', 0, 'count'], 12);
  assert.equal(job.doc, next);

  job.preview(['tasks', 0, 'count'], 3);
  job.set(['name'], 'b');
  job.set(['tasks', 0, 'count'], 3);
  assert.deepEqual(job.doc, {name: 'b', tasks: [{count: 3}]});

  // Another value, another place, or a key that only looks like the same place.
  job.preview(['name'], 'c');
  job.set(['name'], 'd');
  assert.equal(job.doc.name, 'd');
  job.preview(['x.y'], 'c');
  job.set(['x', 'y'], 'c');
  assert.deepEqual([job.doc.x, job.doc['x.y']], [{y: 'c'}, undefined]);
  job.preview(['x', 'y'], undefined);
  job.set(['x', 'y'], undefined, {prune: true});
  assert.equal(job.doc.x, undefined);
});

test('random changes: as a plain model does, and undo goes all the way back', () => {
  const d = dice(12);
  const keys = ['a', 'b', '__proto__', 'constructor', 'toString', ''];
  for (let round = 0; round < 300; round++) {
    const first = d.roll(3) === 0 ? {} : anyValue(d, 3);
    const job = createDocument(first, {limit: 1000});
    const was = JSON.stringify(first);
    const docs = [job.doc];
    job.subscribe(({doc}) => docs.push(doc));
    for (let i = 0; i < 20; i++) {
      const path = Array.from({length: 1 + d.roll(3)}, () => d.pick([...keys, 0, 1]));
      const value = clone(anyValue(d, 1));
      try {
        switch (d.roll(5)) {
          case 0: case 1:
            if (d.roll(2) === 0) job.preview(path, d.roll(2) === 0 ? value : clone(anyValue(d, 1)));
            job.set(path, value, {typing: false});
            assert.deepEqual(job.get(path), value);
            break;
          case 2:
            job.insert(path, 0, value);
            assert.deepEqual(job.get([...path, 0]), value);
            break;
          case 3: job.remove(path, {prune: d.roll(2) === 0}); break;
          default: job.move(path, 0, 1);
        }
      } catch (error) {
        assert.ok(error instanceof RangeError, String(error));
      }
    }
    const end = JSON.stringify(job.doc);
    const steps = docs.length - 1;
    for (let i = steps; i > 0; i--) job.undo();
    assert.equal(JSON.stringify(job.doc), was);
    assert.equal(job.canUndo, false);
    for (let i = steps; i > 0; i--) job.redo();
    assert.equal(JSON.stringify(job.doc), end);
    assert.equal(JSON.stringify(first), was, 'nothing changed in place');
  }
  assert.deepEqual(Object.keys(Object.prototype), []);
});
