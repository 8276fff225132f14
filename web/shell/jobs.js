// @ts-check
// The jobs dialog: the jobs kept here, files, sharing, printing, and the
// language, decimal mark and colours of the page. It opens over the page and
// gives the focus back when it closes.
import {h, Component} from '../ui/h.js';
import {say, language, languageNames} from '../text/say.js';

/** @import {Shared, State} from '../state/types.d.ts' */

/** The dialog, open. @param {State} state */
export function jobsView(state) {
  return h(JobsDialog, {state, key: 'jobs'});
}

/** @extends {Component<{state: State}>} */
class JobsDialog extends Component {
  componentDidMount() {
    this.dialog?.showModal();
  }

  componentDidUpdate() {
    if (this.props.state.shared && !this.shown) this.dialog?.querySelector('.shared')?.scrollIntoView({block: 'start'});
    this.shown = Boolean(this.props.state.shared);
  }

  /** @param {{state: State}} props */
  render({state}) {
    const close = () => {
      state.jobsOpen = false;
      state.shared = null;
      state.redraw();
      /** @type {HTMLElement | null} */ (document.querySelector('.head .menu'))?.focus();
    };
    /** @param {string} test @param {string} name @param {() => void} does @param {object} [more] */
    const act = (test, name, does, more) => h('li', {key: test}, h('button', {type: 'button', 'data-test': test, onClick: does, ...more}, name));
    const has = Boolean(state.record);
    return h('dialog', {ref: (/** @type {HTMLDialogElement | null} */ d) => { this.dialog = d; }, class: 'shelf', 'aria-labelledby': 'shelf-head', onClose: close},
      h('div', {class: 'shelf-head'},
        h('h2', {id: 'shelf-head'}, say('Jobs and more')),
        h('button', {type: 'button', class: 'quiet', 'data-test': 'shelf-close', onClick: () => this.dialog?.close()}, say('Close'))),
      jobList(state, () => this.dialog?.close()),
      has && h('section', null, h('h3', null, say('This job')),
        h('ul', {class: 'acts'},
          act('share', say('Share as a link or a code'), () => state.actions.share()),
          act('export', say('Save as a file'), () => state.actions.exportJob()),
          act('csv', say('Save the list for a spreadsheet'), () => state.actions.exportCSV(), {disabled: !state.plan}),
          act('print-yard', say('Print the sheet for the yard'), () => { this.dialog?.close(); state.actions.print('yard'); }, {disabled: !state.plan}),
          act('print-ground', say('Print the sheet for the ground'), () => { this.dialog?.close(); state.actions.print('ground'); }, {disabled: !state.plan})),
        state.shared && shared(state, state.shared)),
      h('section', null, h('h3', null, say('How it is written')),
        choice('language', say('Language'), language(), Object.entries(languageNames), v => state.actions.setLanguage(v)),
        choice('decimal', say('Decimal mark'), state.comma ? ',' : '.', [['.', say('Point, 1.5')], [',', say('Comma, 1,5')]], v => state.actions.setDecimal(v)),
        choice('theme', say('Light or dark'), state.theme ?? '', [['', say('As the device is')], ['light', say('Light')], ['dark', say('Dark')]], v => state.actions.setTheme(v))),
      h('section', null, h('h3', null, say('On this device')),
        h('p', null, state.store.status.can ? say('Jobs are kept on this device, by this browser alone. Save a file of what must not be lost.') : state.store.status.text),
        h('p', null, state.offlineText?.()),
        state.store.unread().length > 0 && h('p', null, say('Something saved here could not be read. It is set aside, not deleted.')),
        h('p', {class: 'note'}, say('Product labels, local codes and licensed practice come before any figure here.'))));
  }
}

/** The jobs kept here. @param {State} state @param {() => void} close */
function jobList(state, close) {
  const list = state.store.list();
  return h('section', {'data-test': 'jobs'}, h('h3', null, say('Jobs here')),
    list.length === 0 && h('p', null, say('None yet.')),
    h('ul', {class: 'jobs'}, list.map(j => h('li', {key: j.id, 'data-test': 'job-row', 'data-name': j.name},
      h('button', {type: 'button', 'data-test': 'job-open', 'aria-current': j.id === state.record?.id ? 'true' : undefined, onClick: () => { state.actions.open(j.id); close(); }}, j.name || say('Unnamed job')),
      h('button', {type: 'button', class: 'quiet', 'data-test': 'job-delete', onClick: () => state.actions.remove(j.id)}, say('Delete'), h('span', {class: 'unseen'}, ' ' + j.name))))),
    state.deleted && h('p', {role: 'status'}, say('Deleted {name}.', {name: state.deleted.name}), ' ',
      h('button', {type: 'button', 'data-test': 'job-undelete', onClick: () => state.actions.undelete()}, say('Bring it back'))),
    h('ul', {class: 'acts'},
      h('li', null, h('button', {type: 'button', 'data-test': 'job-new', onClick: () => { state.actions.startEmpty(); close(); }}, say('A new job'))),
      state.record && h('li', null, h('button', {type: 'button', 'data-test': 'job-copy', onClick: () => { state.actions.copy(); close(); }}, say('A copy of this job'))),
      h('li', null, h('button', {type: 'button', 'data-test': 'job-sample', onClick: () => { state.actions.startSample(); close(); }}, say('The sample'))),
      h('li', null, h('button', {type: 'button', 'data-test': 'import', onClick: () => { state.actions.openFile(); close(); }}, say('Open a file')))));
}

/** The link, and the code for the phone beside this one. @param {State} state @param {Shared} link */
function shared(state, {link, code, why, copied}) {
  return h('div', {class: 'shared'},
    h('label', {for: 'share-link'}, say('The whole job is in this link; opening it sends nothing anywhere.')),
    h('textarea', {id: 'share-link', readOnly: true, rows: 4, 'data-test': 'share-link', onFocus: e => e.currentTarget.select(), value: link}),
    navigator.clipboard && h('button', {type: 'button', class: 'quiet', 'data-test': 'share-copy', onClick: () => state.actions.copyLink()}, say('Copy the link')),
    h('p', {role: 'status'}, copied && say('Copied.')),
    code ? h('svg', {class: 'code', 'data-test': 'share-qr', role: 'img', 'aria-label': say('The link as a code to scan'), viewBox: `0 0 ${code.size} ${code.size}`}, h('path', {d: code.path})) : h('p', null, why));
}

/** @param {string} test @param {string} label @param {string} value @param {string[][]} options @param {(value: string) => void} set */
function choice(test, label, value, options, set) {
  return h('div', {class: 'choice'},
    h('label', {for: 'choice-' + test}, label),
    h('select', {id: 'choice-' + test, 'data-test': test, onChange: e => set(e.currentTarget.value)},
      options.map(([v, name]) => h('option', {key: v, value: v, selected: v === value}, name))));
}
