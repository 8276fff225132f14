// What somebody does with the page, by touch alone, and what may go wrong on the
// way. Each journey has a phone of its own.

import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { after, afterEach, before, beforeEach, describe, test } from 'node:test';
import zlib from 'node:zlib';

import { folder } from './engines/children.mjs';
import { barrow, dist, olderDist, planBytes } from './made.mjs';
import { sideways } from './measure.mjs';
import { at } from './page.mjs';
import { blank, serve } from './serve.mjs';
import { phone } from './touch.mjs';

const papers = folder('papers');
const paper = (name, content) => {
  const file = path.join(papers, name);
  fs.writeFileSync(file, typeof content === 'string' || Buffer.isBuffer(content) ? content : JSON.stringify(content));
  return file;
};
const plan = (file, ...more) => JSON.parse(barrow('plan', file, ...more, '--json').out);

let server, hand;
before(async () => {
  server = await serve(dist());
});
after(() => server?.stop());
beforeEach(async () => {
  if (!server.running) await server.start();
  hand = await phone(server);
  await hand.open('/');
});
afterEach(() => hand.close());

// offerOf is the name that an order's line goes by.
const offerOf = (line) => `${line.material}:${line.bulk ? line.bulk + ' bulk' : line.pack}`;
const linesOf = (order) => order.map((line) => `${line.count} ${offerOf(line)}`);
const linesShown = () =>
  hand.evaluate(() => [...document.querySelectorAll('[data-test="line"]')].map((el) => `${el.dataset.count} ${el.dataset.offer}`));
const drivesShown = () => hand.evaluate(() => [...document.querySelectorAll('[data-test="trip"]')].map((el) => Number(el.dataset.count)));
const drivesOf = (trips) => trips.map((trip) => trip.times ?? 1);

async function sample() {
  await hand.tap('start-sample');
  await hand.fresh();
}

// settled waits for a fresh result that is of this very document.
const settled = (what, fn, ...args) => hand.until(fn, what, { args });

const limit = { timeout: 240_000 };

test('the stranger: from nothing to a list, sold out, ticked and printed, with no network', limit, async () => {
  const enter = (where, text) => hand.enter(where, text);
  await hand.tap('start-empty');
  await hand.enter('name', 'Berry bed', 'job-name');

  // 64 pots with bark, peat and perlite, 3 to 1 to 1
  await hand.tap('add-fill');
  await enter('tasks[0].material', 'parts:');
  await part(0, 'bark-fines', '3');
  await hand.tap('add-row', 'tasks[0].mix');
  await part(0, 'peat', '1');
  await hand.tap('add-row', 'tasks[0].mix');
  await part(0, 'perlite', '1');
  await enter('tasks[0].containers[0].count', '64');
  await enter('tasks[0].containers[0].size', '#1');

  // three inches of bark in nine, over sixty feet by four
  await hand.tap('add-task');
  await hand.tap('add-amend');
  await enter('tasks[1].material', 'material:bark-fines');
  await enter('tasks[1].area', '60 ft x 4 ft');
  await enter('tasks[1].layer', '3');
  await enter('tasks[1].into', '9');

  // and its mulch
  await hand.tap('add-task');
  await hand.tap('add-cover');
  await enter('tasks[2].material', 'material:bark-mulch');
  await enter('tasks[2].area', '60 ft x 4 ft');
  await enter('tasks[2].layer', '3 in');
  await hand.fresh();

  // what the yard sells, and the truck
  await hand.tap('section', 'offers');
  const offers = [
    ['bark-fines', 'pack', '2 cu ft', '4.75'],
    ['bark-fines', 'bulk', '1/2 cu yd', '21'],
    ['peat', 'pack', '3.8 cu ft', '22.50'],
    ['perlite', 'pack', '4 cu ft', '31'],
    ['bark-mulch', 'pack', '2 cu ft', '3.95'],
    ['bark-mulch', 'bulk', '1/2 cu yd', '17'],
  ];
  for (const [i, [material, way, holds, price]] of offers.entries()) {
    await hand.tap('add-row', 'offers');
    await enter(`offers[${i}].material`, material);
    if (way === 'bulk') await hand.enter(`offers[${i}]`, 'bulk', 'way');
    await enter(`offers[${i}].${way}`, holds);
    await enter(`offers[${i}].price`, price);
  }
  await hand.tap('section', 'haul');
  await enter('haul.payload', '1100');
  await enter('haul.room', '2 cu yd');
  await enter('haul.trip_cost', '9');
  await hand.page.keyboard.press('Enter');
  await hand.fresh();

  // the same as the command line says, from the page's own file
  const file = await hand.job();
  const doc = JSON.parse(file.bytes);
  assert.equal(doc.tasks[1].layer, '3 in');
  assert.equal(doc.tasks[1].into, '9 in');
  assert.equal(doc.haul.payload, '1100 lb');
  const home = plan(file.path);
  assert.equal(doc.tasks.length, 3);
  assert.deepEqual(home.needs.map((n) => n.material).sort(), ['bark-fines', 'bark-mulch', 'peat', 'perlite']);
  await settled('the total of the command line', (total) => document.querySelector('[data-test="total"]').textContent.includes(total), home.total);
  for (const need of home.needs) {
    assert.match((await hand.seen(`[data-test="need"][data-material="${need.material}"]`))[0], new RegExp(need.shown.replace(/[.()]/g, '[$&]')));
  }

  // at the yard there is no network
  await hand.kept();
  await server.stop();
  await hand.reload();
  await hand.fresh();
  await hand.tap('place-yard');
  assert.deepEqual(await linesShown(), linesOf(home.order));
  assert.deepEqual(await drivesShown(), drivesOf(home.trips));

  // the loose bark is sold out
  const gone = 'bark-fines:1/2 cu yd bulk';
  assert.ok(linesOf(home.order).some((line) => line.endsWith(gone)), 'it was to be bought');
  await hand.tap('sold-out', undefined, { inside: `[data-offer="${gone}"]` });
  const then = plan(file.path, '--without', gone);
  await settled('the new order', (gone) => document.documentElement.dataset.result === 'fresh' && !document.querySelector(`[data-test="line"][data-offer="${gone}"]`), gone);
  assert.deepEqual(await linesShown(), linesOf(then.order));
  assert.deepEqual(await drivesShown(), drivesOf(then.trips));
  assert.notDeepEqual(linesOf(then.order), linesOf(home.order));
  await settled('what changed', (total) => document.querySelector('[data-test="changes"]')?.textContent.includes(total), then.total);

  // tick the list
  for (const line of then.order) await hand.tap('tick', undefined, { inside: `[data-offer="${offerOf(line)}"]` });
  assert.ok(await hand.evaluate(() => [...document.querySelectorAll('[data-test="tick"]')].every((box) => box.checked)));
  await hand.reload();
  await hand.fresh();
  assert.ok(await hand.evaluate(() => [...document.querySelectorAll('[data-test="tick"]')].every((box) => box.checked)), 'the ticks are kept');

  // and print it
  await hand.evaluate(() => {
    window.print = () => {};
  });
  await hand.tap('menu');
  await hand.tap('print-yard');
  await hand.until(() => document.querySelector('[data-test="sheet-yard"]'), 'the sheet');
  await hand.page.emulateMediaType('print');
  const sheet = (await hand.seen('sheet-yard'))[0];
  for (const line of then.order) assert.ok(sheet.includes(line.cost), `${offerOf(line)} at ${line.cost} is on the sheet`);
  assert.deepEqual(await hand.seen('place-job'), [], 'the bar is not on the sheet');
  const pdf = Buffer.from(await hand.page.pdf({ format: 'letter' }));
  assert.equal(pdf.subarray(0, 5).toString(), '%PDF-');
  assert.ok(pdf.length > 5000, 'and has something on it');
  hand.clean();

  async function part(task, material, parts) {
    await hand.page.waitForSelector(`[data-path='tasks[${task}].mix["#"]["#"]']`);
    await hand.page.select(`[data-path='tasks[${task}].mix["#"]["#"]']`, material);
    await enter(`tasks[${task}].mix.${material}`, parts);
  }
});

describe('what is typed is kept', limit, () => {
  test('a tab that is killed while somebody types', async () => {
    await sample();
    await hand.enter('tasks[2].layer', '4 1/2 in', 'field');
    await new Promise((done) => setTimeout(done, 600));
    await hand.page.keyboard.type('ch');
    await new Promise((done) => setTimeout(done, 600));
    const old = hand.page;
    const session = await old.createCDPSession();
    session.send('Page.crash').catch(() => {});
    await new Promise((done) => setTimeout(done, 300));
    await hand.tab('/');
    await hand.until(() => document.documentElement.dataset.result, 'the job from before');
    const back = JSON.parse((await hand.job()).bytes);
    assert.equal(back.tasks[2].layer, '4 1/2 inch', 'to the last key');
    old.close().catch(() => {});
  });

  test('the last result is shown before the program is there', async () => {
    await sample();
    await hand.kept();
    await new Promise((done) => setTimeout(done, 800));
    await hand.page.evaluateOnNewDocument(() => {
      globalThis.kinds = [];
      new MutationObserver(() => {
        const kind = document.documentElement?.dataset.result;
        if (kind && globalThis.kinds.at(-1) !== kind) globalThis.kinds.push(kind);
      }).observe(document, { attributes: true, subtree: true, attributeFilter: ['data-result'] });
    });
    await hand.reload();
    await hand.fresh();
    assert.deepEqual(await hand.evaluate(() => globalThis.kinds), ['saved', 'fresh']);
    hand.clean();
  });

  test('two tabs with one job: neither loses what was typed', async () => {
    await sample();
    const one = hand.page;
    const two = await hand.tab('/');
    await hand.fresh();
    await hand.enter('name', 'Second tab', 'job-name');
    await hand.turn(one);
    await hand.until(() => document.querySelector('[data-test="job-name"]').value === 'Second tab', 'the other tab to be heard');

    // at one moment both are typed into, before either hears of the other
    const moment = Date.now() + 1000;
    const type = (page, text) =>
      page.evaluate((text, moment) => {
        while (Date.now() < moment);
        const box = document.querySelector('[data-test="job-name"]');
        Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value').set.call(box, text);
        box.dispatchEvent(new Event('input', { bubbles: true }));
      }, text, moment);
    await Promise.all([type(one, 'Mine'), type(two, 'Theirs')]);
    // A tab out of sight hears of the other in its own time.
    let names = [];
    for (let turn = 0; turn < 20 && !(names.includes('Mine') && names.includes('Theirs')); turn++) {
      await new Promise((done) => setTimeout(done, 1000));
      for (const page of [one, two]) {
        await hand.turn(page);
        if ((await hand.seen('conflict')).length > 0) await hand.tap('conflict-mine');
      }
      await hand.tap('menu');
      names = await hand.evaluate(() => [...document.querySelectorAll('[data-test="job-row"]')].map((row) => row.dataset.name));
      await hand.tap('shelf-close');
    }
    assert.ok(names.includes('Mine') && names.includes('Theirs'), `both are kept: ${names}`);
  });

  test('a job that was deleted comes back, and so does a task', async () => {
    await sample();
    await hand.tap('open-row', 'tasks[2]');
    await hand.tap('remove-row', 'tasks[2]');
    await hand.until(() => document.querySelectorAll('[data-test="task"]').length === 4, 'the task to go');
    await hand.tap('undo');
    await hand.until(() => document.querySelectorAll('[data-test="task"]').length === 5, 'the task to come back');
    await hand.fresh();
    const before = (await hand.job()).bytes;
    await hand.tap('menu');
    await hand.tap('job-delete');
    await hand.until(() => document.querySelectorAll('[data-test="job-row"]').length === 0, 'the job to go');
    await hand.tap('job-undelete');
    await hand.until(() => document.querySelectorAll('[data-test="job-row"]').length === 1, 'the job to come back');
    await hand.tap('shelf-close');
    await hand.fresh();
    assert.deepEqual((await hand.job()).bytes, before);
    hand.clean();
  });
});

describe('files and links', limit, () => {
  test('the file that the page saves plans the same at the command line, and so does its list', async () => {
    await sample();
    const file = await hand.job();
    assert.deepEqual(planBytes(file.path), planBytes());
    await hand.tap('menu');
    const csv = await hand.download('csv');
    assert.deepEqual(csv.bytes, barrow('plan', '--sample', '--csv').out);
    hand.clean();
  });

  test('a link holds the whole job, and sends it nowhere', async () => {
    await sample();
    const before = (await hand.job()).bytes;
    await hand.tap('menu');
    await hand.tap('share');
    const link = await hand.until(() => document.querySelector('[data-test="share-link"]')?.value, 'the link');
    assert.ok(link.startsWith(server.origin + '/#job='), link.slice(0, 60));
    assert.ok((await hand.seen('share-qr')).length === 1, 'and a code for the phone beside');
    server.taken();
    const other = await phone(server);
    try {
      await other.open(link.slice(server.origin.length));
      await other.fresh();
      assert.deepEqual((await other.job()).bytes, before);
      assert.equal(await other.evaluate(() => location.hash), '', 'the link does not stay in the address');
      other.clean();
    } finally {
      await other.close();
    }
    assert.ok(server.taken().every((asked) => !asked.path.includes('job')));
    hand.clean();
  });

  const script = '"><img src=x onerror="globalThis.hit=1"><script>globalThis.hit=1</script><svg onload="globalThis.hit=1">{{7*7}}';
  const hostile = {
    schema: 1,
    name: script,
    currency: '<b>',
    materials: [{ id: 'bad-stuff', name: script, source: script, dry: '20 lb/cu ft', wet: '40 lb/cu ft' }],
    containers: [{ id: 'bad-pot', name: script, holds: '2 gal', source: script }],
    mixes: [{ id: 'bad-mix', name: script, parts: { 'bad-stuff': 1, peat: 1 } }],
    tasks: [
      { kind: 'fill', name: script, mix: 'bad-mix', containers: [{ count: 3, size: 'bad-pot' }] },
      { kind: 'cover', name: script, area: '10 ft x 4 ft', layer: '3 in', material: 'bad-stuff' },
    ],
    offers: [{ material: 'bad-stuff', pack: '2 cu ft', price: '3' }, { material: 'peat', pack: '3.8 cu ft', price: '20' }],
    haul: { payload: '1000 lb', room: '2 cu yd', trip_cost: '9' },
  };

  // unharmed goes through every place with what was opened, and looks for markup.
  async function unharmed(what) {
    const look = () =>
      hand.evaluate(() => ({
        hit: globalThis.hit ?? null,
        polluted: {}.polluted ?? null,
        markup: [...document.querySelectorAll('img, iframe, object, embed, b, script:not([src]), svg[onload], main i')].map((el) => el.outerHTML.slice(0, 80)),
      }));
    const fine = { hit: null, polluted: null, markup: [] };
    assert.deepEqual(await look(), fine, what);
    for (const place of ['place-yard', 'place-ground', 'place-job']) {
      if ((await hand.seen(place)).length === 0) continue;
      await hand.tap(place);
      await new Promise((done) => setTimeout(done, 200));
      assert.deepEqual(await look(), fine, `${what}, ${place}`);
      assert.deepEqual(await hand.evaluate(sideways), [], `${what}, ${place}: no sideways scroll`);
    }
    await hand.tap('menu');
    assert.deepEqual(await look(), fine, `${what}, the jobs dialog`);
    await hand.tap('shelf-close');
  }

  test('a file with script in every string is text', async () => {
    const sound = barrow('plan', paper('sound.json', hostile), '--json');
    assert.equal(sound.code, 0, `the job is sound but for its words: ${sound.problems}`);
    await sample();
    await hand.tap('menu');
    await hand.give(paper('script.json', hostile));
    await hand.until((name) => document.querySelector('[data-test="job-name"]')?.value === name, 'the hostile job', { args: [script] });
    await hand.fresh();
    await hand.until(() => document.querySelector('.sure'), 'all of its result');
    await unharmed('a sound job with script in every string');
    await hand.evaluate(() => {
      window.print = () => {};
    });
    for (const sheet of ['yard', 'ground']) {
      await hand.tap('menu');
      await hand.tap(`print-${sheet}`);
      await hand.until((sheet) => document.querySelector(`[data-test="sheet-${sheet}"]`), 'the sheet', { args: [sheet] });
      await hand.evaluate(() => dispatchEvent(new Event('afterprint')));
      await unharmed(`its sheet for the ${sheet}`);
    }
    // and where every string of the sample is script, so that all is a problem
    const all = JSON.parse(await hand.ask('sample'), (key, value) => (typeof value === 'string' && key !== 'kind' ? script : value));
    await hand.tap('menu');
    await hand.give(paper('all.json', all));
    await hand.until(() => document.querySelector('[data-test="problem"], [data-test="message"]'), 'what is wrong with it');
    await unharmed('script in every string');
    hand.clean();
  });

  test('files that are no job are refused with a reason, and the job in hand stays', async () => {
    await sample();
    const before = (await hand.job()).bytes;
    const refused = {
      'empty.json': '',
      'text.json': 'not a job at all',
      'list.json': '[1, 2, 3]',
      'half.json': '{"schema": 1, "tasks": [',
      'bytes.json': Buffer.from([0xff, 0xfe, 0x00, 0x01, 0x80]),
      'deep.json': '['.repeat(200_000),
      'fifty-megabytes.json': Buffer.alloc(50 * 1024 * 1024, 0x20),
    };
    for (const [name, content] of Object.entries(refused)) {
      await hand.tap('menu');
      await hand.give(paper(name, content));
      await hand.until(() => document.querySelector('[data-test="message"][role="alert"]'), `${name} to be refused`, { ms: 20_000 });
      const said = (await hand.seen('message'))[0];
      assert.ok(said.length > 20, `${name}: ${said}`);
      await hand.tap('[data-test="message"] .quiet');
    }
    assert.deepEqual((await hand.job()).bytes, before);
    hand.clean();
  });

  test('a job of another schema, or with fields that are not known, opens with its problems', async () => {
    await sample();
    for (const [name, doc, path] of [
      ['newer.json', { schema: 99, name: 'From later', tasks: [] }, 'schema'],
      ['odd.json', { schema: 1, name: 'Odd', colour: 'green', tasks: [{ kind: 'cover', area: '4 ft x 4 ft', layer: '3 in', material: 'bark-mulch' }] }, 'colour'],
      ['proto.json', '{"schema": 1, "name": "Proto", "__proto__": {"polluted": 1}, "constructor": {"prototype": {"polluted": 1}}, "tasks": []}', null],
      ['wrong-kinds.json', { schema: 1, name: 7, measure: [], tasks: { a: 1 }, offers: 'none', haul: 3, mixes: null, on_hand: [1] }, null],
    ]) {
      await hand.tap('menu');
      await hand.give(paper(name, doc));
      await hand.until((name) => document.querySelector('[data-test="message"]')?.textContent.includes(name), `${name} to be opened or refused`, { args: [name], ms: 20_000 }).catch((err) =>
        hand.seen('message').then((said) => { throw new Error(`${err.message}; said: ${said}`); }));
      if (path) await hand.until((path) => [...document.querySelectorAll(`[data-test="problem"][data-path="${path}"]`)].some((el) => el.checkVisibility()), `the problem at ${path}`, { args: [path], ms: 10_000 });
      await unharmed(name);
    }
    assert.deepEqual(hand.errors, []);
  });

  test('a hostile link is refused with a reason or opened as text', async () => {
    const pack = (text) => zlib.deflateSync(Buffer.from(text), { level: 9 }).toString('base64url');
    const links = {
      'nothing': '',
      'one letter': 'd',
      'not base64': 'd%%%<script>',
      'cut short': 'd' + pack(JSON.stringify(hostile)).slice(0, 60),
      'a bomb': 'd' + zlib.deflateSync(Buffer.alloc(40_000_000, 0x20), { level: 9 }).toString('base64url'),
      'too long': 't' + 'A'.repeat(200_000),
      'a deep one': 'd' + pack('['.repeat(500_000)),
      'of another version': 'z' + pack('{}'),
    };
    for (const [name, data] of Object.entries(links)) {
      await hand.forget();
      const began = Date.now();
      await hand.open('/#job=' + data);
      await hand.until(() => document.querySelector('[data-test="message"]'), `${name} to be refused`, { ms: 20_000 });
      assert.ok(Date.now() - began < 15_000, `${name} is refused soon`);
      assert.deepEqual(await hand.seen('job-name'), [], `${name} opens nothing`);
    }
    await hand.forget();
    await hand.open('/#job=t' + Buffer.from(JSON.stringify(hostile)).toString('base64url'));
    await hand.fresh();
    await unharmed('a link with script in every string');
    hand.clean();
  });
});

describe('a device that keeps nothing', limit, () => {
  test('storage that is full: the page says so and works on', async () => {
    await sample();
    await hand.enter('tasks[2].layer', '4 in');
    await hand.fresh();
    // What the page can spare, such as the last result, makes room at first.
    const said = () => hand.evaluate(() => /no room/i.test(document.body.innerText));
    for (let more = 1; more <= 6 && !(await said()); more++) {
      await hand.evaluate((more) => {
        let piece = 'x'.repeat(1 << 20);
        for (let n = 0; piece.length > 0; n++) {
          try {
            localStorage.setItem(`filler ${more} ${n}`, piece);
          } catch {
            piece = piece.slice(0, piece.length >> 1);
          }
        }
      }, more);
      await hand.enter('name', `A name that is longer each time, for which there is no place left ${'again '.repeat(more)}`, 'job-name');
      await new Promise((done) => setTimeout(done, 1500));
    }
    assert.ok(await said(), 'the page says that there is no room');
    await hand.fresh();
    assert.equal(JSON.parse((await hand.job()).bytes).tasks[2].layer, '4 in');
    await hand.evaluate(() => {
      for (const key of Object.keys(localStorage)) if (key.startsWith('filler')) localStorage.removeItem(key);
    });
    await hand.enter('name', 'Room again', 'job-name');
    await hand.until(() => !/no room/i.test(document.body.innerText), 'the warning to go');
    await hand.reload();
    await hand.fresh();
    assert.equal(JSON.parse((await hand.job()).bytes).name, 'Room again');
    hand.clean();
  });

  test('storage that is refused: the page works and says what it cannot keep', async () => {
    await hand.page.evaluateOnNewDocument(() => {
      Object.defineProperty(globalThis, 'localStorage', {
        get() {
          throw new DOMException('refused', 'SecurityError');
        },
      });
    });
    await hand.open('/');
    await sample();
    await hand.enter('tasks[2].layer', '4 in');
    await hand.fresh();
    const file = await hand.job();
    assert.equal(JSON.parse(file.bytes).tasks[2].layer, '4 in');
    await settled('the total', (total) => document.querySelector('[data-test="total"]').textContent.includes(total), plan(file.path).total);
    const said = await hand.evaluate(() => document.body.innerText);
    assert.match(said, /not (?:let|allow|keep|save)|cannot (?:keep|save)|can't (?:keep|save)/i);
    hand.clean();
  });

  test('what is kept is damaged: the page starts all the same', async () => {
    await sample();
    await new Promise((done) => setTimeout(done, 600));
    await hand.open(blank);
    await hand.evaluate(() => {
      for (const key of Object.keys(localStorage)) localStorage.setItem(key, localStorage.getItem(key).slice(0, 40) + '\u0000{"');
    });
    await hand.open('/');
    await hand.until(() => document.querySelector('[data-test="start-sample"], [data-test="job-name"]'), 'a start');
    if ((await hand.seen('start-sample')).length > 0) await sample();
    await hand.fresh();
    hand.clean();
  });
});

describe('a newer build', limit, () => {
  test('is offered, waits for whoever types, and keeps the job', async () => {
    await hand.forget();
    server.use(olderDist());
    try {
      await hand.evaluate(async () => {
        for (const registration of await navigator.serviceWorker.getRegistrations()) await registration.unregister();
        for (const name of await caches.keys()) await caches.delete(name);
      });
      await hand.open('/');
      await sample();
      await hand.kept();
      const older = () => hand.evaluate(() => getComputedStyle(document.documentElement).getPropertyValue('--older').trim());
      assert.equal(await older(), '1');
      await hand.enter('tasks[2].layer', '4 in');
      await hand.fresh();

      server.use(dist());
      await hand.reload();
      await hand.fresh();
      assert.equal(await older(), '1', 'the page is still the older one');
      await hand.evaluate(() => {
        globalThis.stays = true;
      });
      await hand.until(() => document.querySelector('[data-test="update"]')?.checkVisibility(), 'the newer one to be offered');
      await hand.enter('tasks[2].layer', '5 in');
      await new Promise((done) => setTimeout(done, 1500));
      assert.equal(await hand.evaluate(() => globalThis.stays), true, 'it did not reload itself');

      await hand.tap('update-now');
      await hand.until(() => globalThis.stays === undefined && document.readyState === 'complete', 'the newer page');
      await hand.fresh();
      assert.equal(await older(), '');
      assert.equal(JSON.parse((await hand.job()).bytes).tasks[2].layer, '5 in');
      await server.stop();
      await hand.reload();
      await hand.fresh();
      assert.equal(await older(), '', 'and it is the newer one that is kept');
      assert.equal((await hand.evaluate(() => caches.keys())).length, 1, 'the older one is gone');
      hand.errors = hand.errors.filter((said) => !/ERR_CONNECTION_REFUSED|Failed to fetch|net::/.test(said));
      hand.clean();
    } finally {
      if (!server.running) await server.start();
      server.use(dist());
    }
  });
});

describe('in another language', limit, () => {
  test('a decimal comma is read and shown, and the saved document has a point', async () => {
    await sample();
    await hand.tap('menu');
    await hand.page.select(at('language'), 'es');
    await hand.until(() => document.documentElement.lang === 'es', 'the language');
    await hand.page.select(at('decimal'), ',');
    await hand.tap('shelf-close');
    await hand.fresh();
    await hand.enter('tasks[2].layer', '2,5');
    await hand.fresh();
    await settled('a decimal comma in the total', () => /\d,\d\d/.test(document.querySelector('[data-test="total"]').textContent));
    const file = await hand.job();
    const doc = JSON.parse(file.bytes);
    assert.equal(doc.tasks[2].layer, '2.5 in');
    const total = plan(file.path).total.replace('.', ',');
    await settled(`the total ${total}`, (total) => document.querySelector('[data-test="total"]').textContent.includes(total), total);
    await hand.reload();
    await hand.fresh();
    assert.equal(await hand.evaluate(() => document.documentElement.lang), 'es', 'it is remembered');
    hand.clean();
  });
});

describe('the program ends, or does not come back', limit, () => {
  // worker is the one behind the page now.
  const worker = async () => {
    await hand.until(() => document.documentElement.dataset.result === 'fresh', 'a result');
    return hand.page.workers().at(-1);
  };
  const total = () => hand.show('total');

  test('ended while nothing was asked: told, started again, and the next key has its answer', async () => {
    await sample();
    const before = await total();
    await (await worker()).evaluate(() => self.close());
    await hand.enter('tasks[2].layer', '4 in');
    await hand.until(() => document.querySelector('[data-test="message"]')?.textContent.includes('started again'), 'the page to say so');
    await hand.fresh();
    assert.notEqual(await total(), before);
    assert.equal((await hand.seen('stale')).length, 0);
    const file = await hand.job();
    assert.match(await total(), new RegExp(plan(file.path).total.replace('.', '\\.')));
    hand.clean();
  });

  test('ended over a question: asked again by itself', async () => {
    await sample();
    await (await worker()).evaluate(() => {
      const post = self.postMessage;
      self.postMessage = (said, ...more) => {
        if (said.begun) throw new RangeError('out of memory');
        post.call(self, said, ...more);
      };
    });
    await hand.enter('tasks[2].layer', '4 in');
    await hand.fresh();
    const file = await hand.job();
    assert.match(await total(), new RegExp(plan(file.path).total.replace('.', '\\.')));
    hand.clean();
  });

  test('a question that does not return is told and can be stopped, and asked again', async () => {
    await sample();
    await (await worker()).evaluate(() => {
      const post = self.postMessage;
      self.postMessage = (said, ...more) => {
        post.call(self, said, ...more);
        while (said.begun) { /* for good */ }
      };
    });
    await hand.enter('tasks[2].layer', '4 in');
    await hand.until(() => document.querySelector('[data-test="long"]'), 'the page to say that it takes long');
    assert.deepEqual(await hand.seen('stale'), ['from before']);
    assert.deepEqual(await hand.evaluate(sideways), [], 'and it fits the screen');
    await hand.tap('stop');
    await hand.until(() => document.querySelector('[data-test="ask-again"]'), 'the way to ask again');
    assert.equal((await hand.seen('long')).length, 0);
    assert.equal(JSON.parse((await hand.job()).bytes).tasks[2].layer, '4 in', 'what was typed is kept');
    await hand.tap('ask-again');
    await hand.fresh();
    assert.equal((await hand.seen('message')).length, 0);
    const file = await hand.job();
    assert.match(await total(), new RegExp(plan(file.path).total.replace('.', '\\.')));
    hand.clean();
  });
});
