// @ts-check
// Jobs as files: from a file to a document, and the text and name of a file to
// save. Unknown fields and other schemas go through as they are: the library
// reports them.

import {parseDocument} from './json.js';
import {say} from '../text/say.js';

/** @import {Doc} from './record.js' */

export const largestFile = 32 * 1024 * 1024; // bytes, as the library's

/**
 * The document in a file, or why there is none. Never throws.
 * @param {Blob & {name?: string}} file
 * @returns {Promise<{doc: Doc, name: string, why?: undefined} | {doc?: undefined, why: string, bytes?: Uint8Array}>}
 *   bytes: what was read, for the library to say where it goes wrong
 */
export async function readFile(file) {
  if (!(Number(file?.size) <= largestFile)) return {why: say('This file is too large to be a job: at most 32 MB. Choose another file.')};
  let bytes;
  try {
    bytes = new Uint8Array(await file.arrayBuffer());
  } catch {
    return {why: say('This file could not be read. Check that it is still there and that you may open it, then choose it again.')};
  }
  if (bytes.length > largestFile) return {why: say('This file is too large to be a job: at most 32 MB. Choose another file.')};
  if (bytes.length === 0) return {why: say('This file is empty. Choose another file.')};
  let text;
  try {
    text = new TextDecoder('utf-8', {fatal: true}).decode(bytes);
  } catch {
    return {why: say('This file is not plain text. Choose a file that Barrow saved, or save yours as UTF-8.'), bytes};
  }
  const {doc, why} = parseDocument(text);
  if (doc === undefined) return {why, bytes};
  return {doc, name: typeof file.name === 'string' ? file.name.replace(/(?:\.barrow)?\.[^.]*$/, '').slice(0, 120) : ''};
}

const width = 140;
const jobOrder = ['schema', 'name', 'measure', 'currency', 'materials', 'containers', 'mixes', 'tasks', 'on_hand', 'offers', 'tax', 'aim', 'delivery', 'haul', 'yard'];
const taskOrder = ['kind', 'name'];

/**
 * A job as the text of a file, for people and programs: a field of the job on
 * each line, what is short on one line, the same text for the same job.
 * @param {Doc} doc
 */
export function jobText(doc) {
  const members = entries(doc, jobOrder).map(([key, value]) => {
    const list = key === 'tasks' && Array.isArray(value) ? value.map(task => isPlain(task) ? ordered(task, taskOrder) : task) : value;
    return `  ${JSON.stringify(key)}: ${layout(list, 2, JSON.stringify(key).length + 4, true)}`;
  });
  return members.length === 0 ? '{}\n' : `{\n${members.join(',\n')}\n}\n`;
}

/** @param {unknown} value @returns {value is Record<string, unknown>} */
const isPlain = value => typeof value === 'object' && value !== null && !Array.isArray(value);

/**
 * An object's members, those of order first.
 * @param {Record<string, unknown>} object
 * @param {string[]} order
 * @returns {[string, unknown][]}
 */
function entries(object, order) {
  const place = (/** @type {string} */ key) => order.includes(key) ? order.indexOf(key) : order.length;
  return Object.entries(object).sort(([a], [b]) => place(a) - place(b));
}

/** @param {Record<string, unknown>} object @param {string[]} order */
const ordered = (object, order) => Object.fromEntries(entries(object, order));

/**
 * A value as JSON: on one line where it fits.
 * @param {unknown} value
 * @param {number} indent of the line that it starts on
 * @param {number} column where it starts
 * @param {boolean} [open] a list of objects is laid out even where it is short
 * @returns {string}
 */
function layout(value, indent, column, open = false) {
  const line = oneLine(value);
  const wide = Array.isArray(value) && value.some(isPlain) && open;
  if (typeof value !== 'object' || value === null || !wide && column + line.length <= width || line.length <= 2) return line;
  const inner = ' '.repeat(indent + 2), outer = ' '.repeat(indent);
  if (Array.isArray(value)) {
    return `[\n${value.map(item => inner + layout(item, indent + 2, indent + 2)).join(',\n')}\n${outer}]`;
  }
  return `{\n${Object.entries(value).map(([key, item]) => {
    const name = JSON.stringify(key);
    return `${inner}${name}: ${layout(item, indent + 2, indent + name.length + 4)}`;
  }).join(',\n')}\n${outer}}`;
}

/** @param {unknown} value @returns {string} */
function oneLine(value) {
  if (Array.isArray(value)) return `[${value.map(oneLine).join(', ')}]`;
  if (isPlain(value)) return `{${Object.entries(value).map(([key, item]) => `${JSON.stringify(key)}: ${oneLine(item)}`).join(', ')}}`;
  return JSON.stringify(value) ?? 'null';
}

const device = /^(?:con|prn|aux|nul|com\d|lpt\d)$/i;
const longestName = 60;

/**
 * The name of a file for something called name: letters, digits and dashes
 * that every system takes, at most 60 with the extension.
 * @param {string} name
 * @param {string} ext such as "json"
 */
export function fileName(name, ext) {
  const tail = String(ext ?? '').toLowerCase().replace(/[^a-z0-9]+/g, '').slice(0, 8);
  const dot = tail === '' ? '' : `.${tail}`;
  const plain = (typeof name === 'string' ? name : '').normalize('NFKD').replace(/\p{M}+/gu, '').replace(/[^A-Za-z0-9]+/g, '-').replace(/^-+/, '');
  const short = plain.slice(0, longestName - dot.length).replace(/-+$/, '');
  if (short === '') return `job${dot}`;
  return device.test(short) ? `job-${short}${dot}` : short + dot;
}
