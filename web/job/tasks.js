// @ts-check
// The work: its tasks, and the choice of what to add to it.
import {h, Component} from '../ui/h.js';
import {problemHead} from '../ui/around.js';
import {taskResult} from '../result/task.js';
import {giveFocus} from './focus.js';
import {addRow, nameRows} from './rows.js';
import {someRows} from './some_rows.js';
import {TaskForm, forms, newTask} from './task.js';
import {kinds} from '../state/fields.js';
import {pathText} from '../state/path.js';
import {problemsAt} from '../state/problems.js';
import {say} from '../text/say.js';

/**
 * @import {Doc} from '../store/record.js'
 * @import {State} from '../state/types.d.ts'
 * @import {Known} from './rows.js'
 * @import {TaskContext} from './task.js'
 */

/** @typedef {{state: State, tasks: unknown, ctx: TaskContext}} Props */

/**
 * The tasks, with what each takes beside it.
 * @extends {Component<Props>}
 */
export class Tasks extends Component {
  componentDidMount() { giveFocus(this.props.state, ['tasks'], this.base); }
  componentDidUpdate() { giveFocus(this.props.state, ['tasks'], this.base); }

  /** @param {Props} props */
  render({state, tasks, ctx}) {
    const rows = Array.isArray(tasks) ? tasks : [];
    const known = nameRows(this.known, rows), {keys, fresh} = known;
    /** @type {Known | undefined} */
    this.known = known;
    if (rows.length <= few || fresh.length === 1) for (const name of fresh) state.open.add(name);
    const {most, more} = someRows(this, rows, fresh.length === 1);
    return h('section', {class: 'part tasks', 'aria-labelledby': 'the-work'},
      h('h2', {id: 'the-work'}, say('The work')),
      problemHead(state, ['tasks']),
      rows.length > 0 && h('ol', {class: 'task-list'}, rows.slice(0, most).map((task, i) => {
        const path = ['tasks', i], open = state.open.has(keys[i]);
        return h('li', {key: keys[i], class: 'task', 'data-test': 'task', 'data-path': pathText(path)},
          h(TaskForm, {state, path, task, ctx, name: keys[i], open, last: i === rows.length - 1, figure: open ? undefined : figureOf(state, task, i), mark: problemsAt(state, pathText(path)).mark}),
          open && taskResult(state, i));
      })),
      more,
      h(Adder, {state, none: rows.length === 0}));
  }
}

const few = 2; // tasks that all stand open when a job comes in

/** What a task takes, in a few words, of the plan of just this task. @param {State} state @param {unknown} task @param {number} i */
function figureOf(state, task, i) {
  const of = /** @type {Doc | null} */ (state.planFor)?.tasks; // a word has none
  const index = of?.[i] === task ? i : of?.indexOf?.(task) ?? -1;
  const takes = index < 0 ? undefined : state.plan?.tasks?.[index];
  return takes?.filling ? takes.loose_shown : undefined;
}

/** @typedef {{state: State, none: boolean}} AdderProps */

/**
 * The choice of what to add to the work.
 * @extends {Component<AdderProps, {open: boolean}>}
 */
class Adder extends Component {
  /** @param {AdderProps} props */
  constructor(props) {
    super(props);
    this.state = {open: false};
  }

  /** @param {AdderProps} props @param {{open: boolean}} own */
  render({state, none}, {open}) {
    /** @param {string} kind */
    const add = kind => {
      this.setState({open: false});
      addRow(state, ['tasks'], newTask(kind), say('Added'));
    };
    const shows = open || none;
    return h('div', {class: 'adder'},
      none && h('p', {class: 'help'}, say('What is to be done first?')),
      !none && h('button', {type: 'button', class: 'add big', 'data-test': 'add-task', 'data-act': 'add', 'data-path': 'tasks', 'aria-expanded': String(open), onClick: () => this.setState({open: !open})}, say('Add a task')),
      shows && h('ul', {class: 'kinds'}, kinds.map(([kind, name], i) => h('li', {key: kind},
        h('button', {type: 'button', 'data-test': 'add-' + kind, 'data-act': none && i === 0 ? 'add' : undefined, 'data-path': 'tasks', onClick: () => add(kind)}, h('strong', null, say(name)), h('span', null, say(forms[kind]?.about ?? '')))))));
  }
}
