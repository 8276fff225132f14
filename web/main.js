// The least page: a job as text, and the plan as text.
import {h, render} from './h.js';
import * as offline from './offline.js';
import {parts} from './parts.js';
import {startProgram} from './program.js';

const program = startProgram(parts);
let job = '{"schema": 1, "tasks": [{"kind": "cover", "area": "60 ft x 4 ft", "layer": "3 in", "material": "bark-mulch"}]}';
let result = '', state = '', update = false;

globalThis.barrowCall = program.call;

function draw() {
  render(h('main', null,
    h('h1', null, 'Barrow'),
    h('label', null, 'Job ', h('textarea', {value: job, onInput: event => { job = event.target.value; work(); }})),
    h('p', {role: 'status'}, state),
    update && h('button', {type: 'button', onClick: offline.useUpdate}, 'Use the new version'),
    h('pre', null, result)), document.getElementById('app'));
}

async function work() {
  result = await program.text('plan', job).catch(String);
  draw();
}

offline.onState(now => { state = now; draw(); });
offline.onUpdate(() => { update = true; draw(); });
work().then(offline.register);
