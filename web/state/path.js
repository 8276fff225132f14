// @ts-check
// Where something is in a document: an array of keys and indexes in the page,
// ['tasks', 1, 'layer'], and one line of text in what the library says,
// "tasks[1].layer". The text is the library's own form, letter for letter.

/** @typedef {(string | number)[]} Path */

/** Whether two paths are one. @param {Path} a @param {Path} b */
export const samePath = (a, b) => a.length === b.length && a.every((step, i) => step === b[i]);

const shown = 40; // characters of a key that a path repeats
const plain = /^[A-Za-z_][A-Za-z0-9_-]*$/;

/**
 * The library's text for a path.
 * @param {Path} path
 */
export function pathText(path) {
  let text = '';
  for (const step of path) text += typeof step === 'number' ? `[${step}]` : keyText(step, text !== '');
  return text;
}

/**
 * @param {string} key
 * @param {boolean} inside
 */
function keyText(key, inside) {
  if (plain.test(key) && key.length <= shown) return inside ? `.${key}` : key;
  const letters = [...key];
  const cut = letters.length > shown ? [...letters.slice(0, shown - 1), '…'] : letters;
  return `["${cut.map(visible).join('')}"]`;
}

// As JSON writes it, with what cannot be seen, or could be taken for markup,
// written as \u too.
const hidden = /[\p{C}\p{Z}]/u;
const short = new Map([['"', '\\"'], ['\\', '\\\\'], ['\b', '\\b'], ['\f', '\\f'], ['\n', '\\n'], ['\r', '\\r'], ['\t', '\\t']]);

/** @param {string} letter */
function visible(letter) {
  const escape = short.get(letter);
  if (escape) return escape;
  if (letter === ' ' || !/[<>&]/.test(letter) && !hidden.test(letter)) return letter;
  if (letter.length > 1 || /[\ud800-\udfff]/.test(letter)) return '\ufffd';
  return `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`;
}

const step = /\.?([A-Za-z_][A-Za-z0-9_-]*)|\[(\d{1,15})\]|\[("(?:[^"\\]|\\.)*")\]/uy;

/**
 * The path that a text means, or null when it means none. A key of more than
 * 40 characters stands cut in the text: findPath looks it up in the document.
 * @param {string} text
 * @returns {Path | null}
 */
export function parsePath(text) {
  /** @type {Path} */
  const path = [];
  if (typeof text !== 'string') return null;
  for (let at = 0; at < text.length; at = step.lastIndex) {
    step.lastIndex = at;
    const found = step.exec(text);
    if (!found) return null;
    const [whole, word, index, quoted] = found;
    if (word !== undefined && (at > 0) !== whole.startsWith('.')) return null;
    const key = word ?? (index === undefined ? unquote(quoted) : Number(index));
    if (key === null) return null;
    path.push(key);
  }
  return path;
}

/**
 * @param {string} quoted
 * @returns {string | null}
 */
function unquote(quoted) {
  try {
    return JSON.parse(quoted);
  } catch {
    return null;
  }
}

/**
 * The path in doc that a text means, keys that stand cut in it included; as far
 * as the document goes, since what is missing has a path too.
 * @param {unknown} doc
 * @param {string} text
 * @returns {Path | null}
 */
export function findPath(doc, text) {
  const path = parsePath(text);
  let here = doc;
  return path && path.map(key => {
    if (typeof key === 'string' && isObject(here) && !Object.hasOwn(here, key)) {
      const meant = keyText(key, true);
      key = Object.keys(here).find(own => keyText(own, true) === meant) ?? key;
    }
    here = child(here, key);
    return key;
  });
}

/**
 * @param {unknown} value
 * @returns {value is Record<string, unknown>}
 */
export function isObject(value) {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/**
 * What stands at key in a list or an object: its own, never inherited.
 * @param {unknown} holder
 * @param {string | number} key
 * @returns {unknown}
 */
export function child(holder, key) {
  if (typeof key === 'number' ? !Array.isArray(holder) : !isObject(holder)) return undefined;
  return Object.hasOwn(/** @type {object} */ (holder), key) ? /** @type {Record<string | number, unknown>} */ (holder)[key] : undefined;
}
