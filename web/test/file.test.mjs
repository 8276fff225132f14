import test from 'node:test';
import assert from 'node:assert/strict';
import {File} from 'node:buffer';
import {readFileSync} from 'node:fs';
import {fileName, jobText, largestFile, readFile} from '../store/file.js';
import {parseDocument} from '../store/json.js';
import {anyValue, dice, nasty} from './random.mjs';

const sampleText = readFileSync(new URL('../../mix/sample.json', import.meta.url), 'utf8');
const sample = JSON.parse(sampleText);

test('a file becomes a document as it stands in it', async () => {
  assert.deepEqual(await readFile(new File([sampleText], 'Berry walk.json')), {doc: sample, name: 'Berry walk'});
  assert.deepEqual((await readFile(new Blob([`\ufeff${sampleText}`]))).doc, sample, 'a byte order mark is nothing');
  const odd = '{"schema": 7, "__proto__": {"x": 1}, "of_tomorrow": [{"deep": null}], "tasks": "none"}';
  assert.equal(JSON.stringify((await readFile(new File([odd], 'x.barrow.json'))).doc), JSON.stringify(JSON.parse(odd)), 'other schemas and fields are for the library');
});

test('what is wrong with a file is a reason', async () => {
  for (const [content, why] of /** @type {[any, RegExp][]} */ ([
    ['', /empty/], ['hello', /not written as JSON/], ['{"a": 1', /not written as JSON/], ['[]', /an object/], ['null', /an object/], ['12', /an object/],
    [new Uint8Array([0x7b, 0xff, 0x7d]), /not plain text/], [Buffer.from('\ufeff{}', 'utf16le'), /not plain text/], [new Uint8Array([0x50, 0x4b, 3, 4, 0xff]), /not plain text/],
    ['{"a": {"b": 1, "\\u0062": 2}}', /same name, b\b/],
    [`{"a": ${'['.repeat(500000)}`, /too deep/], [`{"a": ${'{"a":'.repeat(100)}1${'}'.repeat(100)}}`, /too deep/],
  ])) {
    const read = await readFile(new File([content], 'x.json'));
    assert.equal(read.doc, undefined);
    assert.match(read.why ?? '', why, String(content).slice(0, 40));
  }
  const huge = {size: largestFile + 1, arrayBuffer() { throw new Error('read all the same'); }};
  assert.match((await readFile(/** @type {any} */ (huge))).why ?? '', /too large/);
  assert.match((await readFile(/** @type {any} */ ({size: 3, arrayBuffer: async () => { throw new Error('gone'); }}))).why ?? '', /could not be read/);
  assert.match((await readFile(/** @type {any} */ ({size: 3, arrayBuffer: async () => new ArrayBuffer(largestFile + 1)}))).why ?? '', /too large/);
  assert.match((await readFile(/** @type {any} */ (null))).why ?? '', /too large/);
});

test('keys that only look the same, and strings that look like syntax, are fine', () => {
  for (const text of ['{"a": {"a": 1}, "b": [{"a": 1}, {"a": 2}]}', '{"a": "a", "b": "b\\": {[1234567890123456789"}', '{"a":"\\\\","b":["a","a"]}', '{"n": 0.25, "m": -12.5, "k": [123456789012345, 0, -1]}', '{"a b":1,"a  b":2}']) {
    assert.deepEqual(parseDocument(text).doc, JSON.parse(text), text);
  }
});

test('numbers are kept to the last digit', () => {
  for (const [text, want] of [
    ['4.10', '4.10'], ['4.1', 4.1], ['1e9', '1e9'], ['1E400', '1E400'], ['-1e400', '-1e400'], ['12345678901234567890', '12345678901234567890'], ['4.7500000000000000001', '4.7500000000000000001'],
    ['9007199254740991', 9007199254740991], ['9007199254740993', '9007199254740993'], ['1.0', '1.0'], ['0.000001', 0.000001], ['0.0000001', '0.0000001'], ['-0.5', -0.5], ['-0', '-0'], ['"1e9"', '1e9'],
  ]) {
    assert.deepEqual(parseDocument(`{"a": [${text}, ${text}], "b":${text}}`).doc, {a: [want, want], b: want});
  }
  for (const bad of ['01', '1.', '.5', '+1', '1e', '--1', '1-2', '1x', '0x10', '-', 'NaN', 'Infinity', '-Infinity', '1.e5', '1e5.5', '5 5']) {
    assert.match(parseDocument(`{"a": ${bad}}`).why ?? bad, /not written as JSON/);
    assert.match(parseDocument(`{"a": [1e5, ${bad}]}`).why ?? bad, /not written as JSON/);
  }
});

test('a job\'s text is for people, and the same for the same job', () => {
  assert.equal(jobText(JSON.parse(jobText(sample))), jobText(sample));
  assert.deepEqual(JSON.parse(jobText(sample)), sample);
  const lines = jobText(sample).split('\n');
  assert.equal(lines[1], '  "schema": 1,');
  assert.equal(lines.at(-1), '');
  assert.ok(lines.includes('  "on_hand": {"perlite": "2 cu ft"},'));
  assert.ok(lines.includes('    {"material": "bark-fines", "bulk": "1/2 cu yd", "price": "21.00"},'));
  assert.ok(lines.every(line => line.length <= 140));
  const mixed = Object.fromEntries(Object.entries(sample).reverse());
  mixed.tasks = sample.tasks.map((/** @type {any} */ task) => ({...Object.fromEntries(Object.entries(task).filter(([k]) => k !== 'kind')), kind: task.kind}));
  assert.match(jobText(mixed), /^\{\n {2}"schema": 1,\n {2}"name"/);
  assert.match(jobText(mixed), /"kind": "amend",\n {6}"name"/);
  assert.match(jobText({zz: 1, tasks: 'none', schema: 1}), /^\{\n {2}"schema": 1,\n {2}"tasks": "none",\n {2}"zz": 1\n\}\n$/);
  assert.match(jobText({mixes: [{parts: {peat: 1, bark: 2}}]}), /\{"peat": 1, "bark": 2\}/, 'parts stay in their order');
  assert.equal(jobText({}), '{}\n');
});

test('any document goes through its text', () => {
  const d = dice(41);
  for (let i = 0; i < 1000; i++) {
    const doc = Object.fromEntries(Array.from({length: d.roll(5)}, () => [d.pick([...nasty, 'tasks', 'schema', 'offers']), anyValue(d, 5)]));
    const text = jobText(doc);
    assert.deepEqual(JSON.parse(text), doc);
    assert.equal(JSON.stringify(parseDocument(text).doc), JSON.stringify(JSON.parse(text)));
  }
});

test('hostile files never throw', async () => {
  const d = dice(42);
  const pieces = [...nasty, '{', '}', '[', ']', ':', ',', '1e999', '"a":', '\\u', 'null'];
  let read = 0;
  for (let i = 0; i < 1000; i++) {
    const text = d.roll(2) ? d.mutate(sampleText, pieces) : d.text(pieces, 30);
    const content = d.roll(5) ? text : Uint8Array.from(Buffer.from(text), byte => d.roll(40) ? byte : d.roll(256));
    const got = await readFile(new File([content], d.pick(nasty)));
    assert.ok((typeof got.doc === 'object' && got.doc !== null) !== (typeof got.why === 'string' && got.why !== ''));
    if (got.doc) { read++; jobText(got.doc); }
  }
  assert.ok(read > 30, `${read} were jobs all the same`);
  assert.deepEqual(Object.keys(Object.prototype), []);
});

test('names of files', () => {
  for (const [name, ext, want] of [
    ['Berry walk, an invented orchard', 'json', 'Berry-walk-an-invented-orchard.json'], ['Arándanos ñ ½', 'json', 'Arandanos-n-1-2.json'], ['', 'json', 'job.json'], ['日本', 'csv', 'job.csv'],
    ['../../etc/passwd', 'json', 'etc-passwd.json'], ['.hidden', 'json', 'hidden.json'], ['CON', 'json', 'job-CON.json'], ['com1', 'csv', 'job-com1.csv'], ['nul', '', 'job-nul'],
    ['a\u202ecod.exe', 'json', 'a-cod-exe.json'], ['x', '../sh', 'x.sh'], ['--', 'json', 'job.json'],
  ]) assert.equal(fileName(name, ext), want);
  const d = dice(43);
  for (let i = 0; i < 5000; i++) {
    const name = fileName(d.text([...nasty, 'con', 'aux', '-', 'x'.repeat(30), 'lpt1'], 5), d.pick(['json', 'csv', '', '../x', 'a.b']));
    assert.match(name, /^[A-Za-z0-9][A-Za-z0-9-]*(\.[a-z0-9]{1,8})?$/);
    assert.ok(name.length <= 60, name);
    assert.doesNotMatch(name, /^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/i);
  }
  assert.equal(fileName(/** @type {any} */ (undefined), /** @type {any} */ (undefined)), 'job');
});
