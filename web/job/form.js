// @ts-check
// The Job place, where a job is entered: its work, its mixes, what is there,
// what the yard sells and what a drive carries.
import {h, Component} from '../ui/h.js';
import {Announcer} from '../ui/announcer.js';
import {problemHead} from '../ui/around.js';
import {choice} from '../ui/choice.js';
import {Field} from '../ui/field.js';
import {writingOf} from '../ui/writing.js';
import {control, leftOver} from './control.js';
import {namesOf} from './names.js';
import {Section, sections} from './sections.js';
import {Tasks} from './tasks.js';
import {objects, otherFields, rowOf} from '../state/fields.js';
import {problemsAt} from '../state/problems.js';

/**
 * @import {Doc} from '../store/record.js'
 * @import {State} from '../state/types.d.ts'
 * @import {Context} from './control.js'
 * @import {TaskContext} from './task.js'
 */

/** The yard's own place asks for what changed there. */
const others = otherFields('job', ['name', 'measure', 'tasks', 'yard', ...sections.flatMap(section => section.paths)]);

/** The entry of the whole job. @param {State} state */
export const formView = state => h(Form, {state, key: 'form'});

/** @extends {Component<{state: State}>} */
class Form extends Component {
  /** What the parts are given; the same object while nothing in it changes. @param {State} state @returns {TaskContext} */
  given(state) {
    const writing = writingOf(state);
    const names = namesOf(state);
    const key = JSON.stringify([writing, ...state.open]); // what is folded out is drawn by all parts
    if (!this.lines || this.key !== key) {
      /** @type {string | undefined} */
      this.key = key;
      /** @type {Context | undefined} */
      this.lines = {writing};
      this.ctx = undefined;
    }
    /** @type {TaskContext | undefined} */
    this.ctx = this.ctx?.names === names ? this.ctx : {writing: this.lines.writing, names, lines: this.lines};
    return this.ctx;
  }

  /** @param {{state: State}} props */
  render({state}) {
    const ctx = this.given(state), {doc} = state.job;
    return h('form', {class: 'job-form', autocomplete: 'off', onSubmit: e => e.preventDefault(), onKeyDown: next},
      h(Announcer, {state}),
      h('datalist', {id: 'sizes'}, ctx.names.sizes.map(([id, name]) => h('option', {value: id, key: id}, name))),
      problemHead(state, []),
      problemHead(state, ['schema']),
      h(Field, {state, path: ['name'], row: rowOf('job', 'name'), writing: ctx.writing}),
      choice({state, path: ['measure'], row: rowOf('job', 'measure'), value: doc.measure ?? 'us', test: 'measure'}),
      h(Tasks, {state, tasks: doc.tasks, ctx}),
      sections.map(section => h(Section, {key: section.name, state, section, ctx, open: state.open.has('section ' + section.name), mark: section.paths.map(p => problemsAt(state, p).mark).join('\n'), ...parts(doc, section.paths)})),
      others.map(name => control(state, [], doc, 'job', name, ctx)),
      leftOver(state, [], doc, [], objects.job.fields.map(r => r.name), ctx));
  }
}

/** Enter goes on to the next box, as the key of a phone says. @param {KeyboardEvent & {currentTarget: HTMLFormElement}} event */
function next(event) {
  const {currentTarget} = event, target = /** @type {HTMLElement} */ (event.target);
  if (event.key !== 'Enter' || event.isComposing || !target.matches('input[type="text"]')) return;
  const boxes = /** @type {HTMLElement[]} */ ([...currentTarget.querySelectorAll('input, select')]);
  event.preventDefault();
  boxes[boxes.indexOf(target) + 1]?.focus();
}

/** What a section is about, so that it is drawn again when that changes. @param {Doc} doc @param {string[]} paths */
const parts = (doc, paths) => Object.fromEntries(paths.map(path => ['doc_' + path, doc[path]]));
