import test from 'node:test';
import assert from 'node:assert/strict';
import {putDocument} from './dom.mjs';

putDocument();
const {createActs} = await import('../app/actions.js');
const {createDesk} = await import('../state/state.js');
const {openKeep} = await import('../store/jobs.js');

/** A tab that has a job open. @param {any} record */
function tab(record) {
  const desk = /** @type {any} */ (createDesk({schema: 1, tasks: []}));
  desk.keep = openKeep(null, {events: undefined});
  desk.acts = createActs(desk, {});
  desk.acts.take(record);
  return desk;
}

const saved = (/** @type {string} */ name, /** @type {number} */ rev) => ({id: '1', name, doc: {schema: 1, name, tasks: []}, home: null, ticks: {}, place: 'job', typedAt: 0, rev, plan: ''});

test('what another tab saved after this one is shown', () => {
  const desk = tab(saved('Bed', 3));
  desk.acts.heard({id: '1', record: saved('Bed of clay', 4)});
  assert.equal(desk.slate.doc.name, 'Bed of clay');
  assert.equal(desk.conflict, null);
});

test('what is typed and not yet saved is not taken away by another tab', () => {
  const desk = tab(saved('Bed', 3));
  desk.slate.set(['name'], 'Mine');
  desk.acts.heard({id: '1', record: saved('Theirs', 4)});
  assert.equal(desk.slate.doc.name, 'Mine');
  assert.ok(desk.conflict);
  desk.acts.heard({id: '1', record: saved('Theirs, and more', 5)});
  assert.equal(desk.slate.doc.name, 'Mine', 'until somebody says so');
  desk.conflict.theirs();
  assert.equal(desk.slate.doc.name, 'Theirs, and more');
});

test('two tabs that save at one moment both keep what they have', () => {
  for (const rev of [3, 2]) { // as old as this one's, or older and heard of late
    const desk = tab(saved('Mine', 3));
    desk.acts.heard({id: '1', record: saved('Theirs', rev)});
    assert.equal(desk.slate.doc.name, 'Mine');
    assert.ok(desk.conflict, 'the person chooses');
    desk.acts.heard({id: '1', record: saved('Theirs', 4)}); // its plan came
    assert.equal(desk.slate.doc.name, 'Mine');
    desk.conflict.mine();
    assert.notEqual(desk.record.id, '1');
    assert.equal(desk.record.doc.name, 'Mine');
  }
});

test('an echo of what this tab has changes nothing', () => {
  const desk = tab(saved('Bed', 3));
  desk.slate.set(['name'], 'Bed of clay');
  desk.acts.heard({id: '1', record: saved('Bed', 3)});
  desk.acts.heard({id: '1', record: saved('Bed', 2)});
  assert.equal(desk.slate.doc.name, 'Bed of clay');
  assert.equal(desk.conflict, null);
  desk.acts.heard({id: '1', record: saved('Bed of clay', 4)});
  assert.equal(desk.conflict, null);
  assert.equal(desk.record.rev, 4);
});
