// barrow.html, opened from a folder with no server: as from a memory card.

import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { after, before, describe, test } from 'node:test';
import { pathToFileURL } from 'node:url';

import * as chromium from './engines/chromium.mjs';
import { folder } from './engines/children.mjs';
import * as firefox from './engines/firefox.mjs';
import { dist, jobs, planBytes } from './made.mjs';
import { ask, fresh, show, tap } from './page.mjs';

for (const [name, engine] of Object.entries({ chromium, firefox })) {
  describe(`one file in ${name}`, { timeout: 180_000 }, () => {
    let browser;
    const card = folder('card'); // the file alone, in a folder with a hard name
    const file = path.join(card, 'yard & bed 100%', 'barrow.html');

    before(async () => {
      fs.mkdirSync(path.dirname(file));
      fs.copyFileSync(path.join(dist(), 'barrow.html'), file);
      browser = await engine.launch();
    });
    after(() => browser?.close());

    test('opens from file:// and works the sample out', async () => {
      await browser.open(pathToFileURL(file).href);
      await tap(browser, 'start-sample');
      await fresh(browser);
      assert.match(await show(browser, 'total'), new RegExp(JSON.parse(planBytes()).total.replace('.', '[.]')));
    });

    test('the same bytes as the command line', async () => {
      assert.deepEqual(await ask(browser, 'plan', await ask(browser, 'sample')), planBytes());
      for (const job of jobs()) {
        assert.ok((await ask(browser, 'plan', fs.readFileSync(job))).equals(planBytes(job)), path.basename(job));
      }
    });

    const shut = name === 'chromium' ? false : "puppeteer has no way into this browser's workers";
    test('goes on when its worker ends', { skip: shut }, async () => {
      await browser.page.workers().at(-1).evaluate(() => self.close());
      assert.deepEqual(await ask(browser, 'plan', await ask(browser, 'sample')), planBytes());
      assert.match(await show(browser, 'message'), /started again/);
    });

    test('takes nothing from beside it', async () => {
      const asked = await browser.evaluate(() =>
        performance.getEntriesByType('resource').map((entry) => entry.name).filter((url) => !/^(blob|data):/.test(url)));
      assert.deepEqual(asked, []);
    });
  });
}
