/** The schedule of the present plan, worked out into memory that earlier schedules no longer need. */
import { useEffect } from 'react';
import type { Plan } from '../../engine/plan/schema.ts';
import { Room } from '../../engine/room.ts';
import { schedule } from '../../engine/schedule.ts';
import type { Schedule } from '../../engine/schedule-types.ts';

interface Made {
  plan: Plan;
  schedule: Schedule;
  room: Room;
}

let last: Made | null = null;
/** Schedules that are out of date, but whose room is still theirs. */
let earlier: Made[] = [];
/** What parts of the page that follow the edits at leisure show, out of date or not. */
const held = new Map<string, Schedule>();

/** A room that nobody reads any more, or a new one. The last schedule may be on screen until the next is drawn. */
function freeRoom(): Room {
  const inUse = new Set(held.values());
  const free = earlier.find((made) => !inUse.has(made.schedule));
  earlier = earlier.filter((made) => made !== free);
  return free?.room ?? new Room();
}

/**
 * The schedule of a plan. The last one is kept.
 *
 * Of a schedule that is two edits old the columns are overwritten, unless it is held: see {@link useHeld}.
 */
export function scheduleOf(plan: Plan): Schedule {
  if (last?.plan === plan) return last.schedule;
  const room = freeRoom();
  if (last) earlier.push(last);
  last = { plan, schedule: schedule(plan, room), room };
  return last.schedule;
}

/**
 * Keeps the columns of a schedule as they are until the same part of the page shows another.
 * @param part - who shows it
 */
export function hold(part: string, shown: Schedule): void {
  held.set(part, shown);
}

/** Holds what a part shows, also while it is hidden: it may be drawn once more before it has caught up. */
export function useHeld(part: string, shown: Schedule): Schedule {
  useEffect(() => hold(part, shown), [part, shown]);
  return shown;
}
