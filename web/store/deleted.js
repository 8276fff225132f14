// @ts-check
// The job that was deleted last, which can be brought back.

import {isObject, parse, parseRecord, version} from './record.js';
import {records} from './records.js';

/**
 * @import {Device} from './device.js'
 * @import {Outcome} from './record.js'
 * @import {Records} from './records.js'
 */

const deletedKey = 'barrow.deleted';
export const daysToRestore = 30;
const day = 24 * 60 * 60 * 1000;

/**
 * @param {Device} device
 * @param {Records} all
 * @param {{now: () => number, newId: () => string}} options
 */
export function openDeleted({memory, read, write, drop}, {recordAt, setAside, entries, writeIndex, makeRoom, put, freeName}, {now, newId}) {
  /** What was deleted last, or null. */
  function last() {
    const text = read(deletedKey);
    if (text === null) return null;
    const found = parse(text), kept = isObject(found) ? found : {};
    const {record} = parseRecord(JSON.stringify(kept.record ?? null), kept.record?.id);
    if (kept.v > version) return null;
    if (!record || typeof kept.token !== 'string' || !Number.isFinite(kept.at)) {
      setAside(deletedKey, text);
      return null;
    }
    if (now() - kept.at > daysToRestore * day) {
      drop(deletedKey);
      return null;
    }
    return {token: kept.token, at: kept.at, record};
  }

  last(); // what does not read is set aside at once
  return {
    /**
     * Deletes a job; restore(token) brings it back until the next one is
     * deleted, at most 30 days.
     * @param {string} id
     * @returns {{token: string, name: string} | null} null where there is none
     */
    remove(id) {
      const key = records + String(id), record = recordAt(key);
      if (!record) return null;
      const token = newId();
      const text = JSON.stringify({v: version, token, at: now(), record: {...record, v: version, plan: ''}});
      const left = entries().filter(entry => entry.id !== record.id);
      let why = write(deletedKey, text);
      drop(key);
      writeIndex(left);
      if (why === 'full') why = write(deletedKey, text); // there is room now
      while (why === 'full' && makeRoom(record.id)) why = write(deletedKey, text);
      if (why !== '') memory.set(deletedKey, text);
      return {token, name: record.name};
    },

    /** What can be brought back: after a reload too. */
    deleted() {
      const kept = last();
      return kept && {token: kept.token, name: kept.record.name, at: kept.at};
    },

    /** @param {string} token of remove or deleted @returns {Outcome | null} null where it is gone */
    restore(token) {
      const kept = last();
      if (!kept || kept.token !== token) return null;
      const {record} = kept;
      const gone = read(records + record.id) === null;
      const outcome = put({...record, id: gone ? record.id : newId(), name: freeName(record.name), rev: gone ? record.rev : 0});
      if (outcome.kept) drop(deletedKey);
      return outcome;
    },
  };
}
