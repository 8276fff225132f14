import test from 'node:test';
import assert from 'node:assert/strict';
import {askToStay, daysToRestore, deviceStorage, largestPlan, largestSaved, openKeep} from '../store/jobs.js';
import {setLanguage} from '../text/say.js';
import {anyValue, dice, nasty} from './random.mjs';

/** A storage like localStorage that can be small, and can refuse. */
class Shelf {
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

/** A keep with a clock and ids of its own. @param {any} [shelf] */
function keepOver(shelf = new Shelf(), at = 1_000_000, name = 'a') {
  const clock = {at};
  let n = 0;
  return {shelf, clock, keep: openKeep(shelf, {now: () => clock.at++, newId: () => `${name}${n++}`})};
}

const doc = (/** @type {string} */ name = 'Berry walk') => ({schema: 1, name, tasks: [{kind: 'cover', layer: '3 in'}]});

test('a job is saved, listed, loaded, and there after a reload', () => {
  const {keep, shelf, clock} = keepOver();
  const made = keep.create(doc());
  assert.equal(made.kept, true);
  assert.deepEqual([made.record.name, made.record.rev, made.record.home], ['Berry walk', 1, null]);
  const second = keep.create(doc(), undefined, {place: 'yard'});
  assert.equal(second.record.name, 'Berry walk 2');
  assert.equal(keep.create(doc('berry walk 2')).record.name, 'berry walk 3');
  const saved = keep.save({...made.record, doc: {...doc(), tasks: []}, ticks: {'peat:2 cu ft': 3}, home: doc(), plan: '{}'});
  assert.equal(saved.kept, true);
  assert.equal(saved.record.rev, 2);
  const again = keepOver(shelf, clock.at, 'b').keep;
  assert.deepEqual(again.load(made.record.id), saved.record);
  assert.deepEqual(again.list().map(entry => entry.name), ['Berry walk', 'berry walk 3', 'Berry walk 2'], 'typed into last comes first');
  assert.equal(again.last()?.id, made.record.id);
  again.open(second.record.id);
  assert.equal(keepOver(shelf).keep.last()?.place, 'yard');
  assert.deepEqual(keep.state, {can: true, why: '', text: ''});
  assert.equal(keep.load('nowhere'), null);
  assert.equal(openKeep(/** @type {any} */ (new Shelf())).last(), null);
});

test('what is loaded is nobody else\'s', () => {
  const {keep} = keepOver();
  const {record} = keep.create(doc());
  const one = keep.load(record.id);
  one.doc.tasks.push('x');
  assert.deepEqual(keep.load(record.id)?.doc, doc());
});

test('typing dates a job, ticking does not', () => {
  const {keep} = keepOver();
  const {record} = keep.create(doc());
  const ticked = keep.save({...record, ticks: {x: 1}}).record;
  assert.equal(ticked.typedAt, record.typedAt);
  const typed = keep.save({...ticked, doc: doc('x')}).record;
  assert.ok(typed.typedAt > record.typedAt);
});

test('a save takes three writes at most', () => {
  const {keep, shelf} = keepOver();
  const {record} = keep.create(doc());
  shelf.writes = 0;
  keep.save({...record, place: 'yard'});
  assert.ok(shelf.writes <= 3, String(shelf.writes));
});

test('two tabs: the second to save is told, and nothing is stored over the first', () => {
  const shelf = new Shelf();
  const a = keepOver(shelf, 1, 'a').keep, b = keepOver(shelf, 1, 'b').keep;
  const {record} = a.create(doc());
  const mine = b.load(record.id);
  const first = a.save({...record, doc: doc('of a')});
  const before = shelf.getItem(`barrow.job.${record.id}`);
  const clash = b.save({...mine, doc: doc('of b')});
  assert.equal(clash.kept, false);
  assert.deepEqual(/** @type {any} */ (clash).conflict, first.record);
  assert.equal(shelf.getItem(`barrow.job.${record.id}`), before);
  const copy = b.saveAsCopy({...mine, doc: doc('of b')});
  assert.deepEqual([copy.kept, copy.record.name, copy.record.doc.name], [true, 'Berry walk 2', 'of b']);
  const over = b.save({...mine, doc: doc('of b'), rev: /** @type {any} */ (clash).conflict.rev});
  assert.equal(over.kept, true);
  assert.equal(a.load(record.id)?.doc.name, 'of b');
  assert.equal(a.list().length, 2);
});

test('a job deleted in another tab comes back with what is typed in this one', () => {
  const shelf = new Shelf();
  const a = keepOver(shelf, 1, 'a').keep, b = keepOver(shelf, 1, 'b').keep;
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
  const events = new EventTarget(), shelf = new Shelf();
  const keep = openKeep(/** @type {any} */ (shelf), {events});
  /** @type {any[]} */
  const heard = [];
  const stop = keep.watch(change => heard.push([change.id, change.record?.name ?? null]));
  const {record} = keepOver(shelf).keep.create(doc());
  const tell = (/** @type {any} */ what) => events.dispatchEvent(Object.assign(new Event('storage'), {storageArea: shelf, ...what}));
  tell({key: `barrow.job.${record.id}`, newValue: shelf.getItem(`barrow.job.${record.id}`)});
  tell({key: `barrow.job.${record.id}`, newValue: null});
  tell({key: `barrow.job.${record.id}`, newValue: '{broken'});
  tell({key: 'barrow.index', newValue: '{}'});
  tell({key: 'other', newValue: '{}'});
  tell({key: `barrow.job.${record.id}`, newValue: null, storageArea: {}});
  tell({key: null, newValue: null});
  stop();
  tell({key: null, newValue: null});
  assert.deepEqual(heard, [[record.id, 'Berry walk'], [record.id, null], ['', null]]);
});

test('what is deleted can be brought back, after a reload too, for 30 days', () => {
  const {keep, shelf, clock} = keepOver();
  const {record} = keep.create(doc(), 'One'), two = keep.create(doc(), 'Two').record;
  const gone = keep.remove(record.id);
  assert.equal(gone?.name, 'One');
  assert.deepEqual(keep.list().map(entry => entry.name), ['Two']);
  assert.equal(keep.last()?.name, 'Two');
  const later = keepOver(shelf, clock.at, 'b');
  assert.equal(later.keep.deleted()?.name, 'One');
  assert.equal(later.keep.restore('another'), null);
  const back = later.keep.restore(gone?.token ?? '');
  assert.deepEqual([back?.kept, back?.record.id, back?.record.doc], [true, record.id, doc()]);
  assert.equal(later.keep.deleted(), null);
  assert.equal(later.keep.restore(gone?.token ?? ''), null);

  const first = later.keep.remove(record.id);
  later.keep.remove(two.id);
  assert.equal(later.keep.restore(first?.token ?? ''), null, 'until the next one');
  assert.equal(later.keep.deleted()?.name, 'Two');
  const old = keepOver(shelf, later.clock.at + (daysToRestore + 1) * 86400000, 'c');
  assert.equal(old.keep.deleted(), null);
  assert.equal(shelf.getItem('barrow.deleted'), null);
  assert.equal(old.keep.remove('nothing'), null);
});

test('a device that refuses: the page goes on in memory and says so', () => {
  const shelf = new Shelf();
  shelf.refuses = true;
  for (const storage of [null, shelf]) {
    const {keep} = keepOver(storage);
    assert.equal(keep.state.can, false);
    assert.equal(keep.state.why, 'refused');
    assert.match(keep.state.text, /Save it as a file/);
    const made = keep.create(doc());
    assert.deepEqual([made.kept, made.why], [false, 'refused']);
    const saved = keep.save({...made.record, doc: doc('more')});
    assert.equal(saved.kept, false);
    assert.equal(keep.load(made.record.id)?.doc.name, 'more');
    assert.equal(keep.list().length, 1);
    assert.equal(keep.last()?.id, made.record.id);
    const gone = keep.remove(made.record.id);
    assert.equal(keep.list().length, 0);
    assert.equal(keep.restore(gone?.token ?? '')?.record.doc.name, 'more');
    assert.equal(keep.list().length, 1);
  }
  const {keep: spoken} = keepOver(null);
  setLanguage({language: 'es', page: {[spoken.state.text]: 'en español'}});
  assert.equal(spoken.state.text, 'en español', 'in the language of now');
  setLanguage();
  const shut = new Shelf();
  shut.refusesReads = shut.refuses = true;
  const {keep} = keepOver(shut);
  assert.equal(keep.state.why, 'refused');
  assert.equal(keep.create(doc()).kept, false);
  assert.equal(keep.list().length, 1);
});

test('a device without room: plans go first, then it is said what is needed', () => {
  const {keep, shelf} = keepOver();
  const plan = JSON.stringify({text: 'p'.repeat(5000)});
  const old = keep.create(doc(), 'Old', {plan}).record;
  const {record} = keep.create(doc(), 'New', {plan});
  shelf.room = shelf.used + 1000;
  const bigger = {...doc(), note: 'x'.repeat(4000)};
  const saved = keep.save({...record, doc: bigger});
  assert.deepEqual([saved.kept, saved.record.plan], [true, ''], 'its own plan');
  assert.equal(keep.load(old.id)?.plan, plan, 'and no other');
  const second = keep.save({...saved.record, doc: {...doc(), note: 'x'.repeat(8000)}});
  assert.equal(second.kept, true);
  assert.equal(keep.load(old.id)?.plan, '', 'then those of other jobs');
  assert.equal(keep.load(old.id)?.rev, old.rev, 'which are as saved otherwise');

  const third = keep.save({...second.record, doc: {...doc(), note: 'x'.repeat(20000)}});
  assert.deepEqual([third.kept, third.why], [false, 'full']);
  assert.ok(Number(third.need) > 20000);
  assert.match(third.text ?? '', /no room/);
  assert.equal(keep.state.why, 'full');
  assert.equal(keep.load(record.id)?.doc.note.length, 20000, 'it goes on in memory');
  assert.equal(keepOver(shelf).keep.load(record.id)?.doc.note.length, 8000, 'and the device has the one before');
  shelf.room = Infinity;
  const fourth = keep.save({...third.record, place: 'yard'});
  assert.equal(fourth.kept, true, 'until there is room again');
  assert.equal(keep.state.can, true);
  assert.equal(keepOver(shelf).keep.load(record.id)?.doc.note.length, 20000);
});

test('deleting works on a device without room', () => {
  const {keep, shelf} = keepOver();
  const {record} = keep.create({...doc(), note: 'x'.repeat(9000)});
  shelf.room = shelf.used;
  const gone = keep.remove(record.id);
  assert.equal(shelf.getItem(`barrow.job.${record.id}`), null);
  const later = keepOver(shelf).keep;
  assert.equal(later.deleted()?.token, gone?.token);
});

test('a very large job is not saved as it is typed', () => {
  const {keep, shelf} = keepOver();
  const {record} = keep.create(doc());
  const large = keep.save({...record, doc: {...doc(), note: 'é'.repeat(largestSaved / 2)}});
  assert.deepEqual([large.kept, large.why], [false, 'large']);
  assert.equal(keep.load(record.id)?.doc.note.length, largestSaved / 2);
  assert.equal(keepOver(shelf).keep.load(record.id)?.doc.note, undefined);
  const plan = keep.create(doc(), 'With a plan', {plan: 'p'.repeat(largestPlan + 1)});
  assert.deepEqual([plan.kept, plan.record.plan], [true, '']);
});

test('what does not read is set aside, and said', () => {
  const {keep, shelf} = keepOver();
  const one = keep.create(doc(), 'One').record, two = keep.create(doc(), 'Two').record;
  shelf.items.set(`barrow.job.${one.id}`, '{"v":1,"id":"a0","doc":{"schema":1');
  shelf.items.set('barrow.job.new', '{"v": 2, "id": "new", "jobs": "of tomorrow"}');
  shelf.items.set('barrow.index', 'x');
  const later = keepOver(shelf, 5, 'z').keep;
  assert.deepEqual(later.list().map(entry => entry.name), ['Two']);
  assert.deepEqual(later.unread().map(({why}) => why).sort(), ['broken', 'newer']);
  const broken = later.unread().find(({why}) => why === 'broken')?.key ?? '';
  assert.match(broken, /^barrow\.aside\./);
  assert.equal(later.text(broken), '{"v":1,"id":"a0","doc":{"schema":1');
  assert.equal(shelf.items.get('barrow.job.new'), '{"v": 2, "id": "new", "jobs": "of tomorrow"}', 'a newer page\'s stays');
  const save = later.save({...two, id: 'new', rev: 1});
  assert.deepEqual([save.kept, /** @type {any} */ (save).why], [false, 'newer']);
  assert.equal(shelf.items.get('barrow.job.new'), '{"v": 2, "id": "new", "jobs": "of tomorrow"}');
  assert.equal(later.last()?.name, 'Two');

  shelf.items.set(`barrow.job.${two.id}`, 'broken while open');
  const kept = later.save({...two, doc: doc('still here')});
  assert.equal(kept.kept, true);
  assert.ok([...shelf.items.values()].includes('broken while open'));
});

test('an index is made again from the records', () => {
  const {keep, shelf} = keepOver();
  keep.create(doc(), 'One');
  keep.create(doc(), 'Two');
  const right = shelf.items.get('barrow.index');
  for (const bad of [undefined, '', '[]', '{"v":1,"jobs":[]}', '{"v":1,"jobs":[{"id":"a0"}]}', '{"v":9,"jobs":"x"}', 'null', '{"v":1,"jobs":[null]}']) {
    if (bad === undefined) shelf.items.delete('barrow.index');
    else shelf.items.set('barrow.index', bad);
    assert.deepEqual(keepOver(shelf).keep.list().map(entry => entry.name), ['Two', 'One'], bad);
    assert.deepEqual(JSON.parse(shelf.items.get('barrow.index') ?? '').jobs.map((/** @type {any} */ j) => j.name).sort(), ['One', 'Two']);
  }
  assert.ok(right);
});

test('names', () => {
  const {keep} = keepOver();
  assert.equal(keep.create(doc(' \u202eodd\nname ')).record.name, 'odd name');
  assert.equal(keep.create({}).record.name, 'My job');
  assert.equal(keep.create({name: 7}).record.name, 'My job 2');
  assert.equal([...keep.create(doc('é'.repeat(500))).record.name].length, 120);
  assert.equal(keep.create(doc('Bed 9')).record.name, 'Bed 9');
  assert.equal(keep.create(doc('Bed 9')).record.name, 'Bed 2');
});

test('keys with a meaning in JavaScript are plain data', () => {
  const {keep, shelf} = keepOver();
  const odd = JSON.parse('{"__proto__": {"polluted": 1}, "constructor": {"x": 1}}');
  const {record} = keep.create(odd, 'x', {ticks: JSON.parse('{"__proto__": 3}')});
  const again = keepOver(shelf).keep.load(record.id);
  assert.equal(JSON.stringify(again?.doc), JSON.stringify(odd));
  assert.equal(JSON.stringify(again?.ticks), '{"__proto__":3}');
  assert.equal(/** @type {any} */ ({}).polluted, undefined);
});

test('whatever the storage holds, the keep opens and works, and loses nothing', () => {
  const d = dice(21);
  const names = ['barrow.job.a0', 'barrow.job.', 'barrow.job.__proto__', 'barrow.job.x', 'barrow.index', 'barrow.last', 'barrow.deleted', 'barrow.aside.job.a0.1', 'other'];
  const good = JSON.stringify({v: 1, id: 'a0', name: 'x', doc: {schema: 1}, home: null, ticks: {}, place: '', typedAt: 1, rev: 1, plan: ''});
  const bin = JSON.stringify({v: 1, token: 't', at: 1, record: JSON.parse(good)});
  for (let round = 0; round < 800; round++) {
    const shelf = new Shelf();
    for (const name of names) {
      switch (d.roll(5)) {
        case 0: break;
        case 1: shelf.items.set(name, JSON.stringify(anyValue(d, 3)) ?? ''); break;
        case 2: shelf.items.set(name, d.text(nasty, 5)); break;
        default: shelf.items.set(name, d.mutate(name.endsWith('deleted') ? bin : good, [...nasty, '{', '}', '9', '-1', 'null']));
      }
    }
    const before = [...shelf.items].filter(([key]) => key.startsWith('barrow.job.'));
    if (d.roll(3) === 0) shelf.room = shelf.used + d.roll(300);
    const {keep} = keepOver(shelf, 10, 'n');
    const held = () => [...shelf.items.values()];
    for (const [key, text] of before) {
      keep.load(key.slice('barrow.job.'.length));
      assert.ok(held().includes(text), `${key} ${text}`);
    }
    const made = keep.create(doc());
    assert.equal(keep.load(made.record.id)?.doc.name, 'Berry walk');
    assert.ok(keep.list().some(({id}) => id === made.record.id));
    assert.equal(keep.last()?.id, made.record.id);
    for (const entry of keep.list()) {
      const record = keep.load(entry.id);
      if (record) keep.save({...record, doc: {...record.doc, more: 1}});
    }
    keep.unread().forEach(({key}) => keep.text(key));
    const gone = keep.remove(made.record.id);
    assert.equal(keep.restore(gone?.token ?? '')?.record.doc.name, 'Berry walk');
  }
  assert.deepEqual(Object.keys(Object.prototype), []);
});

test('asking is guarded', async () => {
  assert.equal(await askToStay(), false);
  assert.equal(deviceStorage(), null);
});
