// Loads the built program as a page would and answers one job:
//   node call.mjs DIST < job.json > reply.json
import {readFileSync, writeSync} from 'node:fs';
import {pathToFileURL} from 'node:url';

const dist = process.argv[2];
await import(pathToFileURL(`${dist}/wasm_exec.js`));
const go = new globalThis.Go();
const ready = new Promise(resolve => { globalThis.barrowReady = resolve; });
const {instance} = await WebAssembly.instantiate(readFileSync(`${dist}/barrow.wasm`), go.importObject);
go.run(instance);
await ready;
const reply = globalThis.barrow('plan', new Uint8Array(readFileSync(0)));
for (let at = 0; at < reply.length;) at += writeSync(1, reply, at);
process.exit(0);
