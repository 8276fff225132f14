// The program, away from the page: answers {id, verb, docs} with {id, answer}.
//
// The page sends {start: {module}} first: the program, compiled.
import './wasm_exec.js';

const ask = start();

/** Waits for the program, and starts it. */
async function start() {
  const module = await new Promise(resolve => {
    self.addEventListener('message', event => { if (event.data.start) resolve(event.data.start.module); });
  });
  const go = new globalThis.Go();
  const ready = new Promise(resolve => { globalThis.barrowReady = resolve; });
  const made = await WebAssembly.instantiate(module, go.importObject); // a module's instance, or of bytes both
  go.run(made.instance ?? made);
  await ready;
  return globalThis.barrow;
}

self.addEventListener('message', async event => {
  const {id, verb, docs} = event.data;
  if (id === undefined) return;
  try {
    const barrow = await ask;
    const answer = barrow(verb, ...docs);
    self.postMessage({id, answer}, [answer.buffer]);
  } catch (error) {
    self.postMessage({id, error: String(error)});
  }
});

ask.then(() => self.postMessage({ready: true}), error => self.postMessage({failed: String(error)}));
