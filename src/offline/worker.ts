/**
 * Serves the page from this browser, so that it opens without a network.
 *
 * A new worker comes with a new version of the page and fetches all of its files, but goes on serving the version that
 * the user has taken, until the user agrees to the new one: not even the end of every tab changes that. Parts that a tab
 * of another version asks for are found where that one lies.
 */
import { filesName, filesPrefix, setReady, take, versionsOf } from './versions.ts';

/** Put in by the build: every file of the page, with the beginning of its SHA-256 in hexadecimal digits. */
declare const FILES: readonly (readonly [path: string, hash: string])[];
/** Put in by the build: changes with every file. */
declare const VERSION: string;

const worker = self as unknown as ServiceWorkerGlobalScope;
const scope = new URL('./', worker.location.href).href;

const hex = (bytes: ArrayBuffer): string =>
  [...new Uint8Array(bytes)].map((byte) => byte.toString(16).padStart(2, '0')).join('');

/**
 * A file from the network.
 * @throws Error if it is not that of this version
 */
async function fetched(url: string, hash: string): Promise<Response> {
  const response = await fetch(url, { cache: 'no-cache' });
  const body = await response.arrayBuffer();
  const found = hex(await crypto.subtle.digest('SHA-256', body));
  if (!response.ok || !found.startsWith(hash)) throw new Error(`${url} is not of version ${VERSION}`);
  const headers = new Headers(response.headers);
  // The body is unpacked by now, and the same for whoever asks.
  for (const name of ['content-encoding', 'content-length', 'vary']) headers.delete(name);
  return new Response(body, { headers });
}

/** The build names these by what is in them, so that one version can have them from another. */
const isNamedByContent = (path: string): boolean => path.startsWith('assets/');

async function fetchFile(cache: Cache, path: string, hash: string): Promise<void> {
  const url = new URL(path, scope).href;
  if (await cache.match(url)) return;
  const known = isNamedByContent(path) ? await caches.match(url) : undefined;
  await cache.put(url, known ?? (await fetched(url, hash)));
}

/** One file after another: whatever else the page is fetching goes first. */
async function install(): Promise<void> {
  const cache = await caches.open(filesName(scope, VERSION));
  for (const [path, hash] of FILES) await fetchFile(cache, path, hash);
  await worker.skipWaiting();
}

/** Deletes versions that nobody serves or waits for; several windows may be of several versions. */
async function clean(): Promise<void> {
  if ((await worker.clients.matchAll({ type: 'window' })).length > 1) return;
  const { ready, taken } = await versionsOf(scope);
  const wanted = [ready, taken].map((version) => filesName(scope, version ?? ''));
  for (const name of await caches.keys()) {
    if (name.startsWith(filesPrefix(scope)) && !wanted.includes(name)) await caches.delete(name);
  }
}

async function activate(): Promise<void> {
  const { taken } = await versionsOf(scope);
  await setReady(scope, VERSION);
  if (taken === null || !(await caches.has(filesName(scope, taken)))) await take(scope, VERSION);
  await clean();
  await worker.clients.claim();
}

/** A file as it lies here: of the version taken, else of any. */
async function kept(url: string): Promise<Response | undefined> {
  const { taken } = await versionsOf(scope);
  const cache = taken === null ? null : await caches.open(filesName(scope, taken));
  return (await cache?.match(url)) ?? caches.match(url);
}

async function answer(request: Request): Promise<Response> {
  const { origin, pathname } = new URL(request.url);
  const url = origin + pathname;
  const found = await kept(url === scope ? `${scope}index.html` : url).catch(() => undefined);
  return found ?? fetch(request);
}

worker.addEventListener('install', (event) => event.waitUntil(install()));
worker.addEventListener('activate', (event) => event.waitUntil(activate()));
worker.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method === 'GET' && request.url.startsWith(scope)) event.respondWith(answer(request));
});
