// @ts-check
// A saved job as text and back. What does not read is for the caller to set aside.

import {say} from '../text/say.js';

/**
 * A job document: JSON as somebody typed it. Anything may stand anywhere in it;
 * what is sound only the library knows.
 * @typedef {Record<string, any>} Doc
 */

/**
 * A saved job.
 * @typedef {object} Saved
 * @property {string} id
 * @property {string} name
 * @property {Doc} doc as typed
 * @property {Doc | null} home the document as it left home
 * @property {Record<string, number>} ticks how many of each offer are in the cart
 * @property {string} place where in the page it was
 * @property {number} typedAt when the document was last changed, in milliseconds
 * @property {number} rev how often it was saved
 * @property {string} plan the last result as JSON text, or '': kept while there is room
 */

/** @typedef {Pick<Saved, 'id' | 'name' | 'typedAt' | 'rev'>} Entry */

/**
 * What came of saving. kept: it is on the device. If not, why: 'full' (need:
 * bytes), 'large' (the job is above 1 MB), 'refused' (the device lets the page
 * save nothing), 'newer' (a newer page wrote it); the record goes on in memory
 * until the page closes. text says it in words.
 * @typedef {object} Outcome
 * @property {boolean} kept
 * @property {Saved} record as it is now: its rev goes into the next save
 * @property {'full' | 'large' | 'refused' | 'newer'} [why]
 * @property {number} [need]
 * @property {string} [text]
 * @property {Saved} [conflict] what another tab has saved since: nothing was stored
 */

/** Of the text that this page writes. */
export const version = 1;

/** @param {string} text @returns {unknown} */
export function parse(text) {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

/** @param {unknown} value @returns {value is Record<string, any>} */
export const isObject = value => typeof value === 'object' && value !== null && !Array.isArray(value);
/** @param {unknown} value @returns {value is number} */
const isCount = value => typeof value === 'number' && Number.isSafeInteger(value) && value >= 0;

/** @param {Saved} record */
export const textOf = ({id, name, doc, home, ticks, place, typedAt, rev, plan}) => JSON.stringify({v: version, id, name, doc, home, ticks, place, typedAt, rev, plan});

/**
 * A record's text read: the record, or why not. What is missing beside the
 * document is made up for; without a document there is no record.
 * @param {string} text
 * @param {string} id
 * @returns {{record: Saved, why: null} | {record: null, why: 'broken' | 'newer'}}
 */
export function parseRecord(text, id) {
  const kept = parse(text);
  if (isObject(kept) && Number.isSafeInteger(kept.v) && kept.v > version) return {record: null, why: 'newer'};
  if (!isObject(kept) || kept.v !== version || kept.id !== id || typeof id !== 'string' || !isObject(kept.doc) || !isCount(kept.rev)) return {record: null, why: 'broken'};
  return {
    why: null,
    record: {
      id,
      name: tidyName(kept.name) || say('My job'),
      doc: kept.doc,
      home: isObject(kept.home) ? kept.home : null,
      ticks: isObject(kept.ticks) ? Object.fromEntries(Object.entries(kept.ticks).filter(([, n]) => isCount(n))) : {},
      place: typeof kept.place === 'string' ? kept.place : '',
      typedAt: Number.isFinite(kept.typedAt) ? kept.typedAt : 0,
      rev: kept.rev,
      plan: typeof kept.plan === 'string' ? kept.plan : '',
    },
  };
}

/** @param {Saved} record @returns {Entry} */
export const entryOf = ({id, name, typedAt, rev}) => ({id, name, typedAt, rev});

/** @param {string | null} text @returns {Entry[] | null} */
export function parseIndex(text) {
  const kept = text === null ? null : parse(text);
  const ok = isObject(kept) && kept.v === version && Array.isArray(kept.jobs) &&
    kept.jobs.every((/** @type {unknown} */ job) => isObject(job) && typeof job.id === 'string' && typeof job.name === 'string' && Number.isFinite(job.typedAt) && isCount(job.rev)) &&
    new Set(kept.jobs.map((/** @type {Entry} */ job) => job.id)).size === kept.jobs.length;
  return ok ? kept.jobs.map(entryOf) : null;
}

/** A name on one line, not too long. @param {unknown} name */
export function tidyName(name) {
  return typeof name === 'string' ? [...name.replace(/[\p{Cc}\p{Zl}\p{Zp}\p{Bidi_C}]+/gu, ' ').trim()].slice(0, 120).join('').trim() : '';
}
