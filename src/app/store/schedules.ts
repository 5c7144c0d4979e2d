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
/** How many parts of the page still show a schedule though it may be out of date. */
const held = new Map<Schedule, number>();

/** A room that nobody reads any more, or a new one. The last schedule may be on screen until the next is drawn. */
function freeRoom(): Room {
  const free = earlier.find((made) => !held.has(made.schedule));
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

/** Keeps the columns of a schedule as they are, until the function that it gives is called. */
export function hold(kept: Schedule): () => void {
  held.set(kept, (held.get(kept) ?? 0) + 1);
  return () => {
    const count = (held.get(kept) ?? 0) - 1;
    if (count > 0) held.set(kept, count);
    else held.delete(kept);
  };
}

/** Holds a schedule for as long as the component shows it: for parts that follow the edits at leisure. */
export function useHeld(shown: Schedule): Schedule {
  useEffect(() => hold(shown), [shown]);
  return shown;
}
