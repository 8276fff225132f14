// Where the rest of the page is: files beside it or, in the page that is one
// file, blocks of text inside it.

const block = id => document.getElementById(id)?.textContent;

/** Whether this page is the single file. */
export const single = Boolean(block('barrow-wasm'));

/** What startProgram takes. */
export const assets = single ? {worker: workerInside, bytes: unzip(block('barrow-wasm'))}
  : {worker: () => globalThis.barrowEarly ?? new Worker('worker.js', {type: 'module'})};

// workerInside is a port with the program behind it: in a worker or, where the
// browser lets a file start none, here.
function workerInside() {
  const {port1, port2} = new MessageChannel();
  port1.start();
  const here = () => globalThis.barrowWorker(port2);
  try {
    const worker = new Worker(URL.createObjectURL(new Blob([block('barrow-worker')], {type: 'text/javascript'})));
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

function unzip(gzip64) {
  const zipped = new Blob([Uint8Array.fromBase64(gzip64)]).stream();
  return new Response(zipped.pipeThrough(new DecompressionStream('gzip'))).arrayBuffer();
}

/** The bytes of a language's texts. */
export async function languageBytes(language) {
  if (single) return new TextEncoder().encode(block(`barrow-text-${language}`));
  const response = await fetch(`text/${language}.json`);
  if (!response.ok) throw new Error(`text/${language}.json: ${response.status}`);
  return new Uint8Array(await response.arrayBuffer());
}
