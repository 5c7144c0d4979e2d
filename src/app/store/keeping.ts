/**
 * Keeps the plan on screen in this browser, at every edit.
 *
 * A write starts at once, so that a killed tab has lost nothing; while one is under way, the next waits and takes the
 * newest plan. Each kept plan bears the name of the tab that keeps it, and a tab writes only what bears its own: of
 * several tabs with the same plan the newest one writes, and the others say that they do not. Nothing is overwritten
 * unless someone asks for it.
 */
import type { IDBPDatabase } from 'idb';
import type { Plan } from '../../engine/plan/schema.ts';
import { type Entry, entryOf, newId, presentEntry } from './entries.ts';
import { type Facts, factsOf, type Listed, NO_FACTS } from './facts.ts';
import { keepable } from './keepable.ts';
import { currentPlan, planStore } from './plan.ts';
import { savingNow, setSaving } from './saving.ts';
import { scheduleOf } from './schedules.ts';
import { HANDED_KEY, type Handed, LAST, opened, STORE, TAB_KEY } from './shelf.ts';

/** Name of this tab while it is open. */
export const me = newId();

/** What tabs tell each other: who has taken which plan; without a taker, that the list has changed. */
export interface Told {
  id: string;
  by: string;
}

const tabs = new BroadcastChannel('escapement');
export const tell = (told: Told): void => tabs.postMessage(told);

/** Demos that nobody has touched are not kept. */
const isUntouched = ({ demo, kept }: Entry, plan: Plan): boolean => kept === null && demo?.plan === plan;

function rememberInTab(entry: Entry, plan: Plan): void {
  try {
    sessionStorage.setItem(TAB_KEY, isUntouched(entry, plan) ? `demo ${entry.demo?.name}` : entry.id);
  } catch {
    // Then a reload opens what any tab showed last.
  }
}

/** A page that is left breaks off the write under way: what it had not written the next load of the tab gets by hand. */
function handOver(): void {
  const plan = currentPlan();
  const entry = entryOf(plan);
  if (entry.elsewhere || entry.kept === plan || isUntouched(entry, plan)) return;
  rememberInTab(entry, plan);
  const handed: Handed = { id: entry.id, by: me, kept: keepable(plan) };
  try {
    sessionStorage.setItem(HANDED_KEY, JSON.stringify(handed));
  } catch {
    // Then the write under way has to do.
  }
}

function forgetHanded(): void {
  try {
    sessionStorage.removeItem(HANDED_KEY);
  } catch {
    // Then nothing was handed over either.
  }
}

/** Plans that this tab has kept or taken over since they were opened. */
const claimed = new WeakSet<Entry>();

const readWrite = async (db: Promise<IDBPDatabase>) => (await db).transaction(STORE, 'readwrite');

/** Whether this tab may write: nobody else keeps the plan, and nobody has deleted it. */
const mayWrite = (entry: Entry, known: Listed | undefined): boolean =>
  known ? known.by === me : entry.kept === null;

/** A plan that cannot be worked out is kept all the same. */
function factsNow(plan: Plan): Facts {
  try {
    return factsOf(plan, scheduleOf(plan));
  } catch {
    return { ...NO_FACTS, title: plan.title };
  }
}

/**
 * Makes this tab the one that keeps a plan that was kept before.
 * @throws DOMException if the browser does not store it
 */
async function claim(entry: Entry): Promise<void> {
  const { id } = entry;
  const { store, done } = await readWrite(opened());
  const known: Listed | undefined = await store.get(['facts', id]);
  const puts = known ? [store.put({ ...known, by: me }, ['facts', id]), store.put(id, LAST)] : [];
  await Promise.all([...puts, done]);
  claimed.add(entry);
  entry.elsewhere = known === undefined;
  if (known) tell({ id, by: me });
}

/**
 * Writes a plan, if it is this tab's.
 * @param force - take it over from whoever keeps it
 * @throws DOMException if the browser does not store it
 */
async function keep(entry: Entry, plan: Plan, force = false): Promise<void> {
  const { id } = entry;
  const facts = factsNow(plan);
  const { store, done } = await readWrite(opened());
  const known: Listed | undefined = await store.get(['facts', id]);
  if (!force && !mayWrite(entry, known)) {
    entry.elsewhere = true;
    return done;
  }
  const listed: Listed = { ...facts, id, changedMs: Date.now(), by: me };
  await Promise.all([
    store.put(keepable(plan), ['plan', id]),
    store.put(listed, ['facts', id]),
    store.put(id, LAST),
    done,
  ]);
  entry.kept = plan;
  claimed.add(entry);
  forgetHanded();
  if (known?.by !== me) tell({ id, by: me });
  setSaving('kept');
}

/** The plan stays on screen; the page says 'Not saved' and offers the file. */
const failed = (error: unknown) =>
  setSaving((error as DOMException | null)?.name === 'QuotaExceededError' ? 'full' : 'refused');

let writing = false;
let written = Promise.resolve();

async function writeAll(): Promise<void> {
  writing = true;
  try {
    for (;;) {
      const plan = currentPlan();
      const entry = entryOf(plan);
      rememberInTab(entry, plan);
      if (entry.elsewhere) return setSaving('elsewhere');
      if (entry.kept && !claimed.has(entry)) await claim(entry);
      else if (entry.kept === plan || isUntouched(entry, plan)) break;
      else await keep(entry, plan);
    }
    if (savingNow() === 'elsewhere') setSaving('kept');
  } catch (error) {
    failed(error);
  } finally {
    writing = false;
  }
}

/** Writes the plan on screen if that is due; resolved once nothing is left to write. */
export function writeNewest(): Promise<void> {
  if (!writing) written = writeAll();
  return written;
}

/** Keeps the plan on screen in the place of what another tab made of it. */
export async function writeHere(): Promise<void> {
  const [plan, entry] = [currentPlan(), presentEntry()];
  entry.elsewhere = false;
  await keep(entry, plan, true).catch(failed);
  await writeNewest();
}

/** Keeps the plan on screen, and all that can be undone of it, beside what another tab made of it. */
export async function writeBeside(): Promise<void> {
  Object.assign(presentEntry(), { id: newId(), kept: null, elsewhere: false });
  await writeNewest();
}

function onTold({ data: { id, by } }: MessageEvent<Told>): void {
  const entry = presentEntry();
  if (by === me || by === '' || id !== entry.id) return;
  entry.elsewhere = true;
  setSaving('elsewhere');
}

/** Keeps every plan from now on. */
export async function startKeeping(): Promise<void> {
  tabs.onmessage = onTold;
  addEventListener('pagehide', handOver);
  planStore.subscribe(() => void writeNewest());
  await writeNewest();
}
