// What a person can do with whole jobs: start, open, keep, copy, delete, share,
// save as a file, print; and how the page speaks.
import {say, setLanguage, sayCount} from '../text/say.js';
import {tell} from '../state/state.js';
import {mark} from './recompute.js';
import {totalLine} from '../result/bill.js';
import {askToStay} from '../store/jobs.js';
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
 * @param {import('../state/state.js').Desk} desk
 * @param {any} program
 */
export function createActs(desk, program) {
  const {keep, slate} = desk;
  let saving, asked = false;

  /** Takes a record as the job in hand. */
  function take(record) {
    Object.assign(desk, {
      record, home: record.home, ticks: record.ticks, place: places.includes(record.place) ? record.place : 'job',
      plan: null, planText: record.plan, full: null, drawings: null, costs: null, changes: null, restFor: null,
      planFor: null, problems: new Map(), problemsFor: null, conflict: null, touched: new Set(), shared: null, message: null,
    });
    if (record.plan) Object.assign(desk, savedPlan(record.plan));
    keep.open(record.id);
    slate.open(record.doc);
    mark(desk);
  }

  /** Makes a record of a document and takes it. */
  function begin(doc, more = {}) {
    save();
    outcome(keep.create(doc, doc.name || say('Unnamed job'), more), take);
  }

  /** Shows what became of saving. */
  function outcome(done, take = record => { desk.record = record; }) {
    if (done.conflict) return differ(done.conflict);
    take(done.record);
    desk.keptText = done.text ?? '';
    if (done.kept && !asked) askToStay();
    asked = true;
    desk.redraw();
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
    const {record} = desk;
    if (!record || desk.conflict) return;
    const of = desk.planFor === 'saved' ? record.doc : desk.planFor; // the job that the plan is of
    const plan = of === slate.doc ? desk.planText ?? '' : '';
    const next = {...record, doc: slate.doc, home: desk.home, ticks: desk.ticks, place: desk.place, plan: whole || plan === record.plan ? plan : ''};
    if (typeof slate.doc.name === 'string' && slate.doc.name !== record.doc.name) next.name = keep.freeName(slate.doc.name || say('Unnamed job'), record.id);
    if (Object.keys(next).every(key => next[key] === record[key])) return;
    outcome(keep.save(next));
  }

  /** Another tab saved this job too: nothing is lost, the person chooses. */
  function differ(theirs) {
    desk.conflict = {
      theirs() { take(theirs); },
      mine() {
        desk.conflict = null;
        outcome(keep.saveAsCopy({...desk.record, doc: slate.doc, home: desk.home, ticks: desk.ticks, place: desk.place}, slate.doc.name || say('Unnamed job')));
        keep.open(desk.record.id);
        tell(desk, say('Kept as {name}.', {name: desk.record.name}));
      },
    };
    desk.redraw();
  }

  /**
   * Another tab saved the job in hand. Where that one did not know what this one
   * has, saved or not, it is for the person to choose: two tabs that save at one
   * moment give the same rev to two jobs.
   */
  function hear(record) {
    const mine = desk.record, text = JSON.stringify(record.doc);
    const follows = record.rev > mine.rev, unsaved = slate.doc !== mine.doc;
    if (text === JSON.stringify(slate.doc)) {
      if (follows) desk.record = {...record, doc: slate.doc};
    } else if (follows && !unsaved && !desk.conflict) take(record);
    else if (follows || text !== JSON.stringify(mine.doc)) differ(record);
  }

  async function takeFile(file) {
    const {doc, why} = await readFile(file);
    if (!doc) return tell(desk, why, {bad: true});
    begin(doc);
    tell(desk, say('Opened {name}.', {name: file.name}));
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
      const record = keep.load(id);
      if (record) take(record);
      else tell(desk, say('That job is no longer here.'), {bad: true});
    },
    copy() {
      save();
      const name = keep.freeName(slate.doc.name || say('Unnamed job')), doc = {...slate.doc, name};
      begin(doc, {home: desk.home === slate.doc ? doc : desk.home && {...desk.home, name}, ticks: desk.ticks, place: desk.place});
    },
    remove(id) {
      desk.deleted = keep.remove(id);
      if (desk.record?.id === id) {
        clearTimeout(saving);
        Object.assign(desk, {record: null, plan: null});
        slate.open({...emptyJob});
      }
      desk.redraw();
    },
    undelete() {
      const done = keep.restore(desk.deleted.token);
      desk.deleted = null;
      if (done) outcome(done, record => { if (!desk.record) take(record); });
      desk.redraw();
    },
    /** Another tab saved or deleted a job. */
    heard({id, record}) {
      if (id === desk.record?.id && record) hear(record);
      desk.redraw();
    },
    /** Takes the job of a link, as a job of its own. */
    async takeLink(fragment) {
      const {doc, why} = await readLink(fragment) ?? {};
      history.replaceState(null, '', location.pathname + location.search);
      if (doc) begin(doc);
      else if (why) tell(desk, why, {bad: true});
    },
    async share() {
      const {link, why} = await linkOf(slate.doc, shareBase());
      if (!link) return tell(desk, why, {bad: true});
      const code = fitsQR(link) ? await program.ask('qr', link) : null;
      desk.shared = {link, code: code?.path ? code : null, why: say('The job is too large for one code: send the link or a file.')};
      desk.redraw();
    },
    /** Puts the link where it can be pasted; refused, it is marked, to be copied by hand. */
    async copyLink() {
      const {shared} = desk;
      try {
        await navigator.clipboard.writeText(shared.link);
        shared.copied = true;
        desk.redraw();
      } catch {
        document.getElementById('share-link')?.select();
      }
    },
    exportJob() { download(jobText(slate.doc), fileName(slate.doc.name, 'json'), 'application/json'); },
    async exportCSV() { download(await program.text('csv', slate.doc), fileName(slate.doc.name, 'csv'), 'text/csv'); },
    print(which) {
      desk.printing = which;
      desk.redraw();
      requestAnimationFrame(() => {
        // A phone may say that it has printed while it still lays the sheet out:
        // the sheet, which shows on paper alone, stays until the page is used again.
        const done = () => { desk.printing = null; desk.redraw(); };
        addEventListener('afterprint', () => ['pointerdown', 'keydown'].forEach(used => addEventListener(used, done, {once: true})), {once: true});
        window.print();
      });
    },
    async setLanguage(language) {
      await speak(desk, program, language);
      saveSetting('language', language);
      await sayAgain(desk, program);
    },
    async setDecimal(mark) {
      saveSetting('decimal', mark);
      desk.comma = mark === ',';
      await speak(desk, program, desk.language);
      await sayAgain(desk, program);
    },
    setTheme(theme) {
      saveSetting('theme', theme);
      desk.theme = theme;
      if (theme) document.documentElement.dataset.theme = theme;
      else delete document.documentElement.dataset.theme;
      desk.redraw();
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
export async function speak(desk, program, language) {
  const bytes = language === 'en' ? new Uint8Array() : await languageBytes(language);
  desk.language = language;
  setLanguage(language === 'en' ? null : JSON.parse(new TextDecoder().decode(bytes)));
  document.documentElement.lang = language;
  program.call('tongue', bytes, new TextEncoder().encode(desk.comma ? ',' : '.'));
}

/** Says everything again: what is shown was said in another language. */
async function sayAgain(desk, program) {
  Object.assign(desk, {planFor: null, restFor: null, problemsFor: null, catalog: null});
  desk.redraw();
  await desk.recompute();
  desk.catalog = await program.ask('catalog');
  desk.redraw();
}

/** What a screen reader hears once a result is there. */
export function spoken(desk) {
  return desk.stale ? sayCount(desk.problems.size, '{n} field needs a look.', '{n} fields need a look.') : totalLine(desk);
}
