// Runs the built worker as a browser would and answers one job:
//   node call.mjs DIST < job.json > reply.json
import {readFileSync, writeSync} from 'node:fs';
import {pathToFileURL} from 'node:url';

const dist = process.argv[2];
// What a worker has and node has not.
globalThis.self = globalThis;
const listeners = [];
globalThis.addEventListener = (_, listener) => listeners.push(listener);
const take = event => listeners.forEach(listener => listener(event));
globalThis.fetch = async name => new Response(readFileSync(`${dist}/${name}`), {headers: {'content-type': 'application/wasm'}});
await new Promise((resolve, reject) => {
  globalThis.postMessage = message => message.failed ? reject(new Error(message.failed)) : resolve();
  import(pathToFileURL(`${dist}/worker.js`)).then(() => take({data: {start: {wasm: 'barrow.wasm'}}}), reject);
});
const reply = globalThis.barrow('plan', new Uint8Array(readFileSync(0)));
for (let at = 0; at < reply.length;) at += writeSync(1, reply, at);
process.exit(0);
