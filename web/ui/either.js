// @ts-check
// Two or more ways to give the same thing: a choice of the way, and its fields.
import {h} from './h.js';
import {PureComponent} from './memo.js';
import {choice} from './field.js';
import {say} from '../text/say.js';

/**
 * Props: state, path of the object, value, ways as [{name, label, keys}], legend,
 * draw(way) for the fields of a way. The way is what the document has, told by
 * `is` where ways share keys; with none of it, the one that was picked, or the
 * first.
 */
export class Either extends PureComponent {
  constructor(/** @type {any} */ props) {
    super(props);
    this.state = {picked: null};
  }

  render({state, path, value, ways, legend, draw, inline}) {
    const given = (/** @type {any} */ way) => (way.is ?? way.keys).some((/** @type {string} */ key) => value?.[key] !== undefined);
    const named = (/** @type {string} */ name) => ways.find((/** @type {any} */ w) => w.name === name);
    const picked = named(this.state.picked);
    // While a box is emptied to be filled anew, its way stays.
    const way = picked && given(picked) ? picked : ways.find(given) ?? picked ?? named(this.last) ?? ways[0];
    this.last = way.name;
    return h('div', {class: inline ? 'either inline' : 'either'},
      choice({state, path, suffix: '-way-' + ways[0].name, test: 'way', row: {}, label: legend, options: ways.map((/** @type {any} */ w) => [w.name, say(w.label)]), value: way.name,
        onPick: (/** @type {string} */ name) => {
          const to = ways.find((/** @type {any} */ w) => w.name === name);
          this.setState({picked: name});
          leaveOut(state, path, value, way.keys.filter((/** @type {string} */ key) => !to.keys.includes(key)));
        }}),
      h('div', {class: 'way', key: way.name}, draw(way)));
  }
}

/** Takes fields out of an object, in one step. @param {any} state @param {any[]} path @param {any} value @param {string[]} keys */
function leaveOut(state, path, value, keys) {
  if (typeof value !== 'object' || value === null || !keys.some(key => value[key] !== undefined)) return;
  state.job.set(path, Object.fromEntries(Object.entries(value).filter(([key]) => !keys.includes(key))), {label: say('Changed'), typing: false});
}

