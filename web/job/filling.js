// @ts-check
// What goes into the pots, the bed, the holes or on top.
import {h} from '../ui/h.js';
import {problemText} from '../ui/around.js';
import {choice} from '../ui/choice.js';
import {asText} from '../ui/entry.js';
import {Field} from '../ui/field.js';
import {PureComponent} from '../ui/memo.js';
import {KeyedRows, readParts, writeParts} from './keyed_rows.js';
import {describe} from './material.js';
import {partRow} from './mix.js';
import {partGroups} from './names.js';
import {rowOf} from '../state/fields.js';
import {pathText} from '../state/path.js';
import {problemsAt, shown} from '../state/problems.js';
import {say} from '../text/say.js';

/**
 * @import {Group, Option} from '../ui/choice.js'
 * @import {Path} from '../state/path.js'
 * @import {Doc} from '../store/record.js'
 * @import {State} from '../state/types.d.ts'
 * @import {NamedContext} from './control.js'
 * @import {Entry} from './keyed_rows.js'
 * @import {Named} from './names.js'
 */

/**
 * How it is asked for: what it is called, and what stands for nothing.
 * @typedef {{label: string, nothing?: string, mixesFirst?: boolean}} Asked
 */

/** @typedef {{state: State, path: Path, mix: unknown, material: unknown, ctx: NamedContext, mark: string} & Asked} Props */

/** What a task is filled with. @param {State} state @param {Path} path @param {Doc} task @param {NamedContext} ctx @param {Asked} asked */
export const filling = (state, path, {mix, material}, ctx, asked) => h(Filling, {key: 'filling', state, path, mix, material, ctx, mark: problemsAt(state, pathText(path)).mark, ...asked});

/**
 * What goes in: a mix by name, a material, or parts of one's own.
 * @extends {PureComponent<Props, {parts: Entry[] | null, mode: 'parts' | 'other' | null}>}
 */
class Filling extends PureComponent {
  /** @param {Props} props */
  constructor(props) {
    super(props);
    this.state = {parts: null, mode: null};
  }

  /** @param {string} picked */
  pick(picked) {
    const {state, path} = this.props, task = state.job.get(path);
    const [what, id] = [picked.slice(0, picked.indexOf(':')), picked.slice(picked.indexOf(':') + 1)];
    this.setState({mode: what === 'parts' || what === 'other' ? what : null, parts: null});
    const rest = Object.fromEntries(Object.entries(task).filter(([key]) => key !== 'mix' && key !== 'material'));
    const named = what === 'mix' ? {mix: id} : what === 'material' ? {material: id} : {};
    // Fields keep their order: what goes in stands after kind and name.
    const {kind, name, ...others} = rest;
    state.job.set(path, {kind, ...name === undefined ? {} : {name}, ...named, ...others}, {label: say('Changed'), typing: false});
  }

  /** @param {Entry[]} parts */
  write(parts) {
    this.setState({parts});
    this.props.state.job.set([...this.props.path, 'mix'], writeParts(parts), {typing: true});
  }

  /** @param {Props} props */
  render({state, path, mix, material, ctx, label, nothing, mixesFirst}) {
    const {names, writing} = ctx, {mode} = this.state;
    const both = mix !== undefined && material !== undefined;
    const mixes = [...names.ownMixes, ...names.mixes];
    /** @param {Named[]} list @param {unknown} id */
    const known = (list, id) => list.some(([one]) => one === id);
    const spelled = typeof mix === 'string' && /[\s,]/.test(mix) && !known(mixes, mix);
    const parts = this.state.parts && writeParts(this.state.parts) === mix ? this.state.parts : mix === undefined ? [] : readParts(mix);
    const inParts = mode === 'parts' || spelled;
    const inOther = mode === 'other';
    const value = inParts ? 'parts:' : inOther ? 'other:' : mix !== undefined ? 'mix:' + asText(mix) : material !== undefined ? 'material:' + asText(material) : '';
    const at = material !== undefined || mix === undefined ? [...path, 'material'] : [...path, 'mix'];
    /** @param {string} what @param {readonly Option[]} list @returns {Option[]} */
    const prefixed = (what, list) => list.map(([id, name]) => [`${what}:${id}`, name]);
    const mixGroups = [{label: say('Your own mixes'), options: prefixed('mix', names.ownMixes)}, {label: say('Mixes'), options: prefixed('mix', names.mixes)}];
    const plainGroups = [{label: say('Your own materials'), options: prefixed('material', names.ownMaterials)}, ...names.materialKinds.map(({label, options}) => ({label, options: prefixed('material', options)}))];
    const groups = (mixesFirst ? [...mixGroups, ...plainGroups] : [...plainGroups, ...mixGroups]).filter(g => g.options.length > 0);
    // What is in no list stands under its own id.
    const unknown = !inParts && !inOther && value !== '' && !groups.some(g => g.options.some(([one]) => one === value));
    /** @type {(Option | Group)[]} */
    const options = [...groups, ['parts:', say('Parts of my own…')], ['other:', say('Something else…')]];
    if (unknown) options.unshift([value, asText(mix ?? material)]);
    const text = pathText(at);
    return h('div', {class: 'filling'},
      choice({state, path: at, label, options, value, empty: nothing ?? say('Choose'), suffix: inParts || inOther ? '-list' : undefined, test: inParts || inOther ? 'field-list' : 'field', onPick: picked => this.pick(picked)}),
      inParts && (parts
        ? h(KeyedRows, {state, path: [...path, 'mix'], entries: parts, write: next => this.write(next), pathOf: id => [...path, 'mix', id], figure: partRow, names, groups: partGroups(names), writing, first: 1, addLabel: say('Add a part'), mark: problemsAt(state, text).mark})
        : h(Field, {state, path: [...path, 'mix'], row: {...rowOf('task', 'mix'), kind: 'parts'}, writing, label: say('Parts by volume')})),
      unknown && mix === undefined && typeof material === 'string' && names.materials.length > 0 && describe(state, material),
      inOther && h(Field, {state, path: [...path, 'material'], row: {...rowOf('task', 'material'), kind: 'id'}, writing, label: say('Its short name')}),
      both && h('div', {class: 'extra'}, problemText(pathText([...path, 'mix']), shown(state, pathText([...path, 'mix']))),
        h('button', {type: 'button', class: 'take-out', 'data-test': 'remove-row', 'data-path': pathText([...path, 'mix']), onClick: () => { state.job.set([...path, 'mix'], undefined); state.redraw(); }}, say('Take out {what}', {what: asText(mix)}))));
  }
}
