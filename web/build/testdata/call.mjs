// Runs the built worker as a browser would and asks it each verb of every job in
// a folder, in order of name; each reply goes beside its job, with .VERB.reply:
//   node call.mjs DIST JOBS VERB...
import {readFileSync, readdirSync, writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {pathToFileURL} from 'node:url';

const [dist, jobs, ...verbs] = process.argv.slice(2);

// What a worker has and node has not.
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

let message = next();
await import(pathToFileURL(join(dist, 'worker.js')));
send({start: {bytes: readFileSync(join(dist, 'barrow.wasm'))}});
send({hello: true});
await message;
let id = 0;
const names = readdirSync(jobs).sort();
for (const verb of verbs) {
  for (const name of names) {
    message = next();
    send({id: ++id, verb, docs: [new Uint8Array(readFileSync(join(jobs, name)))]});
    const {id: back, answer} = await message;
    if (back !== id) throw new Error(`asked ${id}, answered ${back}`);
    writeFileSync(join(jobs, `${name}.${verb}.reply`), answer);
  }
}
process.exit(0);
