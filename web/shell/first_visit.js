// @ts-check
// Where somebody starts who has no job here yet.
import {h} from '../ui/h.js';
import {say} from '../text/say.js';

/** @import {State} from '../state/types.d.ts' */

/** The ways to start. @param {State} state */
export function firstVisitView(state) {
  /** @param {string} test @param {string} name @param {string} about @param {() => void} act */
  const way = (test, name, about, act) => h('li', {key: test}, h('button', {type: 'button', 'data-test': test, onClick: act}, h('strong', null, name), h('span', null, about)));
  return h('section', {class: 'start'},
    h('h1', null, say('How much of everything, what to buy, how to haul it')),
    h('p', null, say('From trays of cuttings to a mulched bed. Everything is worked out in this page, here and offline; nothing is sent anywhere.')),
    h('ul', {class: 'ways'},
      way('start-empty', say('A new job'), say('Start with nothing and add what is to be done.'), () => state.actions.startEmpty()),
      way('start-sample', say('The sample'), say('A worked job to look at and to change.'), () => state.actions.startSample()),
      way('start-file', say('Open a file'), say('A job saved here or by the command line.'), () => state.actions.openFile())));
}
