// @ts-check
// The language of the page and of its program.
import {languageBytes} from '../shell/assets.js';
import {setLanguage} from '../text/say.js';

/**
 * @import {Program} from '../shell/program.js'
 * @import {State} from '../state/types.d.ts'
 */

/**
 * Changes the language: of the page at once, of the program in all that it is
 * asked after this.
 * @param {State} state @param {Program} program @param {string} language
 */
export async function changeLanguage(state, program, language) {
  const bytes = language === 'en' ? new Uint8Array() : await languageBytes(language);
  state.language = language;
  setLanguage(language === 'en' ? null : JSON.parse(new TextDecoder().decode(bytes)));
  document.documentElement.lang = language;
  program.call('language', bytes, new TextEncoder().encode(state.comma ? ',' : '.')).catch(() => {}); // what is asked next fails too, and is told
}

/** Says everything again: what is shown was said in another language. @param {State} state @param {Program} program */
export async function sayAgain(state, program) {
  Object.assign(state, {planFor: null, restFor: null, problemsFor: null, catalog: null});
  state.redraw();
  await state.recompute();
  state.catalog = await program.ask('catalog');
  state.redraw();
}
