// @ts-check
// From what people type in a field to what the job document keeps, and back.
//
// The document keeps what was typed, in the library's words: the field's own
// unit is put after a bare number, and a decimal comma becomes a point where
// commas are the habit. Nothing is worked out here, and what is not understood
// stays as it was typed, so that the library can say what is wrong with it.
//
//   lengths  "20 x 10 x 2", a unit on each
//   ball     a class "#1", a volume "0.7 gal", or lengths "6 x 6"; a bare number
//            stays bare, since it could be either
//   stock    a volume, or packs: "2 x 3.8"
//   parts    "bark-fines 3, peat 1"

import {figure, partsRead, point, swap} from './decimal.js';

/** @import {Entry} from '../state/fields.js' */

/** What the document keeps; undefined, which takes the field away, for nothing. @typedef {string | number | undefined} Value */

/**
 * How a field is read.
 * @typedef {object} Habit
 * @property {string} [unit] the field's own, put after a bare number; of an
 *   area, the unit of its sides ("ft") or of the ground ("sq ft"): each follows
 *   from the other
 * @property {boolean} [comma] 1,5 is one and a half
 * @property {string} [currency] the job's sign, left out of amounts
 */

const longest = 2000; // characters of what is looked into; the library refuses far shorter ones
const space = '[ \\t\\u00a0\\u2007\\u2009\\u202f]';
const vulgar = '[½⅓⅔¼¾⅕⅖⅗⅘⅙⅛⅜⅝⅞]';
const fraction = `\\d+[/⁄∕]\\d+`;
const decimal = '(?:\\d+(?:\\.\\d*)?|\\.\\d+)';
// The library's own numbers: 12, 1.5, .5, 1/2, 1 1/2, 1-1/2, 1½, ½.
const number = `(?:${fraction}|\\d+(?:${space}+|[-−–—‑])${fraction}|\\d+${space}*${vulgar}|${vulgar}|${decimal})`;
const bare = new RegExp(`^${number}$`);
const bareFraction = new RegExp(`^(?:${fraction}|${vulgar})$`);
const between = new RegExp(`(${space}*[x×✕*]${space}*|${space}+(?:by|por)${space}+)`, 'i');
const plainNumber = /^-?\d+(?:\.\d+)?$/;
const shape = new RegExp(`^(rectangle|circle|ellipse|triangle|ring|rect[áa]ngulo|c[íi]rculo|elipse|tri[áa]ngulo|anillo)${space}+(.+)$`, 'i');

/**
 * The value for the document; undefined, which takes the field away, for
 * nothing. The result is text, or a number where the library wants numbers.
 * @param {Entry} kind
 * @param {string} typed
 * @param {Habit} [habit]
 * @returns {Value}
 */
export function read(kind, typed, habit = {}) {
  const text = String(typed ?? '').trim();
  if (text === '') return undefined;
  const {unit = '', comma = false} = habit;
  if (kind === 'text' || text.length > longest) return text;
  if (kind === 'parts') return partsRead(text, comma);
  if (kind === 'money') return point(withoutSign(text, habit.currency), comma);
  const plain = point(text, comma);
  switch (kind) {
    case 'count':
    case 'number': return numberRead(plain);
    case 'share': return bareFraction.test(plain) ? plain : withUnit(plain, '%', '');
    case 'area': return areaRead(plain, unit);
    case 'lengths': return sidesRead(plain, unit);
    case 'ball': return between.test(plain) ? sidesRead(plain, unit) : plain;
    case 'stock': return stockRead(plain, unit);
    default: return withUnit(plain, unit);
  }
}

/**
 * The text that a field shows for a value of the document. What is shown, when
 * read again, gives the value back.
 * @param {Entry} kind
 * @param {unknown} value
 * @param {Habit} [habit]
 * @returns {string}
 */
export function show(kind, value, habit = {}) {
  if (value === undefined || value === null) return '';
  if (typeof value === 'object') return JSON.stringify(value); // of a wrong kind: the library says so
  const text = String(value);
  if (!habit.comma || kind === 'text' || text.length > longest) return text;
  const turned = text.replace(figure, swap);
  return read(kind, turned, habit) === value ? turned : text;
}

/** What stands in the document, as text, whatever it is. @param {unknown} value */
export const asText = value => show('text', value);

/**
 * @param {string} text
 * @param {string} unit
 */
function withUnit(text, unit, gap = ' ') {
  return unit !== '' && bare.test(text) ? text + gap + unit : text;
}

/**
 * Lengths with the unit on each side, when no side has one.
 * @param {string} text
 * @param {string} unit
 */
function sidesRead(text, unit) {
  const parts = text.split(between); // side, sign, side, ...
  const sides = parts.filter((_, i) => i % 2 === 0);
  if (unit === '' || !sides.every(side => bare.test(side))) return text;
  return parts.map((part, i) => i % 2 === 0 ? `${part} ${unit}` : ` ${part.trim()} `).join('');
}

/** A side's unit and its ground's. @type {[string, string][]} */
const grounds = [['ft', 'sq ft'], ['in', 'sq in'], ['yd', 'sq yd'], ['m', 'sq m'], ['cm', 'sq cm'], ['ft', 'acre'], ['m', 'ha']];

/**
 * @param {string} text
 * @param {string} unit
 */
function areaRead(text, unit) {
  const side = grounds.find(([, ground]) => ground === unit)?.[0] ?? unit;
  const ground = grounds.find(([of]) => of === unit)?.[1] ?? unit;
  const named = shape.exec(text);
  if (named) return `${named[1]} ${sidesRead(named[2], side)}`;
  return between.test(text) ? sidesRead(text, side) : withUnit(text, ground);
}

/**
 * @param {string} text
 * @param {string} unit
 */
function stockRead(text, unit) {
  const [packs, sign, size, more] = text.split(between);
  if (!sign || !size || more !== undefined || !/^\d+$/.test(packs)) return withUnit(text, unit);
  return `${packs} x ${withUnit(size, unit)}`;
}

/**
 * A number for the document where text and value are the same thing: 64, -3,
 * 2.5; whether it may be less than nothing is for the library to say.
 * @param {string} text
 */
function numberRead(text) {
  const value = Number(text);
  const exact = plainNumber.test(text) && (Number.isSafeInteger(value) || String(value) === text);
  return exact && !Object.is(value, -0) ? value : text;
}

/**
 * An amount without the job's currency, before or after it.
 * @param {string} text
 * @param {string} [currency]
 */
function withoutSign(text, currency = '') {
  const sign = currency.trim();
  if (sign === '' || /[\d.,+\-−]/.test(sign)) return text;
  const alone = text.startsWith(sign) ? text.slice(sign.length).trim() : text.endsWith(sign) ? text.slice(0, -sign.length).trim() : '';
  return alone === '' || alone.startsWith(sign) || alone.endsWith(sign) ? text : alone; // two are a slip
}
