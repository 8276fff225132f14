// Words for what a person does with the page, in every engine alike. The
// journeys, in Chromium alone, have more (see touch.mjs).

/** Bytes out of the page's own call: await ask(browser, 'plan', job). */
export async function ask(browser, verb, ...docs) {
  await until(browser, () => typeof globalThis.barrowCall === 'function', 'barrowCall to be there');
  const reply = await browser.evaluate(
    async (verb, docs) => {
      const bytes = docs.map((text) => Uint8Array.from(atob(text), (c) => c.charCodeAt(0)));
      const out = await globalThis.barrowCall(verb, ...bytes);
      let text = '';
      for (let i = 0; i < out.length; i += 8192) text += String.fromCharCode(...out.subarray(i, i + 8192));
      return btoa(text);
    },
    verb,
    docs.map((doc) => Buffer.from(doc).toString('base64')),
  );
  return Buffer.from(reply, 'base64');
}

/** Waits for what a function says in the page. */
export async function until(browser, fn, what, { ms = 60_000, args = [] } = {}) {
  const end = Date.now() + ms;
  let last;
  for (;;) {
    try {
      last = await browser.evaluate(fn, ...args);
      if (last) return last;
    } catch (err) {
      last = err; // a page that is just being loaded
    }
    if (Date.now() > end) throw new Error(`${browser.name}: waited in vain for ${what}; last: ${last}`);
    await new Promise((done) => setTimeout(done, 50));
  }
}

/** Waits until what is shown is worked out from what is typed. */
export function fresh(browser) {
  return until(browser, () => document.documentElement.dataset.result === 'fresh', 'a fresh result');
}

/** Waits until the page is kept for a time without a network. */
export function kept(browser) {
  return until(
    browser,
    async () => (await navigator.serviceWorker.getRegistration())?.active?.state === 'activated',
    'the page to be kept on the device',
  );
}

/** The selector of a data-test name, and of a path where there are many. */
export function at(name, path) {
  return `[data-test="${name}"]` + (path === undefined ? '' : `[data-path='${path}']`);
}

/** Presses what has this name, once it can be seen. */
export function tap(browser, name, path) {
  return until(
    browser,
    (selector) => {
      const found = [...document.querySelectorAll(selector)].find((el) => el.checkVisibility({ visibilityProperty: true }));
      if (!found) return false;
      found.click();
      return true;
    },
    `${name} to press`,
    { args: [at(name, path)] },
  );
}

/** The text of what has this name, once it is there. */
export function show(browser, name, path) {
  return until(browser, (selector) => document.querySelector(selector)?.textContent.trim(), `${name} to say something`, {
    args: [at(name, path)],
  });
}
