/** The stretch of the present run that a track's keyframes lie in. */
import type { Plan } from '../../engine/plan/schema.ts';
import { type Span, spanOf } from '../store/keyframes.ts';
import { scheduleOf } from '../store/schedules.ts';

export const trackSpan = (plan: Plan, track: number): Span =>
  spanOf(scheduleOf(plan).columns.elapsedS, plan.move.tracks[track]?.thereAndBack ?? false);
