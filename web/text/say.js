// @ts-check
// The page's words. The English text is the key: say('Saved as {name}', {name}).
// text/es.json has the others; what it lacks is said in English. As built it has
// no English: a list of keys in one string, six digits each, and then the texts.

/** @typedef {Record<string, string> | string[]} Texts */
/** @typedef {{language: string, page?: Texts, library?: Texts}} LanguageFile */

/** @type {LanguageFile | null} */
let file = null;

/** The page's texts by keyOf their English. @type {Map<string, string>} */
let texts = new Map();

/** What each English text is in this language, once it was looked for. @type {Map<string, string>} */
let known = new Map();

/**
 * Everything said from now on is in this language; null is English.
 * @param {LanguageFile | null} [next]
 */
export function setLanguage(next = null) {
  file = next;
  texts = new Map(byKey(next?.page ?? {}));
  known = new Map();
}

/** @param {Texts} page @returns {[string, string][]} */
function byKey(page) {
  if (!Array.isArray(page)) return Object.entries(page).map(([english, text]) => [keyOf(english), text]);
  const keys = page[0].match(/.{6}/g) ?? [];
  return keys.map((key, i) => [key, page[i + 1]]);
}

/** What stands for an English text, as words.Key in mix/words makes it. @param {string} english */
function keyOf(english) {
  let hash = 0x811c9dc5;
  for (const byte of new TextEncoder().encode(english)) hash = Math.imul(hash ^ byte, 0x01000193);
  return (hash >>> 24 ^ hash & 0xffffff).toString(16).padStart(6, '0');
}

/** The language that is spoken: 'en' or that of the file. */
export function language() {
  return file?.language ?? 'en';
}

/**
 * The text, in the language set, with each {name} replaced by its value.
 * @param {string} template
 * @param {Record<string, unknown>} [values]
 */
export function say(template, values) {
  const text = textOf(template);
  return values ? text.replace(/\{(\w+)\}/g, (whole, name) => Object.hasOwn(values, name) ? String(values[name]) : whole) : text;
}

/** @param {string} template */
function textOf(template) {
  let text = texts.size ? known.get(template) : template;
  if (text === undefined) known.set(template, text = String(texts.get(keyOf(template)) || template));
  return text;
}

/**
 * Says one of two templates, for one of something and for any other number,
 * with {n} as the number: sayCount(n, '{n} job', '{n} jobs').
 * @param {number} n
 * @param {string} one
 * @param {string} other
 * @param {Record<string, unknown>} [values]
 */
export function sayCount(n, one, other, values = {}) {
  return say(n === 1 ? one : other, {n, ...values});
}

/**
 * Marks a text that is said later, from a table: mark('Layer'). The test of the
 * language file collects it.
 * @param {string} template
 */
export const mark = template => template;

/** What each language that the page has calls itself. @type {Readonly<Record<string, string>>} */
export const languageNames = Object.freeze({en: 'English', es: 'Español'});

/** The languages that the page has. */
export const languages = Object.freeze(Object.keys(languageNames));

/**
 * The language to start with: what was chosen here before, or the first of the
 * browser's that the page has.
 * @param {readonly string[] | undefined} wanted navigator.languages
 * @param {string | null} [saved]
 * @returns {string}
 */
export function chooseLanguage(wanted, saved) {
  for (const tag of [saved, ...(wanted ?? [])]) {
    const word = String(tag ?? '').toLowerCase().split(/[-_]/)[0];
    if (languages.includes(word)) return word;
  }
  return 'en';
}

/**
 * The decimal mark that people write there, '.' or ','. Spanish alone does not
 * tell: Mexico writes a point, Spain a comma.
 * @param {string | undefined} locale such as navigator.language
 * @param {string | null} [saved] what was chosen here before
 * @returns {'.' | ','}
 */
export function decimalMark(locale, saved) {
  if (saved === '.' || saved === ',') return saved;
  try {
    const mark = new Intl.NumberFormat(locale || 'en').formatToParts(1.5).find(part => part.type === 'decimal');
    return mark?.value === ',' ? ',' : '.';
  } catch {
    return '.'; // not a locale
  }
}
