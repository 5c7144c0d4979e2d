/**
 * Which versions of the page lie in this browser (Cache Storage), for the worker that serves them and the page alike.
 *
 * Each version has a cache with all of its files. A version is `ready` once it is there as a whole, and `taken` once the
 * user has agreed to it: that one is served. Caches belong to an origin, so their names say which page on it they serve.
 */

/** Versions of the page, by name; null if there is none. */
export interface Versions {
  ready: string | null;
  taken: string | null;
}

const stateName = (scope: string) => `escapement ${scope} versions`;

/** Beginning of the names of all caches with files of the page under an address. */
export const filesPrefix = (scope: string): string => `escapement ${scope} files `;

/** Name of the cache with the files of one version. */
export const filesName = (scope: string, version: string): string => filesPrefix(scope) + version;

const WORDS = ['ready', 'taken'] as const;
type Word = (typeof WORDS)[number];

/** What is kept in a cache has an address; nothing is fetched from this one. */
const addressOf = (scope: string, word: Word) => new URL(`version-${word}`, scope).href;

/** @param scope - address of the page's folder */
export async function versionsOf(scope: string): Promise<Versions> {
  const state = await caches.open(stateName(scope));
  const [ready, taken] = await Promise.all(
    WORDS.map(async (word) => (await (await state.match(addressOf(scope, word)))?.text()) ?? null),
  );
  return { ready: ready ?? null, taken: taken ?? null };
}

async function set(scope: string, word: Word, version: string): Promise<void> {
  const state = await caches.open(stateName(scope));
  await state.put(addressOf(scope, word), new Response(version));
}

/** Says that a version is there as a whole. */
export const setReady = (scope: string, version: string): Promise<void> => set(scope, 'ready', version);

/** Serves a version from the next opening of the page on. */
export const take = (scope: string, version: string): Promise<void> => set(scope, 'taken', version);
