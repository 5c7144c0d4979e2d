/** The worker that opens the page without a network, and what it has ready (see `src/offline/`). */
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import { take, versionsOf } from '../../offline/versions.ts';
import { writeNewest } from '../store/keeping.ts';

interface OfflineState {
  /** All of the page lies in this browser. */
  works: boolean;
  /** Another version than the one on screen is ready to be taken. */
  newer: boolean;
}

const offlineStore = createStore<OfflineState>(() => ({ works: false, newer: false }));

export const useOffline = <T>(pick: (state: OfflineState) => T): T => useStore(offlineStore, pick);

let scope = '';
/** The version on screen; null for what came from the network before any was kept. */
let here: string | null = null;

/** Looks which versions there are. */
async function look(): Promise<void> {
  const { ready } = await versionsOf(scope);
  here ??= ready;
  offlineStore.setState({ works: ready !== null, newer: ready !== here });
}

const onState = () => void look();

/** A worker has a new version ready once it is active; it may be at any stage of that by now. */
function followWorkers(registration: ServiceWorkerRegistration): void {
  const follow = () => {
    const { installing, waiting, active } = registration;
    for (const worker of [installing, waiting, active]) worker?.addEventListener('statechange', onState);
  };
  registration.addEventListener('updatefound', follow);
  follow();
}

const HOUR_MS = 3_600_000;

/** A page that stays open for days looks for a new version when one comes back to it. */
function lookAgain(registration: ServiceWorkerRegistration): void {
  let lastMs = Date.now();
  document.addEventListener('visibilitychange', () => {
    if (document.hidden || Date.now() - lastMs < HOUR_MS) return;
    lastMs = Date.now();
    // Without a network it is left for the next time.
    registration.update().catch(() => {});
  });
}

/** What opening the page fetches goes first, whatever becomes of it; then what is being done with the page. */
async function rest(): Promise<void> {
  await Promise.allSettled([
    import('../charts/RunPanel.tsx'),
    import('../charts/CyclePanel.tsx'),
    import('../sections/bodies.ts'),
  ]);
  await new Promise((resolve) => {
    if ('requestIdleCallback' in globalThis) requestIdleCallback(resolve);
    else setTimeout(resolve, 500);
  });
}

/** Has the page kept in this browser, and follows which versions are. */
export async function startOffline(): Promise<void> {
  if (!import.meta.env.PROD || !navigator.serviceWorker) return;
  scope = new URL('./', location.href).href;
  if (navigator.serviceWorker.controller) here = (await versionsOf(scope)).taken;
  await rest();
  const registration = await navigator.serviceWorker.register('./sw.js', { updateViaCache: 'none' });
  followWorkers(registration);
  lookAgain(registration);
  await look();
}

/** Goes on with the newest version that is ready; what is on screen is kept first. */
export async function takeNewest(): Promise<void> {
  await writeNewest();
  const { ready } = await versionsOf(scope);
  if (ready !== null) await take(scope, ready);
  location.reload();
}
