// @ts-check
// The shapes that ground may have, and an area in one line: "circle 14 ft".
import {asText} from '../ui/entry.js';
import {mark} from '../text/say.js';

/** Each with its label. @type {[string, string][]} */
export const shapes = [
  ['rectangle', mark('Rectangle')],
  ['circle', mark('Circle')],
  ['area', mark('Area already known')],
  ['ellipse', mark('Ellipse')],
  ['triangle', mark('Triangle')],
  ['ring', mark('Ring')],
  ['strip', mark('Strip along a line')],
  ['corners', mark('Corner by corner')],
];

/** Their names in a document. */
export const names = shapes.map(([name]) => name);

/** Those whose lengths can stand in one line after the name. */
export const worded = ['rectangle', 'circle', 'ellipse', 'triangle', 'ring'];
const inSpanish = new Map(Object.entries({rectangulo: 'rectangle', circulo: 'circle', elipse: 'ellipse', triangulo: 'triangle', anillo: 'ring'}));

/** The shape that an area in one line has, and its lengths. @param {string} text */
export function readLine(text) {
  const [, word, rest] = /^\s*(\p{L}+)(?:\s+(.*))?$/su.exec(text) ?? [];
  const plain = word?.toLowerCase().normalize('NFD').replace(/\p{M}/gu, '') ?? '', shape = inSpanish.get(plain) ?? plain;
  if (worded.includes(shape)) return {shape, lengths: rest ?? ''};
  return {shape: /[x×✕*]|\s(?:by|por)\s/i.test(text) ? 'rectangle' : 'area', lengths: text};
}

/** One line for a shape. @param {string} shape @param {unknown} lengths */
export const writeLine = (shape, lengths) => lengths === undefined ? undefined : shape === 'rectangle' || shape === 'area' ? lengths : `${shape} ${asText(lengths)}`;
