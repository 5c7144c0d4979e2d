/** A run that is being shot, as its workings want it: the present and what has happened, which no plan knows. */
import type { Plan } from '../plan/schema.ts';
import type { Outcome } from './outcome.ts';
import type { Instant } from './state.ts';
import type { Stretch } from './stretch.ts';
import type { Moment } from './todo.ts';

/** One thing that is done before the first frame; milliseconds of the epoch. */
export interface StepBefore {
  name: string;
  fromMs: number;
  toMs: number;
}

/** A run at an instant. Times are milliseconds of the epoch by the run's own clock. */
export interface OnSet {
  /** The plan with which it began. */
  plan: Plan;
  nowMs: number;
  /** Since when it is paused; null if it is not. */
  pausedMs: number | null;
  /** The stretch under way; before the first frame the one that is planned. */
  stretch: Stretch;
  /** The stretch planned last, and the first as it was planned. */
  last: Stretch;
  planned: Stretch;
  instant: Instant;
  /** Frames of the whole run that have been begun, and that it has. */
  begun: number;
  frames: number;
  moments: readonly Moment[];
  stepsBefore: readonly StepBefore[];
  /** What the run would become, if that is asked for: its figures, and the frames lost so far. */
  outcome?: Pick<Outcome, 'stretch' | 'now'> & { lost: number };
}
