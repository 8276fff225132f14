// What the tests compare: the built page, an older build of it, and the command
// line, each made once in a run.

import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

import { folder } from './engines/children.mjs';

export const repo = fileURLToPath(new URL('../../', import.meta.url));

const once = (make) => {
  let made;
  return () => (made ??= make());
};

function go(dir, ...args) {
  return execFileSync('go', args, { cwd: dir, stdio: ['ignore', 'pipe', 'inherit'] });
}

/** The built folder: BARROW_DIST, or built now. */
export const dist = once(() => {
  if (process.env.BARROW_DIST) return path.resolve(process.env.BARROW_DIST);
  const out = folder('dist');
  go(repo, 'run', './web/build', '-out', out, '-quiet');
  return out;
});

/** A build of the same page with one file changed, as a version before this one. */
export const olderDist = once(() => {
  if (process.env.BARROW_OLDER_DIST) return path.resolve(process.env.BARROW_OLDER_DIST);
  const source = folder('older-source');
  const out = folder('older-dist');
  const files = execFileSync('git', ['ls-files', '-z'], { cwd: repo, encoding: 'utf8' }).split('\0').filter(Boolean);
  for (const file of files) {
    if (file.startsWith('web/e2e/') || file.startsWith('testdata/')) continue;
    fs.mkdirSync(path.join(source, path.dirname(file)), { recursive: true });
    fs.copyFileSync(path.join(repo, file), path.join(source, file));
  }
  fs.appendFileSync(path.join(source, 'web/style.css'), '\n:root { --older: 1 }\n');
  go(source, 'run', './web/build', '-out', out, '-quiet');
  return out;
});

const command = once(() => {
  if (process.env.BARROW) return path.resolve(process.env.BARROW);
  const out = path.join(folder('command'), 'barrow');
  go(repo, 'build', '-o', out, './cmd/barrow');
  return out;
});

/** What the command prints, what it says is wrong, and its exit code. */
export function barrow(...args) {
  try {
    const out = execFileSync(command(), args, { cwd: repo, maxBuffer: 1 << 26, stdio: ['ignore', 'pipe', 'pipe'] });
    return { code: 0, out, problems: Buffer.alloc(0) };
  } catch (err) {
    if (typeof err.status !== 'number') throw err;
    return { code: err.status, out: err.stdout, problems: err.stderr };
  }
}

/** The bytes of barrow plan --json of a job's file, or of the sample: a plan or problems. */
export function planBytes(file) {
  const { code, out, problems } = barrow('plan', ...(file ? [file] : ['--sample']), '--json');
  return code === 0 ? out : problems;
}

/** The jobs that the command line's own tests read. */
export function jobs() {
  const dir = path.join(repo, 'testdata/jobs');
  return fs.readdirSync(dir).filter((name) => name.endsWith('.json')).map((name) => path.join(dir, name));
}
