import test from 'node:test';
import assert from 'node:assert/strict';
import {readFileSync} from 'node:fs';
import {read, show} from '../ui/entry.js';
import {dice} from './random.mjs';

const {rows} = JSON.parse(readFileSync(new URL('../testdata/entry.json', import.meta.url), 'utf8'));

test('what is typed becomes what the document keeps', () => {
  assert.ok(rows.length > 100);
  for (const {kind, typed, doc, ...habit} of rows) {
    assert.deepEqual(read(kind, typed, habit), doc, `read(${kind}, ${JSON.stringify(typed)}, comma ${habit.comma ?? false})`);
  }
});

test('what is shown reads back as the same', () => {
  for (const {kind, doc, ...habit} of rows) {
    assert.deepEqual(read(kind, show(kind, doc, habit), habit), doc, `${kind} ${JSON.stringify(doc)} shows as ${show(kind, doc, habit)}`);
  }
});

test('nothing typed takes the field away', () => {
  for (const typed of ['', ' ', '\u00a0', undefined, null]) assert.equal(read('length', typed, {unit: 'in'}), undefined);
  assert.equal(show('length', undefined), '');
});

test('a comma shows where commas are the habit', () => {
  const comma = true;
  assert.equal(show('length', '1.5 cm', {comma}), '1,5 cm');
  assert.equal(show('length', '1.5 cm', {}), '1.5 cm');
  assert.equal(show('length', '1,500 mm', {comma}), '1.500 mm', 'as it was typed');
  assert.equal(show('length', '0.500 m', {comma}), '0,500 m');
  assert.equal(show('money', '4.75', {comma, currency: '€'}), '4,75');
  assert.equal(show('number', 1.85, {comma}), '1,85');
  assert.equal(show('count', 64, {comma}), '64');
  assert.equal(show('area', '6.5 m x 1.2 m', {comma}), '6,5 m x 1,2 m');
  assert.equal(show('parts', 'a 1.5, b 2', {comma}), 'a 1,5, b 2');
  assert.equal(show('parts', 'a 3,1 b', {comma}), 'a 3,1 b');
  assert.equal(show('text', 'Bed 1.5', {comma}), 'Bed 1.5');
  assert.equal(show('length', '1,5 cm', {comma}), '1,5 cm', 'wrong text from another page');
});

test('a value of a wrong kind shows as it is', () => {
  assert.equal(show('length', {layer: 3}), '{"layer":3}');
  assert.equal(show('length', 3), '3');
  assert.equal(show('count', '64'), '64');
  assert.equal(show('length', true), 'true');
});

const kinds = ['length', 'volume', 'mass', 'density', 'area', 'lengths', 'ball', 'stock', 'share', 'money', 'count', 'number', 'parts', 'text'];
const pieces = ['0', '1', '2', '12', '500', '000', '.', ',', ' ', '/', '½', '1/2', 'x', ' x ', '×', ' by ', '-', '–', '−', "'", '"', '′', 'in', ' ft', '%', '$', '€',
  'circle ', 'ring ', ';', '; ', ', ', 'peat', 'bark-fines ', '\u00a0', '\u2009', '٣', '<b>', 'e', '#1', '\n', '\u202e', '__proto__'];

test('read is at rest after one reading, whatever is typed', () => {
  const d = dice(7);
  for (let i = 0; i < 60000; i++) {
    const kind = d.pick(kinds), typed = d.text(pieces, 9);
    const habit = {unit: d.pick(['in', 'ft', 'sq ft', 'm', 'L', '']), comma: d.roll(2) === 1, currency: d.pick(['$', '€', '', '1', 'x'])};
    const value = read(kind, typed, habit);
    const name = `${kind} ${JSON.stringify(typed)} ${JSON.stringify(habit)} -> ${JSON.stringify(value)} shows as ${JSON.stringify(show(kind, value, habit))}`;
    assert.deepEqual(read(kind, show(kind, value, habit), habit), value, name);
    assert.ok(value === undefined || typeof value === 'string' && value === value.trim() && value !== '' || typeof value === 'number' && Number.isFinite(value), name);
  }
});

test('digits stay: nothing is added to a figure, taken from it, or turned round', () => {
  const d = dice(8);
  for (let i = 0; i < 40000; i++) {
    const kind = d.pick(kinds), typed = d.text(pieces, 9);
    const value = read(kind, typed, {unit: 'ft', comma: d.roll(2) === 1, currency: '$'});
    const digits = (/** @type {unknown} */ s) => String(s ?? '').replace(/[^\p{N}]/gu, '');
    const wanted = typeof value === 'number' ? digits(typed).replace(/^0+(?=\d)/, '') : digits(typed);
    const got = typeof value === 'number' ? digits(value).replace(/^0+(?=\d)/, '') : digits(value);
    assert.equal(got, wanted, `${kind} ${JSON.stringify(typed)} -> ${JSON.stringify(value)}`);
  }
});

test('long text takes no long time', () => {
  for (const piece of ['1', '1 ', '1,1', '1x', ' x', 'a;', ' ', '1,1 ', '½', '1/']) {
    for (const [head, tail] of [['', ''], ['circle ', ''], ['1', 'z'], ['a ', ' 1,1 b']]) {
      for (const length of [1990, 200000]) {
        const text = head + piece.repeat(length / piece.length - 5) + tail;
        for (const kind of kinds) {
          const from = process.cpuUsage(); // and not the clock's time, most of which others may have
          show(kind, read(kind, text, {unit: 'in', comma: true, currency: '$'}), {unit: 'in', comma: true});
          const {user, system} = process.cpuUsage(from);
          assert.ok(user + system < 1_000_000, `${kind} ${text.slice(0, 10)} ${text.length} took ${user + system} us`);
        }
      }
    }
  }
});
