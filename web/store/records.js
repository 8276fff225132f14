// @ts-check
// The records of all saved jobs on a device. One key holds one job's record; an
// index beside them makes the list quick and is made again from the records when
// it is wrong. What does not read is set aside, never thrown away.

import {say} from '../text/say.js';
import {entryOf, parseIndex, parseRecord, textOf, tidyName, version} from './record.js';

/**
 * @import {Device} from './device.js'
 * @import {Entry, Outcome, Saved} from './record.js'
 */

export const records = 'barrow.job.';
export const lastKey = 'barrow.last';
const aside = 'barrow.aside.', index = 'barrow.index';
export const largestSaved = 1024 * 1024; // bytes of a job's JSON
export const largestPlan = 256 * 1024; // characters of a plan kept for the next start

/** @typedef {ReturnType<typeof openRecords>} Records */

/** @param {Device} device */
export function openRecords({memory, read, onDevice, write, drop, keys, become}) {
  /** @type {{key: string, why: 'broken' | 'newer'}[]} */
  const unread = [];

  /** The record at key, or null; what does not read is set aside. @param {string} key @returns {Saved | null} */
  function recordAt(key) {
    const text = read(key);
    if (text === null) return null;
    const {record, why} = parseRecord(text, key.slice(records.length));
    if (record) return record;
    if (!unread.some(other => other.key === key)) {
      if (why === 'newer') unread.push({key, why});
      else setAside(key, text);
    }
    return null;
  }

  /** Keeps text that does not read under another key. @param {string} key @param {string} text */
  function setAside(key, text) {
    for (let n = 1; ; n++) {
      const other = `${aside}${key.slice('barrow.'.length)}.${n}`;
      const there = onDevice(other);
      if (there !== null && there !== text) continue;
      const moved = there !== null || write(other, text) === '';
      if (moved) drop(key); // or it stays where it is, for want of room
      const at = moved ? other : key;
      if (!unread.some(item => item.key === at)) unread.push({key: at, why: 'broken'});
      return moved;
    }
  }

  /** @returns {Entry[]} */
  function entries() {
    const ids = new Set(keys(records).map(key => key.slice(records.length)));
    const listed = parseIndex(read(index));
    const right = listed !== null && listed.length + unread.filter(({key}) => key.startsWith(records)).length === ids.size && listed.every(({id}) => ids.has(id));
    if (right) return listed;
    const made = [...ids].map(id => recordAt(records + id)).filter(record => record !== null).map(entryOf);
    writeIndex(made);
    return made;
  }

  /** @param {Entry[]} list */
  function writeIndex(list) {
    const text = JSON.stringify({v: version, jobs: list});
    if (write(index, text) !== '') memory.set(index, text);
  }

  /** @param {Saved} record */
  function note(record) {
    writeIndex([...entries().filter(({id}) => id !== record.id), entryOf(record)]);
    if (read(lastKey) !== record.id && write(lastKey, record.id) !== '') memory.set(lastKey, record.id);
  }

  /** Room for another write: the plans kept beside other jobs, longest untouched first. @param {string} id */
  function makeRoom(id) {
    for (const entry of entries().sort((a, b) => a.typedAt - b.typedAt)) {
      const key = records + entry.id;
      const record = entry.id === id || memory.has(key) ? null : recordAt(key);
      if (record?.plan && write(key, textOf({...record, plan: ''})) === '') return true;
    }
    return false;
  }

  /** @param {Saved} record @returns {Outcome} */
  function put(record) {
    const key = records + record.id;
    let why = /** @type {'' | 'full' | 'refused' | 'large'} */ (bytes(JSON.stringify(record.doc)) > largestSaved ? 'large' : '');
    let next = {...record, rev: record.rev + 1, plan: record.plan?.length <= largestPlan ? record.plan : ''};
    if (why === '') {
      why = write(key, textOf(next));
      if (why === 'full' && next.plan) why = write(key, textOf(next = {...next, plan: ''}));
      while (why === 'full' && makeRoom(record.id)) why = write(key, textOf(next));
    }
    if (why === '') {
      note(next);
      if (![...memory.keys()].some(other => other.startsWith(records))) become('');
      return {kept: true, record: next};
    }
    memory.set(key, textOf(record)); // rev as it is on the device
    note(record);
    if (why !== 'large') become(why);
    return {kept: false, record, why, need: bytes(textOf(record)), text: words(why)};
  }

  /** A name that no other job has: "Berry walk 2". @param {string} name @param {string} [except] id */
  function freeName(name, except) {
    const wanted = tidyName(name) || say('My job');
    const taken = new Set(entries().filter(({id}) => id !== except).map(entry => fold(entry.name)));
    if (!taken.has(fold(wanted))) return wanted;
    const stem = wanted.replace(/ \d{1,6}$/, '') || wanted;
    for (let n = 2; ; n++) {
      const next = `${stem} ${n}`;
      if (!taken.has(fold(next))) return next;
    }
  }

  return {unread, recordAt, setAside, entries, writeIndex, makeRoom, put, freeName};
}

/**
 * What a page says when a job was not saved.
 * @param {'full' | 'large' | 'refused' | 'newer'} why
 */
export function words(why) {
  switch (why) {
    case 'full': return say('There is no room left to save this job on this device. Save it as a file, or delete a job that you no longer need.');
    case 'large': return say('This job is too large to be saved as you type. Save it as a file before you close the page.');
    case 'newer': return say('This job was last saved by a newer Barrow. Load the page again before you change it, or save a copy.');
    default: return say('This browser does not let the page save here, so the job is gone when the page closes. Save it as a file, or turn off private browsing.');
  }
}

/** How many bytes a text takes. @param {string} text */
export const bytes = text => new TextEncoder().encode(text).length;

/** @param {string} name */
const fold = name => name.normalize('NFKC').toLowerCase();
