import test from 'node:test';
import assert from 'node:assert/strict';
import {putDocument} from './dom.mjs';

putDocument();
const {createActions} = await import('../app/actions.js');
const {createState} = await import('../state/state.js');
const {openStore} = await import('../store/jobs.js');

/** A tab that has a job open. @param {any} record */
function tab(record) {
  const state = /** @type {any} */ (createState({schema: 1, tasks: []}));
  state.store = openStore(null, {events: undefined});
  state.actions = createActions(state, {});
  state.actions.take(record);
  return state;
}

const saved = (/** @type {string} */ name, /** @type {number} */ rev) => ({id: '1', name, doc: {schema: 1, name, tasks: []}, home: null, ticks: {}, place: 'job', typedAt: 0, rev, plan: ''});

test('what another tab saved after this one is shown', () => {
  const state = tab(saved('Bed', 3));
  state.actions.heard({id: '1', record: saved('Bed of clay', 4)});
  assert.equal(state.job.doc.name, 'Bed of clay');
  assert.equal(state.conflict, null);
});

test('what is typed and not yet saved is not taken away by another tab', () => {
  const state = tab(saved('Bed', 3));
  state.job.set(['name'], 'Mine');
  state.actions.heard({id: '1', record: saved('Theirs', 4)});
  assert.equal(state.job.doc.name, 'Mine');
  assert.ok(state.conflict);
  state.actions.heard({id: '1', record: saved('Theirs, and more', 5)});
  assert.equal(state.job.doc.name, 'Mine', 'until somebody says so');
  state.conflict.theirs();
  assert.equal(state.job.doc.name, 'Theirs, and more');
});

test('two tabs that save at one moment both keep what they have', () => {
  for (const rev of [3, 2]) { // as old as this one's, or older and heard of late
    const state = tab(saved('Mine', 3));
    state.actions.heard({id: '1', record: saved('Theirs', rev)});
    assert.equal(state.job.doc.name, 'Mine');
    assert.ok(state.conflict, 'the person chooses');
    state.actions.heard({id: '1', record: saved('Theirs', 4)}); // its plan came
    assert.equal(state.job.doc.name, 'Mine');
    state.conflict.mine();
    assert.notEqual(state.record.id, '1');
    assert.equal(state.record.doc.name, 'Mine');
  }
});

test('an echo of what this tab has changes nothing', () => {
  const state = tab(saved('Bed', 3));
  state.job.set(['name'], 'Bed of clay');
  state.actions.heard({id: '1', record: saved('Bed', 3)});
  state.actions.heard({id: '1', record: saved('Bed', 2)});
  assert.equal(state.job.doc.name, 'Bed of clay');
  assert.equal(state.conflict, null);
  state.actions.heard({id: '1', record: saved('Bed of clay', 4)});
  assert.equal(state.conflict, null);
  assert.equal(state.record.rev, 4);
});

test('the decimal mark changes in English too, which no file is of', async () => {
  const state = tab(saved('Bed', 3));
  /** @type {any[]} */
  const asked = [];
  const program = {call: async (/** @type {any[]} */ ...question) => asked.push(question.map(part => typeof part === 'string' ? part : new TextDecoder().decode(part))), ask: async () => ({})};
  state.recompute = async () => {};
  await createActions(state, program).setDecimal(',');
  assert.deepEqual(asked, [['language', '', ',']]);
  assert.equal(state.comma, true);
});
