// Processes and folders that must not outlive the tests, however these end.

import { spawn } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';

const children = new Set();
const folders = new Set();

/** A process in its own group, so that its own children end with it. */
export function start(command, args, { env = {}, ...options } = {}) {
  const child = spawn(command, args, {
    detached: true,
    stdio: ['ignore', 'ignore', 'pipe'],
    env: { ...process.env, ...env },
    ...options,
  });
  child.said = '';
  child.stderr?.on('data', (data) => (child.said = (child.said + data).slice(-4000)));
  child.on('error', (err) => (child.said += String(err)));
  children.add(child);
  return child;
}

export async function end(child) {
  if (!children.delete(child)) return;
  if (child.exitCode === null && child.signalCode === null && child.pid) {
    const gone = new Promise((done) => child.once('exit', done));
    kill(child);
    await gone;
  }
  kill(child); // what it left behind in its group
}

/** An empty folder that is removed at the end. */
export function folder(name) {
  const dir = fs.mkdtempSync(path.join(os.tmpdir(), `barrow-e2e-${name}-`));
  folders.add(dir);
  return dir;
}

export function removeFolder(dir) {
  folders.delete(dir);
  remove(dir);
}

function kill(child) {
  try {
    process.kill(-child.pid, 'SIGKILL');
  } catch {
    // gone already
  }
}

function remove(dir) {
  try {
    fs.rmSync(dir, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
  } catch {
    // a browser that is just ending still writes; the system's own sweep takes it
  }
}

process.on('exit', () => {
  for (const child of children) kill(child);
  for (const dir of folders) remove(dir);
});
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => process.exit(1));
