// @ts-check
// Two or more ways to give the same thing: a choice of the way, and its fields.
import {h} from './h.js';
import {choice} from './choice.js';
import {PureComponent} from './memo.js';
import {say} from '../text/say.js';

/**
 * @import {Child} from './h.js'
 * @import {Path} from '../state/path.js'
 * @import {Doc} from '../store/record.js'
 * @import {State} from '../state/types.d.ts'
 */

/**
 * A way: the fields that it gives, and those that set it apart where ways share
 * some.
 * @typedef {{name: string, label: string, keys: string[], is?: string[]}} Way
 */

/**
 * @typedef {object} Props
 * @property {State} state
 * @property {Path} path of the object
 * @property {Doc | undefined} value the object
 * @property {readonly Way[]} ways
 * @property {string} legend
 * @property {(way: Way) => Child} draw the fields of a way
 * @property {boolean} [inline]
 */

/**
 * The way is what the document has; with none of it, the one that was picked, or
 * the first.
 * @extends {PureComponent<Props, {picked: string | null}>}
 */
export class Either extends PureComponent {
  /** @param {Props} props */
  constructor(props) {
    super(props);
    this.state = {picked: null};
  }

  /** @param {Props} props */
  render({state, path, value, ways, legend, draw, inline}) {
    /** @param {Way} way */
    const given = way => (way.is ?? way.keys).some(key => value?.[key] !== undefined);
    /** @param {string | null | undefined} name */
    const named = name => ways.find(w => w.name === name);
    const picked = named(this.state.picked);
    // While a box is emptied to be filled again, its way stays; so does one that was
    // picked and has taken over a field of another.
    const stays = picked && (given(picked) || picked.keys.some(key => value?.[key] !== undefined));
    const way = stays ? picked : ways.find(given) ?? picked ?? named(this.last) ?? ways[0];
    /** @type {string | undefined} */
    this.last = way.name;
    return h('div', {class: inline ? 'either inline' : 'either'},
      choice({state, path, suffix: '-way-' + ways[0].name, test: 'way', label: legend, options: ways.map(w => [w.name, say(w.label)]), value: way.name,
        onPick: name => {
          const to = named(name);
          this.setState({picked: name});
          leaveOut(state, path, value, way.keys.filter(key => !to?.keys.includes(key)));
        }}),
      h('div', {class: 'way', key: way.name}, draw(way)));
  }
}

/** Takes fields out of an object, in one step. @param {State} state @param {Path} path @param {Doc | undefined} value @param {string[]} keys */
function leaveOut(state, path, value, keys) {
  if (typeof value !== 'object' || value === null || !keys.some(key => value[key] !== undefined)) return;
  state.job.set(path, Object.fromEntries(Object.entries(value).filter(([key]) => !keys.includes(key))), {label: say('Changed'), typing: false});
}
