// The page: a head, the place that is open, the total that is always in sight,
// and the bar of places under the thumb.
import {h, cls} from '../ui/h.js';
import {say} from '../text/say.js';
import {asText} from '../ui/entry.js';
import {Guard} from '../ui/boundary.js';
import {totalLine} from '../result/bill.js';
import {formView, reveal} from '../job/form.js';
import {resultView} from '../result/result.js';
import {yardView} from '../yard/yard.js';
import {groundView} from '../bed/bed.js';
import {shelfView} from './jobs.js';
import {startView} from './first_visit.js';
import {sheetsView} from './print.js';
import {goTo} from '../state/state.js';

/** Everything there is to see. */
export function view(desk) {
  return [
    h('a', {class: 'skip', href: '#place', key: 'skip', onClick: e => { e.preventDefault(); document.getElementById('place')?.focus(); }}, say('Skip to the job')),
    head(desk),
    messages(desk),
    h('main', {id: 'place', key: 'main', tabIndex: -1, class: 'place place-' + desk.place}, desk.record ? h(Guard, {desk, draw: place}) : startView(desk)),
    desk.record && h(Guard, {desk, draw: foot, key: 'foot'}),
    desk.shelfOpen && shelfView(desk),
    h(Guard, {desk, draw: sheetsView, key: 'sheet'}),
    h('div', {class: 'unseen', role: 'status', 'aria-live': 'polite', 'data-test': 'live', key: 'live'}, desk.spoken),
  ];
}

function head(desk) {
  const name = asText(desk.slate.doc.name) || say('Unnamed job');
  return h('header', {class: 'head', key: 'head'},
    desk.record ? h('p', {class: 'head-name'}, name) : h('p', {class: 'head-name'}, 'Barrow'),
    desk.keptText ? h('p', {class: 'kept'}, desk.keptText) : null,
    h('button', {type: 'button', class: 'menu', 'data-test': 'menu', 'aria-haspopup': 'dialog', onClick: () => { desk.shelfOpen = true; desk.redraw(); }}, say('Jobs'), h('span', {class: 'unseen'}, ' ', say('and more'))));
}

/** What the page has to say of itself, with what can be done about it. */
function messages(desk) {
  return h('div', {class: 'messages', key: 'messages'},
    desk.updateReady && h('div', {class: 'message', role: 'status', 'data-test': 'update'},
      h('p', null, say('A newer Barrow is ready.')),
      h('button', {type: 'button', 'data-test': 'update-now', onClick: desk.useUpdate}, say('Use it now')),
      h('button', {type: 'button', class: 'quiet', 'data-test': 'update-later', onClick: () => { desk.updateReady = false; desk.redraw(); }}, say('Later'))),
    desk.conflict && h('div', {class: 'message', role: 'alert', 'data-test': 'conflict'},
      h('p', null, say('This job was changed in another tab.')),
      h('button', {type: 'button', 'data-test': 'conflict-theirs', onClick: desk.conflict.theirs}, say('Show that one')),
      h('button', {type: 'button', 'data-test': 'conflict-mine', onClick: desk.conflict.mine}, say('Keep this one as a copy'))),
    desk.message && h('div', {class: 'message', role: desk.message.bad ? 'alert' : 'status', 'data-test': 'message'},
      h('p', null, desk.message.text),
      desk.message.undo && h('button', {type: 'button', 'data-test': 'undo', onClick: () => undo(desk)}, say('Undo')),
      h('button', {type: 'button', class: 'quiet', onClick: () => closeMessage(desk)}, say('Close'))));
}

/** Takes back what the message tells of. */
function undo(desk) {
  const {undo: more} = desk.message;
  desk.slate.undo();
  if (more !== true) more();
  closeMessage(desk);
}

function closeMessage(desk) {
  desk.message = null;
  desk.redraw();
  document.getElementById('place')?.focus({preventScroll: true});
}

function place(desk) {
  switch (desk.place) {
    case 'yard': return yardView(desk);
    case 'ground': return groundView(desk);
  }
  return h('div', {class: 'job'}, h('h1', {class: 'unseen'}, say('The job')), formView(desk), resultView(desk, reveal));
}

/** The total and the places. */
function foot(desk) {
  return h('footer', {class: 'foot', key: 'foot'},
    h('div', {class: cls('total', {old: desk.stale && desk.plan})},
      h('div', null,
        h('p', {'data-test': 'total'}, totalLine(desk) ?? waitingText(desk)),
        desk.stale && desk.plan && h('p', {class: 'stale', 'data-test': 'stale'}, staleText(desk))),
      wanting(desk) && h('button', {type: 'button', class: 'quiet', 'data-test': 'show-where', onClick: () => showWhere(desk)}, say('Show where'))),
    h('nav', {'aria-label': say('Places')}, [['job', say('Job')], ['yard', say('Yard')], ['ground', say('Ground')]].map(([place, name]) =>
      h('button', {key: place, type: 'button', 'data-test': 'place-' + place, 'aria-current': desk.place === place ? 'page' : undefined, onClick: () => goTo(desk, place)}, name))));
}

/** The path of what is to be filled in or mended first, in the job as it stands. */
const wanting = desk => desk.problemsFor === desk.slate.doc ? [...desk.problems.keys()].find(path => path !== 'tasks') : undefined;

/** Goes to what is wrong: here, where it is shown here, or in the Job place. */
function showWhere(desk) {
  const here = desk.place !== 'job' && document.querySelector('#place [data-test="problem"]');
  if (here) return here.scrollIntoView({block: 'center'});
  if (desk.place !== 'job') goTo(desk, 'job');
  reveal(desk, wanting(desk));
}

/** What stands where the total will. */
function waitingText(desk) {
  if (desk.problems.has('tasks')) return say('Add a task to begin.');
  return wanting(desk) ? say('Something is still needed.') : say('Working it out.');
}

/** Why the result is not of what is typed. */
function staleText(desk) {
  const n = desk.problems.size;
  if (desk.problemsFor !== desk.slate.doc || n === 0) return say('from before');
  const needed = [...desk.problems.values()].every(p => p.code === 'field.missing');
  return needed ? say('from before: something is needed') : say('from before: see what is marked');
}
