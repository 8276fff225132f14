// A phone in hand: Chromium at 360 x 740 with a touch screen. What is pressed
// must be in sight and nothing may lie over it.

import assert from 'node:assert/strict';
import fs from 'node:fs';
import http from 'node:http';
import path from 'node:path';

import { launch } from './engines/chromium.mjs';
import { folder } from './engines/children.mjs';
import { blank } from './serve.mjs';
import { ask, at, fresh, kept, show, until } from './page.mjs';

export const size = { width: 360, height: 740, deviceScaleFactor: 2, isMobile: true, hasTouch: true };

// What Chromium asks on its own account, whatever page is open.
const chromiumsOwn = /^(CONNECT |GET http:\/\/|POST http:\/\/)(update|content-autofill|optimizationguide-pa|safebrowsing)[.]googleapis[.]com|(accounts|clients2|android[.]clients|mtalk)[.]google[.]com|(edgedl[.]me|redirector)[.]gvt1[.]com/;

/**
 * A phone that opens what the server serves. Whatever it asks of any other
 * address, from the page or a worker, comes to a trap and is in phone.strayed.
 */
export async function phone(server, { viewport = size, profile } = {}) {
  const strayed = [];
  const note = (asked) => {
    if (!chromiumsOwn.test(asked)) strayed.push(asked);
  };
  const trap = http.createServer((req, res) => {
    note(`${req.method} ${req.url}`);
    res.writeHead(502);
    res.end();
  });
  trap.on('connect', (req, socket) => {
    note(`CONNECT ${req.url}`);
    socket.destroy();
  });
  await new Promise((done) => trap.listen(0, '127.0.0.1', done));
  const browser = await launch({
    viewport,
    profile,
    args: [
      `--proxy-server=http://127.0.0.1:${trap.address().port}`,
      `--proxy-bypass-list=<-loopback>;${new URL(server.origin).host}`,
      '--lang=en-US',
    ],
  });
  return new Phone(browser, server, trap, strayed);
}

export class Phone {
  errors = [];

  constructor(browser, server, trap, strayed) {
    Object.assign(this, { browser, server, trap, strayed });
    this.name = 'phone';
    this.#listen(browser.page);
  }

  get page() {
    return this.browser.page;
  }

  #listen(page) {
    page.on('pageerror', (err) => this.errors.push(String(err)));
    page.on('console', (said) => {
      if (said.type() === 'error') this.errors.push(said.text());
    });
  }

  evaluate(fn, ...args) {
    return this.page.evaluate(fn, ...args);
  }

  async open(address = '/') {
    await this.browser.open(this.server.origin + address);
  }

  /** Takes away what the page keeps of jobs, from beside it: on leaving it saves. */
  async forget() {
    await this.open(blank);
    await this.evaluate(() => localStorage.clear());
    this.errors.length = 0;
  }

  reload() {
    return this.browser.reload();
  }

  /** Another tab of the same phone; the one to go on with. */
  async tab(address = '/') {
    const page = await this.browser.browser.newPage();
    await page.setViewport(this.page.viewport());
    this.#listen(page);
    this.browser.page = page;
    await this.open(address);
    return page;
  }

  /** Goes back to a tab. */
  async turn(page) {
    this.browser.page = page;
    await page.bringToFront();
  }

  fresh() {
    return fresh(this);
  }
  kept() {
    return kept(this);
  }
  show(name, where) {
    return show(this, name, where);
  }
  ask(verb, ...docs) {
    return ask(this, verb, ...docs);
  }
  until(fn, what, more) {
    return until(this, fn, what, more);
  }

  /** What can be seen of a name or a selector: [] if nothing. */
  async seen(name, where) {
    return this.evaluate(
      (selector) => [...document.querySelectorAll(selector)].filter((el) => el.checkVisibility({ visibilityProperty: true })).map((el) => el.textContent.trim()),
      selectorOf(name, where),
    );
  }

  /** Touches the middle of what has this name, or a selector; again, where a
   * result that came meanwhile has moved it from under the finger. */
  async tap(name, where, { inside = '' } = {}) {
    const selector = (inside && inside + ' ') + selectorOf(name, where);
    for (let tries = 1; ; tries++) {
      const point = await this.until(place, `${selector} in sight, with nothing over it`, { args: [selector], ms: 20_000 });
      await this.page.touchscreen.tap(point.x, point.y);
      if (await this.#hit()) return;
      if (tries === 3) throw new Error(`${selector} was touched ${tries} times and not pressed`);
    }
  }

  async #hit() {
    const end = Date.now() + 3000;
    do {
      try {
        if (await this.evaluate(() => globalThis.pressed !== false)) return true;
      } catch {
        return true; // the page is being reloaded
      }
      await new Promise((done) => setTimeout(done, 20));
    } while (Date.now() < end);
    return false;
  }

  /** Unfolds what hides a field. */
  async reveal(where) {
    for (let step = 0; step < 8; step++) {
      if ((await this.evaluate((s) => [...document.querySelectorAll(s)].some((el) => el.checkVisibility({ visibilityProperty: true })), at('field', where)))) return;
      const button = await this.evaluate((where) => {
        const folds = [...document.querySelectorAll('[aria-expanded="false"][data-path]')].filter((el) => {
          const path = el.dataset.path;
          return el.checkVisibility({ visibilityProperty: true }) && (path === '' || where === path || where.startsWith(path + '.') || where.startsWith(path + '['));
        });
        const [first] = folds.sort((a, b) => a.dataset.path.length - b.dataset.path.length);
        return first && [first.dataset.test, first.dataset.path];
      }, where);
      if (!button) break;
      await this.tap(...button);
    }
    await this.until((s) => [...document.querySelectorAll(s)].some((el) => el.checkVisibility({ visibilityProperty: true })), `the field ${where}`, { args: [at('field', where)], ms: 5000 });
  }

  /** Touches a field and types over what is there; a choice is chosen. */
  async enter(where, text, name = 'field') {
    if (name === 'field') await this.reveal(where);
    const selector = selectorOf(name, where);
    await this.until((s) => document.querySelector(s)?.checkVisibility(), `${name} ${where ?? ''}`, { args: [selector] });
    const kind = await this.evaluate((s) => document.querySelector(s).tagName, selector);
    if (kind === 'SELECT') {
      await this.page.select(selector, text);
      return;
    }
    await this.tap(name, where);
    await this.until((s) => document.activeElement === document.querySelector(s), `the focus in ${selector}`, { args: [selector], ms: 5000 });
    await this.page.keyboard.down('Control');
    await this.page.keyboard.press('a');
    await this.page.keyboard.up('Control');
    if (text === '') await this.page.keyboard.press('Backspace');
    else await this.page.keyboard.type(text);
  }

  /** The file that one press gives. */
  async download(name) {
    const into = folder('download');
    const session = await this.page.createCDPSession();
    await session.send('Browser.setDownloadBehavior', { behavior: 'allow', downloadPath: into });
    await this.tap(name);
    for (let wait = 0; wait < 200; wait++) {
      const [file] = fs.readdirSync(into).filter((f) => !f.startsWith('.') && !f.endsWith('.crdownload'));
      const bytes = file && fs.readFileSync(path.join(into, file));
      if (bytes?.length > 0) return { name: file, path: path.join(into, file), bytes }; // empty: its name alone, so far
      await new Promise((done) => setTimeout(done, 50));
    }
    throw new Error(`${name} gave no file`);
  }

  /** Hands a file to the button that opens one. */
  async give(file, button = 'import') {
    const [chooser] = await Promise.all([this.page.waitForFileChooser({ timeout: 20_000 }), this.tap(button)]);
    await chooser.accept([file]);
  }

  /** The job as the page would save it, by way of its own file. */
  async job() {
    await this.tap('menu');
    const file = await this.download('export');
    await this.tap('shelf-close');
    return file;
  }

  /** Nothing went wrong in the page, and nothing left its origin. */
  clean() {
    assert.deepEqual(this.strayed, [], 'nothing is asked of another address');
    assert.deepEqual(this.errors, [], 'the page reports no error');
  }

  async close() {
    await this.browser.close();
    this.trap.closeAllConnections();
    await new Promise((done) => this.trap.close(done));
  }
}

export const selectorOf = (name, where) => (/^[.[#:]|^[a-z]+\[/.test(name) ? name : at(name, where));

// place brings an element to the middle of the screen, waits until it stands
// still, and gives the point to touch; null if it is not there or covered.
async function place(selector) {
  const all = [...document.querySelectorAll(selector)].filter((el) => el.checkVisibility({ visibilityProperty: true }) && !el.disabled);
  const open = document.querySelector('dialog[open]');
  const el = all.find((el) => !open || open.contains(el));
  if (!el) return null;
  el.scrollIntoView({ block: 'center', behavior: 'instant' });
  const frames = (n) => new Promise((done) => (n > 0 ? requestAnimationFrame(() => done(frames(n - 1))) : done()));
  let box = el.getBoundingClientRect();
  await frames(3);
  const then = el.getBoundingClientRect();
  if (then.x !== box.x || then.y !== box.y) return null;
  box = then;
  const x = box.x + box.width / 2;
  const y = box.y + box.height / 2;
  const top = document.elementFromPoint(x, y);
  if (!top || !(el.contains(top) || top.contains(el) || top.closest('label')?.control === el)) return null;
  globalThis.pressed = false;
  const mine = (event) => {
    if (!el.contains(event.target) && !event.target.contains(el) && event.target.closest?.('label')?.control !== el) return;
    globalThis.pressed = true;
    removeEventListener('click', mine, true);
  };
  addEventListener('click', mine, true);
  return { x, y };
}
