// Comes before the page's own script: the worker, and the program for it, are on
// their way while that one is. The page fetches the program, since a slow phone
// takes a second to have a worker that could.

/** The program, compiled as it comes where the host names its type right. */
async function compiled(asked) {
  const response = await asked;
  if (!response.ok) throw new Error(`barrow.wasm: ${response.status}`);
  if (response.headers.get('Content-Type')?.startsWith('application/wasm')) return WebAssembly.compileStreaming(response);
  return WebAssembly.compile(await response.arrayBuffer());
}

globalThis.barrowEarly = {
  worker: new Worker('worker.js', {type: 'module'}),
  program: compiled(fetch('barrow.wasm')),
};
