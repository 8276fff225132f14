import test from 'node:test';
import assert from 'node:assert/strict';
import {readFileSync} from 'node:fs';
import {deflateSync, deflateRawSync} from 'node:zlib';
import {fitsQR, largestJob, linkOf, longestFragment, readLink} from '../store/link.js';
import {anyValue, dice, nasty} from './random.mjs';

const sample = JSON.parse(readFileSync(new URL('../../mix/sample.json', import.meta.url), 'utf8'));
const base = 'https://example.org/barrow/?x=1#yard';
const packed = (/** @type {string | Buffer} */ data) => `#job=d${deflateSync(data, {level: 9}).toString('base64url')}`;
const plain = (/** @type {string} */ text) => `#job=t${Buffer.from(text).toString('base64url')}`;

test('a job goes into a link and comes out the same', async () => {
  for (const doc of [sample, {}, {name: 'Arándanos ½ 🌱'}, JSON.parse('{"__proto__": {"polluted": 1}}')]) {
    const {link, why} = await linkOf(doc, base);
    assert.equal(why, undefined);
    assert.match(link ?? '', /^https:\/\/example\.org\/barrow\/\?x=1#job=[dt][A-Za-z0-9_-]+$/);
    const read = await readLink(new URL(link ?? '').hash);
    assert.equal(JSON.stringify(read?.doc), JSON.stringify(doc));
    assert.deepEqual(await readLink((link ?? '').split('#')[1]), read, 'with or without its #');
  }
  assert.match((await linkOf({}, base)).link ?? '', /#job=te30$/, 'plain where that is shorter');
  assert.match((await linkOf(sample, 'file:///home/x/barrow.html')).link ?? '', /^file:\/\/\/home\/x\/barrow\.html#job=d/);
  assert.equal(/** @type {any} */ ({}).polluted, undefined);
});

test('random jobs go round', async () => {
  const d = dice(31);
  for (let i = 0; i < 300; i++) {
    const doc = {x: anyValue(d, 4)};
    const {link} = await linkOf(doc, base);
    assert.equal(JSON.stringify((await readLink(new URL(link ?? '').hash))?.doc), JSON.stringify(doc));
  }
});

test('a browser without streams makes plain links, and says why it cannot open others', async t => {
  const {CompressionStream, DecompressionStream} = globalThis;
  t.after(() => Object.assign(globalThis, {CompressionStream, DecompressionStream}));
  const {link} = await linkOf(sample, base);
  Object.assign(globalThis, {CompressionStream: undefined, DecompressionStream: undefined});
  const old = await linkOf(sample, base);
  assert.match(old.link ?? '', /#job=t/);
  assert.deepEqual((await readLink(new URL(old.link ?? '').hash))?.doc, sample);
  assert.match((await readLink(new URL(link ?? '').hash))?.why ?? '', /too old/);
});

test('a job that is too large for a link says so', async () => {
  const d = dice(32);
  const noise = Array.from({length: 60000}, () => String.fromCharCode(33 + d.roll(90))).join('');
  assert.match((await linkOf({noise}, base)).why ?? '', /too large/);
  assert.match((await linkOf({zeros: '0'.repeat(largestJob)}, base)).why ?? '', /too large/);
  assert.ok((await linkOf({zeros: '0'.repeat(largestJob - 100)}, base)).link);
});

test('what is no job link is none', async () => {
  for (const text of ['', '#', '#yard', 'yard', '#jobs=d', '#JOB=d', undefined, null, 5, {}]) assert.equal(await readLink(/** @type {any} */ (text)), null, String(text));
});

test('what is wrong with a link is a reason', async () => {
  const good = packed(JSON.stringify(sample));
  for (const [fragment, why] of /** @type {[string, RegExp][]} */ ([
    ['#job=', /damaged/], ['#job=d', /damaged/], ['#job=t', /damaged/], ['#job=x' + good.slice(6), /newer/], ['#job=é', /damaged/],
    [good.slice(0, -1), /damaged/], [good.slice(0, -40), /damaged/], [good.slice(0, 40), /damaged/], [good + '.', /damaged/], [good + '=', /damaged/],
    [good.slice(0, 300) + (good[300] === 'A' ? 'B' : 'A') + good.slice(301), /damaged/],
    [`#job=d${deflateRawSync('{}').toString('base64url')}`, /damaged/],
    [plain('not json'), /damaged/], [plain('{"a":1'), /damaged/], [`#job=t${Buffer.from([0x7b, 0xff, 0x7d]).toString('base64url')}`, /damaged/], [packed(Buffer.from([0xc0, 0x80])), /damaged/],
    [plain('[]'), /not a job/], [plain('3'), /not a job/], [plain('null'), /not a job/], [plain('"x"'), /not a job/],
    [plain('{"a":1,"a":2}'), /same name, a/], [plain(`{"a":${'['.repeat(100)}${']'.repeat(100)}}`), /too deep/],
    [`#job=t${'e'.repeat(longestFragment)}`, /too long/],
  ])) {
    const read = await readLink(fragment);
    assert.equal(read?.doc, undefined, fragment.slice(0, 60));
    assert.match(read?.why ?? '', why, fragment.slice(0, 60));
  }
});

test('a bomb is left as soon as it passes the limit', async () => {
  const bomb = packed(Buffer.alloc(45_000_000, 0x20));
  assert.ok(bomb.length < longestFragment, String(bomb.length));
  globalThis.gc?.();
  const before = process.memoryUsage();
  let most = 0;
  const watch = setInterval(() => { const {arrayBuffers, external} = process.memoryUsage(); most = Math.max(most, arrayBuffers + external - before.arrayBuffers - before.external); }, 1);
  const read = await readLink(bomb);
  clearInterval(watch);
  assert.match(read?.why ?? '', /too large/);
  assert.ok(process.memoryUsage().rss - before.rss < 25_000_000, `${process.memoryUsage().rss - before.rss} bytes taken`);
  assert.ok(most < 25_000_000, `${most} bytes held`);
  const just = packed(`{"a":"${' '.repeat(largestJob - 8)}"}`);
  assert.equal((await readLink(just))?.doc?.a.length, largestJob - 8);
  assert.match((await readLink(packed(`{"a":"${' '.repeat(largestJob - 7)}"}`)))?.why ?? '', /too large/);
});

test('hostile fragments never throw', async () => {
  const d = dice(33);
  const good = [packed(JSON.stringify(sample)), plain(JSON.stringify(sample)), '#job=', '#job=d', packed('{}')];
  const pieces = [...nasty, 'A', '-', '_', '=', '%', 'd', 't', 'eJ', '#job='];
  let read = 0;
  for (let i = 0; i < 3000; i++) {
    const kind = d.roll(3);
    const fragment = kind === 0 ? d.mutate(d.pick(good), pieces)
      : kind === 1 ? `#job=${d.text(pieces, 30)}`
      : (d.roll(2) ? plain : packed)(d.mutate(JSON.stringify({x: anyValue(d, 3)}), [...nasty, '{', '[', '1e9']));
    const got = await readLink(fragment);
    assert.ok(got === null || (typeof got.doc === 'object' && got.doc !== null && !Array.isArray(got.doc)) !== (typeof got.why === 'string' && got.why !== ''), fragment);
    if (got?.doc) read++;
  }
  assert.ok(read > 50, `${read} were jobs all the same`);
  assert.deepEqual(Object.keys(Object.prototype), []);
});

test('what fits a QR code', () => {
  assert.equal(fitsQR('a'.repeat(2953)), true);
  assert.equal(fitsQR('a'.repeat(2954)), false);
  assert.equal(fitsQR('é'.repeat(1477)), false);
  assert.equal(fitsQR('A'.repeat(4296)), true);
  assert.equal(fitsQR('A'.repeat(4297)), false);
});
