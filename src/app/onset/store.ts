/** The run on screen: every change is kept at once, written into the log, and can be undone. */
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Plan } from '../../engine/plan/schema.ts';
import { currentPlan } from '../store/plan.ts';
import { setRunning } from '../store/running.ts';
import { type Kept, keepRun, keptRun, type LogEntry } from './shelf.ts';
import { isUnderWay, newShoot, nowOf, type Shoot } from './shoot.ts';

interface State extends Kept {
  /** Which plan of the desk it was fetched for; null until it has come. */
  desk: Plan | null;
  /** Whether the browser stores it. */
  stored: boolean;
}

const MOST_STEPS = 50;

const store = createStore<State>(() => ({
  shoot: newShoot(currentPlan()),
  past: [],
  log: [],
  desk: null,
  stored: true,
}));

export const useRun = <T>(pick: (state: State) => T): T => useStore(store, pick);
export const runNow = (): State => store.getState();

/** The present by the run's clock. */
export const clockNow = (): number => Date.now() + store.getState().shoot.shiftMs;

let keeping: Promise<void> = Promise.resolve();

/** One write after another, in order: the last one holds the newest. */
function keepNewest(): void {
  const { shoot, past, log } = store.getState();
  keeping = keeping
    .then(() => keepRun({ shoot, past, log }))
    .then(() => store.setState({ stored: true }))
    .catch(() => store.setState({ stored: false }));
}

/** Fetches the run that is under way, or the one of the plan on the desk; keeps one that is on screen already. */
export async function fetchRun(plan: Plan): Promise<void> {
  const { desk, shoot } = store.getState();
  if (desk === plan || (desk !== null && isUnderWay(shoot, clockNow()))) return;
  const fresh: Kept = { shoot: newShoot(plan), past: [], log: [] };
  const underWay = (kept: Shoot) => isUnderWay(kept, Date.now() + kept.shiftMs);
  const found = await keptRun(plan, underWay).catch(() => 'refused' as const);
  if (found === 'refused') store.setState({ ...fresh, desk: plan, stored: false });
  else store.setState({ ...(found ?? fresh), desk: plan, stored: true });
}

const entry = (shoot: Shoot, kind: string, text: string): LogEntry => {
  const atMs = Date.now() + shoot.shiftMs;
  const { begun } = nowOf(shoot, atMs);
  return { atMs, phoneMs: Date.now(), kind, frame: begun > 0 ? begun : null, text };
};

/** Marks for the rest of the program whether a run is under way. */
export function markRunning(): void {
  const { shoot } = store.getState();
  setRunning(isUnderWay(shoot, clockNow()));
}

/**
 * Something happened.
 * @param kind - in a word, for the log
 * @param text - a sentence for the log, and for what undoes it
 */
export function happen(next: Shoot, kind: string, text: string): void {
  const { shoot, past, log } = store.getState();
  store.setState({
    shoot: next,
    past: [...past, { shoot, what: text }].slice(-MOST_STEPS),
    log: [...log, entry(next, kind, text)],
  });
  keepNewest();
  markRunning();
}

/** Writes a line that changes nothing. */
export function note(text: string, kind = 'note'): void {
  const { shoot, log } = store.getState();
  store.setState({ log: [...log, entry(shoot, kind, text)] });
  keepNewest();
}

/** Takes the last thing back; the log keeps both. */
export function undoLast(): void {
  const { past, log } = store.getState();
  const last = past.at(-1);
  if (!last) return;
  store.setState({
    shoot: last.shoot,
    past: past.slice(0, -1),
    log: [...log, entry(last.shoot, 'undone', last.what)],
  });
  keepNewest();
  markRunning();
}

let cleared: Kept | null = null;

/** Puts the run aside, log and all; until something else happens it can be had back. */
export function clearRun(plan: Plan): void {
  const { shoot, past, log } = store.getState();
  cleared = { shoot, past, log };
  store.setState({ shoot: { ...newShoot(plan), over: true }, past: [], log: [] });
  keepNewest();
  if (shoot.plan !== plan) void keepRun({ ...cleared, shoot: { ...shoot, over: true } }).catch(() => null);
  store.setState({ shoot: newShoot(plan) });
  markRunning();
}

/** Whether a run was cleared that can be had back. */
export const canBringBack = (): boolean => cleared !== null && store.getState().log.length === 0;

export function bringBack(): void {
  if (cleared) store.setState(cleared);
  cleared = null;
  keepNewest();
  markRunning();
}
