// @ts-check
// The program on the far side of a worker: bytes in, bytes out, in order.

/**
 * @import {Changes, FullPlan, Plan, Problems} from '../plan.d.ts'
 * @import {Catalog, Drawing} from '../state/types.d.ts'
 * @import {Doc} from '../store/record.js'
 * @import {Assets} from './assets.js'
 */

const encoder = new TextEncoder();
const decoder = new TextDecoder();

/**
 * What the program answers to each verb, where it is JSON.
 * @typedef {object} Answers
 * @property {Plan | Problems} plan
 * @property {FullPlan} full
 * @property {{drawings: Drawing[]}} shown
 * @property {{drawings: Drawing[]}} costs
 * @property {Changes} changes
 * @property {Catalog} catalog
 * @property {Doc} sample
 * @property {{size?: number, path?: string}} qr
 */

/** What the worker says. @typedef {{id?: number, answer?: Uint8Array<ArrayBuffer>, error?: string, ready?: true, failed?: string}} Said */

/** @typedef {ReturnType<typeof startProgram>} Program */

/** @param {Assets} assets */
export function startProgram(assets) {
  const worker = /** @type {Worker} */ (assets.worker()); // or a port, which is asked the same
  /** @type {Map<number | undefined, {resolve(answer: Uint8Array<ArrayBuffer>): void, reject(error: Error): void}>} */
  const waiting = new Map();
  let next = 1;
  /** @type {(reason: unknown) => void} */
  let fail;
  /** @type {Promise<void>} */
  const ready = new Promise((resolve, reject) => {
    fail = reject;
    worker.addEventListener('message', event => {
      const data = /** @type {Said} */ (event.data);
      if (data.ready) resolve();
      if (data.failed) reject(new Error(data.failed));
      const call = waiting.get(data.id);
      if (!call) return;
      waiting.delete(data.id);
      if (data.error) call.reject(new Error(data.error));
      else call.resolve(/** @type {Uint8Array<ArrayBuffer>} */ (data.answer));
    });
    worker.addEventListener('error', event => reject(new Error(event.message || 'the program did not start')));
  });
  ready.catch(() => {}); // whoever asks gets the error
  assets.bytes?.then(bytes => worker.postMessage({start: {bytes}}), reason => fail(reason));
  worker.postMessage({hello: true});

  /** One call: a verb and documents as bytes. @param {string} verb @param {Uint8Array[]} docs @returns {Promise<Uint8Array<ArrayBuffer>>} */
  async function call(verb, ...docs) {
    await ready;
    return new Promise((resolve, reject) => {
      const id = next++;
      waiting.set(id, {resolve, reject});
      worker.postMessage({id, verb, docs});
    });
  }

  /**
   * One call with documents as objects or text, answered as an object.
   * @template {keyof Answers} Verb
   * @param {Verb} verb @param {(Doc | string)[]} docs
   * @returns {Promise<Answers[Verb]>}
   */
  async function ask(verb, ...docs) {
    return JSON.parse(await text(verb, ...docs));
  }

  /** One call, answered as text. @param {string} verb @param {(Doc | string)[]} docs */
  async function text(verb, ...docs) {
    return decoder.decode(await call(verb, ...docs.map(bytesOf)));
  }

  return {ready, call, ask, text};
}

/** @param {Doc | string} doc */
function bytesOf(doc) {
  if (doc instanceof Uint8Array) return doc;
  return encoder.encode(typeof doc === 'string' ? doc : JSON.stringify(doc));
}
