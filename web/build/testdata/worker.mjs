// The built worker, in node: what a worker has and node has not.
import {readFileSync} from 'node:fs';
import {join} from 'node:path';
import {pathToFileURL} from 'node:url';

globalThis.self = globalThis;
const listeners = [];
globalThis.addEventListener = (_, listener) => listeners.push(listener);
const send = data => listeners.forEach(listener => listener({data}));
let heard;
globalThis.postMessage = message => heard(message);
const next = () => new Promise((resolve, reject) => {
  heard = message => {
    const why = message.failed ?? message.refused ?? message.ended;
    if (why) reject(new Error(why));
    else if (message.begun === undefined) resolve(message);
  };
});

/** Starts the worker of a folder; what comes back asks it. */
export async function startWorker(dist) {
  const ready = next();
  await import(pathToFileURL(join(dist, 'worker.js')));
  send({start: {bytes: readFileSync(join(dist, 'barrow.wasm'))}});
  send({hello: true});
  await ready;
  let id = 0;
  return async (verb, ...docs) => {
    const message = next();
    send({id: ++id, verb, docs});
    const {id: back, answer} = await message;
    if (back !== id) throw new Error(`asked ${id}, answered ${back}`);
    return answer;
  };
}
