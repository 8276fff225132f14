// @ts-check
// Documents that come from elsewhere, from text to objects, without losing or
// changing anything unsaid: JSON.parse alone keeps the last of two keys that
// are the same, and rounds long numbers.

import {say} from './say.js';

const deepest = 64; // lists and objects inside one another; the library takes 32
const mostDigits = 15; // of a number; JavaScript keeps no more

/**
 * The object that text holds, or why there is none.
 * @param {string} text
 * @returns {{doc: Record<string, any>, why?: undefined} | {doc?: undefined, why: string}}
 */
export function parseDocument(text) {
  const why = look(text);
  if (why) return {why};
  let doc;
  try {
    doc = JSON.parse(text);
  } catch {
    return {why: say('This is not a job: it is not written as JSON. Choose a file that Barrow saved.')};
  }
  if (typeof doc !== 'object' || doc === null || Array.isArray(doc)) {
    return {why: say('This is not a job: a job is an object in { }. Choose a file that Barrow saved.')};
  }
  return {doc};
}

/**
 * What JSON.parse would not say, or ''. Text that is not JSON it leaves to it.
 * @param {string} text
 */
function look(text) {
  /** @type {(Set<string> | null)[]} */
  const open = []; // the keys of each object around this place; null for a list
  for (let at = 0; at < text.length; at++) {
    const letter = text[at];
    if (letter === '{' || letter === '[') {
      open.push(letter === '{' ? new Set() : null);
      if (open.length > deepest) return say('This is not a job: its lists lie too deep inside one another.');
    } else if (letter === '}' || letter === ']') {
      open.pop();
    } else if (letter === '"') {
      const end = stringEnd(text, at);
      const keys = open.at(-1);
      if (keys && isKey(text, end)) {
        const key = meaning(text.slice(at, end));
        if (keys.has(key)) return say('Two fields have the same name, {key}. Take one of them out of the file, then open it again.', {key: key.slice(0, 40)});
        keys.add(key);
      }
      at = end - 1;
    } else if (letter >= '0' && letter <= '9') {
      const [number] = /** @type {RegExpMatchArray} */ (text.slice(at, at + 400).match(/^[0-9.eE+-]+/));
      const [digits] = number.split(/[eE]/);
      if (digits.replace('.', '').replace(/^0+/, '').length > mostDigits || !Number.isFinite(Number(number)) && !Number.isNaN(Number(number))) {
        return say('A number in this file has too many digits: {number}. Write it shorter, then open it again.', {number: number.slice(0, 40)});
      }
      at += number.length - 1;
    }
  }
  return '';
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
