// @ts-check
// Saved jobs on this device, over a storage like localStorage. Where the device
// does not let the page save, or has no room, the page goes on in memory and
// says so.

import {say} from '../text/say.js';
import {openDeleted} from './deleted.js';
import {openDevice} from './device.js';
import {parseRecord, textOf, tidyName} from './record.js';
import {bytes, lastKey, openRecords, records, words} from './records.js';

/** @import {Doc, Entry, Outcome, Saved} from './record.js' */

/** @typedef {ReturnType<typeof openStore>} Store */

/**
 * @param {Storage | null} storage
 * @param {{now?: () => number, newId?: () => string, events?: Pick<EventTarget, 'addEventListener' | 'removeEventListener'>}} [options]
 */
export function openStore(storage, {now = Date.now, newId = randomId, events = globalThis.window} = {}) {
  const device = openDevice(storage), all = openRecords(device);
  const {memory, read, onDevice, write} = device, {unread, recordAt, setAside, entries, put, freeName} = all;
  entries(); // an index that is wrong is made again

  const store = {
    /** Whether the device keeps what is saved; text says why not. */
    get status() { return {can: device.problem === '', why: device.problem, text: device.problem === '' ? '' : words(device.problem)}; },

    /** The saved jobs, the one typed into last first. @returns {Entry[]} */
    list: () => entries().sort((a, b) => b.typedAt - a.typedAt || (a.id < b.id ? -1 : 1)),

    /** @param {string} id @returns {Saved | null} */
    load: id => recordAt(records + String(id)),

    /** What did not read, where it is now; text(key) is what it holds. */
    unread: () => unread.map(item => ({...item})),
    /** @param {string} key of unread() */
    text: key => read(key),

    freeName,

    /**
     * A new saved job.
     * @param {Doc} doc
     * @param {string} [name]
     * @param {Partial<Saved>} [more] what else it starts with
     * @returns {Outcome}
     */
    create(doc, name, more = {}) {
      const record = {home: null, ticks: {}, place: '', plan: '', ...more, doc, name: freeName(name ?? doc?.name), typedAt: now(), id: newId(), rev: 0};
      return put(record);
    },

    /**
     * Saves a record that was loaded, created or saved before, unless another
     * tab has saved it since: then nothing is stored and conflict is what the
     * device has. To store this one all the same, give it the other's rev.
     * @param {Saved} record
     * @returns {Outcome}
     */
    save(record) {
      const key = records + record.id;
      const text = onDevice(key);
      const {record: stored, why} = text === null ? {record: null, why: null} : parseRecord(text, record.id);
      if (stored && stored.rev !== record.rev) return {kept: false, conflict: stored, record};
      if (why === 'newer') {
        memory.set(key, textOf(record));
        return {kept: false, record, why, text: words(why)};
      }
      if (why === 'broken' && text !== null && !setAside(key, text)) {
        memory.set(key, textOf(record));
        return {kept: false, record, why: 'full', need: bytes(textOf(record)), text: words('full')};
      }
      const before = memory.has(key) ? parseRecord(memory.get(key) ?? '', record.id).record : stored;
      const typed = !before || JSON.stringify(before.doc) !== JSON.stringify(record.doc);
      return put({...record, name: tidyName(record.name) || say('My job'), typedAt: typed ? now() : before.typedAt});
    },

    /** The same under a new id and a name of its own. @param {Saved} record @param {string} [name] @returns {Outcome} */
    saveAsCopy: (record, name) => store.create(record.doc, name ?? record.name, {home: record.home, ticks: record.ticks, place: record.place, plan: record.plan}),

    ...openDeleted(device, all, {now, newId}),

    /** The job to open at start, or null: saved last, or typed into last. @returns {Saved | null} */
    last() {
      const id = read(lastKey);
      const record = id === null ? null : recordAt(records + id);
      if (record) return record;
      for (const entry of store.list()) {
        const other = recordAt(records + entry.id);
        if (other) return other;
      }
      return null;
    },

    /** The job to open at the next start. @param {string} id */
    open(id) {
      if (read(lastKey) !== id && write(lastKey, id) !== '') memory.set(lastKey, id);
    },

    /**
     * Calls fn when another tab saves or deletes a job: record is null where it
     * is gone; id is '' where all was cleared. Returns the way to stop it.
     * @param {(change: {id: string, record: Saved | null}) => void} fn
     */
    watch(fn) {
      /** @param {Event} event */
      const hear = event => {
        const {key, newValue, storageArea} = /** @type {StorageEvent} */ (event);
        if (storageArea && storageArea !== storage) return;
        if (key === null) fn({id: '', record: null});
        else if (String(key).startsWith(records)) {
          const id = key.slice(records.length);
          if (newValue === null) fn({id, record: null});
          else {
            const {record} = parseRecord(String(newValue), id);
            if (record) fn({id, record});
          }
        }
      };
      events?.addEventListener('storage', hear);
      return () => events?.removeEventListener('storage', hear);
    },
  };

  return store;
}

function randomId() {
  return Array.from(crypto.getRandomValues(new Uint8Array(8)), byte => byte.toString(16).padStart(2, '0')).join('');
}
