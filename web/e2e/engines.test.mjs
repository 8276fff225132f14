// Each engine opens the page, works jobs out to the byte as the command line
// does, and goes on when the server is gone.

import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { after, before, describe, test } from 'node:test';

import * as chromium from './engines/chromium.mjs';
import * as firefox from './engines/firefox.mjs';
import * as webkit from './engines/webkit.mjs';
import { dist, jobs, planBytes, repo } from './made.mjs';
import { ask, fresh, kept, show, tap } from './page.mjs';
import { serve } from './serve.mjs';

for (const [name, engine] of Object.entries({ chromium, firefox, webkit })) {
  describe(name, { timeout: 240_000 }, () => {
    let server, browser;

    before(async () => {
      server = await serve(dist());
      browser = await engine.launch();
    });
    after(async () => {
      await browser?.close();
      await server?.stop();
    });

    test('starts, and works the sample out', async () => {
      await browser.open(server.origin + '/');
      await tap(browser, 'start-sample');
      await fresh(browser);
      const plan = JSON.parse(planBytes());
      assert.match(await show(browser, 'total'), new RegExp(plan.total.replace('.', '[.]')));
    });

    test('the same bytes as the command line, sample and jobs', async () => {
      const sample = await ask(browser, 'sample');
      assert.deepEqual(JSON.parse(sample), JSON.parse(fs.readFileSync(path.join(repo, 'mix/sample.json'))));
      assert.deepEqual(await ask(browser, 'plan', sample), planBytes());
      for (const file of jobs()) {
        const reply = await ask(browser, 'plan', fs.readFileSync(file));
        assert.ok(reply.equals(planBytes(file)), `${path.basename(file)}: the page and the command line differ`);
      }
    });

    test('asks nothing of any other address', () => {
      for (const asked of server.requests) assert.match(asked.path, /^\//);
      const wrong = server.requests.filter((asked) => asked.status >= 400);
      assert.deepEqual(wrong, [], 'every file that the page asks for is there');
    });

    test('sends the program once to the page, and once at most to what keeps it', async () => {
      await kept(browser);
      const sent = server.requests.filter((asked) => asked.path === '/barrow.wasm' && asked.status === 200);
      const most = name === 'webkit' ? 2 : 1; // what its page was sent, a service worker there asks for again
      assert.ok(sent.length <= most, `${sent.length} times`);
    });

    test('opens again and computes with the server stopped', async () => {
      await kept(browser);
      await server.stop();
      await browser.reload();
      await fresh(browser);
      assert.deepEqual(await ask(browser, 'plan', await ask(browser, 'sample')), planBytes());
      assert.match(await show(browser, 'total'), /\d/, 'the job from before is there');
    });
  });
}
