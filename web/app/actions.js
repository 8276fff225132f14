// What a person can do with whole jobs: start, open, keep, copy, delete, share,
// save as a file, print; and how the page speaks.
import {say, setLanguage, sayCount} from '../text/say.js';
import {showMessage} from '../state/state.js';
import {markResult} from './recompute.js';
import {totalLine} from '../result/bill.js';
import {askToStay} from '../store/device.js';
import {fileName, jobText, readFile} from '../store/file.js';
import {download} from '../store/download.js';
import {fitsQR, linkOf, readLink} from '../store/link.js';
import {languageBytes} from '../shell/assets.js';
import {saveSetting} from './settings.js';

const emptyJob = {schema: 1, name: '', measure: 'us', tasks: []};

const places = ['job', 'yard', 'ground'];

/** How long after the last key the job is saved, in ms: a killed tab loses no more. */
const SAVE_AFTER = 150;

/** How long after that its plan is saved too, to be shown at once next time. */
const PLAN_AFTER = 1500;

/**
 * @param {import('../state/state.js').State} state
 * @param {any} program
 */
export function createActions(state, program) {
  const {store, job} = state;
  let saving, asked = false;

  /** Takes a record as the job in hand. */
  function take(record) {
    Object.assign(state, {
      record, home: record.home, ticks: record.ticks, place: places.includes(record.place) ? record.place : 'job',
      plan: null, planText: record.plan, full: null, drawings: null, costs: null, changes: null, restFor: null,
      planFor: null, problems: new Map(), problemsFor: null, conflict: null, touched: new Set(), shared: null, message: null,
    });
    if (record.plan) Object.assign(state, savedPlan(record.plan));
    store.open(record.id);
    job.open(record.doc);
    markResult(state);
  }

  /** Makes a record of a document and takes it. */
  function begin(doc, more = {}) {
    save();
    outcome(store.create(doc, doc.name || say('Unnamed job'), more), take);
  }

  /** Shows what became of saving. */
  function outcome(done, take = record => { state.record = record; }) {
    if (done.conflict) return differ(done.conflict);
    take(done.record);
    state.keptText = done.text ?? '';
    if (done.kept && !asked) askToStay();
    asked = true;
    state.redraw();
  }

  /** Saves soon; the plan, which is long, once nobody types. */
  function saveSoon() {
    clearTimeout(saving);
    saving = setTimeout(() => {
      save(false);
      saving = setTimeout(() => save(), PLAN_AFTER);
    }, SAVE_AFTER);
  }

  /** Saves what is in hand, if it is not as it was saved. */
  function save(whole = true) {
    clearTimeout(saving);
    const {record} = state;
    if (!record || state.conflict) return;
    const of = state.planFor === 'saved' ? record.doc : state.planFor; // the job that the plan is of
    const plan = of === job.doc ? state.planText ?? '' : '';
    const next = {...record, doc: job.doc, home: state.home, ticks: state.ticks, place: state.place, plan: whole || plan === record.plan ? plan : ''};
    if (typeof job.doc.name === 'string' && job.doc.name !== record.doc.name) next.name = store.freeName(job.doc.name || say('Unnamed job'), record.id);
    if (Object.keys(next).every(key => next[key] === record[key])) return;
    outcome(store.save(next));
  }

  /** Another tab saved this job too: nothing is lost, the person chooses. */
  function differ(theirs) {
    state.conflict = {
      theirs() { take(theirs); },
      mine() {
        state.conflict = null;
        outcome(store.saveAsCopy({...state.record, doc: job.doc, home: state.home, ticks: state.ticks, place: state.place}, job.doc.name || say('Unnamed job')));
        store.open(state.record.id);
        showMessage(state, say('Kept as {name}.', {name: state.record.name}));
      },
    };
    state.redraw();
  }

  /**
   * Another tab saved the job in hand. Where that one did not know what this one
   * has, saved or not, it is for the person to choose: two tabs that save at one
   * moment give the same rev to two jobs.
   */
  function hear(record) {
    const mine = state.record, text = JSON.stringify(record.doc);
    const follows = record.rev > mine.rev, unsaved = job.doc !== mine.doc;
    if (text === JSON.stringify(job.doc)) {
      if (follows) state.record = {...record, doc: job.doc};
    } else if (follows && !unsaved && !state.conflict) take(record);
    else if (follows || text !== JSON.stringify(mine.doc)) differ(record);
  }

  async function takeFile(file) {
    const {doc, why} = await readFile(file);
    if (!doc) return showMessage(state, why, {bad: true});
    begin(doc);
    showMessage(state, say('Opened {name}.', {name: file.name}));
  }

  function pick() {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = '.json,application/json';
    input.hidden = true;
    input.dataset.test = 'import-file';
    input.addEventListener('change', () => { if (input.files[0]) takeFile(input.files[0]); input.remove(); });
    input.addEventListener('cancel', () => input.remove());
    document.body.append(input);
    input.click();
  }

  return {
    take, saveSoon, save,
    startEmpty: () => begin({...emptyJob}),
    startSample: async () => begin(await program.ask('sample')),
    openFile: pick,
    takeFile,
    open(id) {
      save();
      const record = store.load(id);
      if (record) take(record);
      else showMessage(state, say('That job is no longer here.'), {bad: true});
    },
    copy() {
      save();
      const name = store.freeName(job.doc.name || say('Unnamed job')), doc = {...job.doc, name};
      begin(doc, {home: state.home === job.doc ? doc : state.home && {...state.home, name}, ticks: state.ticks, place: state.place});
    },
    remove(id) {
      state.deleted = store.remove(id);
      if (state.record?.id === id) {
        clearTimeout(saving);
        Object.assign(state, {record: null, plan: null});
        job.open({...emptyJob});
      }
      state.redraw();
    },
    undelete() {
      const done = store.restore(state.deleted.token);
      state.deleted = null;
      if (done) outcome(done, record => { if (!state.record) take(record); });
      state.redraw();
    },
    /** Another tab saved or deleted a job. */
    heard({id, record}) {
      if (id === state.record?.id && record) hear(record);
      state.redraw();
    },
    /** Takes the job of a link, as a job of its own. */
    async takeLink(fragment) {
      const {doc, why} = await readLink(fragment) ?? {};
      history.replaceState(null, '', location.pathname + location.search);
      if (doc) begin(doc);
      else if (why) showMessage(state, why, {bad: true});
    },
    async share() {
      const {link, why} = await linkOf(job.doc, shareBase());
      if (!link) return showMessage(state, why, {bad: true});
      const code = fitsQR(link) ? await program.ask('qr', link) : null;
      state.shared = {link, code: code?.path ? code : null, why: say('The job is too large for one code: send the link or a file.')};
      state.redraw();
    },
    /** Puts the link where it can be pasted; refused, it is marked, to be copied by hand. */
    async copyLink() {
      const {shared} = state;
      try {
        await navigator.clipboard.writeText(shared.link);
        shared.copied = true;
        state.redraw();
      } catch {
        document.getElementById('share-link')?.select();
      }
    },
    exportJob() { download(jobText(job.doc), fileName(job.doc.name, 'json'), 'application/json'); },
    async exportCSV() { download(await program.text('csv', job.doc), fileName(job.doc.name, 'csv'), 'text/csv'); },
    print(which) {
      state.printing = which;
      state.redraw();
      requestAnimationFrame(() => {
        // A phone may say that it has printed while it still lays the sheet out:
        // the sheet, which shows on paper alone, stays until the page is used again.
        const done = () => { state.printing = null; state.redraw(); };
        addEventListener('afterprint', () => ['pointerdown', 'keydown'].forEach(used => addEventListener(used, done, {once: true})), {once: true});
        window.print();
      });
    },
    async setLanguage(language) {
      await speak(state, program, language);
      saveSetting('language', language);
      await sayAgain(state, program);
    },
    async setDecimal(mark) {
      saveSetting('decimal', mark);
      state.comma = mark === ',';
      await speak(state, program, state.language);
      await sayAgain(state, program);
    },
    setTheme(theme) {
      saveSetting('theme', theme);
      state.theme = theme;
      if (theme) document.documentElement.dataset.theme = theme;
      else delete document.documentElement.dataset.theme;
      state.redraw();
    },
  };
}

/** A plan kept from before, to show until it is worked out anew. */
function savedPlan(text) {
  try {
    const plan = JSON.parse(text);
    return Array.isArray(plan.needs) && Array.isArray(plan.tasks) ? {plan, planFor: 'saved', stale: false} : {};
  } catch {
    return {};
  }
}

/** The page's own address, without what it was opened with. */
function shareBase() {
  return location.href.replace(/[?#].*$/, '');
}

/**
 * Speaks a language from now on: the page at once, the program in all that it is
 * asked after this.
 */
export async function speak(state, program, language) {
  const bytes = language === 'en' ? new Uint8Array() : await languageBytes(language);
  state.language = language;
  setLanguage(language === 'en' ? null : JSON.parse(new TextDecoder().decode(bytes)));
  document.documentElement.lang = language;
  program.call('tongue', bytes, new TextEncoder().encode(state.comma ? ',' : '.'));
}

/** Says everything again: what is shown was said in another language. */
async function sayAgain(state, program) {
  Object.assign(state, {planFor: null, restFor: null, problemsFor: null, catalog: null});
  state.redraw();
  await state.recompute();
  state.catalog = await program.ask('catalog');
  state.redraw();
}

/** What a screen reader hears once a result is there. */
export function spoken(state) {
  return state.stale ? sayCount(state.problems.size, '{n} field needs a look.', '{n} fields need a look.') : totalLine(state);
}
