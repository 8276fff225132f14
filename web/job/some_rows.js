// @ts-check
// What every list of rows has: an end to how many are drawn, and buttons.
import {h} from '../ui/h.js';
import {say} from '../text/say.js';

/** How many rows of one list are drawn before somebody asks for more. */
export const atOnce = 200;

/**
 * How many rows a list shows, and the button for more of them: a job that came
 * in may have any number. A row that was just added is shown.
 * @param {{most?: number, forceUpdate(): void}} list the component of the list @param {readonly unknown[]} rows @param {boolean} [added]
 */
export function someRows(list, rows, added = false) {
  const most = list.most = Math.max(list.most ?? atOnce, added ? rows.length : 0);
  return {most, more: rows.length > most && h('button', {type: 'button', class: 'add', 'data-test': 'more-rows', onClick: () => { list.most = most + atOnce; list.forceUpdate(); }},
    say('Show more: {n} are not shown', {n: rows.length - most}))};
}

/** The button that takes a row out. @param {string} label @param {string} path @param {() => void} act */
export const remover = (label, path, act) => h('button', {type: 'button', class: 'remove', 'data-test': 'remove-row', 'data-path': path, 'aria-label': label, title: say('Remove'), onClick: act}, '×');
