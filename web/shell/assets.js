// @ts-check
// Where the rest of the page is: files beside it or, in the page that is one
// file, blocks of text inside it.

/** @param {string} id */
const block = id => document.getElementById(id)?.textContent;

const program = block('barrow-wasm');

/** Whether this page is the single file. */
export const single = Boolean(program);

/**
 * What startProgram takes: how a worker starts and how it is ended and, where it
 * cannot fetch the program, the program's bytes.
 * @typedef {{worker: () => {port: Worker | MessagePort, end: () => void}, bytes?: Promise<ArrayBuffer>}} Assets
 */

/** @type {Assets} */
export const assets = program ? {worker: workerInside, bytes: unzip(program)} : {worker: workerBeside};

// workerBeside is a worker of the file beside the page: first the one on its way
// since the page began.
function workerBeside() {
  const port = globalThis.barrowEarly ?? new Worker('worker.js', {type: 'module'});
  globalThis.barrowEarly = undefined;
  return {port, end: () => port.terminate()};
}

// workerInside is a port with the program behind it: in a worker or, where the
// browser lets a file start none, here.
function workerInside() {
  const {port1, port2} = new MessageChannel();
  port1.start();
  const here = () => globalThis.barrowWorker(port2);
  /** @type {Worker | undefined} */
  let worker;
  try {
    worker = new Worker(URL.createObjectURL(new Blob([/** @type {string} */ (block('barrow-worker'))], {type: 'text/javascript'})));
    worker.onerror = here;
    worker.onmessage = () => { // it runs
      if (!worker) return;
      worker.onerror = null;
      worker.postMessage(null, [port2]);
    };
  } catch {
    here();
  }
  return {port: port1, end: () => { worker?.terminate(); port1.close(); }};
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
