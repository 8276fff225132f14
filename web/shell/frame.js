// @ts-check
// The page: a head, the place that is open, the total that is always in sight,
// and the bar of places under the thumb.
import {h, cls} from '../ui/h.js';
import {say} from '../text/say.js';
import {asText} from '../ui/entry.js';
import {Boundary} from '../ui/boundary.js';
import {totalLine} from '../result/bill.js';
import {formView} from '../job/form.js';
import {reveal} from '../job/reveal.js';
import {resultView} from '../result/result.js';
import {yardView} from '../yard/yard.js';
import {bedView} from '../bed/bed.js';
import {jobsView} from './jobs.js';
import {firstVisitView} from './first_visit.js';
import {printView} from './print.js';
import {goTo} from '../state/state.js';

/** @import {Place, State} from '../state/types.d.ts' */

/** Everything there is to see. @param {State} state */
export function pageView(state) {
  return [
    h('a', {class: 'skip', href: '#place', key: 'skip', onClick: e => { e.preventDefault(); document.getElementById('place')?.focus(); }}, say('Skip to the job')),
    head(state),
    messages(state),
    h('main', {id: 'place', key: 'main', tabIndex: -1, class: 'place place-' + state.place}, state.record ? h(Boundary, {state, draw: place}) : firstVisitView(state)),
    state.record && h(Boundary, {state, draw: foot, key: 'foot'}),
    state.jobsOpen && jobsView(state),
    h(Boundary, {state, draw: printView, key: 'sheet'}),
    h('div', {class: 'unseen', role: 'status', 'aria-live': 'polite', 'data-test': 'live', key: 'live'}, state.announcement),
  ];
}

/** @param {State} state */
function head(state) {
  const name = asText(state.job.doc.name) || say('Unnamed job');
  return h('header', {class: 'head', key: 'head'},
    state.record ? h('p', {class: 'head-name'}, name) : h('p', {class: 'head-name'}, 'Barrow'),
    state.keptText ? h('p', {class: 'kept'}, state.keptText) : null,
    h('button', {type: 'button', class: 'menu', 'data-test': 'menu', 'aria-haspopup': 'dialog', onClick: () => { state.jobsOpen = true; state.redraw(); }}, say('Jobs'), h('span', {class: 'unseen'}, ' ', say('and more'))));
}

/** What the page has to say of itself, with what can be done about it. @param {State} state */
function messages(state) {
  const undoes = state.message?.undo;
  return h('div', {class: 'messages', key: 'messages'},
    state.updateReady && h('div', {class: 'message', role: 'status', 'data-test': 'update'},
      h('p', null, say('A newer Barrow is ready.')),
      h('button', {type: 'button', 'data-test': 'update-now', onClick: state.useUpdate}, say('Use it now')),
      h('button', {type: 'button', class: 'quiet', 'data-test': 'update-later', onClick: () => { state.updateReady = false; state.redraw(); }}, say('Later'))),
    state.conflict && h('div', {class: 'message', role: 'alert', 'data-test': 'conflict'},
      h('p', null, say('This job was changed in another tab.')),
      h('button', {type: 'button', 'data-test': 'conflict-theirs', onClick: state.conflict.theirs}, say('Show that one')),
      h('button', {type: 'button', 'data-test': 'conflict-mine', onClick: state.conflict.mine}, say('Keep this one as a copy'))),
    state.long && h('div', {class: 'message', role: 'status', 'data-test': 'long'},
      h('p', null, state.long === 'loading' ? say('The program is slow to load.') : say('This is taking long to work out.')),
      h('button', {type: 'button', 'data-test': 'stop', onClick: state.actions.stop}, state.long === 'loading' ? say('Try again') : say('Stop'))),
    state.message && h('div', {class: 'message', role: state.message.bad ? 'alert' : 'status', 'data-test': 'message'},
      h('p', null, state.message.text),
      undoes && h('button', {type: 'button', 'data-test': 'undo', onClick: () => undo(state, undoes)}, say('Undo')),
      state.message.again && h('button', {type: 'button', 'data-test': 'ask-again', onClick: state.actions.askAgain}, say('Ask again')),
      h('button', {type: 'button', class: 'quiet', onClick: () => closeMessage(state)}, say('Close'))));
}

/** Takes back what the message tells of. @param {State} state @param {true | (() => void)} more */
function undo(state, more) {
  state.job.undo();
  if (more !== true) more();
  closeMessage(state);
}

/** @param {State} state */
function closeMessage(state) {
  state.message = null;
  state.redraw();
  document.getElementById('place')?.focus({preventScroll: true});
}

/** @param {State} state */
function place(state) {
  switch (state.place) {
    case 'yard': return yardView(state);
    case 'ground': return bedView(state);
  }
  return h('div', {class: 'job'}, h('h1', {class: 'unseen'}, say('The job')), formView(state), resultView(state, reveal));
}

/** The total and the places. @param {State} state */
function foot(state) {
  return h('footer', {class: 'foot', key: 'foot'},
    h('div', {class: cls('total', {old: state.stale && state.plan})},
      h('div', null,
        h('p', {'data-test': 'total'}, totalLine(state) ?? waitingText(state)),
        state.stale && state.plan && h('p', {class: 'stale', 'data-test': 'stale'}, staleText(state))),
      wanting(state) && h('button', {type: 'button', class: 'quiet', 'data-test': 'show-where', onClick: () => showWhere(state)}, say('Show where'))),
    h('nav', {'aria-label': say('Places')}, /** @type {[Place, string][]} */ ([['job', say('Job')], ['yard', say('Yard')], ['ground', say('Ground')]]).map(([place, name]) =>
      h('button', {key: place, type: 'button', 'data-test': 'place-' + place, 'aria-current': state.place === place ? 'page' : undefined, onClick: () => goTo(state, place)}, name))));
}

/** The path of what is to be filled in or put right first, in the job as it stands. @param {State} state */
const wanting = state => state.problemsFor === state.job.doc ? [...state.problems.keys()].find(path => path !== 'tasks') : undefined;

/** Goes to what is wrong: here, where it is shown here, or in the Job place. @param {State} state */
function showWhere(state) {
  const here = state.place !== 'job' && document.querySelector('#place [data-test="problem"]');
  if (here) return here.scrollIntoView({block: 'center'});
  if (state.place !== 'job') goTo(state, 'job');
  reveal(state, wanting(state) ?? '');
}

/** What stands where the total will. @param {State} state */
function waitingText(state) {
  if (state.problems.has('tasks')) return say('Add a task to begin.');
  return wanting(state) ? say('Something is still needed.') : say('Working it out.');
}

/** Why the result is not of what is typed. @param {State} state */
function staleText(state) {
  const n = state.problems.size;
  if (state.problemsFor !== state.job.doc || n === 0) return say('from before');
  const needed = [...state.problems.values()].every(p => p.code === 'field.missing');
  return needed ? say('from before: something is needed') : say('from before: see what is marked');
}
