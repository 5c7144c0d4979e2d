/** The axes as a part program moves them: letters, positions, and how fast a move may go. */
import { fixedTimeSpeed, limitsOf, moveDurationS } from '../../engine/motion/profile.ts';
import { overrunsAt, takeUpOf } from '../../engine/motion/take-up.ts';
import { type AxisWord, axisWords } from '../../engine/plan/part-program-check.ts';
import type { Axis, Plan } from '../../engine/plan/schema.ts';
import type { AxisColumns } from '../../engine/schedule-types.ts';
import { decimal, LINE_END, placesFor, roundedDown } from './text.ts';

const MM_AN_INCH = 25.4;

/** One axis. Positions are in the program's unit: millimetres or inches, degrees. */
export interface ProgramAxis {
  axis: Axis;
  word: AxisWord;
  turns: boolean;
  steps: Int32Array;
  /** Microsteps in one of the program's units. */
  stepsPerWord: number;
  /** Of the axis's own units in one of the program's. */
  ownUnits: number;
  places: number;
}

/** Positions of all axes, in the program's units. */
export type Position = readonly number[];

/** The plan's axes with their columns. */
export function programAxes(
  plan: Plan,
  columns: readonly Pick<AxisColumns, 'steps' | 'stepsPerUnit'>[],
): ProgramAxis[] {
  const words = axisWords(plan.rig);
  return plan.rig.axes.flatMap((axis, i) => {
    const own = columns[i];
    const word = words[i];
    if (!own || !word) return [];
    const turns = axis.unit === 'deg';
    const ownUnits = plan.partProgram.inches && !turns ? MM_AN_INCH : 1;
    const stepsPerWord = own.stepsPerUnit * ownUnits;
    return [{ axis, word, turns, steps: own.steps, stepsPerWord, ownUnits, places: placesFor(stepsPerWord) }];
  });
}

/** A position as it will be read: the feed has to fit what is written. */
const asWritten = (position: number, { places }: ProgramAxis): number => Number(decimal(position, places));

/** Where all axes are at the frame of an index. */
export const positionAt = (axes: readonly ProgramAxis[], k: number): Position =>
  axes.map((own) => asWritten((own.steps[k] ?? 0) / own.stepsPerWord, own));

/**
 * Where the motors go before the frame of an index, to come to it from the axes' own side: past it by overrun and
 * backlash, as the engine plans it. null if no axis has to.
 */
export function overrunBefore(axes: readonly ProgramAxis[], k: number): Position | null {
  let some = false;
  const past = axes.map((own) => {
    const { axis, steps, stepsPerWord, ownUnits } = own;
    const { side, beyond } = takeUpOf(axis);
    const at = asWritten((steps[k] ?? 0) / stepsPerWord, own);
    // The first position is come to from anywhere: as if from the wrong side.
    if (side === 0 || beyond === 0 || (k > 0 && !overrunsAt(steps, k, side))) return at;
    some = true;
    return asWritten(at - (side * beyond) / ownUnits, own);
  });
  return some ? past : null;
}

/** A straight move of all axes: its line, and how long it takes from rest to rest. */
export interface Leg {
  line: string;
  durationS: number;
}

/** Least steps that count: what is written is rounded to a twentieth of one. */
const moves = ({ stepsPerWord }: ProgramAxis, way: number): boolean => Math.abs(way) * stepsPerWord > 0.01;

/** Cruising speed of an axis, program units a second: a share of its top speed, or what a move of fixed time takes. */
function speedOf(plan: Plan, { axis, ownUnits }: ProgramAxis, way: number): number {
  const top = axis.maxSpeed * plan.partProgram.feedShare;
  const { moveS, profile } = plan.move;
  if (moveS === null) return top / ownUnits;
  const { maxAccel, maxJerk } = limitsOf(axis, profile);
  const distance = Math.abs(way) * ownUnits;
  // Where the limits cannot do it in the time, without cruising.
  const timed = Math.min(fixedTimeSpeed(distance, maxAccel, moveS, maxJerk), (2 * distance) / moveS);
  return Math.min(top, timed) / ownUnits;
}

/**
 * One straight move (G1), at the feed at which its slowest axis goes as fast as it may.
 *
 * NISTIR 6556, section 2.1.2.5: with X, Y or Z moving, the feed is that along their path, and A, B and C keep up;
 * with none of them moving, it is degrees a minute along the root of the sum of the squares of the angles.
 * @returns null if nothing moves
 */
export function legOf(
  plan: Plan,
  axes: readonly ProgramAxis[],
  from: Position,
  to: Position,
  feedText = feedOf,
): Leg | null {
  const ways = axes.map((own, i) => {
    const way = (to[i] ?? 0) - (from[i] ?? 0);
    return moves(own, way) ? way : 0;
  });
  if (ways.every((way) => way === 0)) return null;
  const words = axes.flatMap((own, i) =>
    ways[i] === 0 ? [] : [`${own.word}${decimal(to[i] ?? 0, own.places)}`],
  );
  const cruiseS = Math.max(
    ...axes.map((own, i) => (ways[i] ? Math.abs(ways[i]) / speedOf(plan, own, ways[i]) : 0)),
  );
  const feed = feedText(feedLength(axes, ways), cruiseS);
  return {
    line: `G1 ${words.join(' ')} F${feed}${LINE_END}`,
    durationS: restToRestS(plan, axes, ways, cruiseS),
  };
}

/** Length that the feed is counted along. */
function feedLength(axes: readonly ProgramAxis[], ways: readonly number[]): number {
  const along = (turning: boolean) =>
    Math.hypot(...axes.map(({ turns }, i) => (turns === turning ? (ways[i] ?? 0) : 0)));
  return along(false) || along(true);
}

const FEED_DIGITS = 6;
const feedOf = (length: number, cruiseS: number): string => roundedDown((length / cruiseS) * 60, FEED_DIGITS);

/** All axes go together: along their common way the one with the least acceleration for it decides. */
function restToRestS(
  plan: Plan,
  axes: readonly ProgramAxis[],
  ways: readonly number[],
  cruiseS: number,
): number {
  const least = (of: (limits: ReturnType<typeof limitsOf>) => number) =>
    Math.min(
      ...axes.map(({ axis, ownUnits }, i) =>
        ways[i]
          ? of(limitsOf(axis, plan.move.profile)) / (Math.abs(ways[i]) * ownUnits)
          : Number.POSITIVE_INFINITY,
      ),
    );
  return moveDurationS(
    1,
    1 / cruiseS,
    least(({ maxAccel }) => maxAccel),
    least(({ maxJerk }) => maxJerk),
  );
}

/** One leg for all axes, or one for each in turn. */
export function legsBetween(
  plan: Plan,
  axes: readonly ProgramAxis[],
  from: Position,
  to: Position,
  inTurn = plan.move.order === 'inTurn',
): Leg[] {
  const one = (start: Position, end: Position) => legOf(plan, axes, start, end) ?? [];
  if (!inTurn) return [one(from, to)].flat();
  return axes.flatMap((_, i) => {
    const start = from.map((at, j) => (j < i ? (to[j] ?? at) : at));
    return one(
      start,
      start.map((at, j) => (j === i ? (to[j] ?? at) : at)),
    );
  });
}
