// @ts-check
// How this device likes the page: language, decimal mark, light or dark. Kept
// if there is somewhere to keep it; forgotten otherwise.

/** @param {string} name */
const key = name => 'barrow.setting.' + name;

/** @param {string} name */
export function setting(name) {
  try {
    return localStorage.getItem(key(name));
  } catch {
    return null;
  }
}

/** @param {string} name @param {string} value */
export function saveSetting(name, value) {
  try {
    localStorage.setItem(key(name), value);
  } catch { /* refused or full: it holds for this visit */ }
}
