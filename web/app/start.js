// @ts-check
// The page's start: what was kept is shown at once, the program loads beside
// it, and from then on everything typed is worked out again.
import {createActions} from './actions.js';
import {changeLanguage} from './language.js';
import {startRecompute} from './recompute.js';
import {setting} from './settings.js';
import {totalLine} from '../result/bill.js';
import {assets, single} from '../shell/assets.js';
import {pageView} from '../shell/frame.js';
import * as offline from '../shell/offline.js';
import {Ended, startProgram, Stopped} from '../shell/program.js';
import {createState} from '../state/state.js';
import {deviceStorage} from '../store/device.js';
import {openStore} from '../store/jobs.js';
import {chooseLanguage, decimalMark, say, sayCount} from '../text/say.js';
import {render} from '../ui/h.js';

const program = startProgram(assets, {
  restarted() {
    if (state.message?.bad) return; // that says more
    state.message = {text: say('The program had stopped. It was started again, and nothing is lost.')};
    state.redraw();
  },
  long(what) {
    state.long = what;
    state.redraw();
  },
});
globalThis.barrowCall = program.call;

const state = createState({schema: 1, tasks: []}, openStore(deviceStorage()));
state.actions = createActions(state, program, fail);
state.theme = setting('theme') ?? '';
if (state.theme) document.documentElement.dataset.theme = state.theme;

// Redraws come together, once a frame at most.
const root = /** @type {HTMLElement} */ (document.getElementById('app'));
let due = false, drawn = false;
state.redraw = () => {
  if (due) return;
  due = true;
  queueMicrotask(() => {
    due = false;
    if (!drawn) root.replaceChildren(); // what stood there for want of this
    drawn = true;
    render(pageView(state), root);
  });
};

/** @type {ReturnType<typeof setTimeout> | undefined} */
let quiet;
const recompute = startRecompute(state, program, {
  planned(text) {
    state.planText = text;
    state.actions.saveSoon();
  },
  settled() {
    clearTimeout(quiet);
    quiet = setTimeout(() => { state.announcement = announcement(); state.redraw(); }, 700);
  },
  failed: fail,
});

/** What a screen reader hears once a result is there. */
const announcement = () => state.stale ? sayCount(state.problems.size, '{n} field needs a look.', '{n} fields need a look.') : totalLine(state) ?? '';

/** Says why there is no answer. @param {Error} error */
function fail(error) {
  state.message = {text: failure(error), bad: true, again: true};
  state.redraw();
}

/** @param {Error} error */
function failure(error) {
  if (error instanceof Stopped) return say('Stopped. What you typed is kept.');
  if (error instanceof Ended) return say('This job is too much to work out here: {why}. What you typed is kept.', {why: error.message});
  return say('The program stopped: {why}. What you typed is kept; load the page again.', {why: error.message});
}

state.recompute = recompute;
state.ticked = state.actions.saveSoon;
state.job.subscribe(state.actions.saveSoon);

const leaving = () => state.actions.save();
addEventListener('pagehide', leaving);
document.addEventListener('visibilitychange', () => { if (document.visibilityState === 'hidden') leaving(); });

/** What an address asks for behind its #: a job, or the sample. */
async function openAddress() {
  const {hash} = location;
  if (hash.startsWith('#job=')) return state.actions.takeLink(hash);
  if (hash !== '#sample') return undefined;
  history.replaceState(null, '', location.pathname + location.search);
  return state.actions.startSample();
}

async function start() {
  const language = chooseLanguage(navigator.languages, setting('language'));
  state.comma = decimalMark(navigator.language, setting('decimal')) === ',';
  if (language !== 'en' || state.comma) await changeLanguage(state, program, language).catch(() => changeLanguage(state, program, 'en'));
  const last = state.store.last();
  if (last && !location.hash) state.actions.take(last);
  state.redraw();
  await openAddress();
  state.catalog = await program.ask('catalog');
  state.redraw();
  offlineWork();
}

/** Keeps the page for working offline, and offers a newer one. */
function offlineWork() {
  /** @type {Partial<Record<offline.Kept, () => string>>} */
  const texts = {
    unknown: () => '', failed: () => say('This page could not be kept for working offline; it works while there is a network.'),
    ready: () => say('This page works offline.'),
  };
  offline.onState(kept => {
    state.offlineText = texts[kept] ?? (() => single ? say('This page is one file and needs no network.') : say('This browser does not keep the page: it needs a network to open.'));
    state.redraw();
  });
  offline.onUpdate(() => { state.updateReady = true; state.redraw(); });
  state.useUpdate = () => { state.actions.save(); offline.useUpdate(); };
  offline.register();
}

addEventListener('hashchange', openAddress);
state.store.watch(change => state.actions.heard(change));
start().catch(fail);
