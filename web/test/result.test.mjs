import test from 'node:test';
import assert from 'node:assert/strict';
import {readFileSync} from 'node:fs';
import {putDocument} from './dom.mjs';

const newRoot = putDocument();
const {createState} = await import('../state/state.js');
const {render} = await import('../ui/h.js');
const {resultView} = await import('../result/result.js');
const {setLanguage} = await import('../text/say.js');

const read = (/** @type {string} */ name) => JSON.parse(readFileSync(new URL('../../testdata/' + name, import.meta.url), 'utf8'));
const spanish = JSON.parse(readFileSync(new URL('../text/es.json', import.meta.url), 'utf8'));

/** Everything that stands on the page, with its attributes. @param {any} node @returns {any} */
const written = node => node.nodeType === 3 ? node.data
  : [node.localName, node.attributes.map((/** @type {any} */ a) => `${a.name}=${a.value}`).sort(), node.childNodes.map(written)];

const line = {material: 'peat', pack: '3.8 cu ft', count: 2};
const full = {
  sure: {shown: '7 times in 10', enough: [line], enough_total: '40.50', matters: [{name: 'peat', moves_shown: '1 cu ft', measure: 'measure it'}], method: 'Drawn.', assumes: ['Bags hold two'], ranges: ['peat: 1 to 2']},
  bags_or_bulk: [{text: 'Bags below 2 cu yd.'}],
  choices: [{total: '10.50', left_shown: '1 cu ft', packs: 2, trips: 1, order: [line]}, {total: '12.50', left_shown: '2 cu ft', packs: 3, trips: 1, order: [line]}],
};
const shape = {kind: 'cost', title: 'Cost', desc: 'Of all', width: 10, height: 10, shapes: [{is: 'text', x: 1, y: 2, text: 'here'}]};

test('the result says what a new page would, whatever changes on it', () => {
  const plan = read('golden/good-stock.json');
  const state = /** @type {any} */ (createState(read('jobs/good-stock.json')));
  Object.assign(state, {plan, planFor: state.job.doc});
  const root = newRoot();
  /** @type {[string, () => void][]} */
  const changes = [
    ['what takes longer comes', () => { state.full = full; }],
    ['its drawing comes', () => { state.costs = [shape]; }],
    ['it is worked out', () => state.open.add('sure')],
    ['other orders are opened', () => state.open.add('choices')],
    ['a decimal comma', () => { state.comma = true; }],
    ['another currency', () => { state.plan = {...state.plan, currency: 'CAD'}; }],
    ['another name', () => { state.plan = {...state.plan, needs: state.plan.needs.map((/** @type {any} */ n, /** @type {number} */ i) => i === 0 ? {...n, material: 'peat', name: 'Moss peat'} : n)}; }],
    ['something is left out', () => { state.plan = {...state.plan, left_out: state.plan.left_out?.length > 0 ? [] : [{material: 'peat', name: 'Peat', litres: 1, shown: '1 L', stand_ins: []}]}; }],
    ['another note', () => { state.plan = {...state.plan, notes: [{text: 'something else', path: 'name'}]}; }],
    ['another caution', () => { state.plan = {...state.plan, cautions: [{code: 'lift', text: 'Lift with care.'}]}; }],
    ['it is of an older entry', () => { state.stale = true; }],
    ['another language', () => setLanguage(spanish)],
    ['other odds', () => { state.full = {...full, sure: {...full.sure, shown: '9 times in 10'}}; }],
    ['folded away', () => { state.open.clear(); }],
    ['nothing takes longer', () => { state.full = null; }],
  ];
  try {
    render(resultView(state), root);
    for (const [what, change] of changes) {
      const before = JSON.stringify(written(root));
      change();
      render(resultView(state), root);
      const fresh = newRoot();
      render(resultView(state), fresh);
      assert.deepEqual(written(root), written(fresh), what);
      assert.notEqual(JSON.stringify(written(root)), before, `${what}: it shows`);
    }
  } finally {
    setLanguage();
  }
});
