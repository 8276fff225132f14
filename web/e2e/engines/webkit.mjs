// WebKitGTK's small browser, driven by plain W3C WebDriver under Xvfb.

import fs from 'node:fs';
import net from 'node:net';

import { end, folder, removeFolder, start } from './children.mjs';

const machine = process.arch === 'arm64' ? 'aarch64-linux-gnu' : 'x86_64-linux-gnu';
export const binary = process.env.MINIBROWSER ?? `/usr/lib/${machine}/webkit2gtk-4.1/MiniBrowser`;
export const driver = '/usr/bin/WebKitWebDriver';
export const display = '/usr/bin/Xvfb';

const quiet = {
  WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: '1',
  WEBKIT_DISABLE_DMABUF_RENDERER: '1',
  LIBGL_ALWAYS_SOFTWARE: '1',
};

export async function launch() {
  const webkit = new WebKit();
  try {
    await webkit.begin();
  } catch (err) {
    await webkit.close();
    throw err;
  }
  return webkit;
}

class WebKit {
  name = 'webkit';
  #processes = [];
  #session = '';
  #home = folder('webkit');

  async begin() {
    const screen = await this.#display();
    const port = await freePort();
    const home = this.#home;
    this.#processes.push(
      start(driver, ['--host=127.0.0.1', `--port=${port}`], {
        env: {
          ...quiet,
          DISPLAY: screen,
          HOME: home,
          XDG_CACHE_HOME: `${home}/cache`,
          XDG_DATA_HOME: `${home}/data`,
          XDG_CONFIG_HOME: `${home}/config`,
        },
      }),
    );
    this.root = `http://127.0.0.1:${port}`;
    await until(async () => (await fetch(`${this.root}/status`)).ok, 20_000, 'WebKitWebDriver to answer');
    const { sessionId } = await this.#ask('POST', '/session', {
      capabilities: {
        alwaysMatch: { 'webkitgtk:browserOptions': { binary, args: ['--automation'] } },
      },
    });
    this.#session = `/session/${sessionId}`;
    await this.#ask('POST', `${this.#session}/timeouts`, { script: 60_000, pageLoad: 60_000, implicit: 0 });
    await this.#ask('POST', `${this.#session}/window/rect`, { width: 380, height: 800 }).catch(() => {});
  }

  // Xvfb says which number was free.
  async #display() {
    const child = start(display, ['-displayfd', '3', '-screen', '0', '800x900x24', '-nolisten', 'tcp'], {
      stdio: ['ignore', 'ignore', 'pipe', 'pipe'],
    });
    this.#processes.push(child);
    const number = await new Promise((done, failed) => {
      child.stdio[3].once('data', (data) => done(String(data).trim()));
      child.once('exit', () => failed(new Error(`Xvfb ended: ${child.said}`)));
    });
    return `:${number}`;
  }

  async open(url) {
    await this.#ask('POST', `${this.#session}/url`, { url });
  }

  async reload() {
    await this.#ask('POST', `${this.#session}/refresh`, {});
  }

  /** Runs a function in the page and waits for its promise. */
  async evaluate(fn, ...args) {
    const reply = await this.#ask('POST', `${this.#session}/execute/async`, {
      script: `const done = arguments[arguments.length - 1];
        const args = Array.prototype.slice.call(arguments, 0, -1);
        Promise.resolve().then(() => (${fn})(...args))
          .then((value) => done({value}), (err) => done({error: String(err && err.stack || err)}));`,
      args,
    });
    if (reply?.error) throw new Error(reply.error);
    return reply?.value;
  }

  async close() {
    if (this.#session) {
      await this.#ask('DELETE', this.#session, undefined, 5000).catch(() => {});
      this.#session = '';
    }
    for (const child of this.#processes.splice(0).reverse()) await end(child);
    removeFolder(this.#home);
  }

  async #ask(method, path, body, timeout = 90_000) {
    const reply = await fetch(this.root + path, {
      method,
      body: body && JSON.stringify(body),
      headers: { 'content-type': 'application/json' },
      signal: AbortSignal.timeout(timeout),
    });
    const { value } = await reply.json();
    if (value?.error) throw new Error(`${value.error}: ${value.message}`);
    return value;
  }
}

async function freePort() {
  const probe = net.createServer();
  await new Promise((done) => probe.listen(0, '127.0.0.1', done));
  const { port } = probe.address();
  await new Promise((done) => probe.close(done));
  return port;
}

async function until(ask, ms, what) {
  const end = Date.now() + ms;
  for (;;) {
    try {
      if (await ask()) return;
    } catch {
      // not yet
    }
    if (Date.now() > end) throw new Error(`waited in vain for ${what}`);
    await new Promise((done) => setTimeout(done, 100));
  }
}

/** What is missing on this machine to run it. */
export function missing() {
  return [binary, driver, display].filter((file) => !fs.existsSync(file));
}
