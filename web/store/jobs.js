// @ts-check
// Saved jobs on this device, over a storage like localStorage.
//
// One key holds one job's record; an index beside them makes the list quick and
// is made again from the records when it is wrong. What does not read is set
// aside, never thrown away. Where the device does not let the page save, or has
// no room, the page goes on in memory and says so.

import {say} from '../text/say.js';

/**
 * A saved job.
 * @typedef {object} Saved
 * @property {string} id
 * @property {string} name
 * @property {Record<string, any>} doc the job document, as typed
 * @property {Record<string, any> | null} home the document as it left home
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
 */

const version = 1;
const records = 'barrow.job.', aside = 'barrow.aside.', index = 'barrow.index', lastKey = 'barrow.last', deletedKey = 'barrow.deleted';
export const largestSaved = 1024 * 1024; // bytes of a job's JSON
export const largestPlan = 256 * 1024; // characters of a plan kept for the next start
export const daysToRestore = 30;
const day = 24 * 60 * 60 * 1000;

/** The browser's storage, or null where it is refused. */
export function deviceStorage() {
  try {
    return globalThis.localStorage ?? null;
  } catch {
    return null;
  }
}

/**
 * Asks the browser not to clear what is saved when space is short. Ask when
 * somebody has saved something, since it may ask them in turn.
 * @returns {Promise<boolean>} whether it will stay
 */
export async function askToStay() {
  try {
    const storage = globalThis.navigator?.storage;
    return (await storage?.persisted?.()) || (await storage?.persist?.()) || false;
  } catch {
    return false;
  }
}

/**
 * @param {Storage | null} storage
 * @param {{now?: () => number, newId?: () => string, events?: Pick<EventTarget, 'addEventListener' | 'removeEventListener'>}} [options]
 */
export function openStore(storage, {now = Date.now, newId = randomId, events = globalThis.window} = {}) {
  /** @type {Map<string, string>} */
  const memory = new Map(); // by key, what the device did not take
  /** @type {{key: string, why: 'broken' | 'newer'}[]} */
  const unread = [];
  /** @type {'' | 'refused' | 'full'} */
  let problem = '';

  /** @param {'' | 'refused' | 'full'} why */
  function become(why) {
    problem = why;
  }

  /** @param {string} key @returns {string | null} */
  function read(key) {
    if (memory.has(key)) return memory.get(key) ?? null;
    return onDevice(key);
  }

  /** @param {string} key @returns {string | null} */
  function onDevice(key) {
    try {
      return storage?.getItem(key) ?? null;
    } catch {
      become('refused');
      return null;
    }
  }

  /** Puts text on the device; why not, or ''. @param {string} key @param {string} text @returns {'' | 'full' | 'refused'} */
  function write(key, text) {
    try {
      if (!storage) throw new Error('no storage');
      storage.setItem(key, text);
      memory.delete(key);
      return '';
    } catch (error) {
      return isFull(error) ? 'full' : 'refused';
    }
  }

  /** @param {string} key */
  function drop(key) {
    memory.delete(key);
    try {
      storage?.removeItem(key);
    } catch {
      become('refused');
    }
  }

  /** All keys there are that start so. @param {string} prefix */
  function keys(prefix) {
    const all = new Set([...memory.keys()].filter(key => key.startsWith(prefix)));
    try {
      for (let i = 0; storage && i < storage.length; i++) {
        const key = storage.key(i);
        if (key?.startsWith(prefix)) all.add(key);
      }
    } catch {
      become('refused');
    }
    return [...all];
  }

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

  /** What was deleted last, or null. */
  function deleted() {
    const text = read(deletedKey);
    if (text === null) return null;
    const kept = parse(text);
    const {record} = parseRecord(JSON.stringify(kept?.record ?? null), kept?.record?.id);
    if (kept?.v > version) return null;
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

  const store = {
    /** Whether the device keeps what is saved; text says why not. */
    get status() { return {can: problem === '', why: problem, text: problem === '' ? '' : words(problem)}; },

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
     * @param {Record<string, any>} doc
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
     * @returns {Outcome | {kept: false, conflict: Saved, record: Saved}}
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
      const last = deleted();
      return last && {token: last.token, name: last.record.name, at: last.at};
    },

    /** @param {string} token of remove or deleted @returns {Outcome | null} null where it is gone */
    restore(token) {
      const last = deleted();
      if (!last || last.token !== token) return null;
      const {record} = last;
      const gone = read(records + record.id) === null;
      const outcome = put({...record, id: gone ? record.id : newId(), name: freeName(record.name), rev: gone ? record.rev : 0});
      if (outcome.kept) drop(deletedKey);
      return outcome;
    },

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
      const hear = (/** @type {any} */ event) => {
        if (event.storageArea && event.storageArea !== storage) return;
        if (event.key === null) fn({id: '', record: null});
        else if (String(event.key).startsWith(records)) {
          const id = event.key.slice(records.length);
          if (event.newValue === null) fn({id, record: null});
          else {
            const {record} = parseRecord(String(event.newValue), id);
            if (record) fn({id, record});
          }
        }
      };
      events?.addEventListener('storage', hear);
      return () => events?.removeEventListener('storage', hear);
    },
  };

  const probe = 'barrow.probe';
  const why = write(probe, '1');
  if (why === '') drop(probe);
  else become(why);
  entries(); // an index that is wrong is made again
  deleted();
  return store;
}

/**
 * What a page says when a job was not saved.
 * @param {'full' | 'large' | 'refused' | 'newer'} why
 */
function words(why) {
  switch (why) {
    case 'full': return say('There is no room left to save this job on this device. Save it as a file, or delete a job that you no longer need.');
    case 'large': return say('This job is too large to be saved as you type. Save it as a file before you close the page.');
    case 'newer': return say('This job was last saved by a newer Barrow. Load the page again before you change it, or save a copy.');
    default: return say('This browser does not let the page save here, so the job is gone when the page closes. Save it as a file, or turn off private browsing.');
  }
}

/** @param {unknown} error */
function isFull(error) {
  const {name, code} = /** @type {any} */ (error) ?? {};
  return name === 'QuotaExceededError' || name === 'NS_ERROR_DOM_QUOTA_REACHED' || code === 22 || code === 1014;
}

const bytes = (/** @type {string} */ text) => new TextEncoder().encode(text).length;

/** @param {string} text @returns {any} */
function parse(text) {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

const isObject = (/** @type {any} */ value) => typeof value === 'object' && value !== null && !Array.isArray(value);
const isCount = (/** @type {any} */ value) => Number.isSafeInteger(value) && value >= 0;

/** @param {Saved} record */
const textOf = ({id, name, doc, home, ticks, place, typedAt, rev, plan}) => JSON.stringify({v: version, id, name, doc, home, ticks, place, typedAt, rev, plan});

/**
 * A record's text read: the record, or why not. What is missing beside the
 * document is made up for; without a document there is no record.
 * @param {string} text
 * @param {string} id
 * @returns {{record: Saved, why: null} | {record: null, why: 'broken' | 'newer'}}
 */
function parseRecord(text, id) {
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
const entryOf = ({id, name, typedAt, rev}) => ({id, name, typedAt, rev});

/** @param {string | null} text @returns {Entry[] | null} */
function parseIndex(text) {
  const kept = text === null ? null : parse(text);
  const ok = isObject(kept) && kept.v === version && Array.isArray(kept.jobs) &&
    kept.jobs.every((/** @type {any} */ job) => isObject(job) && typeof job.id === 'string' && typeof job.name === 'string' && Number.isFinite(job.typedAt) && isCount(job.rev)) &&
    new Set(kept.jobs.map((/** @type {any} */ job) => job.id)).size === kept.jobs.length;
  return ok ? kept.jobs.map(entryOf) : null;
}

/** A name on one line, not too long. @param {unknown} name */
function tidyName(name) {
  return typeof name === 'string' ? [...name.replace(/[\p{Cc}\p{Zl}\p{Zp}\u202a-\u202e\u2066-\u2069]+/gu, ' ').trim()].slice(0, 120).join('').trim() : '';
}

/** @param {string} name */
const fold = name => name.normalize('NFKC').toLowerCase();

function randomId() {
  return Array.from(crypto.getRandomValues(new Uint8Array(8)), byte => byte.toString(16).padStart(2, '0')).join('');
}
