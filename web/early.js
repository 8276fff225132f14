// Comes before the page's own script: the worker, and with it the program, is on
// its way while that one is.
globalThis.barrowEarly = new Worker('worker.js', {type: 'module'});
