// Keeps the plan up with the job in hand. One question is under way at a time;
// what is typed meanwhile is asked next, and what nobody sees any more is not
// asked at all.

/** How long nothing must change before what takes longer is asked, in ms. */
const PAUSE = 500;

/** How long a key waits to be drawn with its answer, in ms: the box itself shows it. */
const MOMENT = 100;

/**
 * @param {import('../state/state.js').Desk} desk
 * @param {ReturnType<typeof import('../shell/program.js').startProgram>} program
 * @param {{planned?: (text: string) => void, settled?: () => void, failed?: (error: Error) => void}} [told]
 */
export function keepUp(desk, program, told = {}) {
  let busy = false, timer, moment, foreseen, rests = false, wake = () => {};
  const {slate} = desk;

  /** What takes longer, in the order in which it is wanted. */
  const slower = [
    async doc => ({changes: desk.home && desk.home !== doc ? await program.ask('changes', desk.home, doc) : null}),
    async doc => ({drawings: (await program.ask('shown', doc)).drawings}),
    () => new Promise(done => { wake = done; setTimeout(done, PAUSE); }), // the rest is long enough to be in the way of the next tap
    async doc => ({full: await program.ask('full', doc)}),
    async doc => ({costs: (await program.ask('costs', doc)).drawings}),
  ];

  async function run() {
    if (busy) return;
    busy = true;
    try {
      for (let doc; !answered(doc = slate.doc);) take(doc, await planText(doc));
    } catch (error) {
      told.failed?.(error);
    } finally {
      busy = false;
    }
    clearTimeout(timer);
    timer = setTimeout(rest, desk.place === 'yard' ? 0 : PAUSE); // there, one looks for what a tap changed
  }

  const answered = doc => doc === desk.planFor || doc === desk.problemsFor;

  function planText(doc) {
    const early = foreseen;
    foreseen = undefined;
    return early?.doc === doc ? early.text : program.text('plan', doc);
  }

  // A browser has work of its own to do between the news of a key and the key in
  // its box: the plan is worked out meanwhile.
  desk.foresee = doc => {
    if (busy || answered(doc) || doc === foreseen?.doc) return;
    foreseen = {doc, text: program.text('plan', doc)};
    foreseen.text.catch(() => {}); // told to whoever waits for it
  };

  function redraw() {
    clearTimeout(moment);
    moment = undefined;
    desk.redraw();
  }

  /** Takes an answer, unless the job has changed since: then only its figures. */
  function take(doc, text) {
    const answer = JSON.parse(text);
    const now = doc === slate.doc;
    if (answer.problems) {
      desk.problems = new Map(answer.problems.map(p => [p.path, p]));
      desk.problemsFor = doc;
      desk.stale = true;
    } else {
      desk.problems = new Map();
      desk.problemsFor = null;
      desk.plan = answer;
      desk.planFor = doc;
      desk.stale = !now;
      if (now) told.planned?.(text);
    }
    mark(desk);
    redraw();
    told.settled?.();
  }

  /** Asks for what takes longer, once nothing has changed for a while. */
  async function rest() {
    const doc = slate.doc;
    if (rests || busy || doc !== desk.planFor || doc === desk.restFor) return;
    rests = true;
    try {
      for (const more of slower) {
        const found = await more(doc);
        if (busy || doc !== slate.doc) break; // what is typed comes first
        Object.assign(desk, found);
        desk.redraw();
      }
      if (doc === slate.doc && !busy) desk.restFor = doc;
    } catch (error) {
      told.failed?.(error);
    } finally {
      rests = false;
    }
    if (doc !== slate.doc) rest(); // asked for meanwhile
  }

  slate.subscribe(({cause, inBox}) => {
    // A drawing stays while its figures are typed; with other tasks it is another's.
    wake();
    if (cause !== 'set') Object.assign(desk, {drawings: null, costs: null});
    desk.stale = desk.plan !== null && slate.doc !== (desk.planFor === 'saved' ? desk.record?.doc : desk.planFor);
    if (!desk.stale) desk.problems = new Map();
    mark(desk);
    run(); // first, so that it is worked out while this is drawn
    if (inBox) moment ??= setTimeout(redraw, MOMENT);
    else redraw();
  });
  return run;
}

/** Says on the document how old the result shown is. */
export function mark(desk) {
  const was = document.documentElement.dataset.result;
  const is = !desk.plan ? undefined : desk.stale ? 'stale' : desk.planFor === 'saved' ? 'saved' : 'fresh';
  if (is) document.documentElement.dataset.result = is;
  else delete document.documentElement.dataset.result;
  if (is === 'fresh' && was !== 'fresh') requestAnimationFrame(() => performance.mark('barrow-result'));
}
