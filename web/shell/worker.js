// @ts-check
// The program, away from the page: says {begun: id} of a question {id, verb, docs},
// and answers it with {id, answer}, with {id, refused} when it takes no such
// question, or with {id, ended} when the program ended over it.
//
// It fetches the program itself; in the page that is one file, where self is a
// port, the page sends {start: {bytes}}. Asked {hello}, it says {ready} once it
// can answer.
import './wasm_exec.js';

/**
 * What the program has: see package main in wasm.
 * @typedef {object} Exports
 * @property {(text: number, size: number) => number} room
 * @property {(documents: number) => number} ask
 * @property {() => number} answer
 * @property {WebAssembly.Memory} mem
 */

/**
 * How the program collects its garbage. There is one thread, and a call does not
 * give it up, so a collection that goes on beside the call may not end before the
 * call does, and memory grows until then: to many times of what is in use, more on
 * a busy machine. See web/build/README.md.
 */
const settings = {GODEBUG: 'gcstoptheworld=1', GOGC: '50'};

const program = start();
const encoder = new TextEncoder();

/** @returns {Promise<Exports>} */
async function start() {
  const go = new globalThis.Go();
  go.env = settings;
  const {instance} = await (self.location ? fetched('barrow.wasm', go.importObject) : sent(go.importObject));
  go.run(instance); // until it waits to be asked
  return /** @type {Exports} */ (/** @type {unknown} */ (instance.exports));
}

/** Compiles while it downloads, where the host names the type right. @param {string} wasm @param {WebAssembly.Imports} imports */
async function fetched(wasm, imports) {
  const response = await fetch(wasm);
  if (!response.ok) throw new Error(`${wasm}: ${response.status}`);
  if (response.headers.get('Content-Type')?.startsWith('application/wasm')) return WebAssembly.instantiateStreaming(response, imports);
  return WebAssembly.instantiate(await response.arrayBuffer(), imports);
}

/** @param {WebAssembly.Imports} imports */
async function sent(imports) {
  /** @type {ArrayBuffer} */
  const bytes = await new Promise(resolve => {
    self.addEventListener('message', event => { if (event.data.start) resolve(event.data.start.bytes); });
  });
  return WebAssembly.instantiate(bytes, imports);
}

/**
 * One call: the texts of the question go into the program's memory, the answer is
 * copied out. Nothing, when they are more than the program takes.
 * @param {Exports} program @param {string} verb @param {Uint8Array[]} docs
 */
function ask({room, ask, answer, mem}, verb, docs) {
  for (const [i, text] of [encoder.encode(verb), ...docs].entries()) {
    const at = room(i, text.length) >>> 0; // an address above 2 GB comes as a negative number
    if (at === 0) return undefined;
    new Uint8Array(mem.buffer, at, text.length).set(text); // memory may have grown: looked at again
  }
  const size = ask(docs.length);
  return new Uint8Array(mem.buffer, answer() >>> 0, size).slice();
}

self.addEventListener('message', async event => {
  const {hello, id, verb, docs} = event.data;
  if (hello) program.then(() => self.postMessage({ready: true}), error => self.postMessage({failed: String(error)}));
  if (id === undefined) return;
  try {
    const ready = await program;
    self.postMessage({begun: id});
    const answer = ask(ready, verb, docs);
    if (answer) self.postMessage({id, answer}, [answer.buffer]);
    else self.postMessage({id, refused: 'more than the program takes'});
  } catch (error) {
    self.postMessage({id, ended: String(error)});
  }
});
