// The audit of a phone's first visit, by Lighthouse, three runs: the median in
// access, best practices and search has to be 100. Performance goes by the clock,
// which says more of the machine than of the page where others share it: it is
// printed, with what is short, and fails nothing. It runs in a network of its own
// with nothing but loopback in it, so that it can ask nobody.

import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { after, before, describe, test } from 'node:test';
import { fileURLToPath } from 'node:url';

import { start, end, folder } from './engines/children.mjs';
import { binary } from './engines/chromium.mjs';
import { dist } from './made.mjs';
import { serve } from './serve.mjs';

const kinds = ['performance', 'accessibility', 'best-practices', 'seo'];
const alone = process.env.BARROW_ALONE === 'yes';

// Into a network of its own, where this machine allows it; the folder is built before.
if (!alone && spawnSync('unshare', ['-rn', 'true']).status === 0) {
  test('in a network with loopback only', { timeout: 600_000 }, () => {
    const me = fileURLToPath(import.meta.url);
    const run = spawnSync('unshare', ['-rn', 'bash', '-c', 'ip link set lo up && exec "$0" --test "$1"', process.execPath, me], {
      env: { ...process.env, NODE_TEST_CONTEXT: undefined, BARROW_ALONE: 'yes', BARROW_DIST: dist() },
      encoding: 'utf8',
    });
    console.log(run.stdout, run.stderr);
    assert.equal(run.status, 0);
  });
} else {
  describe('the audit', { timeout: 600_000 }, () => {
    let server;
    const reports = [];
    before(async () => {
      server = await serve(dist());
      for (let run = 0; run < 3; run++) reports.push(await audit(server.origin + '/'));
    });
    after(() => server?.stop());

    for (const kind of kinds) {
      test(kind === 'performance' ? 'performance, printed' : `${kind} is 100`, () => {
        const scores = reports.map((report) => Math.round(report.categories[kind].score * 100)).sort((a, b) => a - b);
        console.log(`${kind}: ${scores.join(', ')}`);
        const report = reports.find((each) => Math.round(each.categories[kind].score * 100) === scores[1]);
        const short = report.categories[kind].auditRefs
          .filter((ref) => ref.weight > 0 && report.audits[ref.id].score !== null && report.audits[ref.id].score < (kind === 'performance' ? 0.9 : 1))
          .map((ref) => `${ref.id}: ${report.audits[ref.id].title} ${report.audits[ref.id].displayValue ?? ''}`);
        if (kind === 'performance') return console.log(`short: ${short.join('; ')}`);
        assert.equal(scores[1], 100, `the median of ${scores.join(', ')}; short: ${short.join('; ')}`);
      });
    }
  });
}

async function audit(url) {
  const { default: lighthouse } = await import('lighthouse');
  const port = 20000 + (process.pid % 20000);
  const home = folder('audit');
  const chromium = start(binary, ['--headless', '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync', `--user-data-dir=${home}`, `--remote-debugging-port=${port}`, 'about:blank']);
  try {
    for (let wait = 0; wait < 150; wait++) {
      if (await fetch(`http://127.0.0.1:${port}/json/version`).then((r) => r.ok, () => false)) break;
      await new Promise((done) => setTimeout(done, 200));
    }
    const { lhr } = await lighthouse(url, { port, output: 'json', logLevel: 'error', onlyCategories: kinds });
    if (lhr.runtimeError) throw new Error(lhr.runtimeError.message);
    return lhr;
  } finally {
    await end(chromium);
  }
}
