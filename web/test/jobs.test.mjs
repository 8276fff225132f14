import test from 'node:test';
import assert from 'node:assert/strict';
import {daysToRestore} from '../store/deleted.js';
import {askToStay, deviceStorage} from '../store/device.js';
import {openStore} from '../store/jobs.js';
import {largestPlan, largestSaved} from '../store/records.js';
import {setLanguage} from '../text/say.js';
import {anyValue, dice, nasty} from './random.mjs';

/** A storage like localStorage that can be small, and can refuse. */
class FakeStorage {
  /** @type {Map<string, string>} */
  items = new Map();
  room = Infinity; // characters of keys and values
  refuses = false;
  refusesReads = false;
  writes = 0;
  get length() { if (this.refusesReads) throw new Error('SecurityError'); return this.items.size; }
  key(/** @type {number} */ n) { return [...this.items.keys()][n] ?? null; }
  getItem(/** @type {string} */ key) { if (this.refusesReads) throw new Error('SecurityError'); return this.items.get(key) ?? null; }
  setItem(/** @type {string} */ key, /** @type {string} */ value) {
    this.writes++;
    if (this.refuses) throw Object.assign(new Error('no'), {name: 'SecurityError'});
    const left = this.used - (this.items.has(key) ? key.length + (this.items.get(key) ?? '').length : 0);
    if (left + key.length + value.length > this.room) throw Object.assign(new Error('full'), {name: 'QuotaExceededError'});
    this.items.set(key, String(value));
  }
  removeItem(/** @type {string} */ key) { if (this.refuses) throw new Error('no'); this.items.delete(key); }
  get used() { let n = 0; for (const [key, value] of this.items) n += key.length + value.length; return n; }
}

/** A store with a clock and ids of its own. @param {any} [storage] */
function storeOver(storage = new FakeStorage(), at = 1_000_000, name = 'a') {
  const clock = {at};
  let n = 0;
  return {storage, clock, store: openStore(storage, {now: () => clock.at++, newId: () => `${name}${n++}`})};
}

const doc = (/** @type {string} */ name = 'Berry walk') => ({schema: 1, name, tasks: [{kind: 'cover', layer: '3 in'}]});

test('a job is saved, listed, loaded, and there after a reload', () => {
  const {store, storage, clock} = storeOver();
  const made = store.create(doc());
  assert.equal(made.kept, true);
  assert.deepEqual([made.record.name, made.record.rev, made.record.home], ['Berry walk', 1, null]);
  const second = store.create(doc(), undefined, {place: 'yard'});
  assert.equal(second.record.name, 'Berry walk 2');
  assert.equal(store.create(doc('berry walk 2')).record.name, 'berry walk 3');
  const saved = store.save({...made.record, doc: {...doc(), tasks: []}, ticks: {'peat:2 cu ft': 3}, home: doc(), plan: '{}'});
  assert.equal(saved.kept, true);
  assert.equal(saved.record.rev, 2);
  const again = storeOver(storage, clock.at, 'b').store;
  assert.deepEqual(again.load(made.record.id), saved.record);
  assert.deepEqual(again.list().map(entry => entry.name), ['Berry walk', 'berry walk 3', 'Berry walk 2'], 'typed into last comes first');
  assert.equal(again.last()?.id, made.record.id);
  again.open(second.record.id);
  assert.equal(storeOver(storage).store.last()?.place, 'yard');
  assert.deepEqual(store.status, {can: true, why: '', text: ''});
  assert.equal(store.load('nowhere'), null);
  assert.equal(openStore(/** @type {any} */ (new FakeStorage())).last(), null);
});

test('what is loaded is nobody else\'s', () => {
  const {store} = storeOver();
  const {record} = store.create(doc());
  const one = store.load(record.id);
  one.doc.tasks.push('x');
  assert.deepEqual(store.load(record.id)?.doc, doc());
});

test('typing dates a job, ticking does not', () => {
  const {store} = storeOver();
  const {record} = store.create(doc());
  const ticked = store.save({...record, ticks: {x: 1}}).record;
  assert.equal(ticked.typedAt, record.typedAt);
  const typed = store.save({...ticked, doc: doc('x')}).record;
  assert.ok(typed.typedAt > record.typedAt);
});

test('a save takes three writes at most', () => {
  const {store, storage} = storeOver();
  const {record} = store.create(doc());
  storage.writes = 0;
  store.save({...record, place: 'yard'});
  assert.ok(storage.writes <= 3, String(storage.writes));
});

test('two tabs: the second to save hears of it, and nothing is stored over the first', () => {
  const storage = new FakeStorage();
  const a = storeOver(storage, 1, 'a').store, b = storeOver(storage, 1, 'b').store;
  const {record} = a.create(doc());
  const mine = b.load(record.id);
  const first = a.save({...record, doc: doc('of a')});
  const before = storage.getItem(`barrow.job.${record.id}`);
  const clash = b.save({...mine, doc: doc('of b')});
  assert.equal(clash.kept, false);
  assert.deepEqual(/** @type {any} */ (clash).conflict, first.record);
  assert.equal(storage.getItem(`barrow.job.${record.id}`), before);
  const copy = b.saveAsCopy({...mine, doc: doc('of b')});
  assert.deepEqual([copy.kept, copy.record.name, copy.record.doc.name], [true, 'Berry walk 2', 'of b']);
  const over = b.save({...mine, doc: doc('of b'), rev: /** @type {any} */ (clash).conflict.rev});
  assert.equal(over.kept, true);
  assert.equal(a.load(record.id)?.doc.name, 'of b');
  assert.equal(a.list().length, 2);
});

test('a job deleted in another tab comes back with what is typed in this one', () => {
  const storage = new FakeStorage();
  const a = storeOver(storage, 1, 'a').store, b = storeOver(storage, 1, 'b').store;
  const {record} = a.create(doc());
  b.remove(record.id);
  assert.equal(a.save({...record, doc: doc('more')}).kept, true);
  assert.equal(b.load(record.id)?.doc.name, 'more');
  const token = b.deleted()?.token ?? '';
  const back = b.restore(token);
  assert.notEqual(back?.record.id, record.id, 'both are there');
  assert.equal(b.list().length, 2);
});

test('another tab is heard', () => {
  const events = new EventTarget(), storage = new FakeStorage();
  const store = openStore(/** @type {any} */ (storage), {events});
  /** @type {any[]} */
  const heard = [];
  const stop = store.watch(change => heard.push([change.id, change.record?.name ?? null]));
  const {record} = storeOver(storage).store.create(doc());
  const send = (/** @type {any} */ what) => events.dispatchEvent(Object.assign(new Event('storage'), {storageArea: storage, ...what}));
  send({key: `barrow.job.${record.id}`, newValue: storage.getItem(`barrow.job.${record.id}`)});
  send({key: `barrow.job.${record.id}`, newValue: null});
  send({key: `barrow.job.${record.id}`, newValue: '{broken'});
  send({key: 'barrow.index', newValue: '{}'});
  send({key: 'other', newValue: '{}'});
  send({key: `barrow.job.${record.id}`, newValue: null, storageArea: {}});
  send({key: null, newValue: null});
  stop();
  send({key: null, newValue: null});
  assert.deepEqual(heard, [[record.id, 'Berry walk'], [record.id, null], ['', null]]);
});

test('what is deleted can be brought back, after a reload too, for 30 days', () => {
  const {store, storage, clock} = storeOver();
  const {record} = store.create(doc(), 'One'), two = store.create(doc(), 'Two').record;
  const gone = store.remove(record.id);
  assert.equal(gone?.name, 'One');
  assert.deepEqual(store.list().map(entry => entry.name), ['Two']);
  assert.equal(store.last()?.name, 'Two');
  const later = storeOver(storage, clock.at, 'b');
  assert.equal(later.store.deleted()?.name, 'One');
  assert.equal(later.store.restore('another'), null);
  const back = later.store.restore(gone?.token ?? '');
  assert.deepEqual([back?.kept, back?.record.id, back?.record.doc], [true, record.id, doc()]);
  assert.equal(later.store.deleted(), null);
  assert.equal(later.store.restore(gone?.token ?? ''), null);

  const first = later.store.remove(record.id);
  later.store.remove(two.id);
  assert.equal(later.store.restore(first?.token ?? ''), null, 'until the next one');
  assert.equal(later.store.deleted()?.name, 'Two');
  const old = storeOver(storage, later.clock.at + (daysToRestore + 1) * 86400000, 'c');
  assert.equal(old.store.deleted(), null);
  assert.equal(storage.getItem('barrow.deleted'), null);
  assert.equal(old.store.remove('nothing'), null);
});

test('a device that refuses: the page goes on in memory and says so', () => {
  const refusing = new FakeStorage();
  refusing.refuses = true;
  for (const storage of [null, refusing]) {
    const {store} = storeOver(storage);
    assert.equal(store.status.can, false);
    assert.equal(store.status.why, 'refused');
    assert.match(store.status.text, /Save it as a file/);
    const made = store.create(doc());
    assert.deepEqual([made.kept, made.why], [false, 'refused']);
    const saved = store.save({...made.record, doc: doc('more')});
    assert.equal(saved.kept, false);
    assert.equal(store.load(made.record.id)?.doc.name, 'more');
    assert.equal(store.list().length, 1);
    assert.equal(store.last()?.id, made.record.id);
    const gone = store.remove(made.record.id);
    assert.equal(store.list().length, 0);
    assert.equal(store.restore(gone?.token ?? '')?.record.doc.name, 'more');
    assert.equal(store.list().length, 1);
  }
  const {store: spoken} = storeOver(null);
  setLanguage({language: 'es', page: {[spoken.status.text]: 'en español'}});
  assert.equal(spoken.status.text, 'en español', 'in the language of now');
  setLanguage();
  const shut = new FakeStorage();
  shut.refusesReads = shut.refuses = true;
  const {store} = storeOver(shut);
  assert.equal(store.status.why, 'refused');
  assert.equal(store.create(doc()).kept, false);
  assert.equal(store.list().length, 1);
});

test('a device without room: plans go first, then it is said what is needed', () => {
  const {store, storage} = storeOver();
  const plan = JSON.stringify({text: 'p'.repeat(5000)});
  const old = store.create(doc(), 'Old', {plan}).record;
  const {record} = store.create(doc(), 'New', {plan});
  storage.room = storage.used + 1000;
  const bigger = {...doc(), note: 'x'.repeat(4000)};
  const saved = store.save({...record, doc: bigger});
  assert.deepEqual([saved.kept, saved.record.plan], [true, ''], 'its own plan');
  assert.equal(store.load(old.id)?.plan, plan, 'and no other');
  const second = store.save({...saved.record, doc: {...doc(), note: 'x'.repeat(8000)}});
  assert.equal(second.kept, true);
  assert.equal(store.load(old.id)?.plan, '', 'then those of other jobs');
  assert.equal(store.load(old.id)?.rev, old.rev, 'which are as saved otherwise');

  const third = store.save({...second.record, doc: {...doc(), note: 'x'.repeat(20000)}});
  assert.deepEqual([third.kept, third.why], [false, 'full']);
  assert.ok(Number(third.need) > 20000);
  assert.match(third.text ?? '', /no room/);
  assert.equal(store.status.why, 'full');
  assert.equal(store.load(record.id)?.doc.note.length, 20000, 'it goes on in memory');
  assert.equal(storeOver(storage).store.load(record.id)?.doc.note.length, 8000, 'and the device has the one before');
  storage.room = Infinity;
  const fourth = store.save({...third.record, place: 'yard'});
  assert.equal(fourth.kept, true, 'until there is room again');
  assert.equal(store.status.can, true);
  assert.equal(storeOver(storage).store.load(record.id)?.doc.note.length, 20000);
});

test('deleting works on a device without room', () => {
  const {store, storage} = storeOver();
  const {record} = store.create({...doc(), note: 'x'.repeat(9000)});
  storage.room = storage.used;
  const gone = store.remove(record.id);
  assert.equal(storage.getItem(`barrow.job.${record.id}`), null);
  const later = storeOver(storage).store;
  assert.equal(later.deleted()?.token, gone?.token);
});

test('a very large job is not saved as it is typed', () => {
  const {store, storage} = storeOver();
  const {record} = store.create(doc());
  const large = store.save({...record, doc: {...doc(), note: 'é'.repeat(largestSaved / 2)}});
  assert.deepEqual([large.kept, large.why], [false, 'large']);
  assert.equal(store.load(record.id)?.doc.note.length, largestSaved / 2);
  assert.equal(storeOver(storage).store.load(record.id)?.doc.note, undefined);
  const plan = store.create(doc(), 'With a plan', {plan: 'p'.repeat(largestPlan + 1)});
  assert.deepEqual([plan.kept, plan.record.plan], [true, '']);
});

test('what does not read is set aside, and said', () => {
  const {store, storage} = storeOver();
  const one = store.create(doc(), 'One').record, two = store.create(doc(), 'Two').record;
  storage.items.set(`barrow.job.${one.id}`, '{"v":1,"id":"a0","doc":{"schema":1');
  storage.items.set('barrow.job.new', '{"v": 2, "id": "new", "jobs": "of tomorrow"}');
  storage.items.set('barrow.index', 'x');
  const later = storeOver(storage, 5, 'z').store;
  assert.deepEqual(later.list().map(entry => entry.name), ['Two']);
  assert.deepEqual(later.unread().map(({why}) => why).sort(), ['broken', 'newer']);
  const broken = later.unread().find(({why}) => why === 'broken')?.key ?? '';
  assert.match(broken, /^barrow\.aside\./);
  assert.equal(later.text(broken), '{"v":1,"id":"a0","doc":{"schema":1');
  assert.equal(storage.items.get('barrow.job.new'), '{"v": 2, "id": "new", "jobs": "of tomorrow"}', 'a newer page\'s stays');
  const save = later.save({...two, id: 'new', rev: 1});
  assert.deepEqual([save.kept, /** @type {any} */ (save).why], [false, 'newer']);
  assert.equal(storage.items.get('barrow.job.new'), '{"v": 2, "id": "new", "jobs": "of tomorrow"}');
  assert.equal(later.last()?.name, 'Two');

  storage.items.set(`barrow.job.${two.id}`, 'broken while open');
  const kept = later.save({...two, doc: doc('still here')});
  assert.equal(kept.kept, true);
  assert.ok([...storage.items.values()].includes('broken while open'));
});

test('an index is made again from the records', () => {
  const {store, storage} = storeOver();
  store.create(doc(), 'One');
  store.create(doc(), 'Two');
  const right = storage.items.get('barrow.index');
  for (const bad of [undefined, '', '[]', '{"v":1,"jobs":[]}', '{"v":1,"jobs":[{"id":"a0"}]}', '{"v":9,"jobs":"x"}', 'null', '{"v":1,"jobs":[null]}']) {
    if (bad === undefined) storage.items.delete('barrow.index');
    else storage.items.set('barrow.index', bad);
    assert.deepEqual(storeOver(storage).store.list().map(entry => entry.name), ['Two', 'One'], bad);
    assert.deepEqual(JSON.parse(storage.items.get('barrow.index') ?? '').jobs.map((/** @type {any} */ j) => j.name).sort(), ['One', 'Two']);
  }
  assert.ok(right);
});

test('names', () => {
  const {store} = storeOver();
  assert.equal(store.create(doc(' \u202eodd\nname ')).record.name, 'odd name');
  assert.equal(store.create(doc('even\u200ename\u061c')).record.name, 'even name');
  assert.equal(store.create({}).record.name, 'My job');
  assert.equal(store.create({name: 7}).record.name, 'My job 2');
  assert.equal([...store.create(doc('é'.repeat(500))).record.name].length, 120);
  assert.equal(store.create(doc('Bed 9')).record.name, 'Bed 9');
  assert.equal(store.create(doc('Bed 9')).record.name, 'Bed 2');
});

test('keys with a meaning in JavaScript are plain data', () => {
  const {store, storage} = storeOver();
  const odd = JSON.parse('{"__proto__": {"polluted": 1}, "constructor": {"x": 1}}');
  const {record} = store.create(odd, 'x', {ticks: JSON.parse('{"__proto__": 3}')});
  const again = storeOver(storage).store.load(record.id);
  assert.equal(JSON.stringify(again?.doc), JSON.stringify(odd));
  assert.equal(JSON.stringify(again?.ticks), '{"__proto__":3}');
  assert.equal(/** @type {any} */ ({}).polluted, undefined);
});

test('whatever the storage holds, the store opens and works, and loses nothing', () => {
  const d = dice(21);
  const names = ['barrow.job.a0', 'barrow.job.', 'barrow.job.__proto__', 'barrow.job.x', 'barrow.index', 'barrow.last', 'barrow.deleted', 'barrow.aside.job.a0.1', 'other'];
  const good = JSON.stringify({v: 1, id: 'a0', name: 'x', doc: {schema: 1}, home: null, ticks: {}, place: '', typedAt: 1, rev: 1, plan: ''});
  const bin = JSON.stringify({v: 1, token: 't', at: 1, record: JSON.parse(good)});
  for (let round = 0; round < 800; round++) {
    const storage = new FakeStorage();
    for (const name of names) {
      switch (d.roll(5)) {
        case 0: break;
        case 1: storage.items.set(name, JSON.stringify(anyValue(d, 3)) ?? ''); break;
        case 2: storage.items.set(name, d.text(nasty, 5)); break;
        default: storage.items.set(name, d.mutate(name.endsWith('deleted') ? bin : good, [...nasty, '{', '}', '9', '-1', 'null']));
      }
    }
    const before = [...storage.items].filter(([key]) => key.startsWith('barrow.job.'));
    if (d.roll(3) === 0) storage.room = storage.used + d.roll(300);
    const {store} = storeOver(storage, 10, 'n');
    const held = () => [...storage.items.values()];
    for (const [key, text] of before) {
      store.load(key.slice('barrow.job.'.length));
      assert.ok(held().includes(text), `${key} ${text}`);
    }
    const made = store.create(doc());
    assert.equal(store.load(made.record.id)?.doc.name, 'Berry walk');
    assert.ok(store.list().some(({id}) => id === made.record.id));
    assert.equal(store.last()?.id, made.record.id);
    for (const entry of store.list()) {
      const record = store.load(entry.id);
      if (record) store.save({...record, doc: {...record.doc, more: 1}});
    }
    store.unread().forEach(({key}) => store.text(key));
    const gone = store.remove(made.record.id);
    assert.equal(store.restore(gone?.token ?? '')?.record.doc.name, 'Berry walk');
  }
  assert.deepEqual(Object.keys(Object.prototype), []);
});

test('asking is guarded', async () => {
  assert.equal(await askToStay(), false);
  assert.equal(deviceStorage(), null);
});
