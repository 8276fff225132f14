// The program, away from the page: answers {id, verb, docs} with {id, answer}.
//
// The page sends {start: {wasm}} first: where the program is, or its bytes.
import './wasm_exec.js';

let ask = start();

/** Waits for where the program is, and starts it. */
async function start() {
  const {wasm} = await new Promise(resolve => {
    self.addEventListener('message', event => { if (event.data.start) resolve(event.data.start); });
  });
  const go = new globalThis.Go();
  const ready = new Promise(resolve => { globalThis.barrowReady = resolve; });
  const {instance} = await instantiate(wasm, go.importObject);
  go.run(instance);
  await ready;
  return globalThis.barrow;
}

/** Compiles while it downloads, where the server names the type right. */
async function instantiate(wasm, imports) {
  if (typeof wasm !== 'string') return WebAssembly.instantiate(wasm, imports);
  const response = await fetch(wasm, {credentials: 'same-origin'});
  if (!response.ok) throw new Error(`${wasm}: ${response.status}`);
  if (response.headers.get('Content-Type')?.startsWith('application/wasm')) {
    return WebAssembly.instantiateStreaming(response, imports);
  }
  return WebAssembly.instantiate(await response.arrayBuffer(), imports);
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
