// For everyone: every state by the rules that can be checked, and the ways in
// that need no touch and no sight.

import assert from 'node:assert/strict';
import fs from 'node:fs';
import { createRequire } from 'node:module';
import { after, before, describe, test } from 'node:test';

import { dist } from './made.mjs';
import { cutOff, faint, figures, fixedHeight, sideways, smallTargets } from './measure.mjs';
import { serve } from './serve.mjs';
import { states } from './states.mjs';
import { phone, size } from './touch.mjs';

const axe = fs.readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

let server, hand;
before(async () => {
  server = await serve(dist());
  hand = await phone(server);
});
after(async () => {
  await hand?.close();
  await server?.stop();
});

// What is measured stands still.
const still = { name: 'prefers-reduced-motion', value: 'reduce' };

// begin opens the page as on a device where it never was.
async function begin(viewport = size) {
  await hand.page.emulateMediaType(null);
  await hand.page.emulateMediaFeatures([still]);
  if (JSON.stringify(hand.page.viewport()) !== JSON.stringify(viewport)) await hand.page.setViewport(viewport);
  await hand.forget();
  await hand.open('/');
  await hand.until(() => document.querySelector('[data-test="start-sample"]'), 'the start');
}

// On paper there are no landmarks.
const onPaper = Object.fromEntries(['region', 'landmark-one-main', 'page-has-heading-one', 'bypass'].map((rule) => [rule, { enabled: false }]));

async function violations({ rules = {} } = {}) {
  await hand.evaluate(axe);
  const found = await hand.evaluate(async (rules) => {
    const { violations, passes } = await globalThis.axe.run(document, { resultTypes: ['violations'], rules });
    return {
      passed: passes.length,
      wrong: violations.map((v) => `${v.id} (${v.impact}): ${v.nodes.map((n) => n.target.join(' ')).slice(0, 4).join('; ')}`),
    };
  }, rules);
  assert.ok(found.passed > 5, 'the rules were applied');
  return found.wrong;
}

async function stand(least) {
  const { looked, found } = await hand.evaluate(faint, figures, 7);
  assert.ok(looked >= least, `${looked} figures looked at`);
  assert.deepEqual(found, []);
}

test('axe does find a fault that was put in', { timeout: 60_000 }, async () => {
  await begin();
  await hand.evaluate(() => {
    const image = document.createElement('img');
    image.src = 'icons/icon.svg';
    document.querySelector('main').append(image);
  });
  assert.match((await violations()).join('\n'), /image-alt/);
});

// The states in which there is a job, and how many figures at least.
const withFigures = { job: 8, working: 8, yard: 8, 'sold-out': 8, ticked: 8, ground: 8, problem: 8, 'task-open': 8 };
const inSpanish = ['start', 'job', 'yard', 'sold-out', 'ground', 'task-open', 'jobs'];

for (const [name, go] of Object.entries(states)) {
  test(`the state ${name}`, { timeout: 180_000 }, async (t) => {
    await begin();
    await go(hand);
    if (name.startsWith('print')) {
      await t.test('axe', async () => assert.deepEqual(await violations({ rules: onPaper }), []));
      return;
    }
    await t.test('axe', async () => assert.deepEqual(await violations(), []));
    await t.test('targets of 48 px', async () => assert.deepEqual(await hand.evaluate(smallTargets), []));
    if (withFigures[name]) await t.test('figures stand out 7:1', () => stand(withFigures[name]));
    await hand.page.emulateMediaFeatures([still, { name: 'prefers-color-scheme', value: 'dark' }]);
    await t.test('dark: axe', async () => assert.deepEqual(await violations(), []));
    if (withFigures[name]) await t.test('dark: figures stand out 7:1', () => stand(withFigures[name]));
    await hand.page.emulateMediaFeatures([still]);
    await hand.page.setViewport({ ...size, width: 320, height: 640 });
    await t.test('320 px: no sideways scroll, targets of 48 px', async () => {
      assert.deepEqual(await hand.evaluate(sideways), []);
      assert.deepEqual(await hand.evaluate(smallTargets), []);
    });
    await hand.page.setViewport({ ...size, width: 640, height: 400 }); // 1280 x 800 at 200 %
    await t.test('200 % zoom: no sideways scroll, room to read', async () => {
      assert.deepEqual(await hand.evaluate(sideways), []);
      const bars = await hand.evaluate(fixedHeight);
      assert.ok(bars <= 200, `what stays in place covers ${bars} of 400`);
    });
    await hand.page.setViewport(size);
    await t.test('text twice as large: no sideways scroll, nothing cut off', async () => {
      await hand.evaluate(() => {
        document.documentElement.style.fontSize = '200%';
      });
      assert.deepEqual(await hand.evaluate(sideways), []);
      assert.deepEqual(await hand.evaluate(cutOff), []);
      await hand.evaluate(() => document.documentElement.style.removeProperty('font-size'));
    });
    if (inSpanish.includes(name)) {
      await t.test('Spanish: axe, no sideways scroll', async () => {
        await begin();
        await spanish();
        await go(hand);
        assert.equal(await hand.evaluate(() => document.documentElement.lang), 'es');
        assert.deepEqual(await violations(), []);
        assert.deepEqual(await hand.evaluate(sideways), []);
      });
    }
  });
}

async function spanish() {
  await hand.tap('menu');
  await hand.page.select('[data-test="language"]', 'es');
  await hand.until(() => document.documentElement.lang === 'es', 'the language');
  await hand.tap('shelf-close');
}

describe('by keyboard alone', { timeout: 300_000 }, () => {
  const desktop = { width: 1000, height: 700, deviceScaleFactor: 1 };
  const focused = () => {
    const el = document.activeElement;
    if (!el || el === document.body) return null;
    const box = el.getBoundingClientRect();
    const style = getComputedStyle(el);
    const mid = document.elementFromPoint(Math.min(Math.max(box.x + box.width / 2, 0), innerWidth - 1), Math.min(Math.max(box.y + box.height / 2, 0), innerHeight - 1));
    globalThis.reached ??= 0;
    el.dataset.reached ??= String(globalThis.reached++);
    return {
      id: el.dataset.reached,
      test: el.dataset.test,
      what: `${el.tagName.toLowerCase()} ${el.dataset.test ?? ''} ${el.dataset.path ?? ''} "${(el.labels?.[0]?.textContent ?? el.textContent).trim().slice(0, 40)}"`,
      shown: style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2 || style.boxShadow !== 'none',
      inSight: !!mid && (el.contains(mid) || mid.contains(el) || mid.closest('label')?.control === el) && box.bottom > 0 && box.top < innerHeight,
    };
  };
  async function tabTo(name, most = 400) {
    for (let i = 0; i < most; i++) {
      await hand.page.keyboard.press('Tab');
      if ((await hand.evaluate(focused))?.test === name) return;
    }
    assert.fail(`${name} is not reached by Tab`);
  }

  test('start the sample, go to the yard, mark sold out, tick', async () => {
    await begin(desktop);
    await tabTo('start-sample');
    await hand.page.keyboard.press('Enter');
    await hand.fresh();
    await tabTo('place-yard');
    await hand.page.keyboard.press('Enter');
    await hand.until(() => document.querySelector('[data-test="line"]'), 'the list');
    const before = await hand.seen('line');
    await tabTo('tick');
    await hand.page.keyboard.press('Space');
    assert.equal(await hand.evaluate(() => document.activeElement.checked), true);
    await tabTo('sold-out');
    await hand.page.keyboard.press('Enter');
    await hand.until((before) => {
      const now = [...document.querySelectorAll('[data-test="line"]')].map((el) => el.textContent.trim());
      return document.documentElement.dataset.result === 'fresh' && now.join() !== before.join();
    }, 'another order', { args: [before] });
    const at = await hand.evaluate(() => document.activeElement !== document.body);
    assert.ok(at, 'the focus is not lost when the line goes');
  });

  test('the jobs dialog takes the focus, closes with Escape and gives it back', async () => {
    await begin(desktop);
    await states.job(hand);
    await hand.evaluate(() => document.activeElement?.blur());
    await tabTo('menu');
    await hand.page.keyboard.press('Enter');
    await hand.until(() => document.querySelector('dialog[open]')?.contains(document.activeElement), 'the focus in the dialog');
    for (let i = 0; i < 40; i++) {
      await hand.page.keyboard.press('Tab');
      const inside = await hand.evaluate(() => document.activeElement === document.body || document.querySelector('dialog[open]').contains(document.activeElement));
      assert.ok(inside, 'the focus stays in the dialog');
    }
    await hand.page.keyboard.press('Escape');
    await hand.until(() => !document.querySelector('dialog[open]'), 'the dialog to close');
    assert.equal((await hand.evaluate(focused))?.test, 'menu');
  });

  for (const name of ['start', 'job', 'yard', 'ground']) {
    test(`${name}: the focus comes by everything, can be seen, and is not covered`, async () => {
      await begin(desktop);
      await states[name](hand);
      await hand.evaluate(() => {
        document.activeElement?.blur();
        scrollTo(0, 0);
      });
      const wanted = await hand.evaluate(() =>
        [...document.querySelectorAll('button, a[href], input:not([type=hidden]), select, textarea, summary, [tabindex="0"]')]
          .filter((el) => el.checkVisibility({ visibilityProperty: true }) && !el.disabled && el.tabIndex >= 0 && el.type !== 'file').length);
      const wrong = new Set();
      const reached = new Set();
      // From wherever it stands now, once round.
      for (let i = 0; i < wanted * 2 + 10 && reached.size < wanted; i++) {
        await hand.page.keyboard.press('Tab');
        const at = await hand.evaluate(focused);
        if (!at) continue;
        reached.add(at.id);
        if (!at.shown) wrong.add(`not to be seen: ${at.what}`);
        if (!at.inSight) wrong.add(`covered: ${at.what}`);
      }
      assert.deepEqual([...wrong], []);
      const missed = await hand.evaluate((reached) =>
        [...document.querySelectorAll('button, a[href], input:not([type=hidden]), select, textarea, summary, [tabindex="0"]')]
          .filter((el) => el.checkVisibility({ visibilityProperty: true }) && !el.disabled && el.tabIndex >= 0 && el.type !== 'file' && !reached.includes(el.dataset.reached))
          .map((el) => el.outerHTML.slice(0, 120)), [...reached]);
      assert.deepEqual(missed, []);
    });
  }
});

describe('by ear', { timeout: 300_000 }, () => {
  test('a polite region says each result, and what needs a look', async () => {
    await begin();
    await states.job(hand);
    const said = () => hand.until(() => document.querySelector('[data-test="live"]')?.textContent.trim(), 'a result to be said');
    assert.match(await said(), /270\.65/);
    assert.ok(await hand.evaluate(() => {
      const live = document.querySelector('[data-test="live"]');
      return live.getAttribute('aria-live') === 'polite' || live.getAttribute('role') === 'status';
    }));
    await hand.enter('tasks[2].layer', '3 inchs');
    await hand.page.keyboard.press('Tab');
    await hand.until(() => /field/.test(document.querySelector('[data-test="live"]').textContent), 'the problem to be said');
  });

  test('a problem is tied to its field, and says what would do', async () => {
    await begin();
    await states.problem(hand);
    const tied = await hand.evaluate(() => {
      const box = document.querySelector('[data-test="field"][data-path="tasks[2].layer"]');
      const ids = (box.getAttribute('aria-describedby') ?? '').split(' ');
      return { invalid: box.getAttribute('aria-invalid'), text: ids.map((id) => document.getElementById(id)?.textContent ?? '').join(' ') };
    });
    assert.equal(tied.invalid, 'true');
    const job = JSON.parse(await hand.ask('sample'));
    job.tasks[2].layer = '3 inchs';
    const reply = JSON.parse(await hand.ask('plan', JSON.stringify(job)));
    assert.ok(tied.text.includes(reply.problems[0].hint), `${tied.text} has ${reply.problems[0].hint}`);
    assert.match(await hand.show('total'), /270\.65/, 'the last good result stays');
    assert.ok((await hand.seen('stale')).length > 0, 'and is said to be of before');
  });

  test('the page has one main, one h1, a language, and headings in order', async () => {
    for (const name of ['start', 'job', 'yard', 'ground']) {
      await begin();
      await states[name](hand);
      const found = await hand.evaluate(() => ({
        mains: document.querySelectorAll('main').length,
        language: document.documentElement.lang,
        title: document.title,
        levels: [...document.querySelectorAll('h1, h2, h3, h4, h5, h6')].filter((el) => el.checkVisibility()).map((el) => Number(el.tagName[1])),
      }));
      assert.equal(found.mains, 1, name);
      assert.equal(found.language, 'en', name);
      assert.equal(found.levels.filter((level) => level === 1).length, 1, `${name}: one h1 among ${found.levels}`);
      found.levels.reduce((above, level) => {
        assert.ok(level <= above + 1, `${name}: h${level} below h${above}`);
        return level;
      }, 0);
    }
  });

  test('in Spanish, the language is said and no English is left in the controls', async () => {
    await begin();
    await states.job(hand);
    const english = await hand.evaluate(() => [...document.querySelectorAll('button, label, h1, h2, h3')].map((el) => el.textContent.trim()));
    await spanish();
    await hand.until(() => document.querySelector('.sure'), 'how sure it is');
    const left = await hand.evaluate((english) => {
      const kept = /^$|^\d|^English$|^Español$|^×$/;
      const job = JSON.stringify(english);
      return [...document.querySelectorAll('button, label, h1, h2, h3')]
        .filter((el) => el.checkVisibility({ visibilityProperty: true }))
        .map((el) => el.textContent.trim())
        .filter((text) => !kept.test(text) && JSON.parse(job).includes(text));
    }, english);
    // What a person wrote stays as it is written, and so do a few words.
    const own = JSON.stringify(JSON.parse(await hand.ask('sample')));
    assert.deepEqual(left.filter((text) => !own.includes(text)), []);
  });
});

describe('at rest', { timeout: 120_000 }, () => {
  test('nothing moves for somebody who asked for less motion', async () => {
    await begin();
    await states['sold-out'](hand);
    const moving = await hand.evaluate(() =>
      [...document.querySelectorAll('*')].filter((el) => {
        const style = getComputedStyle(el);
        return [style.transitionDuration, style.animationDuration].some((list) => list.split(',').some((one) => parseFloat(one) > 0.01)) || style.scrollBehavior === 'smooth';
      }).map((el) => el.className || el.tagName));
    assert.deepEqual(moving, []);
  });
});

test('nothing is asked of another address meanwhile', () => {
  assert.deepEqual(hand.strayed, []);
});
