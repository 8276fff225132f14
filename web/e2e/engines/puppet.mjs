// What Chromium and Firefox have in common: puppeteer-core drives both.

import puppeteer from 'puppeteer-core';

import { folder, removeFolder } from './children.mjs';

/** A browser with one page, and the few things that every engine here can do. */
export class Puppet {
  constructor(name, browser, page, profile) {
    this.name = name;
    this.browser = browser;
    this.page = page;
    this.profile = profile;
  }

  static async launch(name, { profile, viewport = { width: 360, height: 740, deviceScaleFactor: 2 }, ...options }) {
    const own = profile ?? folder(name);
    const browser = await puppeteer.launch({
      userDataDir: own,
      defaultViewport: viewport,
      protocolTimeout: 120_000,
      ...options,
    });
    const [page] = await browser.pages();
    const puppet = new this(name, browser, page ?? (await browser.newPage()), own);
    puppet.ownProfile = profile === undefined;
    kept.add(browser);
    return puppet;
  }

  async open(url) {
    await this.page.goto(url, { waitUntil: 'load', timeout: 60_000 });
  }

  async reload() {
    await this.page.reload({ waitUntil: 'load', timeout: 60_000 });
  }

  /** Runs a function in the page; what it gives must be plain. */
  evaluate(fn, ...args) {
    return this.page.evaluate(fn, ...args);
  }

  async close() {
    kept.delete(this.browser);
    const child = this.browser.process();
    await Promise.race([
      this.browser.close().catch(() => {}),
      new Promise((done) => setTimeout(done, 10_000).unref()),
    ]);
    stop(child);
    if (this.ownProfile) removeFolder(this.profile);
  }
}

const kept = new Set();

function stop(child) {
  if (!child?.pid) return;
  for (const pid of [-child.pid, child.pid]) {
    try {
      process.kill(pid, 'SIGKILL');
    } catch {
      // gone already
    }
  }
}

process.on('exit', () => {
  for (const browser of kept) stop(browser.process());
});
