// @ts-check
// What stands around a control: what it is called by, what helps to fill it in,
// what is wrong with it.
import {h} from './h.js';
import {pathText} from '../state/path.js';
import {shown} from '../state/problems.js';
import {say} from '../text/say.js';

/**
 * @import {Child} from './h.js'
 * @import {Problem} from '../plan.d.ts'
 * @import {Row} from '../state/fields.js'
 * @import {Path} from '../state/path.js'
 * @import {State} from '../state/types.d.ts'
 * @import {Writing} from './writing.js'
 */

/** How long a tap on what comes next may take, in ms: nothing moves under it. */
export const press = 250;

/** An id that is one word, as what points at it must be. @param {string} path */
export const idOf = path => 'f-' + encodeURIComponent(path);

/** A field was left: soon what is wrong with it is shown. @param {State} state @param {string} path */
export function leave(state, path) {
  state.job.rest();
  if (state.touched.has(path)) return;
  setTimeout(() => {
    state.touched.add(path);
    state.redraw();
  }, press);
}

/** @param {Row} row @param {{help?: string, writing?: Writing}} props of the control */
export function helpOf(row, {help, writing}) {
  const about = help ?? (row.help ? say(row.help) : '');
  if (!row.example) return about || undefined;
  const example = say(typeof row.example === 'string' ? row.example : row.example[writing?.measure ?? 'us']);
  if (about === '') return say('such as {example}', {example});
  return about.endsWith('.') ? `${about} ${say('Such as {example}.', {example})}` : `${about}, ${say('such as {example}', {example})}`;
}

/** @param {string} id @param {unknown} problem @param {unknown} help @param {unknown} waits @param {unknown} [unit] */
export const describedBy = (id, problem, help, waits, unit) => [problem && id + '-problem', waits && id + '-wants', unit && id + '-unit', help && id + '-help'].filter(Boolean).join(' ') || undefined;

/** What says that a box waits to be filled, where it moves nothing. @param {string} id */
export const wantsMark = id => h('span', {class: 'wants', id: id + '-wants'}, say('needed'));

/** What stands under a box. @param {string} path @param {string} id @param {Child} help @param {Problem | undefined} problem */
export const below = (path, id, help, problem) => h('div', {class: 'below'},
  help && h('p', {class: 'help', id: id + '-help'}, help),
  problemText(path, problem));

/** The words of what is wrong, at the control or the head of what it is about. @param {string} path @param {Problem | undefined} problem */
export function problemText(path, problem) {
  return problem && h('p', {class: 'problem', id: idOf(path) + '-problem', 'data-test': 'problem', 'data-path': path},
    problem.hint);
}

/** What is wrong with an object or a list, at its head. @param {State} state @param {Path} path */
export function problemHead(state, path) {
  const text = pathText(path);
  return problemText(text, shown(state, text));
}
