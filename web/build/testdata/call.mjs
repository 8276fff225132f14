// Runs the built worker as a browser would and asks it each verb of every job in
// a folder, in order of name; each reply goes beside its job, with .VERB.reply:
//   node call.mjs DIST JOBS VERB...
import {readFileSync, readdirSync, writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {startWorker} from './worker.mjs';

const [dist, jobs, ...verbs] = process.argv.slice(2);
const ask = await startWorker(dist);
const names = readdirSync(jobs).sort();
for (const verb of verbs) {
  for (const name of names) {
    writeFileSync(join(jobs, `${name}.${verb}.reply`), await ask(verb, new Uint8Array(readFileSync(join(jobs, name)))));
  }
}
process.exit(0);
