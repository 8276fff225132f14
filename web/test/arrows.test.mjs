import test from 'node:test';
import assert from 'node:assert/strict';
import {readFileSync, readdirSync} from 'node:fs';
import {posix as path} from 'node:path';
import {folders, modules} from './modules.mjs';

const web = new URL('../', import.meta.url);

/** How high a folder stands. @param {string} name */
const height = name => folders.findIndex(folder => [folder].flat().includes(name));

/** What a module imports, types too. @param {string} text */
const importsOf = text => [...text.matchAll(/(?:from|import\(|import) ?'(\.[^']*)'/g)].map(found => found[1]);

test('what a module imports is found', () => {
  const text = "import {h} from './h.js';\nimport './a.js';\nexport {b} from '../b.js';\nawait import('./c.js');\n/** @param {import('../d.d.ts').D} d */\n/** @import {E} from '../e.d.ts' */\nimport fs from 'node:fs';";
  assert.deepEqual(importsOf(text), ['./h.js', './a.js', '../b.js', './c.js', '../d.d.ts', '../e.d.ts']);
});

test('every module is in a folder that has its place', () => {
  const found = readdirSync(web, {withFileTypes: true}).flatMap(entry => entry.isDirectory()
    ? readdirSync(new URL(`${entry.name}/`, web)).some(name => name.endsWith('.js')) ? [`${entry.name}/`] : []
    : entry.name.endsWith('.js') ? [entry.name] : []);
  assert.deepEqual(found.sort(), [...folders.flat().map(name => `${name}/`), 'sw.js', 'vendor/'].sort());
});

test('a folder imports from those below it alone', () => {
  /** @type {string[]} */
  const wrong = [];
  for (const name of [...modules(), ...modules('.d.ts')]) {
    const own = path.dirname(name);
    for (const to of importsOf(readFileSync(new URL(name, web), 'utf8'))) {
      const target = path.normalize(path.join(own, to)), folder = path.dirname(target);
      const fine = folder === own || height(folder) >= 0 && height(folder) < height(own) ||
        target === 'plan.d.ts' || own === 'ui' && folder === 'vendor';
      if (!fine) wrong.push(`${name} imports ${target}`);
    }
  }
  assert.deepEqual(wrong, []);
});

test('no two modules import each other, however far round', () => {
  /** @type {Map<string, string[]>} */
  const graph = new Map(modules().map(name => [name, [...readFileSync(new URL(name, web), 'utf8').matchAll(/^(?:import|export) .*'(\.[^']*)';$/gm)].map(found => path.normalize(path.join(path.dirname(name), found[1])))]));
  /** @type {string[]} */
  const circles = [];
  const done = new Set();
  /** @param {string} name @param {string[]} way */
  const walk = (name, way) => {
    if (way.includes(name)) circles.push([...way.slice(way.indexOf(name)), name].join(' > '));
    if (way.includes(name) || done.has(name)) return;
    for (const next of graph.get(name) ?? []) walk(next, [...way, name]);
    done.add(name);
  };
  for (const name of graph.keys()) walk(name, []);
  assert.deepEqual(circles, []);
});
