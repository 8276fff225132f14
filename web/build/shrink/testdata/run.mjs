// Runs a Go program under node: node run.mjs DIR PROGRAM, the loader beside it.
import {readFileSync} from 'node:fs';
import {join} from 'node:path';
import {pathToFileURL} from 'node:url';

const [dir, program] = process.argv.slice(2);
await import(pathToFileURL(join(dir, 'wasm_exec.js')));
const go = new globalThis.Go();
const {instance} = await WebAssembly.instantiate(readFileSync(join(dir, program)), go.importObject);
await go.run(instance);
process.exit(go.exitCode ?? 0);
