import test from 'node:test';
import assert from 'node:assert/strict';
import {putDocument} from './dom.mjs';

putDocument();
const {createState} = await import('../state/state.js');
const {startRecompute} = await import('../app/recompute.js');

/** A state that counts its drawings, with a program that answers when told. */
function deskAt() {
  const state = createState({schema: 1, name: '', tasks: []});
  /** @type {((text: string) => void)[]} */
  const asked = [];
  let drawings = 0, questions = 0;
  state.redraw = () => { drawings++; };
  const text = () => new Promise(done => { questions++; asked.push(done); });
  startRecompute(state, /** @type {any} */ ({text}));
  return {
    state,
    drawn: () => drawings,
    asked: () => questions,
    async answer() {
      asked.shift()?.('{"needs":[],"tasks":[]}');
      await new Promise(done => { setTimeout(done, 5); });
    },
  };
}

test('a key is drawn once, with its answer', async () => {
  const {state, drawn, answer} = deskAt();
  state.job.set(['name'], 'a', {typing: true, inBox: true});
  assert.equal(drawn(), 0, 'the box shows it by itself');
  await answer();
  assert.equal(drawn(), 1);
  await new Promise(done => { setTimeout(done, 150); });
  assert.equal(drawn(), 1);
});

test('a key without an answer is drawn all the same', async () => {
  const {state, drawn} = deskAt();
  for (const name of ['a', 'ab', 'abc']) state.job.set(['name'], name, {typing: true, inBox: true});
  await new Promise(done => { setTimeout(done, 150); });
  assert.equal(drawn(), 1);
});

test('what no box shows is drawn at once, and its answer too', async () => {
  const {state, drawn, answer} = deskAt();
  state.job.set(['yard'], {without: ['peat:2 cu ft']});
  assert.equal(drawn(), 1);
  await answer();
  assert.equal(drawn(), 2);
});

test('what a key is about to make is asked for before the key is there, and once', async () => {
  const {state, asked, drawn, answer} = deskAt();
  state.expect(state.job.preview(['name'], 'a'));
  assert.equal(asked(), 1);
  state.job.set(['name'], 'a', {typing: true, inBox: true});
  assert.equal(asked(), 1, 'the same job');
  await answer();
  assert.equal(state.planFor, state.job.doc);
  assert.equal(drawn(), 1);
  assert.equal(asked(), 1);
});

test('what was foreseen and did not come is not taken for an answer', async () => {
  const {state, asked, answer} = deskAt();
  state.expect(state.job.preview(['name'], 'a'));
  state.job.set(['name'], 'b', {typing: true, inBox: true});
  assert.equal(asked(), 2);
  await answer();
  assert.equal(state.planFor, null, 'the answer to what never was');
  await answer();
  assert.equal(state.planFor, state.job.doc);
});

test('nothing is foreseen while a question is under way', async () => {
  const {state, asked, answer} = deskAt();
  state.job.set(['name'], 'a', {typing: true, inBox: true});
  state.expect(state.job.preview(['name'], 'ab'));
  assert.equal(asked(), 1);
  state.job.set(['name'], 'ab', {typing: true, inBox: true});
  await answer();
  await answer();
  assert.equal(state.planFor, state.job.doc);
});
