// @ts-check
// What a person can do with whole jobs: start, open, keep, copy, delete, share,
// save as a file, print; and the language, decimal mark and colours of the page.
import {changeLanguage, sayAgain} from './language.js';
import {createSaving} from './saving.js';
import {saveSetting} from './settings.js';
import {showMessage} from '../state/state.js';
import {download} from '../store/download.js';
import {fileName, jobText, readFile} from '../store/file.js';
import {fitsQR, linkOf, readLink} from '../store/link.js';
import {say} from '../text/say.js';

/**
 * @import {Program} from '../shell/program.js'
 * @import {Actions, State} from '../state/types.d.ts'
 */

const emptyJob = {schema: 1, name: '', measure: 'us', tasks: []};

/** @param {State} state @param {Program} program @param {(error: Error) => void} failed @returns {Actions} */
export function createActions(state, program, failed) {
  const {store, job} = state;
  const {take, begin, outcome, saveSoon, save, heard, forget} = createSaving(state);

  /** @param {File} file */
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
    input.addEventListener('change', () => { if (input.files?.[0]) takeFile(input.files[0]); input.remove(); });
    input.addEventListener('cancel', () => input.remove());
    document.body.append(input);
    input.click();
  }

  return {
    take, saveSoon, save, heard,
    startEmpty: () => begin({...emptyJob}),
    startSample: () => program.ask('sample').then(doc => begin(doc), failed),
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
        forget();
        Object.assign(state, {record: null, plan: null});
        job.open({...emptyJob});
      }
      state.redraw();
    },
    undelete() {
      const done = store.restore(state.deleted?.token ?? '');
      state.deleted = null;
      if (done) outcome(done, record => { if (!state.record) take(record); });
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
      if (link === undefined) return showMessage(state, why, {bad: true});
      const {size, path} = fitsQR(link) ? await program.ask('qr', link).catch(noCode) : {};
      state.shared = {link, code: size && path ? {size, path} : null, why: say('The job is too large for one code: send the link or a file.')};
      state.redraw();
    },
    /** Puts the link where it can be pasted; refused, it is marked, to be copied by hand. */
    async copyLink() {
      const {shared} = state;
      if (!shared) return;
      try {
        await navigator.clipboard.writeText(shared.link);
        shared.copied = true;
        state.redraw();
      } catch {
        /** @type {HTMLTextAreaElement | null} */ (document.getElementById('share-link'))?.select();
      }
    },
    exportJob() { download(jobText(job.doc), fileName(job.doc.name, 'json'), 'application/json'); },
    exportCSV: () => program.text('csv', job.doc).then(text => download(text, fileName(job.doc.name, 'csv'), 'text/csv'), failed),
    stop: program.stop,
    askAgain() {
      state.message = null;
      state.redraw();
      return state.recompute();
    },
    print(which) {
      state.printing = which;
      state.redraw();
      requestAnimationFrame(() => {
        // A phone may say that it has printed while it is still working on the
        // sheet, which shows on paper alone: it stays until the page is used again.
        const done = () => { state.printing = null; state.redraw(); };
        addEventListener('afterprint', () => ['pointerdown', 'keydown'].forEach(used => addEventListener(used, done, {once: true})), {once: true});
        window.print();
      });
    },
    async setLanguage(language) {
      await changeLanguage(state, program, language);
      saveSetting('language', language);
      await sayAgain(state, program);
    },
    async setDecimal(mark) {
      saveSetting('decimal', mark);
      state.comma = mark === ',';
      await changeLanguage(state, program, state.language);
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

/** A link is of use without its code. @returns {{size?: number, path?: string}} */
const noCode = () => ({});

/** The page's own address, without what it was opened with. */
function shareBase() {
  return location.href.replace(/[?#].*$/, '');
}
