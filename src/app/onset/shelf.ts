/**
 * Runs are kept in this browser, each under the plan with which it began, in a database of their own.
 *
 * A write starts at once and asks to be on the disk before it is done: batteries die on set.
 */
import { type IDBPDatabase, openDB } from 'idb';
import type { Plan } from '../../engine/plan/schema.ts';
import { serialisePlan } from '../../engine/plan/serialise.ts';
import type { Shoot } from './shoot.ts';

/** One line of a run's log. */
export interface LogEntry {
  /** By the run's clock, and by the phone's: milliseconds of the epoch. */
  atMs: number;
  phoneMs: number;
  kind: string;
  frame: number | null;
  text: string;
}

/** A run, what can be undone of it, and its log. */
export interface Kept {
  shoot: Shoot;
  past: readonly { shoot: Shoot; what: string }[];
  log: readonly LogEntry[];
}

const STORE = 'runs';
let database: Promise<IDBPDatabase> | null = null;
const opened = (): Promise<IDBPDatabase> => {
  database ??= openDB('escapement-onset', 1, { upgrade: (db) => void db.createObjectStore(STORE) });
  return database;
};

/**
 * The run that is under way, whatever plan is open; else the last one of this plan; null if there is none.
 * @throws DOMException if the browser stores nothing
 */
export async function keptRun(plan: Plan, underWay: (shoot: Shoot) => boolean): Promise<Kept | null> {
  const db = await opened();
  const all: Kept[] = await db.getAll(STORE);
  const own: Kept | undefined = await db.get(STORE, serialisePlan(plan));
  return all.find(({ shoot }) => underWay(shoot)) ?? (own && !own.shoot.over ? own : null);
}

/** @throws DOMException if the browser does not store it */
export async function keepRun(kept: Kept): Promise<void> {
  const db = await opened();
  const transaction = db.transaction(STORE, 'readwrite', { durability: 'strict' });
  await Promise.all([transaction.store.put(kept, serialisePlan(kept.shoot.plan)), transaction.done]);
}
