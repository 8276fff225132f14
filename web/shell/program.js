// The program on the far side of a worker: bytes in, bytes out, in order.

const encoder = new TextEncoder();
const decoder = new TextDecoder();

/**
 * Starts the program. `assets` has the worker that it runs in and, where that
 * cannot fetch it, its bytes.
 *
 * @param {{worker: () => Worker, bytes?: Promise<ArrayBuffer>}} assets
 */
export function startProgram(assets) {
  const worker = assets.worker();
  const waiting = new Map();
  let next = 1;
  let fail;
  const ready = new Promise((resolve, reject) => {
    fail = reject;
    worker.addEventListener('message', ({data}) => {
      if (data.ready) resolve();
      if (data.failed) reject(new Error(data.failed));
      const call = waiting.get(data.id);
      if (!call) return;
      waiting.delete(data.id);
      if (data.error) call.reject(new Error(data.error));
      else call.resolve(data.answer);
    });
    worker.addEventListener('error', event => reject(new Error(event.message || 'the program did not start')));
  });
  ready.catch(() => {}); // whoever asks gets the error
  assets.bytes?.then(bytes => worker.postMessage({start: {bytes}}), fail);
  worker.postMessage({hello: true});

  /** One call: a verb and documents as bytes. */
  async function call(verb, ...docs) {
    await ready;
    return new Promise((resolve, reject) => {
      const id = next++;
      waiting.set(id, {resolve, reject});
      worker.postMessage({id, verb, docs});
    });
  }

  /** One call with documents as objects or text, answered as an object. */
  async function ask(verb, ...docs) {
    return JSON.parse(await text(verb, ...docs));
  }

  /** One call, answered as text. */
  async function text(verb, ...docs) {
    return decoder.decode(await call(verb, ...docs.map(bytesOf)));
  }

  return {ready, call, ask, text};
}

/** @param {any} doc */
function bytesOf(doc) {
  if (doc instanceof Uint8Array) return doc;
  return encoder.encode(typeof doc === 'string' ? doc : JSON.stringify(doc));
}
