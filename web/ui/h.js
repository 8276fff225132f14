// What the views draw with: Preact's elements, made by calls.
export {h, render, Component, Fragment} from '../vendor/preact.js';

/** Class names that hold: cls('line', {ticked: true}) is "line ticked". */
export function cls(...names) {
  return names.flatMap(n => typeof n === 'string' ? n : Object.keys(n ?? {}).filter(k => n[k])).join(' ') || undefined;
}
