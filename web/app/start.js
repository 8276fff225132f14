// The page's start: what was kept is shown at once, the program loads beside
// it, and from then on everything typed is worked out again.
import {render} from '../ui/h.js';
import {createActs, speak, spoken} from './actions.js';
import {createDesk} from '../state/state.js';
import {deviceStorage, openKeep} from '../store/jobs.js';
import * as offline from '../shell/offline.js';
import {parts, single} from '../shell/assets.js';
import {startProgram} from '../shell/program.js';
import {keepUp} from './recompute.js';
import {chooseLanguage, decimalMark, say} from '../text/say.js';
import {setting} from './settings.js';
import {view} from '../shell/frame.js';

const program = startProgram(parts);
globalThis.barrowCall = program.call;

const desk = createDesk({schema: 1, tasks: []});
desk.keep = openKeep(deviceStorage());
desk.deleted = desk.keep.deleted();
desk.acts = createActs(desk, program);
desk.theme = setting('theme') ?? '';
if (desk.theme) document.documentElement.dataset.theme = desk.theme;

// Redraws come together, once a frame at most.
const root = document.getElementById('app');
let due = false, drawn = false;
desk.redraw = () => {
  if (due) return;
  due = true;
  queueMicrotask(() => {
    due = false;
    if (!drawn) root.replaceChildren(); // what stood there for want of this
    drawn = true;
    render(view(desk), root);
  });
};

let hush;
const recompute = keepUp(desk, program, {
  planned(text) {
    desk.planText = text;
    desk.acts.saveSoon();
  },
  settled() {
    clearTimeout(hush);
    hush = setTimeout(() => { desk.spoken = spoken(desk); desk.redraw(); }, 700);
  },
  failed: fail,
});

function fail(error) {
  desk.message = {text: say('The program stopped: {why}. What you typed is kept; load the page again.', {why: error.message}), bad: true};
  desk.redraw();
}

desk.recompute = recompute;
desk.ticked = desk.acts.saveSoon;
desk.slate.subscribe(desk.acts.saveSoon);

const leaving = () => desk.acts.save();
addEventListener('pagehide', leaving);
document.addEventListener('visibilitychange', () => { if (document.visibilityState === 'hidden') leaving(); });

/** What an address asks for behind its #: a job, or the sample. */
async function openAddress() {
  const {hash} = location;
  if (hash.startsWith('#job=')) return desk.acts.takeLink(hash);
  if (hash !== '#sample') return undefined;
  history.replaceState(null, '', location.pathname + location.search);
  return desk.acts.startSample();
}

async function start() {
  const language = chooseLanguage(navigator.languages, setting('language'));
  desk.comma = decimalMark(navigator.language, setting('decimal')) === ',';
  if (language !== 'en' || desk.comma) await speak(desk, program, language).catch(() => speak(desk, program, 'en'));
  const last = desk.keep.last();
  if (last && !location.hash) desk.acts.take(last);
  desk.redraw();
  await openAddress();
  await program.ready;
  desk.catalog = await program.ask('catalog');
  desk.redraw();
  offlineWork();
}

/** Keeps the page for working offline, and offers a newer one. */
function offlineWork() {
  const texts = {
    unknown: () => '', failed: () => say('This page could not be kept for working offline; it works while there is a network.'),
    ready: () => say('This page works offline.'),
  };
  offline.onState(state => {
    desk.offlineText = texts[state] ?? (() => single ? say('This page is one file and needs no network.') : say('This browser does not keep the page: it needs a network to open.'));
    desk.redraw();
  });
  offline.onUpdate(() => { desk.updateReady = true; desk.redraw(); });
  desk.useUpdate = () => { desk.acts.save(); offline.useUpdate(); };
  offline.register();
}

addEventListener('hashchange', openAddress);
desk.keep.watch(change => desk.acts.heard(change));
start().catch(fail);
