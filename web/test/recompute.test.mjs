import test from 'node:test';
import assert from 'node:assert/strict';
import {putDocument} from './dom.mjs';

putDocument();
const {createDesk} = await import('../state/state.js');
const {keepUp} = await import('../app/recompute.js');

/** A desk that counts its drawings, with a program that answers when told. */
function deskAt() {
  const desk = createDesk({schema: 1, name: '', tasks: []});
  /** @type {((text: string) => void)[]} */
  const asked = [];
  let drawings = 0, questions = 0;
  desk.redraw = () => { drawings++; };
  const text = () => new Promise(done => { questions++; asked.push(done); });
  keepUp(desk, /** @type {any} */ ({text}));
  return {
    desk,
    drawn: () => drawings,
    asked: () => questions,
    async answer() {
      asked.shift()?.('{"needs":[],"tasks":[]}');
      await new Promise(done => { setTimeout(done, 5); });
    },
  };
}

test('a key is drawn once, with its answer', async () => {
  const {desk, drawn, answer} = deskAt();
  desk.slate.set(['name'], 'a', {typing: true, inBox: true});
  assert.equal(drawn(), 0, 'the box shows it by itself');
  await answer();
  assert.equal(drawn(), 1);
  await new Promise(done => { setTimeout(done, 150); });
  assert.equal(drawn(), 1);
});

test('a key without an answer is drawn all the same', async () => {
  const {desk, drawn} = deskAt();
  for (const name of ['a', 'ab', 'abc']) desk.slate.set(['name'], name, {typing: true, inBox: true});
  await new Promise(done => { setTimeout(done, 150); });
  assert.equal(drawn(), 1);
});

test('what no box shows is drawn at once, and its answer too', async () => {
  const {desk, drawn, answer} = deskAt();
  desk.slate.set(['yard'], {without: ['peat:2 cu ft']});
  assert.equal(drawn(), 1);
  await answer();
  assert.equal(drawn(), 2);
});

test('what a key is about to make is asked for before the key is there, and once', async () => {
  const {desk, asked, drawn, answer} = deskAt();
  desk.foresee(desk.slate.foresee(['name'], 'a'));
  assert.equal(asked(), 1);
  desk.slate.set(['name'], 'a', {typing: true, inBox: true});
  assert.equal(asked(), 1, 'the same job');
  await answer();
  assert.equal(desk.planFor, desk.slate.doc);
  assert.equal(drawn(), 1);
  assert.equal(asked(), 1);
});

test('what was foreseen and did not come is not taken for an answer', async () => {
  const {desk, asked, answer} = deskAt();
  desk.foresee(desk.slate.foresee(['name'], 'a'));
  desk.slate.set(['name'], 'b', {typing: true, inBox: true});
  assert.equal(asked(), 2);
  await answer();
  assert.equal(desk.planFor, null, 'the answer to what never was');
  await answer();
  assert.equal(desk.planFor, desk.slate.doc);
});

test('nothing is foreseen while a question is under way', async () => {
  const {desk, asked, answer} = deskAt();
  desk.slate.set(['name'], 'a', {typing: true, inBox: true});
  desk.foresee(desk.slate.foresee(['name'], 'ab'));
  assert.equal(asked(), 1);
  desk.slate.set(['name'], 'ab', {typing: true, inBox: true});
  await answer();
  await answer();
  assert.equal(desk.planFor, desk.slate.doc);
});
