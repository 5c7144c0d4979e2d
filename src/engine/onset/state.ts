/**
 * What rig and camera do at an instant.
 *
 * A frame's time begins with its trigger, as its lanes do: until `holdS` the shutter is about to open, open, or between
 * the exposures of a bracket. Source: the definitions of the cycle (see cycle.ts).
 */
import type { Schedule } from '../schedule-types.ts';
import { lastWhere } from '../search.ts';

/** `writing`: the rig is still, the camera is busy. `ready`: within the guard before the next frame. */
export type Doing = 'before' | 'exposing' | 'moving' | 'settling' | 'writing' | 'spare' | 'ready' | 'after';

/** One stretch of a frame's time. */
export interface CyclePart {
  doing: Exclude<Doing, 'before' | 'after'>;
  /** Seconds from the frame's beginning. */
  fromS: number;
  toS: number;
}

/** A run at one instant. */
export interface Instant {
  doing: Doing;
  /** Index of the frame under way, or shot last; -1 before the first. */
  index: number;
  /** Frames that have been begun. */
  begun: number;
  /** Seconds since that frame began; before the first, negative: until it does. */
  intoS: number;
  /** Seconds until something else is done; Infinity after the run. */
  untilS: number;
  /** Seconds until the next frame begins; null once there is none. */
  toNextS: number | null;
}

type Timed = Pick<Schedule, 'startMs' | 'columns'>;

/** Seconds of a frame: to the next one's beginning; of the last, the longer lane. */
export function frameS({ columns }: Timed, index: number): number {
  const { elapsedS, cameraS, rigS } = columns;
  const next = elapsedS[index + 1];
  if (next !== undefined) return next - (elapsedS[index] as number);
  return Math.max(cameraS[index] ?? 0, rigS[index] ?? 0);
}

/**
 * The parts of a frame's time, in order and without gaps, those of no length left out.
 * @param index - of the frame
 * @param guardS - time to leave free before the next frame
 */
export function cycleParts(made: Timed, index: number, guardS: number): CyclePart[] {
  const { holdS, moveS, settleS, cameraS, rigS } = made.columns;
  const lengthS = frameS(made, index);
  const at = (column: Float64Array) => column[index] ?? 0;
  const longer = Math.max(at(cameraS), at(rigS));
  // In continuous motion the rig has no lane of its own: it moves while everything else happens.
  const movedS = at(rigS) > 0 ? at(holdS) + at(moveS) : at(holdS);
  const ends: [CyclePart['doing'], number][] = [
    ['exposing', at(holdS)],
    ['moving', movedS],
    ['settling', at(rigS) > 0 ? movedS + at(settleS) : movedS],
    ['writing', longer],
    ['spare', Math.max(longer, lengthS - guardS)],
    ['ready', lengthS],
  ];
  const parts: CyclePart[] = [];
  let fromS = 0;
  for (const [doing, endS] of ends) {
    const toS = Math.min(endS, lengthS);
    if (toS <= fromS) continue;
    parts.push({ doing, fromS, toS });
    fromS = toS;
  }
  return parts;
}

/**
 * What happens at an instant of a run.
 * @param made - schedule of the run, or of a stretch of it
 * @param guardS - the plan's `cycle.guardS`
 * @param nowMs - milliseconds of the epoch
 */
export function stateAt(made: Timed, guardS: number, nowMs: number): Instant {
  const { elapsedS } = made.columns;
  const frames = elapsedS.length;
  const atS = (nowMs - made.startMs) / 1000;
  if (atS < 0) return { doing: 'before', index: -1, begun: 0, intoS: atS, untilS: -atS, toNextS: -atS };
  const index = lastWhere(0, frames, (k) => (elapsedS[k] as number) <= atS);
  const intoS = atS - (elapsedS[index] as number);
  const lengthS = frameS(made, index);
  const toNextS = index + 1 < frames ? lengthS - intoS : null;
  const frame = { index, begun: index + 1, intoS, toNextS };
  const part = cycleParts(made, index, guardS).find(({ toS }) => intoS < toS);
  return part
    ? { doing: part.doing, ...frame, untilS: part.toS - intoS }
    : { doing: 'after', ...frame, untilS: Number.POSITIVE_INFINITY };
}
