/**
 * Whether a run is being shot with this browser, in any of its tabs: what would disturb one waits meanwhile.
 * The mark outlives the tab, since a phone may end it in the middle of a run.
 */

/** Where the mark lies in `localStorage`. */
export const RUN_KEY = 'escapement-run';

// Where the browser stores nothing, the mark counts for this tab.
let here = false;

/** Whether a run is under way. */
export function isRunning(): boolean {
  try {
    return localStorage.getItem(RUN_KEY) !== null;
  } catch {
    return here;
  }
}

/** Marks that a run has begun, or that it is over. */
export function setRunning(on: boolean): void {
  here = on;
  try {
    if (on) localStorage.setItem(RUN_KEY, new Date().toISOString());
    else localStorage.removeItem(RUN_KEY);
  } catch {
    // Remembered above.
  }
  // Other tabs hear of it by the event `storage`, this one by its own.
  dispatchEvent(new Event(RUN_KEY));
}

/** Calls back whenever a run begins or ends, here or in another tab; returns how to stop. */
export function onRunning(changed: () => void): () => void {
  const elsewhere = ({ key }: StorageEvent) => {
    if (key === RUN_KEY || key === null) changed();
  };
  addEventListener(RUN_KEY, changed);
  addEventListener('storage', elsewhere);
  return () => {
    removeEventListener(RUN_KEY, changed);
    removeEventListener('storage', elsewhere);
  };
}
