// @ts-check
// A job in a link: the whole job stands after the #, which no server is sent.
//
//   #job=d…  the JSON text, deflated with its checksum (zlib), in base64url
//   #job=t…  the JSON text itself, in base64url, where that is shorter
//
// What comes in a link is anybody's: it is bounded before and while it is
// unpacked, and whatever is wrong with it is a reason, never an exception.

import {parseDocument} from './json.js';
import {say} from '../text/say.js';

/** @import {Doc} from './record.js' */

export const longestFragment = 64 * 1024; // characters
export const largestJob = 1024 * 1024; // bytes, unpacked
const piece = 512; // bytes unpacked at a time: at most half a megabyte comes of it

/**
 * A link to base with the job in it, or why it does not go into one.
 * @param {Doc} doc
 * @param {string} base such as location.href
 * @returns {Promise<{link: string, why?: undefined} | {link?: undefined, why: string}>}
 */
export async function linkOf(doc, base) {
  const text = new TextEncoder().encode(JSON.stringify(doc));
  if (text.length > largestJob) return {why: tooLong()};
  const packed = await deflate(text);
  const job = packed && packed.length < text.length ? `d${toBase64(packed)}` : `t${toBase64(text)}`;
  const fragment = `job=${job}`;
  if (fragment.length + 1 > longestFragment) return {why: tooLong()};
  const url = new URL(base);
  url.hash = fragment;
  return {link: url.href};
}

const tooLong = () => say('This job is too large for a link. Save it as a file and send that.');
const broken = () => say('This link is damaged or was cut short. Ask for it again, and copy all of it.');

/**
 * The job in a fragment; why there is none; or null where the fragment is not
 * about a job. Never throws.
 * @param {string} fragment such as location.hash
 * @returns {Promise<{doc: Doc, why?: undefined} | {doc?: undefined, why: string} | null>}
 */
export async function readLink(fragment) {
  const found = /^#?job=/.exec(typeof fragment === 'string' ? fragment : '');
  if (!found) return null;
  if (fragment.length > longestFragment) return {why: say('This link is too long to be a job. Ask for the job as a file.')};
  const form = fragment[found[0].length] ?? '', data = fromBase64(fragment.slice(found[0].length + 1));
  if (!/^[a-z]?$/i.test(form)) return {why: broken()};
  if (form !== '' && form !== 'd' && form !== 't') return {why: say('This link was made by a newer Barrow. Load the page again to get it, then open the link again.')};
  if (data === null || data.length === 0) return {why: broken()};
  let text;
  try {
    const bytes = form === 'd' ? await inflate(data) : data;
    if (bytes === null) return {why: say('The job in this link is too large. Ask for it as a file.')};
    text = new TextDecoder('utf-8', {fatal: true}).decode(bytes);
  } catch (error) {
    if (typeof DecompressionStream === 'undefined') return {why: say('This browser is too old to open such a link. Update it, or ask for the job as a file.')};
    return {why: broken()};
  }
  try {
    JSON.parse(text);
  } catch {
    return {why: broken()};
  }
  return parseDocument(text);
}

/**
 * Whether a QR code can hold the link: 2,953 bytes, or 4,296 characters of its
 * short alphabet (ISO/IEC 18004, version 40, level L).
 * @param {string} link
 */
export function fitsQR(link) {
  if (/^[0-9A-Z $%*+\-./:]*$/.test(link)) return link.length <= 4296;
  return new TextEncoder().encode(link).length <= 2953;
}

/** @param {Uint8Array} bytes @returns {Promise<Uint8Array | null>} null where that is not to be had */
async function deflate(bytes) {
  if (typeof CompressionStream === 'undefined') return null;
  return collect(source(bytes).pipeThrough(new CompressionStream('deflate')), Infinity);
}

/** @param {Uint8Array} bytes @returns {Promise<Uint8Array | null>} null where it is too large */
async function inflate(bytes) {
  return collect(source(bytes).pipeThrough(new DecompressionStream('deflate')), largestJob);
}

/**
 * The bytes, a piece at a time and only when asked for, so that what has been
 * unpacked and not yet read stays small.
 * @param {Uint8Array} bytes
 * @returns {ReadableStream<Uint8Array<ArrayBuffer>>}
 */
function source(bytes) {
  let at = 0;
  return new ReadableStream({
    pull(out) {
      if (at < bytes.length) out.enqueue(bytes.slice(at, at += piece));
      else out.close();
    },
  }, {highWaterMark: 0});
}

/**
 * @param {ReadableStream<Uint8Array>} stream
 * @param {number} most
 */
async function collect(stream, most) {
  const reader = stream.getReader();
  /** @type {Uint8Array[]} */
  const parts = [];
  let length = 0;
  for (;;) {
    const {done, value} = await reader.read();
    if (done) break;
    length += value.length;
    if (length > most) {
      reader.cancel().catch(() => {});
      return null;
    }
    parts.push(value);
  }
  const all = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}

/** @param {Uint8Array} bytes */
function toBase64(bytes) {
  let letters = '';
  for (let at = 0; at < bytes.length; at += 8192) letters += String.fromCharCode(...bytes.subarray(at, at + 8192));
  return btoa(letters).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

/** @param {string} text @returns {Uint8Array | null} */
function fromBase64(text) {
  if (!/^[A-Za-z0-9_-]*$/.test(text)) return null;
  try {
    return Uint8Array.from(atob(text.replaceAll('-', '+').replaceAll('_', '/')), letter => letter.charCodeAt(0));
  } catch {
    return null;
  }
}
