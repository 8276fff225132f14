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

/**
 * What the worker says: that it can answer, or why it never will; that it has
 * begun on a question; its answer, why it takes no such question, or what ended
 * the program over it.
 * @typedef {{ready?: true, failed?: string, begun?: number, id?: number, answer?: Uint8Array<ArrayBuffer>, refused?: string, ended?: string}} Said
 */

/** A question without an answer. @typedef {{verb: string, docs: Uint8Array[], again: boolean, resolve(answer: Uint8Array<ArrayBuffer>): void, reject(error: Error): void}} Question */

/** What the page waits for, once it has waited long: '' for nothing. @typedef {'' | 'loading' | 'working'} Long */

/** @typedef {{port: Worker | MessagePort, end: () => void, ready: boolean, failed: boolean}} Running */

/** @typedef {ReturnType<typeof startProgram>} Program */

/** How long a question may lie untouched, in ms. A worker that has nothing else to do and does not begin is gone: no browser says when it ends one. */
const UNTOUCHED = 5000;

/** How long the page waits for an answer before it says so, in ms. */
const LONG = 4000;

/** The same for the program itself, which a slow network may be bringing. */
const LOADING = 30_000;

/** That somebody did not want to wait for the answer. */
export class Stopped extends Error {}

/** That the program ended over a question, and once more when it was asked again. */
export class Ended extends Error {}

/**
 * Starts the program. When it ends it is started anew, and what was not answered
 * is asked again; a question that ended it twice fails.
 * @param {Assets} assets
 * @param {{restarted?: () => void, long?: (what: Long) => void}} [on]
 */
export function startProgram(assets, on = {}) {
  /** The questions without an answer, the first asked first. @type {Map<number, Question>} */
  const waiting = new Map();
  let next = 1;
  /** The language of the answers, which every new worker is told first. @type {{verb: string, docs: Uint8Array[]} | undefined} */
  let language;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let timer;
  /** @type {Long} */
  let long = '';
  let worker = begin();

  /** @returns {Running} */
  function begin() {
    const {port, end} = assets.worker();
    const mine = {port, end, ready: false, failed: false};
    /** @param {Said} said */
    const hear = said => { if (mine === worker) heard(said); };
    port.addEventListener('message', event => hear(/** @type {MessageEvent<Said>} */ (event).data));
    port.addEventListener('error', event => {
      const why = /** @type {ErrorEvent} */ (event).message || 'the program did not start';
      hear(mine.ready ? {ended: why} : {failed: why});
    });
    assets.bytes?.then(bytes => port.postMessage({start: {bytes}}), reason => hear({failed: String(reason)}));
    port.postMessage({hello: true});
    return mine;
  }

  /** @param {Said} said */
  function heard({ready, failed, begun, id, answer, refused, ended}) {
    if (ready) {
      worker.ready = true;
      if (language) post(0, language); // nobody waits for its answer
      for (const [id, question] of waiting) post(id, question);
    }
    if (failed !== undefined) giveUp(failed);
    if (ended !== undefined) return replace(ended);
    const question = waiting.get(id ?? 0);
    if (question) {
      waiting.delete(id ?? 0);
      if (answer) question.resolve(answer);
      else question.reject(new Error(refused));
    }
    watch(begun !== undefined && waiting.has(begun));
  }

  /** @param {number} id @param {{verb: string, docs: Uint8Array[]}} question */
  function post(id, {verb, docs}) { worker.port.postMessage({id, verb, docs}); }

  /** Takes the time of what is waited for now. @param {boolean} [begun] */
  function watch(begun = false) {
    clearTimeout(timer);
    tell('');
    if (waiting.size === 0) return;
    if (!worker.ready) timer = setTimeout(tell, LOADING, 'loading');
    else if (begun) timer = setTimeout(tell, LONG, 'working');
    else timer = setTimeout(replace, UNTOUCHED, 'it gave no sign of life');
  }

  /** @param {Long} what */
  function tell(what) {
    if (long === what) return;
    long = what;
    on.long?.(what);
  }

  /** The program cannot be had. The next question tries again. @param {string} why */
  function giveUp(why) {
    worker.failed = true;
    worker.end();
    for (const {reject} of waiting.values()) reject(new Error(why));
    waiting.clear();
  }

  /** Starts another worker in place of one that ended. @param {string} why */
  function replace(why) {
    worker.end();
    const first = waiting.entries().next().value; // what it was working on
    if (first) {
      const [id, question] = first;
      if (question.again) {
        waiting.delete(id);
        question.reject(new Ended(why));
      }
      question.again = true;
    }
    worker = begin();
    watch();
    on.restarted?.();
  }

  /** Ends the question that is worked on, or starts the program again if it is still loading. */
  function stop() {
    worker.end();
    const first = waiting.entries().next().value;
    if (first && worker.ready) {
      waiting.delete(first[0]);
      first[1].reject(new Stopped());
    }
    worker = begin();
    watch();
  }

  /** One call: a verb and documents as bytes. @param {string} verb @param {Uint8Array[]} docs @returns {Promise<Uint8Array<ArrayBuffer>>} */
  function call(verb, ...docs) {
    if (verb === 'language') language = {verb, docs};
    if (worker.failed) worker = begin();
    return new Promise((resolve, reject) => {
      const id = next++, question = {verb, docs, again: false, resolve, reject};
      waiting.set(id, question);
      if (worker.ready) post(id, question);
      if (waiting.size === 1) watch();
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

  return {call, ask, text, stop};
}

/** @param {Doc | string} doc */
function bytesOf(doc) {
  if (doc instanceof Uint8Array) return doc;
  return encoder.encode(typeof doc === 'string' ? doc : JSON.stringify(doc));
}
