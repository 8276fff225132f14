// @ts-check
// The page's side of working offline: registers sw.js, says whether the page is
// kept on this device, and offers a newer version. Nothing here reloads the page
// unless useUpdate is called.

import {single} from './assets.js';

/**
 * Whether this device keeps the page.
 *
 * 'unknown'   not known yet
 * 'none'      this address or browser keeps nothing: the single file, an
 *             address without https, a private window
 * 'failed'    keeping it failed; the page works while there is a network
 * 'ready'     everything is kept on this device
 * @typedef {'unknown' | 'none' | 'failed' | 'ready'} Kept
 */

/** @type {Kept} */
let state = 'unknown';
/** @type {ServiceWorkerRegistration | null} */
let registration = null;
let offered = false;
/** @type {((state: Kept) => void)[]} */
const watchers = [];
/** @type {(() => void)[]} */
const offers = [];

/** @param {Kept} next */
function become(next) {
  if (state === next) return;
  state = next;
  watchers.forEach(each => each(next));
}

function offer() {
  offered = true;
  offers.forEach(each => each());
}

/** Calls back with the state now and whenever it changes. @param {(state: Kept) => void} callback */
export function onState(callback) {
  watchers.push(callback);
  callback(state);
}

/** Calls back when a newer version is at hand. @param {() => void} callback */
export function onUpdate(callback) {
  offers.push(callback);
  if (offered) callback();
}

/**
 * Registers the service worker. Call it when the page has its first result: it
 * downloads what the page has not.
 */
export async function register() {
  const workers = navigator.serviceWorker; // absent without https
  if (single || !workers) return become('none');
  // Another tab may take a newer version; this page then is the older one.
  let mine = workers.controller;
  workers.addEventListener('controllerchange', () => {
    if (mine && mine !== workers.controller) offer();
    mine = workers.controller;
  });
  /** @type {ServiceWorkerRegistration} */
  let found;
  try {
    found = registration = await workers.register('sw.js', {updateViaCache: 'none'});
  } catch (error) {
    const {name} = /** @type {DOMException} */ (error);
    return become(name === 'SecurityError' || name === 'NotSupportedError' ? 'none' : 'failed');
  }
  if (found.active) become('ready');
  if (found.waiting) offer();
  found.addEventListener('updatefound', () => follow(found));
  follow(found);
  // An installed page may be open for days.
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') found.update().catch(() => {}); // no network
  });
}

/** Waits for a version that is coming. @param {ServiceWorkerRegistration} found */
function follow(found) {
  const worker = found.installing;
  worker?.addEventListener('statechange', () => {
    if (worker.state === 'installed' && found.active) offer();
    if (worker.state === 'activated') become('ready');
    if (worker.state === 'redundant' && !found.active) become('failed');
  });
}

/** Takes the newer version and reloads the page. Save first. */
export function useUpdate() {
  const waiting = registration?.waiting;
  if (!waiting) return location.reload();
  navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), {once: true});
  waiting.postMessage({type: 'use-now'});
}
