// A plain static host on this machine for a built folder: brotli, right types,
// and nothing that a page could lean on elsewhere. It can go away and come back
// on the same port, change the folder behind the same address, hold answers
// back as a slow network would, and it keeps what was asked of it.

import { createHash } from 'node:crypto';
import fs from 'node:fs';
import http from 'node:http';
import os from 'node:os';
import path from 'node:path';
import zlib from 'node:zlib';

const types = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.wasm': 'application/wasm',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.txt': 'text/plain; charset=utf-8',
};
const packed = new Set(['.png', '.ico', '.br', '.gz']);

/** Bytes with brotli 11; kept in the temp folder, since a program takes seconds. */
export function brotli(bytes) {
  const kept = path.join(os.tmpdir(), 'barrow-e2e-brotli', createHash('sha256').update(bytes).digest('hex'));
  try {
    return fs.readFileSync(kept);
  } catch {
    const small = zlib.brotliCompressSync(bytes, {
      params: {
        [zlib.constants.BROTLI_PARAM_QUALITY]: 11,
        [zlib.constants.BROTLI_PARAM_LGWIN]: 24,
        [zlib.constants.BROTLI_PARAM_SIZE_HINT]: bytes.length,
      },
    });
    fs.mkdirSync(path.dirname(kept), { recursive: true });
    const half = `${kept}.${process.pid}`;
    fs.writeFileSync(half, small);
    fs.renameSync(half, kept);
    return small;
  }
}

/** A page with nothing on it at the same origin: to set things up beside the page. */
export const blank = '/-blank';
const blankFile = {
  raw: Buffer.from('<!doctype html><html lang="en"><title>Blank</title><link rel="icon" href="data:,">'),
  small: null,
  type: types['.html'],
  etag: '"blank"',
};

/** Every file of a folder, by its address under the root. */
export function readFolder(dir) {
  const files = new Map();
  for (const entry of fs.readdirSync(dir, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const full = path.join(entry.parentPath ?? entry.path, entry.name);
    const name = path.relative(dir, full).split(path.sep).join('/');
    const ext = path.extname(name);
    const raw = fs.readFileSync(full);
    files.set('/' + name, {
      raw,
      small: packed.has(ext) ? null : brotli(raw),
      type: types[ext] ?? 'application/octet-stream',
      etag: '"' + createHash('sha256').update(raw).digest('base64url').slice(0, 16) + '"',
    });
  }
  if (files.has('/index.html')) files.set('/', files.get('/index.html'));
  return files;
}

/**
 * @param {string} dir the built folder
 * @returns {Promise<Server>}
 */
export async function serve(dir) {
  const server = new Server(readFolder(dir));
  await server.start();
  return server;
}

class Server {
  /** What was asked, in order: {method, path, status, bytes} with bytes as sent. */
  requests = [];
  /** null, or {latency: ms, rate: bytes a second over all answers together}. */
  slow = null;
  #free = 0; // when the slow line is free again
  #port = 0;
  #http = null;
  #open = new Set();

  constructor(files) {
    this.files = files;
  }

  get origin() {
    return `http://127.0.0.1:${this.#port}`;
  }

  get running() {
    return this.#http !== null;
  }

  /** Comes back at the port it had. */
  async start() {
    const server = http.createServer((req, res) => this.#answer(req, res));
    server.on('connection', (socket) => {
      this.#open.add(socket);
      socket.on('close', () => this.#open.delete(socket));
    });
    await new Promise((done, failed) => {
      server.once('error', failed);
      server.listen(this.#port, '127.0.0.1', done);
    });
    this.#port = server.address().port;
    this.#http = server;
  }

  /** Goes away at once, with every open connection. */
  async stop() {
    const server = this.#http;
    if (!server) return;
    this.#http = null;
    const closed = new Promise((done) => server.close(done));
    for (const socket of this.#open) socket.destroy();
    await closed;
  }

  /** Another build at the same address. */
  use(dir) {
    this.files = readFolder(dir);
  }

  /** What was asked since the last call. */
  taken() {
    return this.requests.splice(0);
  }

  async #answer(req, res) {
    const asked = { method: req.method, path: req.url, status: 0, bytes: 0 };
    this.requests.push(asked);
    const file = req.url === blank ? blankFile : this.files.get(new URL(req.url, this.origin).pathname);
    const head = { 'cache-control': 'no-cache', 'x-content-type-options': 'nosniff' };
    let body = Buffer.alloc(0);
    if (req.method !== 'GET' && req.method !== 'HEAD') {
      asked.status = 405;
    } else if (!file) {
      asked.status = 404;
      head['content-type'] = 'text/plain; charset=utf-8';
      body = Buffer.from('not found\n');
    } else {
      head['content-type'] = file.type;
      head.etag = file.etag;
      head.vary = 'accept-encoding';
      if (req.headers['if-none-match'] === file.etag) {
        asked.status = 304;
      } else {
        asked.status = 200;
        body = file.raw;
        if (file.small && /\bbr\b/.test(req.headers['accept-encoding'] ?? '')) {
          head['content-encoding'] = 'br';
          body = file.small;
        }
      }
    }
    head['content-length'] = asked.status === 304 ? undefined : body.length;
    if (head['content-length'] === undefined) delete head['content-length'];
    if (req.method === 'HEAD') body = Buffer.alloc(0);
    asked.bytes = body.length;
    if (!this.slow) {
      res.writeHead(asked.status, head);
      res.end(body);
      return;
    }
    await pause(this.slow.latency);
    if (res.destroyed) return;
    res.writeHead(asked.status, head);
    // One line for all: each piece waits for its turn on it.
    const piece = 4096;
    for (let at = 0; at < body.length; at += piece) {
      const part = body.subarray(at, at + piece);
      const now = performance.now();
      this.#free = Math.max(this.#free, now) + (part.length / this.slow.rate) * 1000;
      if (this.#free - now > 1) await pause(this.#free - now);
      if (res.destroyed) return;
      res.write(part);
    }
    res.end();
  }
}

const pause = (ms) => new Promise((done) => setTimeout(done, ms));
