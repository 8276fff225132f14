// @ts-check
// The way to the control of a field, wherever it is folded away.
import {rowName} from './rows.js';
import {sections} from './sections.js';
import {pathText} from '../state/path.js';

/**
 * @import {Path} from '../state/path.js'
 * @import {State} from '../state/types.d.ts'
 */

/**
 * Opens what a path is in, and goes there: to its control, or to the nearest
 * thing that it is a part of.
 * @param {State} state @param {string} text a path as the library writes it
 */
export function reveal(state, text) {
  const path = state.job.find(text) ?? [];
  const section = sections.find(s => s.paths.includes(String(path[0])));
  if (section) state.open.add('section ' + section.name);
  openRows(state, path);
  state.redraw();
  requestAnimationFrame(() => {
    openRows(state, path); // rows have no name until they are drawn
    state.redraw();
    requestAnimationFrame(() => goTo(path));
  });
}

/** Folds out the rows that hold a path, it being one of them or not. @param {State} state @param {Path} path */
function openRows(state, path) {
  path.forEach((_, i) => {
    const name = rowName(state.job.get(path.slice(0, i + 1)));
    if (name) state.open.add(name);
    state.open.add('more ' + pathText(path.slice(0, i)));
  });
}

/** Goes to the control of a path, or to the nearest thing that it is a part of. @param {Path} path */
function goTo(path) {
  const shown = /** @type {HTMLElement[]} */ ([...document.querySelectorAll('.job-form [data-path]')]);
  /** @param {HTMLElement} el */
  const isControl = el => el.matches('input, select');
  for (let here = path; here.length > 0; here = here.slice(0, -1)) {
    const at = pathText(here), found = shown.filter(el => el.dataset.path === at);
    const words = found.find(el => el.dataset.test === 'problem');
    const control = found.find(el => isControl(el) && el.dataset.test === 'field') ?? (words ? undefined : shown.find(el => isControl(el) && waitsIn(el, at)) ?? found.find(isControl));
    if (control) return control.focus();
    if (found[0]) return (words ?? found[0]).scrollIntoView({block: 'center'});
  }
}

/** Whether a control waits to be filled in for an object. @param {HTMLElement} el @param {string} at the object's path */
const waitsIn = (el, at) => el.dataset.path?.startsWith(at + '.') && el.getAttribute('aria-describedby')?.split(' ').some(id => id.endsWith('-wants'));
