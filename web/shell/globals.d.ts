// What the page's scripts leave for one another.

declare global {
  /** The worker that early.js starts. */
  var barrowEarly: Worker | undefined;
  /** The program in the page that is one file: it works through a port. */
  var barrowWorker: (port: MessagePort) => void;
  /** A call of the program, for who measures the page. */
  var barrowCall: import('./program.js').Program['call'];
}

export {};
