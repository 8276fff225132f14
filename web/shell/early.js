// @ts-check
// Comes before all else, and is waited for: the worker, and with it the program,
// is on its way while the rest of the page is.
globalThis.barrowEarly = new Worker('worker.js', {type: 'module'});
