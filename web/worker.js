// The program, away from the page: answers {id, verb, docs} with {id, answer}.
//
// The page sends {start: {program}}, compiled or as bytes; in the page that is
// one file self is a port. Asked {hello}, it says {ready} once it can answer.
import './wasm_exec.js';

const program = start();
const encoder = new TextEncoder();

async function start() {
  const sent = await new Promise(resolve => {
    self.addEventListener('message', event => { if (event.data.start) resolve(event.data.start.program); });
  });
  const go = new globalThis.Go();
  const instance = await WebAssembly.instantiate(sent instanceof WebAssembly.Module ? sent : await WebAssembly.compile(sent), go.importObject);
  go.run(instance); // until it waits to be asked
  return instance.exports;
}

/** One call: the texts of the question go into the program's memory, the answer is copied out. */
function ask({room, ask, answer, mem}, verb, docs) {
  for (const [i, text] of [encoder.encode(verb), ...docs].entries()) {
    const at = room(i, text.length);
    if (at === 0) throw new RangeError('more than the program takes');
    new Uint8Array(mem.buffer, at, text.length).set(text); // memory may have grown: looked at anew
  }
  const size = ask(docs.length);
  return new Uint8Array(mem.buffer, answer(), size).slice();
}

self.addEventListener('message', async event => {
  const {hello, id, verb, docs} = event.data;
  if (hello) program.then(() => self.postMessage({ready: true}), error => self.postMessage({failed: String(error)}));
  if (id === undefined) return;
  try {
    const answer = ask(await program, verb, docs);
    self.postMessage({id, answer}, [answer.buffer]);
  } catch (error) {
    self.postMessage({id, error: String(error)});
  }
});
