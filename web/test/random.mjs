// Random inputs that are the same in every run.

/** A generator of numbers from 0 to n-1 (mulberry32). @param {number} seed */
export function dice(seed) {
  let a = seed >>> 0;
  const roll = (/** @type {number} */ n) => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), a | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return Math.floor(((t ^ (t >>> 14)) >>> 0) / 4294967296 * n);
  };
  const pick = (/** @type {any} */ list) => list[roll(list.length)];
  return {
    roll, pick,
    /** Text of up to most pieces from pieces. @param {readonly string[]} pieces @param {number} most */
    text: (pieces, most) => Array.from({length: roll(most + 1)}, () => pick(pieces)).join(''),
    /** Text with a few changes: cut, doubled, swapped, or with pieces put in. @param {string} text @param {readonly string[]} pieces */
    mutate(text, pieces) {
      for (let i = roll(4); i >= 0; i--) {
        const at = roll(text.length + 1), to = at + roll(8);
        switch (roll(4)) {
          case 0: text = text.slice(0, at) + text.slice(to); break;
          case 1: text = text.slice(0, at) + pick(pieces) + text.slice(at); break;
          case 2: text = text.slice(0, to) + text.slice(at); break;
          default: text = text.slice(0, at) + pick(pieces) + text.slice(at + 1);
        }
      }
      return text;
    },
  };
}

/** Keys and texts that go wrong where they are not taken as data. */
export const nasty = ['__proto__', 'constructor', 'prototype', 'toString', 'hasOwnProperty', 'length', '0', '', ' ', '<img src=x onerror=alert(1)>',
  '\u0000', '\u202e', '\ud800', '\u{1f331}', '"', '\\', ']', '[', '.', '\n', 'é', '½', '"]["'];

/** A random JSON value. @param {ReturnType<typeof dice>} d @param {number} depth @returns {any} */
export function anyValue(d, depth) {
  switch (d.roll(depth > 0 ? 8 : 5)) {
    case 0: return d.roll(1000);
    case 1: return d.pick([null, true, false, 0.5, -1, 1e21]);
    case 2: return d.pick(nasty);
    case 3: return d.pick(['3 in', '60 ft x 4 ft', 'bark-fines', '']);
    case 4: return d.text(nasty, 3);
    case 5: return Array.from({length: d.roll(4)}, () => anyValue(d, depth - 1));
    default: return Object.fromEntries(Array.from({length: d.roll(5)}, () => [d.pick([...nasty, 'tasks', 'layer', 'a b']), anyValue(d, depth - 1)]));
  }
}
