// A slower machine for a page: its processes run one part of each few
// milliseconds and stand still for the rest. Chromium's own slowing of the
// processor reaches the main thread alone (measured here: a worker's loop takes
// as long as before), and this page works in a worker.

import fs from 'node:fs';
import os from 'node:os';
import { Worker, isMainThread, parentPort, workerData } from 'node:worker_threads';

/** Slows every page process of a Chromium until stop() is called. */
export async function slowPages(browser, times) {
  const group = browser.process().pid;
  const flag = new Int32Array(new SharedArrayBuffer(4));
  const worker = new Worker(new URL(import.meta.url), { workerData: { group, times, flag } });
  await new Promise((done) => worker.once('message', done));
  return async function stop() {
    Atomics.store(flag, 0, 1);
    await new Promise((done) => worker.once('exit', done));
  };
}

/** The page processes among those of one process group. */
function pages(group) {
  const found = [];
  for (const pid of fs.readdirSync('/proc')) {
    if (!/^\d+$/.test(pid)) continue;
    try {
      const stat = fs.readFileSync(`/proc/${pid}/stat`, 'utf8');
      if (Number(stat.slice(stat.lastIndexOf(')') + 2).split(' ')[2]) !== group) continue;
      if (fs.readFileSync(`/proc/${pid}/cmdline`, 'utf8').includes('--type=renderer')) found.push(Number(pid));
    } catch {
      // ended in between
    }
  }
  return found;
}

function signal(pids, name) {
  for (const pid of pids) {
    try {
      process.kill(pid, name);
    } catch {
      // ended
    }
  }
}

if (!isMainThread && workerData?.flag) {
  const { group, times, flag } = workerData;
  try {
    os.setPriority(-20); // of this thread: it must wake in time
  } catch {
    // not allowed; the balance below makes up for waking late
  }
  const least = 1;
  let owed = 0; // how long to stand still for what has run
  let pids = pages(group);
  let looked = performance.now();
  parentPort.postMessage('slow');
  while (Atomics.load(flag, 0) === 0) {
    if (performance.now() - looked > 40) {
      const now = pages(group);
      signal(pids.filter((pid) => !now.includes(pid)), 'SIGCONT');
      pids = now;
      looked = performance.now();
    }
    const ran = performance.now();
    signal(pids, 'SIGCONT');
    Atomics.wait(flag, 0, 0, least);
    signal(pids, 'SIGSTOP');
    const stood = performance.now();
    owed += (stood - ran) * (times - 1);
    if (owed > 0) Atomics.wait(flag, 0, 0, owed);
    owed -= performance.now() - stood;
  }
  signal(pids, 'SIGCONT');
}
