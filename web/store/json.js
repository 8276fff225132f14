// @ts-check
// Documents that come from elsewhere, from text to objects, without losing or
// changing anything unsaid. JSON.parse alone keeps the last of two keys that
// are the same, and rounds long numbers. A number that JavaScript would write
// in another way, 4.10 or 1e9, becomes text: the library reads it the same.

import {say} from '../text/say.js';

/** @import {Doc} from './record.js' */

const deepest = 64; // lists and objects inside one another; the library takes 32

/**
 * The object that text holds, or why there is none.
 * @param {string} text
 * @returns {{doc: Doc, why?: undefined} | {doc?: undefined, why: string}}
 */
export function parseDocument(text) {
  const {safe, why} = look(text);
  if (safe === undefined) return {why};
  let doc;
  try {
    doc = JSON.parse(safe);
  } catch {
    return {why: say('This is not a job: it is not written as JSON. Choose a file that Barrow saved.')};
  }
  if (typeof doc !== 'object' || doc === null || Array.isArray(doc)) {
    return {why: say('This is not a job: a job is an object in { }. Choose a file that Barrow saved.')};
  }
  return {doc};
}

const numeral = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?(?![\w.+-])/y;

/**
 * The text with such numbers in quotes, or what JSON.parse would not complain
 * about. Text that is not JSON is left to it.
 * @param {string} text
 * @returns {{safe: string, why?: undefined} | {safe?: undefined, why: string}}
 */
function look(text) {
  /** @type {(Set<string> | null)[]} */
  const open = []; // the keys of each object around this place; null for a list
  /** @type {string[]} */
  const parts = [];
  let from = 0; // what is not in parts yet
  for (let at = 0; at < text.length; at++) {
    const letter = text[at];
    if (letter === '{' || letter === '[') {
      open.push(letter === '{' ? new Set() : null);
      if (open.length > deepest) return {why: say('This is not a job: its lists lie too deep inside one another. Choose a file that Barrow saved.')};
    } else if (letter === '}' || letter === ']') {
      open.pop();
    } else if (letter === '"') {
      const end = stringEnd(text, at);
      const keys = open.at(-1);
      if (keys && isKey(text, end)) {
        const key = meaning(text.slice(at, end));
        if (keys.has(key)) return {why: say('Two fields have the same name, {key}. Take one of them out of the file, then open it again.', {key: key.slice(0, 40)})};
        keys.add(key);
      }
      at = end - 1;
    } else if (letter === '-' || letter >= '0' && letter <= '9') {
      numeral.lastIndex = at;
      const number = numeral.exec(text)?.[0];
      if (number === undefined) continue; // not JSON
      if (String(Number(number)) !== number) {
        parts.push(text.slice(from, at), `"${number}"`);
        from = at + number.length;
      }
      at += number.length - 1;
    }
  }
  return {safe: parts.join('') + text.slice(from)};
}

/** @param {string} text @param {number} at of the opening quote */
function stringEnd(text, at) {
  for (let end = at + 1; end < text.length; end++) {
    if (text[end] === '\\') end++;
    else if (text[end] === '"') return end + 1;
  }
  return text.length;
}

/** @param {string} text @param {number} end after a string */
function isKey(text, end) {
  while (text[end] === ' ' || text[end] === '\n' || text[end] === '\t' || text[end] === '\r') end++;
  return text[end] === ':';
}

/** @param {string} quoted */
function meaning(quoted) {
  try {
    return String(JSON.parse(quoted));
  } catch {
    return quoted;
  }
}
