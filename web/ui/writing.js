// @ts-check
// How the reader of this job writes quantities, and fields read and shown so.
import {read, show} from './entry.js';
import {language} from '../text/say.js';
import {units} from '../state/fields.js';

/**
 * @import {Entry, Row} from '../state/fields.js'
 * @import {State} from '../state/types.d.ts'
 * @import {Value} from './entry.js'
 */

/**
 * How this reader writes quantities in this job.
 * @typedef {{comma: boolean, currency: string, measure: 'us' | 'metric', language: string}} Writing
 */

/** @param {State} state @returns {Writing} */
export function writingOf(state) {
  const {measure, currency} = state.job.doc;
  return {comma: state.comma === true, currency: typeof currency === 'string' ? currency : '', measure: measure === 'metric' ? 'metric' : 'us', language: language()};
}

/** @param {Row} row @param {Writing} writing */
export const habitOf = (row, writing) => ({unit: row.unit ? units[row.unit][writing.measure] : undefined, comma: writing.comma, currency: writing.currency});

/**
 * The value that the document keeps for what was typed.
 * @param {Row} row @param {string} typed @param {Writing} writing
 * @returns {Value}
 */
export function readField(row, typed, writing) {
  const habit = habitOf(row, writing);
  if (row.kind === 'offset') {
    const [, sign, rest] = /** @type {RegExpExecArray} */ (/^\s*([-−]?)\s*(.*)$/s.exec(typed)); // it takes any text
    const value = read('length', rest, habit);
    return sign && value !== undefined ? '-' + value : value;
  }
  return row.kind === 'id' || row.kind === 'size' ? typed.trim() || undefined : read(/** @type {Entry} */ (row.kind), typed, habit);
}

/** The text for a value of the document. @param {Row} row @param {unknown} value @param {Writing} writing */
export function showField(row, value, writing) {
  const kind = row.kind === 'id' || row.kind === 'size' ? 'text' : row.kind === 'offset' ? 'length' : row.kind;
  return show(/** @type {Entry} */ (kind), value, habitOf(row, writing));
}
