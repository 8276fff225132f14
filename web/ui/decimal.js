// @ts-check
// Decimal commas, where they are the habit: as points in the document, and back.

/** Digits with points and commas between them. */
export const figure = /\d+(?:[.,]\d+)+/g;
const decimalComma = /^\d+,\d+$/;
const thousands = /^[1-9]\d{0,2}(?:\.\d{3})+(?:,\d+)?$/;

/** Points as commas, commas as points. @param {string} digits */
export const swap = digits => digits.replace(/[.,]/g, mark => mark === ',' ? '.' : ',');

/**
 * Decimal commas as points. Where 1,5 is one and a half, 1.500 is fifteen
 * hundred: it becomes 1,500, which the library refuses and explains, rather
 * than one and a half. 1.5 can only be meant as it stands.
 * @param {string} text
 * @param {boolean} comma
 */
export function point(text, comma) {
  if (!comma) return text;
  return text.replace(figure, digits => decimalComma.test(digits) || thousands.test(digits) ? swap(digits) : digits);
}

/**
 * Parts: a comma parts them, and a semicolon too. Between two digits a comma is
 * a decimal one, unless a name stands on both sides: "bark 3,1 peat".
 * @param {string} text
 * @param {boolean} comma
 */
export function partsRead(text, comma) {
  const list = text.split(/\s*;\s*/).filter(part => part !== '').join(', ') || text;
  if (!comma) return list;
  return list.split(/(,(?!\d)|(?<!\d),)/).map(part => {
    const [before, after, more] = part.split(/(?<!\S)\d+,\d+(?!\S)/).map(name => name.trim());
    const one = after !== undefined && more === undefined && (before === '') !== (after === '');
    return one ? part.replace(',', '.') : part;
  }).join('');
}
