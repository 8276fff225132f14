// How much is downloaded, how soon there is a result, how soon after a key; each
// beside a reference made and measured in the same run, turn by turn. Two cores
// shared with others repeat within half: read the ratios.
//
//   npm run bench                all of it
//   npm run bench -- --runs 3    fewer turns
//   npm run bench -- download    one part: download, cold, warm, typing

import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';

import { folder } from './engines/children.mjs';
import { launch } from './engines/chromium.mjs';
import { dist, repo } from './made.mjs';
import { at, fresh, kept, tap, until } from './page.mjs';
import { blank, readFolder, serve } from './serve.mjs';
import { slowPages } from './slow.mjs';

const { values, positionals } = parseArgs({ options: { runs: { type: 'string', default: '7' } }, allowPositionals: true });
const runs = Number(values.runs);
const times = 4;
const phone = { latency: 150, rate: 205_000 };

// A slow processor by two ways. Chromium's own slows the main thread and no
// worker; standing still by turns slows all of a page.
const ways = {
  'main thread / 4': async (browser) => {
    const session = await browser.page.createCDPSession();
    await session.send('Emulation.setCPUThrottlingRate', { rate: times });
    return () => session.send('Emulation.setCPUThrottlingRate', { rate: 1 });
  },
  'whole page / 4': (browser) => slowPages(browser.browser, times),
};

// ---- download

async function download() {
  const files = [...readFolder(dist())].filter(([name]) => name !== '/' && name !== '/barrow.html');
  const size = (file) => (file.small ?? file.raw).length;
  const rows = files.map(([name, file]) => [name.slice(1), file.raw.length, size(file)]).sort((a, b) => b[2] - a[2]);
  const all = rows.reduce((sum, row) => sum + row[2], 0);
  const program = (dir) => readFolder(dir).get('/program.wasm');
  const empty = program(reference('empty', emptyProgram));
  const same = program(reference('empty-same', emptyProgram, 'page'));
  table('Download, bytes', ['file', 'raw', 'brotli 11'], [
    ...rows,
    ['all files', rows.reduce((sum, row) => sum + row[1], 0), all],
    ['an empty Go program, no symbols', empty.raw.length, size(empty)],
    ['ratio', '', ratio(all, size(empty))],
    ["an empty Go program, with the page's flags", same.raw.length, size(same)],
    ['ratio', '', ratio(all, size(same))],
  ]);
  const single = fs.statSync(path.join(dist(), 'barrow.html')).size;
  console.log(`barrow.html, the one file: ${single} bytes\n`);
}

// ---- start

async function cold() {
  const rows = [];
  for (const [way, slow] of Object.entries(ways)) {
    const ours = [], least = [];
    for (let run = 0; run < runs; run++) {
      least.push(await start(reference('least', leastProgram), '/', slow));
      ours.push(await start(dist(), '/#sample', slow));
    }
    rows.push([way, spread(least), spread(ours), ratio(median(ours), median(least))]);
  }
  table(`Cold start to the first result, 150 ms and 205 kB/s, ms, median (least, most) of ${runs}`,
    ['slowed', 'js + strconv', 'Barrow', 'ratio'], rows);
}

// start gives the milliseconds from navigation to the first result, in a
// browser that was never here.
async function start(dir, address, slow) {
  const server = await serve(dir);
  const browser = await launch();
  try {
    await watch(browser);
    await browser.open(server.origin + blank); // the process that will hold the page
    const stop = await slow(browser);
    server.slow = phone;
    await browser.page.goto(server.origin + address, { waitUntil: 'domcontentloaded' });
    const found = await seen(browser, 'fresh');
    await stop();
    return found;
  } finally {
    await browser.close();
    await server.stop();
  }
}

async function warm() {
  const rows = [];
  for (const [way, slow] of Object.entries(ways)) {
    const ours = [], last = [], least = [];
    const [a, b] = [await visited(reference('least', leastProgram), '/'), await visited(dist(), '/#sample')];
    try {
      for (let run = 0; run < runs; run++) {
        least.push((await again(a, slow)).fresh);
        const found = await again(b, slow);
        ours.push(found.fresh);
        last.push(found.saved);
      }
    } finally {
      await a.browser.close();
      await b.browser.close();
    }
    rows.push([way, spread(least), spread(ours), ratio(median(ours), median(least)), last.includes(null) ? 'not shown' : spread(last)]);
  }
  table(`Warm start with the server stopped, ms, median (least, most) of ${runs}`,
    ['slowed', 'js + strconv', 'Barrow', 'ratio', 'last saved result shown'], rows);
}

// visited is a browser that keeps the page of a server which is gone by now.
async function visited(dir, address) {
  const server = await serve(dir);
  const browser = await launch();
  await browser.open(server.origin + address);
  await fresh(browser);
  await kept(browser);
  await new Promise((done) => setTimeout(done, 1500)); // for what it saves
  await server.stop();
  return { browser, url: server.origin + '/' };
}

async function again({ browser, url }, slow) {
  const page = browser.page;
  browser.page = await browser.browser.newPage();
  await page.close();
  await watch(browser);
  await browser.page.goto(url.replace(/\/$/, blank)).catch(() => {});
  const stop = await slow(browser);
  await browser.page.goto(url, { waitUntil: 'domcontentloaded' });
  const found = { fresh: await seen(browser, 'fresh'), saved: await first(browser, 'saved') };
  await stop();
  return found;
}

// watch notes when the page says that its result is of which kind.
function watch(browser) {
  return browser.page.evaluateOnNewDocument(() => {
    const seen = (globalThis.seenResults = []);
    globalThis.whenFresh = new Promise((done) => {
      const note = () => {
        const kind = document.documentElement?.dataset.result;
        if (kind && seen.at(-1)?.kind !== kind) seen.push({ kind, at: performance.now() });
        if (kind === 'fresh') done();
      };
      new MutationObserver(note).observe(document, { attributes: true, subtree: true, attributeFilter: ['data-result'] });
    });
  });
}

// first gives when the page first said so, or null.
function first(browser, kind) {
  return browser.evaluate((kind) => globalThis.seenResults.find((each) => each.kind === kind)?.at ?? null, kind);
}

// seen waits for the result, asking nothing of the page meanwhile.
async function seen(browser, kind) {
  await browser.evaluate(() => globalThis.whenFresh);
  return first(browser, kind);
}

// ---- typing

async function typing() {
  const rows = [];
  const long = [];
  for (const [way, slow] of Object.entries(ways)) {
    const server = await serve(dist());
    const browser = await launch();
    try {
      await browser.open(server.origin + blank); // the page's own rules allow no other worker
      const plain = await loops(browser);
      const unslow = await slow(browser);
      const slowed = await loops(browser);
      await unslow();
      await browser.open(server.origin + '/#sample');
      await fresh(browser);
      await kept(browser);
      const stop = await slow(browser);
      const { shown, painted } = await keystrokes(browser, 100);
      rows.push([way, ratio(slowed.main, plain.main), ratio(slowed.worker, plain.worker), ...at50and95(shown), ...at50and95(painted)]);
      await stop();

      await importJob(browser, longJob());
      const stop2 = await slow(browser);
      long.push([way, ...(await longTasks(browser, 40))]);
      await stop2();
    } finally {
      await browser.close();
      await server.stop();
    }
  }
  table('Key to new result, the sample job, ms over 100 keys',
    ['slowed', 'main by', 'worker by', 'median', '95th', 'painted, median', '95th'], rows);
  table('A job of 200 lines, 40 keys at 80 ms, ms',
    ['slowed', 'longest task of the main thread', 'tasks over 50', 'slowest key to paint', 'last key to result'], long);
}

// loops takes a fixed loop in the page and in a worker of its own.
function loops(browser) {
  return browser.evaluate(async () => {
    const loop = () => {
      const start = performance.now();
      let x = 0;
      for (let i = 0; i < 2e7; i++) x = (x * 31 + i) | 0;
      return performance.now() - start + x * 0;
    };
    const best = (list) => list.sort((a, b) => a - b)[1];
    const main = best([loop(), loop(), loop()]);
    const url = URL.createObjectURL(new Blob([`const loop = ${loop}; onmessage = () => postMessage([loop(), loop(), loop()])`], { type: 'text/javascript' }));
    const w = new Worker(url);
    const worker = best(await new Promise((done, failed) => {
      w.onmessage = (event) => done(event.data);
      w.onerror = failed;
      w.postMessage(0);
    }));
    w.terminate();
    return { main, worker };
  });
}

const field = at('field', 'tasks[1].containers[0].count');

// keystrokes types one digit over the last, again and again: each is a sound job
// near the sample. The page notes its own times, and is asked nothing meanwhile.
async function keystrokes(browser, count) {
  const { page } = browser;
  await page.bringToFront();
  await unfold(browser);
  await page.evaluate((field) => {
    const box = document.querySelector(field);
    box.scrollIntoView({ block: 'center' });
    box.focus();
    const keys = (globalThis.keys = []);
    let drawn = () => {};
    box.addEventListener('keydown', (event) => keys.push({ down: event.timeStamp }));
    new PerformanceObserver((list) => {
      const key = keys.at(-1), result = list.getEntriesByName('barrow-result')[0];
      if (!key || key.shown || !result) return;
      key.shown = result.startTime;
      requestAnimationFrame(() => setTimeout(() => { key.painted = performance.now(); drawn(); }));
    }).observe({ type: 'mark' });
    globalThis.lastDigit = () => {
      box.setSelectionRange(box.value.length - 1, box.value.length);
      globalThis.whenDrawn = new Promise((done) => { drawn = done; });
    };
  }, field);
  for (let i = 0; i < count; i++) {
    await page.evaluate(() => globalThis.lastDigit());
    const drawn = page.evaluate(() => globalThis.whenDrawn);
    await new Promise((done) => setTimeout(done, 120)); // as between a person's keys: the page is at rest
    await page.keyboard.press(String((i + 5) % 10));
    await drawn;
  }
  const keys = await page.evaluate(() => globalThis.keys);
  return { shown: keys.map((key) => key.shown - key.down), painted: keys.map((key) => key.painted - key.down) };
}

// unfold opens what hides the field.
async function unfold(browser) {
  if (!(await browser.page.$(field))) await tap(browser, 'open-row', 'tasks[1]');
  await browser.page.waitForSelector(field);
}

async function importJob(browser, job) {
  const file = path.join(folder('long'), 'long.json');
  fs.writeFileSync(file, JSON.stringify(job));
  const marks = () => browser.evaluate(() => performance.getEntriesByName('barrow-result').length);
  const before = await marks();
  await tap(browser, 'menu');
  const [chooser] = await Promise.all([browser.page.waitForFileChooser(), tap(browser, 'import')]);
  await chooser.accept([file]);
  await until(browser, (before) => performance.getEntriesByName('barrow-result').length > before, 'the long job', { args: [before] });
}

// longJob has 20 tasks of 10 lines.
function longJob() {
  const sample = JSON.parse(fs.readFileSync(path.join(repo, 'mix/sample.json')));
  const sizes = ['#1', '#2', '#3', '#5'];
  return {
    ...sample,
    name: 'Two hundred lines',
    tasks: Array.from({ length: 20 }, (_, task) => ({
      kind: 'fill',
      name: `Bench ${task + 1}`,
      mix: 'potting',
      containers: Array.from({ length: 10 }, (_, line) => ({ count: 10 + task + line, size: sizes[line % sizes.length] })),
    })),
  };
}

// longTasks types as fast as a person may, waiting for nothing.
async function longTasks(browser, count) {
  const { page } = browser;
  await page.bringToFront();
  await unfold(browser);
  await page.evaluate((field) => {
    const box = document.querySelector(field);
    box.scrollIntoView({ block: 'center' });
    box.focus();
    box.setSelectionRange(box.value.length, box.value.length);
    globalThis.slowest = 0;
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) {
        if (entry.name === 'keydown' || entry.name === 'input') globalThis.slowest = Math.max(globalThis.slowest, entry.duration);
      }
    }).observe({ type: 'event', durationThreshold: 16 });
  }, field);
  await page.tracing.start({ categories: ['toplevel', 'disabled-by-default-devtools.timeline', 'devtools.timeline', '__metadata'] });
  const marks = await page.evaluate(() => performance.getEntriesByName('barrow-result').length);
  let last = 0;
  for (let i = 0; i < count; i++) {
    await page.keyboard.press(i % 2 ? 'Backspace' : String(1 + (i % 9)));
    last = Date.now();
    await new Promise((done) => setTimeout(done, 80));
  }
  await until(browser, (marks) => performance.getEntriesByName('barrow-result').length > marks && document.documentElement.dataset.result === 'fresh', 'the last result', { args: [marks] });
  const after = Date.now() - last;
  const trace = JSON.parse(Buffer.from(await page.tracing.stop()).toString());
  const pid = trace.traceEvents.filter((e) => e.name === 'EventDispatch' && e.args?.data?.type === 'keydown').at(-1)?.pid;
  const main = trace.traceEvents.find((e) => e.name === 'thread_name' && e.args.name === 'CrRendererMain' && e.pid === pid);
  const tasks = trace.traceEvents.filter((e) => e.name === 'RunTask' && e.pid === pid && e.tid === main.tid && e.ph === 'X').map((e) => e.dur / 1000);
  await new Promise((done) => setTimeout(done, 300));
  const slowest = await page.evaluate(() => globalThis.slowest);
  return [Math.max(...tasks).toFixed(0), tasks.filter((ms) => ms > 50).length, slowest.toFixed(0), after];
}

// ---- references

function emptyProgram(dir) {
  fs.writeFileSync(path.join(dir, 'main.go'), 'package main\n\nfunc main() {}\n');
}

// leastProgram is the smallest page with a use: a number in, a number out.
function leastProgram(dir, out) {
  fs.writeFileSync(path.join(dir, 'main.go'), `package main

import (
	"strconv"
	"syscall/js"
)

func main() {
	doc := js.Global().Get("document")
	in := doc.Call("getElementById", "in")
	work := func(js.Value, []js.Value) any {
		x, err := strconv.ParseFloat(in.Get("value").String(), 64)
		text := "?"
		if err == nil {
			text = strconv.FormatFloat(x*2, 'f', 2, 64)
		}
		doc.Call("getElementById", "out").Set("textContent", text)
		doc.Get("documentElement").Get("dataset").Set("result", "fresh")
		return nil
	}
	in.Call("addEventListener", "input", js.FuncOf(work))
	work(js.Value{}, nil)
	select {}
}
`);
  fs.writeFileSync(path.join(out, 'index.html'), `<!doctype html>
<html lang="en"><meta charset="utf-8"><title>Twice</title>
<link rel="preload" href="program.wasm" as="fetch" type="application/wasm" crossorigin>
<script src="wasm_exec.js" defer></script><script src="main.js" defer></script>
<label>Number <input id="in" value="1.5"></label> <output id="out"></output>
`);
  fs.writeFileSync(path.join(out, 'main.js'), `const go = new Go();
WebAssembly.instantiateStreaming(fetch('program.wasm'), go.importObject).then(({instance}) => go.run(instance));
addEventListener('load', () => navigator.serviceWorker.register('sw.js'));
`);
  fs.writeFileSync(path.join(out, 'sw.js'), `addEventListener('install', (e) => e.waitUntil(caches.open('a').then((c) => c.addAll(['./', 'main.js', 'wasm_exec.js', 'program.wasm']))));
addEventListener('activate', (e) => e.waitUntil(clients.claim()));
addEventListener('fetch', (e) => e.respondWith(caches.match(e.request).then((r) => r || fetch(e.request))));
`);
  const root = execFileSync('go', ['env', 'GOROOT'], { encoding: 'utf8' }).trim();
  fs.copyFileSync(path.join(root, 'lib/wasm/wasm_exec.js'), path.join(out, 'wasm_exec.js'));
}

/** How the build compiles: {plain: {flags, env}, page: {flags, env}}. */
function compiling() {
  return (compiling.made ??= JSON.parse(execFileSync('go', ['run', './web/build', '-flags'], { cwd: repo, encoding: 'utf8' })));
}

/** Builds a reference once, with Go's flags or with the page's. */
function reference(name, write, like = 'plain') {
  const made = (reference.made ??= new Map());
  if (!made.has(name)) {
    const source = folder(name), out = folder(name);
    fs.writeFileSync(path.join(source, 'go.mod'), `module ${name}\n\ngo 1.26\n`);
    write(source, out);
    const { flags, env } = compiling()[like];
    execFileSync('go', ['build', ...flags, '-o', path.join(out, 'program.wasm'), '.'], {
      cwd: source,
      stdio: ['ignore', 'inherit', 'inherit'],
      env: { ...process.env, GOWORK: 'off', GOFLAGS: '', ...env },
    });
    made.set(name, out);
  }
  return made.get(name);
}

// ---- figures

function median(list) {
  return at50and95(list)[0];
}

function at50and95(list) {
  const sorted = [...list].sort((a, b) => a - b);
  const rank = (share) => Math.round(sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]);
  return [rank(0.5), rank(0.95)];
}

function spread(list) {
  return `${median(list)} (${Math.round(Math.min(...list))}, ${Math.round(Math.max(...list))})`;
}

function ratio(a, b) {
  return (a / b).toFixed(2);
}

function table(title, head, rows) {
  console.log(`${title}\n`);
  console.log(`| ${head.join(' | ')} |`);
  console.log(`|${head.map(() => '---').join('|')}|`);
  for (const row of rows) console.log(`| ${row.join(' | ')} |`);
  console.log();
}

const parts = { download, cold, warm, typing };
for (const name of positionals.length ? positionals : Object.keys(parts)) {
  const started = Date.now();
  await parts[name]();
  console.error(`(${name}: ${Math.round((Date.now() - started) / 1000)} s)`);
}
process.exit(0);
