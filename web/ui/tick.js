// @ts-check
// A box to tick.
import {h, cls} from './h.js';
import {idOf, problemText} from './around.js';
import {pathText} from '../state/path.js';
import {shown} from '../state/problems.js';
import {say} from '../text/say.js';

/**
 * @import {Row} from '../state/fields.js'
 * @import {Path} from '../state/path.js'
 * @import {State} from '../state/types.d.ts'
 */

/** @param {{state: State, path: Path, label: string, checked: boolean, onTick: (on: boolean) => void, test?: string, suffix?: string}} props */
export function tick({state, path, label, checked, onTick, test = 'field', suffix = ''}) {
  const text = pathText(path), id = idOf(text) + suffix;
  const problem = suffix ? undefined : shown(state, text);
  return h('div', {class: cls('field', 'field-tick', {wrong: !!problem})},
    h('label', {class: 'tick', for: id},
      h('input', {id, type: 'checkbox', checked, name: text + suffix, 'data-test': test, 'data-path': text, 'aria-invalid': problem ? 'true' : undefined, 'aria-describedby': problem && id + '-problem',
        onChange: e => { onTick(e.currentTarget.checked); state.redraw(); }}),
      h('span', null, label)),
    problemText(text, problem));
}

/** A yes or no of the document: no is left out. @param {{state: State, path: Path, row: Row, value: unknown}} props */
export function yesNo({state, path, row, value}) {
  return tick({state, path, label: say(row.label), checked: value === true, onTick: on => state.job.set(path, on ? true : undefined)});
}
