// The Yard place: the list to buy, what changed there, and the trips.
import {h, cls} from '../ui/h.js';
import {say} from '../text/say.js';
import {asText} from '../ui/entry.js';
import {Field, Announcer, writingOf} from '../ui/field.js';
import {rowOf} from '../state/fields.js';
import {bill, isPartBought} from '../result/bill.js';
import {count, facts, fold, money, nameOf, offerName, offerWords, packName, working} from '../ui/figure.js';
import {drawing, drawingsOf} from '../ui/drawing.js';
import {cautions, sure} from '../result/result.js';
import {buyTicked, goHome, isSoldOut, listOf, setOffer, setOnlyStock, setSoldOut, setTick, acceptChanges, unbuy} from './actions.js';
import {problemAt} from '../state/state.js';
import {isObject} from '../state/path.js';

/** The whole place. */
export function yardView(state) {
  const {plan} = state;
  if (!plan) return h('p', {class: 'note'}, say('Nothing to buy yet: enter the work under Job.'));
  return h('div', {class: 'yard'},
    h(Announcer, {state}),
    h('h1', null, say('What to buy')),
    changes(state),
    leftOut(state),
    plan.order.length > 0 ? list(state) : needsAlone(state),
    stock(state),
    bought(state),
    soldOut(state),
    h('section', {class: 'pay'}, h('h2', null, say('To pay')), bill(state) ?? h('p', null, say('No prices are given.')), working(state, 'load', say('the order'), s => s.task === undefined)),
    others(state),
    trips(state),
    drawingsOf(state, d => d.kind === 'heap').map((d, i) => drawing(d, 'order-' + i)),
    sure(state),
    cautions(plan.cautions, c => c.code !== 'digging'));
}

/** The lines of the order, to tick. */
function list(state) {
  const {order} = state.plan;
  const all = order.every(l => state.ticks[offerName(l)] === l.count);
  const some = order.some(l => state.ticks[offerName(l)] === l.count);
  return h('section', null,
    h('h2', {class: 'unseen'}, say('The list')),
    h('ul', {class: 'lines'}, order.map(l => line(state, l))),
    all && h('p', {class: 'done', role: 'status'}, say('All of it is ticked.')),
    some && h('button', {type: 'button', class: 'quiet', onClick: () => buyTicked(state)}, say('I bought what is ticked: plan the rest')));
}

/** One line: so many packs of a material. */
function line(state, l) {
  const name = offerName(l);
  const ticked = state.ticks[name];
  const id = 'tick-' + l.offer;
  const what = h('span', {class: 'what'},
    h('strong', {class: 'figure'}, String(l.count)), l.count_range && h('span', {class: 'range'}, ' ', say('({low} to {high})', {low: l.count_range[0], high: l.count_range[1]})), ' × ', packName(l), ' ', h('span', {class: 'material'}, nameOf(state, l.material)));
  return h('li', {class: cls('line', {ticked: ticked === l.count}), key: l.offer, 'data-test': 'line', 'data-offer': name, 'data-count': l.count},
    h('div', {class: 'line-head'},
      h('input', {type: 'checkbox', id, 'data-test': 'tick', checked: ticked === l.count, onChange: e => setTick(state, l, e.target.checked)}),
      h('label', {for: id}, what,
        h('span', {class: 'line-side'}, l.cost !== undefined ? money(state, l.cost) : say('no price'), l.mass_shown && h('span', null, l.mass_shown),
          l.left_shown && h('span', {class: 'line-left'}, say('{left} over', {left: l.left_shown})), l.delivered && h('span', null, say('{n} delivered', {n: l.delivered}))))),
    ticked !== undefined && ticked !== l.count && h('p', {class: 'differs', role: 'status'}, say('You ticked {ticked}; the plan now has {count}.', {ticked, count: l.count})),
    lineActs(state, l));
}

/** What can be said of an offer at the yard. */
function lineActs(state, l) {
  const name = offerName(l);
  const which = () => h('span', {class: 'unseen'}, ': ' + packName(l) + ' ' + nameOf(state, l.material));
  return h('div', {class: 'line-acts'},
    h('button', {type: 'button', 'data-test': 'sold-out', onClick: () => setSoldOut(state, name, true)}, say('Sold out?'), which()),
    fold(state, 'line ' + name, [say('Price, stock'), which()], () => offerFields(state, l.offer), {wrong: offerWrong(state, l.offer)}));
}

/** Whether something is wrong with what may have changed about an offer. */
const offerWrong = (state, index) => ['price', 'stock'].some(name => problemAt(state, state.job.pathText(['offers', index, name])));

/** What may have changed about an offer. */
function offerFields(state, index) {
  return h('div', {class: 'line-fields'},
    field(state, ['offers', index, 'price'], rowOf('offer', 'price'), {onPut: v => setOffer(state, index, 'price', v)}),
    field(state, ['offers', index, 'stock'], rowOf('offer', 'stock'), {label: say('How many there are'), onPut: v => setOffer(state, index, 'stock', v)}));
}

const field = (state, path, row, more) => h(Field, {state, path, row, writing: writingOf(state), ...more});

/** Needs without any order: how many of each common pack. */
function needsAlone(state) {
  return h('section', null,
    h('p', {class: 'note'}, say('No offers yet: what each comes to in common packs.')),
    state.plan.needs.map(n => h('article', {class: 'need', key: n.material}, h('h2', null, n.name),
      h('p', null, h('strong', {class: 'figure'}, n.shown)),
      n.grade && h('p', {class: 'note'}, say('Ask for: {grade}', {grade: n.grade})),
      facts(n.packs.map(p => [packName(p), count(p)])))));
}

/** What the yard's changes did, line by line. */
function changes(state) {
  if (!state.home || state.home === state.job.doc) return null;
  const {changes: c} = state;
  return h('section', {class: 'changes', 'data-test': 'changes', 'aria-label': say('What changed at the yard')},
    h('h2', {id: 'changed', tabIndex: -1}, say('What changed')),
    !c ? h('p', null, say('Working it out.')) : [
      h('ul', null, c.changes.filter(k => k.is !== 'same').map((k, i) => h('li', {key: i},
        packName(k) + ' ' + k.name + ': ', h('strong', null, changedTo(state, k)))),
        prices(state)),
      c.changes.every(k => k.is === 'same') && h('p', null, say('The list to buy is the same.')),
      c.before?.total !== undefined && c.after?.total !== undefined && h('p', null, totals(state, money(state, c.before.total), money(state, c.after.total))),
      c.after?.drives_shown && h('p', null, c.before?.drives_shown && c.before.drives_shown !== c.after.drives_shown ? say('{after}, was {before}', {before: c.before.drives_shown, after: c.after.drives_shown}) : c.after.drives_shown),
    ],
    h('p', {class: 'acts'},
      h('button', {type: 'button', class: 'quiet', onClick: () => goHome(state)}, say('Undo what changed at the yard')),
      h('button', {type: 'button', class: 'quiet', onClick: () => acceptChanges(state)}, say('Keep these changes'))));
}

/** How many of an offer are to be bought now. */
function changedTo(state, {before, after, ...offer}) {
  const name = offerName(offer), isBought = listOf(state, 'bought').some(b => b?.offer === name);
  return isBought ? say('{after} still to buy, was {before}', {before, after}) : say('{after}, was {before}', {before, after});
}

/** Prices that are not what they were at home. */
function prices(state) {
  const was = Array.isArray(state.home.offers) ? state.home.offers : [], is = state.job.doc.offers;
  if (!Array.isArray(is) || is.length !== was.length) return null;
  return is.map((offer, i) => isObject(offer) && offer.price !== was[i]?.price && h('li', {key: 'price ' + i},
    offerWords(state, offerName(offer)) + ': ', h('strong', null, say('{after}, was {before}', {before: priceText(state, was[i]), after: priceText(state, offer)}))));
}

const priceText = (state, offer) => offer?.price === undefined ? say('no price') : money(state, asText(offer.price));

/** The two totals; what was bought since is in the second no more. */
const totals = (state, before, after) => isPartBought(state.job.doc) && !isPartBought(state.home) ? say('Still to pay {after}; it was {before} in all', {before, after}) : say('In all {after}, was {before}', {before, after});

/** What no offer covers. */
function leftOut(state) {
  const out = state.plan.left_out ?? [];
  if (out.length === 0) return null;
  return h('section', {class: 'left-out', role: 'alert'},
    h('h2', null, say('Not on the list')),
    out.map(m => h('div', {key: m.material},
      h('p', null, h('strong', null, m.name), ': ', say('no offer covers it.'), ' ', state.plan.needs.find(n => n.material === m.material)?.shown),
      m.stand_ins.length > 0 && h('ul', null, m.stand_ins.map((s, i) => h('li', {key: i}, s))))));
}

/** So many of each the program takes. */
const mostOfAYard = 1000;

/** What is bought already. */
function bought(state) {
  const list = listOf(state, 'bought').slice(0, mostOfAYard);
  if (list.length === 0) return null;
  return h('section', {class: 'bought'},
    h('h2', null, say('Bought already')),
    h('p', {class: 'note'}, say('What is to pay and the trips are for the rest.')),
    h('ul', {class: 'lines'}, list.map((b, i) => h('li', {key: i, class: 'line'}, h('p', null, `${asText(b?.count)} × ${offerWords(state, asText(b?.offer))}`),
      h('button', {type: 'button', class: 'quiet', onClick: () => unbuy(state, i)}, say('Not bought after all'))))));
}

/** What is sold out. */
function soldOut(state) {
  const list = listOf(state, 'without').slice(0, mostOfAYard);
  if (list.length === 0) return null;
  return h('section', {class: 'sold-out'},
    h('h2', null, say('Sold out')),
    h('ul', {class: 'lines'}, list.map((name, i) => h('li', {key: i, class: 'line', 'data-test': 'gone', 'data-offer': asText(name)}, h('p', null, offerWords(state, asText(name))),
      h('button', {type: 'button', class: 'quiet', 'data-test': 'there-after-all', onClick: () => setSoldOut(state, name, false)}, say('There after all'))))));
}

/** Offers that the order does not take. */
function others(state) {
  const list = (state.plan.others ?? []).filter(l => !isSoldOut(state, offerName(l)));
  if (list.length === 0) return null;
  return h('section', {class: 'others'},
    h('h2', null, say('Other packs on offer')),
    h('p', {class: 'note'}, say('Each as if it were bought alone.')),
    h('ul', {class: 'lines'}, list.map(l => {
      const name = offerName(l);
      return h('li', {class: 'line', key: l.offer, 'data-test': 'other', 'data-offer': name},
        h('p', {class: 'line-head'}, h('span', {class: 'what'}, count(l), ' × ', packName(l), ' ', nameOf(state, l.material)),
          h('span', {class: 'line-side'}, l.cost !== undefined ? money(state, l.cost) : say('no price'))),
        lineActs(state, l));
    })));
}

/** How much of everything is left, where nobody has counted. */
function stock(state) {
  return fold(state, 'only-stock', say('Little left of everything?'), () => h('div', {class: 'line-fields'},
    field(state, ['yard', 'only_stock'], rowOf('yard', 'only_stock'), {label: say('At most this many of each, where no stock is given'), onPut: v => setOnlyStock(state, v)})));
}

/** The drives and the yard's own loads. */
function trips(state) {
  const {plan} = state;
  if (plan.trips.length === 0 && !plan.deliveries) return null;
  return h('section', {class: 'trips', 'data-test': 'trips'},
    h('h2', null, say('Trips')),
    plan.load?.drives_shown && h('p', null, h('strong', {class: 'figure'}, plan.load.drives_shown)),
    h('ol', {class: 'trip-list'}, plan.trips.map((t, i) => trip(state, t, i))),
    (plan.deliveries ?? []).length > 0 && [h('h3', null, say('Delivered')), h('ol', {class: 'trip-list'}, plan.deliveries.map((t, i) => trip(state, t, 'd' + i)))],
    drawingsOf(state, d => d.kind === 'trips').map((d, i) => drawing(d, 'trip-' + i)));
}

/** One trip, or trips alike. */
function trip(state, t, key) {
  const limits = {weight: say('weight is the nearer limit'), room: say('room is the nearer limit')};
  return h('li', {key, class: 'trip', 'data-test': 'trip', 'data-count': t.times ?? 1},
    t.times > 1 && h('p', {class: 'times'}, say('{n} times:', {n: t.times})),
    h('ul', null, t.packs.map((p, i) => h('li', {key: i}, `${p.count} × `, packName(p), ' ', nameOf(state, p.material)))),
    h('p', {class: 'note'}, [t.mass_shown, t.packed_shown, limits[t.limit]].filter(Boolean).join(' · ')));
}
