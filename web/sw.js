// @ts-check
// The page without a network. The build puts in BARROW_FILES, every file of
// this version with its hash, and BARROW_VERSION, which changes when one does.
// A version is kept whole or not at all, and a newer one waits until the person
// says that it may take over.

const here = registration.scope;
const prefix = `barrow ${here} `;
const kept = prefix + BARROW_VERSION;
const hashes = new Map(Object.entries(BARROW_FILES).map(([name, hash]) => [new URL(name, here).href, hash]));

addEventListener('install', event => event.waitUntil(keepAll()));
addEventListener('activate', event => event.waitUntil(takeOver()));
addEventListener('message', event => {
  if (event.data?.type === 'use-now') event.waitUntil(skipWaiting());
});
addEventListener('fetch', event => event.respondWith(answer(event.request)));

/** Fetches everything before it keeps anything. */
async function keepAll() {
  const all = await Promise.all([...hashes].map(async ([url, hash]) => ({url, response: await whole(url, hash)})));
  await caches.delete(kept); // what an install that was cut short left
  const cache = await caches.open(kept);
  try {
    await Promise.all(all.map(({url, response}) => cache.put(url, response)));
  } catch (error) { // no room
    await caches.delete(kept);
    throw error;
  }
}

/**
 * Drops the versions before this one. A version that is only coming has its
 * cache already, and drops ours when its time comes.
 */
async function takeOver() {
  const names = await caches.keys();
  if (!registration.installing && !registration.waiting) {
    await Promise.all(names.filter(name => name.startsWith(prefix) && name !== kept).map(name => caches.delete(name)));
  }
  await clients.claim();
}

/**
 * Fetches a file of this version and no other: first as the browser has it from
 * the visit, then past what it has.
 * @param {string} url @param {string} hash
 */
async function whole(url, hash) {
  /** @param {RequestCache} cache */
  const ask = cache => fetch(url, {cache, integrity: hash, credentials: 'same-origin'});
  const response = await ask('default').catch(() => ask('reload'));
  if (!response.ok) throw new Error(`${url}: ${response.status}`);
  return plain(response, url);
}

/**
 * A response without what a host did on the way: a redirect, which no page may
 * be loaded from, or a type that a program can't be compiled from as it arrives.
 * @param {Response} response @param {string} url
 */
function plain(response, url) {
  const headers = new Headers({'content-type': response.headers.get('content-type') ?? ''});
  if (url.endsWith('.wasm')) headers.set('content-type', 'application/wasm');
  const policy = response.headers.get('content-security-policy');
  if (policy) headers.set('content-security-policy', policy);
  return new Response(response.body, {headers});
}

/** Serves what is kept, lets files beside it through, and nothing else out. @param {Request} request */
async function answer(request) {
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== location.origin) return Response.error();
  url.search = url.hash = '';
  if (url.href === new URL('index.html', here).href) url.href = here;
  const hash = hashes.get(url.href);
  if (!hash) return fetch(request);
  const cache = await caches.open(kept);
  return await cache.match(url.href) ?? repair(cache, url.href, hash, request);
}

/**
 * Gets a file that should have been kept. Where the network has another version
 * by now, that is served and not kept.
 * @param {Cache} cache @param {string} url @param {string} hash @param {Request} request
 */
async function repair(cache, url, hash, request) {
  try {
    const response = await whole(url, hash);
    await cache.put(url, response.clone()).catch(() => {});
    return response;
  } catch {
    return fetch(request);
  }
}
