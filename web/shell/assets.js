// @ts-check
// Where the rest of the page is: files beside it or, in the page that is one
// file, blocks of text inside it.

/** @param {string} id */
const block = id => document.getElementById(id)?.textContent;

const program = block('barrow-wasm');

/** Whether this page is the single file. */
export const single = Boolean(program);

/**
 * What startProgram takes: how the worker starts and, where that cannot fetch
 * the program, its bytes.
 * @typedef {{worker: () => Worker | MessagePort, bytes?: Promise<ArrayBuffer>}} Assets
 */

/** @type {Assets} */
export const assets = program ? {worker: workerInside, bytes: unzip(program)}
  : {worker: () => globalThis.barrowEarly ?? new Worker('worker.js', {type: 'module'})};

// workerInside is a port with the program behind it: in a worker or, where the
// browser lets a file start none, here.
function workerInside() {
  const {port1, port2} = new MessageChannel();
  port1.start();
  const here = () => globalThis.barrowWorker(port2);
  try {
    const worker = new Worker(URL.createObjectURL(new Blob([/** @type {string} */ (block('barrow-worker'))], {type: 'text/javascript'})));
    worker.onerror = here;
    worker.onmessage = () => { // it runs
      worker.onerror = null;
      worker.postMessage(null, [port2]);
    };
  } catch {
    here();
  }
  return port1;
}

/** @param {string} gzip64 */
function unzip(gzip64) {
  const zipped = new Blob([Uint8Array.fromBase64(gzip64)]).stream();
  return new Response(zipped.pipeThrough(new DecompressionStream('gzip'))).arrayBuffer();
}

/** The bytes of a language's texts. @param {string} language */
export async function languageBytes(language) {
  if (single) return new TextEncoder().encode(block(`barrow-text-${language}`));
  const response = await fetch(`text/${language}.json`);
  if (!response.ok) throw new Error(`text/${language}.json: ${response.status}`);
  return new Uint8Array(await response.arrayBuffer());
}
