/** The schedule of the present plan, worked out into memory that earlier schedules no longer need. */
import { startTransition, useEffect, useRef, useState } from 'react';
import type { Plan } from '../../engine/plan/schema.ts';
import { Room } from '../../engine/room.ts';
import { roomsOf, schedule } from '../../engine/schedule.ts';
import type { Schedule } from '../../engine/schedule-types.ts';

/** A plan and its schedule. */
export interface Worked {
  plan: Plan;
  schedule: Schedule;
}

let last: Worked | null = null;
/** Memory of all schedules, in use or not. */
const rooms: Room[] = [];

/** What parts of the page that follow the edits at leisure show, out of date or not. */
const held = new Map<string, Schedule>();

/** A room that nobody reads any more, or a new one. The last schedule may be on screen until the next is drawn. */
function freeRoom(): Room {
  const shown = [...held.values(), ...(last ? [last.schedule] : [])];
  const inUse = new Set(shown.flatMap(roomsOf));
  const free = rooms.find((room) => !inUse.has(room)) ?? new Room();
  if (!rooms.includes(free)) rooms.push(free);
  return free;
}

/**
 * The schedule of a plan. The last one is kept.
 *
 * Of a schedule that is two edits old the columns are overwritten, unless it is held: see {@link useAtLeisure}.
 */
export const scheduleOf = (plan: Plan): Schedule => workedOut(plan).schedule;

/** Whether two plans have the same schedule, since they differ at most in the exposure sheet. */
const onlySheets = (a: Plan, b: Plan): boolean =>
  (Object.keys(a) as (keyof Plan)[]).every((key) => key === 'sheet' || a[key] === b[key]);

/** A plan with its schedule; the same object for the same plan. */
export function workedOut(plan: Plan): Worked {
  if (last?.plan === plan) return last;
  if (last && onlySheets(last.plan, plan)) {
    last = { plan, schedule: last.schedule };
    return last;
  }
  last = {
    plan,
    schedule: schedule(plan, { room: freeRoom(), before: last?.schedule ?? null, nowMs: Date.now() }),
  };
  return last;
}

/**
 * Keeps the columns of a schedule as they are until the same part of the page shows another.
 * @param part - who shows it
 */
export function hold(part: string, shown: Schedule): void {
  held.set(part, shown);
}

/** Runs after the frame that is about to be painted. */
export function afterPaint(work: () => void): void {
  requestAnimationFrame(() => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = work;
    port2.postMessage(null);
  });
}

/**
 * What a part of the page shows that follows the edits at leisure: after the figures have been painted, and as soon
 * as nothing is more urgent. It is held, also while the part is hidden.
 * @param part - who shows it
 */
export function useAtLeisure(part: string, present: Worked): Worked {
  const [shown, setShown] = useState(present);
  const latest = useRef(present);
  const waiting = useRef(false);
  useEffect(() => {
    latest.current = present;
    if (waiting.current) return;
    waiting.current = true;
    afterPaint(() => {
      waiting.current = false;
      hold(`${part}, next`, latest.current.schedule);
      startTransition(() => setShown(latest.current));
    });
  }, [part, present]);
  useEffect(() => hold(part, shown.schedule), [part, shown]);
  return shown;
}
