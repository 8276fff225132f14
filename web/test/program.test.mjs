// The program behind a worker that ends, or does not come back: the questions
// asked meanwhile, and what the page is told.
import test from 'node:test';
import assert from 'node:assert/strict';
import {Ended, startProgram, Stopped} from '../shell/program.js';

const text = new TextEncoder();

/** A worker that says only what a test has it say. */
class Port extends EventTarget {
  ended = false;
  /** @type {any[]} */
  asked = [];
  postMessage(data) { this.asked.push(data); }
  says(data) { this.dispatchEvent(Object.assign(new Event('message'), {data})); }
  breaks(message) { this.dispatchEvent(Object.assign(new Event('error'), {message})); }
  /** The questions that came, by verb. */
  get verbs() { return this.asked.filter(({verb}) => verb).map(({verb}) => verb); }
  begin(verb = this.verbs.at(-1)) {
    const {id} = this.asked.findLast(asked => asked.verb === verb);
    this.says({begun: id});
    return id;
  }
  answer(verb, answer) { this.says({id: this.begin(verb), answer: text.encode(answer)}); }
}

/** A program, its workers, and what the page was told. */
function start(t) {
  t.mock.timers.enable({apis: ['setTimeout']});
  /** @type {Port[]} */
  const ports = [];
  /** @type {string[]} */
  const told = [];
  const worker = () => {
    const port = new Port();
    ports.push(port);
    return {port: /** @type {any} */ (port), end: () => { port.ended = true; }};
  };
  const program = startProgram({worker}, {restarted: () => told.push('restarted'), long: what => told.push(what || 'no longer')});
  return {program, ports, told, wait: ms => t.mock.timers.tick(ms)};
}

/** What comes of a question: its answer, or why there is none. */
const outcome = promise => promise.then(answer => answer, error => error);

/** What has come of a question by now. */
const sofar = promise => Promise.race([promise, new Promise(done => { setImmediate(done, 'waiting'); })]);

test('what is asked before the program is there is asked in order once it is', async t => {
  const {program, ports: [port], wait, told} = start(t);
  const plan = program.text('plan', 'a'), csv = program.text('csv', 'a');
  wait(29_000);
  assert.deepEqual(port.verbs, []);
  assert.deepEqual(told, [], 'a slow network is no reason to say anything yet');
  port.says({ready: true});
  assert.deepEqual(port.verbs, ['plan', 'csv']);
  port.answer('plan', 'plan of a');
  port.answer('csv', 'csv of a');
  assert.deepEqual(await Promise.all([plan, csv]), ['plan of a', 'csv of a']);
  wait(100_000);
  assert.deepEqual(told, [], 'nothing is waited for');
});

test('a worker that ended unheard is replaced, and the question asked again', async t => {
  const {program, ports, told, wait} = start(t);
  ports[0].says({ready: true});
  const plan = program.text('plan', 'a');
  wait(4999);
  assert.equal(ports.length, 1);
  wait(1);
  assert.equal(ports.length, 2);
  assert.equal(ports[0].ended, true);
  assert.deepEqual(told, ['restarted']);
  ports[1].says({ready: true});
  assert.deepEqual(ports[1].verbs, ['plan']);
  ports[1].answer('plan', 'plan of a');
  assert.equal(await plan, 'plan of a');
});

test('a program that ends over a question is asked once more, and no more', async t => {
  const {program, ports, told} = start(t);
  ports[0].says({ready: true});
  const large = outcome(program.text('plan', 'large')), small = program.text('plan', 'small');
  ports[0].says({id: ports[0].asked.find(({verb}) => verb).id, ended: 'out of memory'});
  ports[1].says({ready: true});
  assert.deepEqual(ports[1].verbs, ['plan', 'plan'], 'both are asked again');
  const [first, second] = ports[1].asked.filter(({verb}) => verb);
  ports[1].says({begun: first.id});
  ports[1].says({id: first.id, ended: 'out of memory'});
  const error = await large;
  assert.ok(error instanceof Ended);
  assert.equal(error.message, 'out of memory');
  ports[2].says({ready: true});
  assert.deepEqual(ports[2].asked.filter(({verb}) => verb).map(({id}) => id), [second.id], 'the other one is still wanted');
  ports[2].answer('plan', 'plan of small');
  assert.equal(await small, 'plan of small');
  assert.deepEqual(told, ['restarted', 'restarted']);
});

test('an error in the worker is the end of it', async t => {
  const {program, ports} = start(t);
  ports[0].says({ready: true});
  const plan = program.text('plan', 'a');
  ports[0].breaks('no such thing');
  ports[1].says({ready: true});
  ports[1].answer('plan', 'plan of a');
  assert.equal(await plan, 'plan of a');
});

test('a long question is told, and can be stopped; what waits behind it is not lost', async t => {
  const {program, ports, told, wait} = start(t);
  ports[0].says({ready: true});
  const full = outcome(program.text('full', 'a')), plan = program.text('plan', 'b');
  ports[0].begin('full');
  wait(3999);
  assert.deepEqual(told, []);
  wait(60_000);
  assert.deepEqual(told, ['working'], 'it is worked on: nothing is started again');
  assert.equal(ports.length, 1);
  program.stop();
  assert.ok(await full instanceof Stopped);
  assert.equal(ports[0].ended, true);
  assert.deepEqual(told, ['working', 'no longer']);
  ports[1].says({ready: true});
  assert.deepEqual(ports[1].verbs, ['plan']);
  ports[1].answer('plan', 'plan of b');
  assert.equal(await plan, 'plan of b');
});

test('a late answer takes the notice away', async t => {
  const {program, ports, told, wait} = start(t);
  ports[0].says({ready: true});
  const plan = program.text('plan', 'a');
  const id = ports[0].begin();
  wait(10_000);
  ports[0].says({id, answer: text.encode('late')});
  assert.equal(await plan, 'late');
  assert.deepEqual(told, ['working', 'no longer']);
});

test('a program that is slow to load can be started again, and no question is lost', async t => {
  const {program, ports, told, wait} = start(t);
  const plan = program.text('plan', 'a');
  wait(30_000);
  assert.deepEqual(told, ['loading']);
  program.stop();
  ports[1].says({ready: true});
  ports[1].answer('plan', 'plan of a');
  assert.equal(await plan, 'plan of a');
});

test('a program that cannot start says why, and is tried again with the next question', async t => {
  const {program, ports} = start(t);
  const plan = outcome(program.text('plan', 'a'));
  ports[0].says({failed: 'barrow.wasm: 404'});
  assert.equal((await plan).message, 'barrow.wasm: 404');
  const again = program.text('plan', 'a');
  assert.equal(ports.length, 2);
  ports[1].says({ready: true});
  ports[1].answer('plan', 'plan of a');
  assert.equal(await again, 'plan of a');
});

test('a new worker is told the language first', async t => {
  const {program, ports, wait} = start(t);
  ports[0].says({ready: true});
  const language = program.call('language', text.encode('{}'), text.encode(','));
  ports[0].answer('language', '{}');
  await language;
  const plan = outcome(program.text('plan', 'a'));
  wait(5000);
  ports[1].says({ready: true});
  assert.deepEqual(ports[1].verbs, ['language', 'plan']);
  const [told, asked] = ports[1].asked.filter(({verb}) => verb);
  assert.deepEqual(told.docs.map(bytes => new TextDecoder().decode(bytes)), ['{}', ',']);
  ports[1].says({begun: told.id});
  ports[1].says({id: told.id, answer: text.encode('{}')});
  assert.equal(await sofar(program.text('plan', 'b')), 'waiting');
  ports[1].says({id: asked.id, answer: text.encode('plan of a')});
  assert.equal(await plan, 'plan of a');
});

test('a question that is refused fails, and ends nothing', async t => {
  const {program, ports} = start(t);
  ports[0].says({ready: true});
  const plan = outcome(program.text('plan', 'a'));
  ports[0].says({id: ports[0].begin(), refused: 'more than the program takes'});
  assert.equal((await plan).message, 'more than the program takes');
  assert.equal(ports.length, 1);
});

test('what an ended worker still says is not heard', async t => {
  const {program, ports, wait} = start(t);
  ports[0].says({ready: true});
  const plan = program.text('plan', 'a');
  const {id} = ports[0].asked.at(-1);
  wait(5000);
  ports[0].says({id, answer: text.encode('too late')});
  assert.equal(await sofar(plan), 'waiting');
  ports[1].says({ready: true});
  ports[1].answer('plan', 'in time');
  assert.equal(await plan, 'in time');
});
