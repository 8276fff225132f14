// @ts-check
// The browser's storage, which may be refused, be full or hold anything. What it
// does not take stands in memory until the page closes.

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

/** @typedef {ReturnType<typeof openDevice>} Device */

/** @param {Storage | null} storage such as deviceStorage() */
export function openDevice(storage) {
  /** @type {Map<string, string>} */
  const memory = new Map(); // by key, what the device did not take
  /** @type {'' | 'refused' | 'full'} */
  let problem = '';

  /** Says why the device takes nothing from now on; '' is that it does. @param {'' | 'refused' | 'full'} why */
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

  const probe = 'barrow.probe';
  const why = write(probe, '1');
  if (why === '') drop(probe);
  else become(why);
  return {memory, read, onDevice, write, drop, keys, become, get problem() { return problem; }};
}

/** @param {unknown} error */
function isFull(error) {
  const {name, code} = /** @type {Partial<DOMException>} */ (error) ?? {};
  return name === 'QuotaExceededError' || name === 'NS_ERROR_DOM_QUOTA_REACHED' || code === 22 || code === 1014;
}
