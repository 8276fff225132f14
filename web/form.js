// A place for the forms of the job.
import {h} from './h.js';
export function formView(desk) { return h('p', null, desk.slate.doc.name); }
