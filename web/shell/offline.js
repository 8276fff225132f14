// The page's side of working offline: registers sw.js, says whether the page is
// kept on this device, and offers a newer version. Nothing here reloads the page
// unless useUpdate is called.

import {single} from './assets.js';

/**
 * 'unknown'   not known yet
 * 'none'      this address or browser keeps nothing: the single file, an
 *             address without https, a private window
 * 'failed'    keeping it failed; the page works while there is a network
 * 'ready'     everything is kept on this device
 */
let state = 'unknown';
let registration = null;
let offered = false;
const listeners = {state: [], ready: [], update: []};

const notify = (kind, ...args) => listeners[kind].forEach(each => each(...args));

function become(next) {
  if (state === next) return;
  state = next;
  notify('state', state);
  if (state === 'ready') notify('ready');
}

function offer() {
  offered = true;
  notify('update');
}

/** Calls back with the state now and whenever it changes. */
export function onState(callback) {
  listeners.state.push(callback);
  callback(state);
}

/** Calls back once everything is kept on this device. */
export function onReady(callback) {
  listeners.ready.push(callback);
  if (state === 'ready') callback();
}

/** Calls back when a newer version is at hand. */
export function onUpdate(callback) {
  listeners.update.push(callback);
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
  try {
    registration = await workers.register('sw.js', {updateViaCache: 'none'});
  } catch (error) {
    return become(error.name === 'SecurityError' || error.name === 'NotSupportedError' ? 'none' : 'failed');
  }
  if (registration.active) become('ready');
  if (registration.waiting) offer();
  registration.addEventListener('updatefound', () => follow(registration.installing));
  if (registration.installing) follow(registration.installing);
  // An installed page may be open for days.
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') registration.update().catch(() => {}); // no network
  });
}

// follow waits for a version to come.
function follow(worker) {
  worker.addEventListener('statechange', () => {
    if (worker.state === 'installed' && registration.active) offer();
    if (worker.state === 'activated') become('ready');
    if (worker.state === 'redundant' && !registration.active) become('failed');
  });
}

/** Takes the newer version and loads the page anew. Save first. */
export function useUpdate() {
  const waiting = registration?.waiting;
  if (!waiting) return location.reload();
  navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), {once: true});
  waiting.postMessage({type: 'use-now'});
}
