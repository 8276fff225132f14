import test from 'node:test';
import assert from 'node:assert/strict';
import {existsSync, readFileSync} from 'node:fs';
import {chooseLanguage, decimalMark, language, languages, mark, say, sayCount, setLanguage} from '../text/say.js';
import {modules} from './modules.mjs';

test('what is said', t => {
  t.after(() => setLanguage());
  assert.equal(say('Saved as {name}', {name: 'Berry walk'}), 'Saved as Berry walk');
  assert.equal(say('{a} of {a}, {b}', {a: '$&', b: '{a}'}), '$& of $&, {a}', 'values are text, not templates');
  assert.equal(say('Hello {name}'), 'Hello {name}');
  assert.equal(say('Hello {toString}', {}), 'Hello {toString}');
  assert.equal(sayCount(1, '{n} job', '{n} jobs'), '1 job');
  assert.equal(sayCount(0, '{n} job', '{n} jobs'), '0 jobs');
  assert.equal(mark('Layer'), 'Layer');
  assert.equal(language(), 'en');
  setLanguage({language: 'es', page: {'Saved as {name}': 'Se guardó como {name}', 'Empty': ''}});
  assert.equal(language(), 'es');
  assert.equal(say('Saved as {name}', {name: 'Paseo'}), 'Se guardó como Paseo');
  assert.equal(say('Empty'), 'Empty', 'what is missing is said in English');
  assert.equal(say('Not there'), 'Not there');
  assert.equal(say('constructor'), 'constructor');
  setLanguage({language: 'es', page: ['af4ea6', 'Quedó como {name}']});
  assert.equal(say('Saved as {name}', {name: 'Paseo'}), 'Quedó como Paseo', 'as the build writes it');
  assert.equal(say('Not there'), 'Not there');
  setLanguage(JSON.parse('{"language": "es"}'));
  assert.equal(say('Saved as {name}', {name: 1}), 'Saved as 1');
});

test('the language to start with', () => {
  assert.equal(chooseLanguage(['es-MX', 'en']), 'es');
  assert.equal(chooseLanguage(['fr', 'ES_us', 'en']), 'es');
  assert.equal(chooseLanguage(['en-GB', 'es']), 'en');
  assert.equal(chooseLanguage(['fr', 'de']), 'en');
  assert.equal(chooseLanguage(['es'], 'en'), 'en');
  assert.equal(chooseLanguage(['es'], 'klingon'), 'es');
  assert.equal(chooseLanguage(undefined, null), 'en');
  assert.equal(chooseLanguage(/** @type {any} */ ([null, 3])), 'en');
});

test('the decimal mark of a place', () => {
  for (const [locale, mark] of [['es-MX', '.'], ['es-US', '.'], ['es-ES', ','], ['es', ','], ['en-US', '.'], ['de-DE', ','], ['ar-EG', '.'], ['', '.'], [undefined, '.'], ['not a locale', '.']]) {
    assert.equal(decimalMark(locale), mark, locale);
  }
  assert.equal(decimalMark('es-ES', '.'), '.');
  assert.equal(decimalMark('en-US', ','), ',');
  assert.equal(decimalMark('en-US', 'x'), '.');
});

const web = new URL('../', import.meta.url);
const literal = String.raw`'(?:[^'\\\n]|\\.)*'|"(?:[^"\\\n]|\\.)*"`;

/** The text of a literal of JavaScript. @param {string} quoted */
const meaning = quoted => JSON.parse(`"${quoted.slice(1, -1).replace(/\\'/g, "'").replace(/(?<!\\)"/g, '\\"')}"`);

/** Every text that a source says, with where. @param {string} name @param {string} source */
function saidIn(name, source) {
  /** @type {[string, string][]} */
  const found = [], odd = [];
  for (const match of source.matchAll(/(?<![\w.$])(say|sayCount|mark)\(\s*/g)) {
    const line = source.slice(source.lastIndexOf('\n', match.index) + 1, match.index);
    if (/^\s*(\*|\/\/|\/\*)|\s\/\/\s/.test(line) || /function\s*$/.test(line)) continue;
    const where = `${name}:${source.slice(0, match.index).split('\n').length}`;
    const rest = source.slice(match.index + match[0].length);
    if (rest[0] === '`') odd.push(`${where} ${rest.slice(0, 40)}`);
    if (match[1] === 'sayCount') {
      const two = new RegExp(`^[^'"\`;]*?,\\s*(${literal})\\s*,\\s*(${literal})`).exec(rest);
      if (two) found.push([meaning(two[1]), where], [meaning(two[2]), where]);
      else odd.push(`${where} ${rest.slice(0, 40)}`);
    } else {
      // Both ends of a choice in the brackets are literals: say(a ? 'x' : 'y').
      const text = new RegExp(`^(?:(${literal})|[^'"\`(),;]*\\?\\s*(${literal})\\s*:\\s*(${literal})\\s*[,)])`).exec(rest);
      for (const quoted of text?.slice(1) ?? []) if (quoted) found.push([meaning(quoted), where]);
      if (text && new RegExp(`^(?:${literal})\\s*\\+`).test(rest)) odd.push(`${where} ${rest.slice(0, 40)}`);
    }
  }
  return {found, odd};
}

test('the search for what is said finds it', () => {
  const {found, odd} = saidIn('x.js', `
    say('One'); say("It's two", {a: 1}); h('p', null, say('Line {n}', {n}));
    // say('not this')
    /** say('nor this') */
    x(a ? say('It\\'s') : mark('Three')); sayCount(n, '{n} job', '{n} jobs'); export function say(template) {} essay('no'); a.say('no');
    say(open ? 'Close' : 'Open'); say(table[i].label);
    say(\`bad \${x}\`); say('bad' + x);`);
  assert.deepEqual(found.map(([text]) => text), ['One', "It's two", 'Line {n}', "It's", 'Three', '{n} job', '{n} jobs', 'Close', 'Open', 'bad']);
  assert.deepEqual(odd.map(text => text.replace(/:.*/, '')).length, 2);
});

test('every text of the page is in the language file, and no other', () => {
  const sources = modules();
  assert.ok(sources.length >= 40);
  /** @type {Map<string, string>} */
  const said = new Map();
  /** @type {string[]} */
  const wrong = [];
  for (const name of sources) {
    const {found, odd} = saidIn(name, readFileSync(new URL(name, web), 'utf8'));
    for (const [text, where] of found) said.set(text, said.get(text) ?? where);
    wrong.push(...odd.map(text => `not one plain text, which no translator could find: ${text}`));
  }
  assert.ok(said.size > 0);
  const holes = (/** @type {string} */ text) => (text.match(/\{\w+\}/g) ?? []).sort().join(' ');
  for (const language of languages.filter(word => word !== 'en')) {
    const url = new URL(`text/${language}.json`, web);
    assert.ok(existsSync(url), `text/${language}.json is there`);
    const file = JSON.parse(readFileSync(url, 'utf8'));
    assert.equal(file.language, language);
    for (const [text, where] of said) {
      if (!Object.hasOwn(file.page, text)) wrong.push(`missing from text/${language}.json: ${JSON.stringify(text)} (${where})`);
    }
    for (const [text, other] of Object.entries(file.page)) {
      if (!said.has(text)) wrong.push(`left over in text/${language}.json: ${JSON.stringify(text)}`);
      else if (typeof other !== 'string' || other.trim() === '') wrong.push(`empty in text/${language}.json: ${JSON.stringify(text)}`);
      else if (holes(text) !== holes(other)) wrong.push(`other placeholders in text/${language}.json: ${JSON.stringify(text)}`);
    }
  }
  assert.equal(wrong.length, 0, `\n${wrong.join('\n')}\n`);
});
