// Asks the built worker each verb of one job and prints, as JSON, the milliseconds
// of each and the bytes that the program's memory came to:
//   node measure.mjs DIST JOB AFTER VERB...
// AFTER is the job after changes at the yard, for the verb "changes".
import {readFileSync} from 'node:fs';
import {startWorker} from './worker.mjs';

const [dist, job, after, ...verbs] = process.argv.slice(2);
let mem;
const instantiate = WebAssembly.instantiate;
WebAssembly.instantiate = async (...args) => {
  const made = await instantiate(...args);
  mem = made.instance.exports.mem;
  return made;
};
const ask = await startWorker(dist);
const ms = {};
for (const verb of verbs) {
  const docs = (verb === 'changes' ? [job, after] : [job]).map(name => new Uint8Array(readFileSync(name)));
  const start = process.cpuUsage();
  await ask(verb, ...docs);
  const took = process.cpuUsage(start);
  ms[verb] = (took.user + took.system) / 1000;
}
console.log(JSON.stringify({ms, bytes: mem.buffer.byteLength}));
process.exit(0);
