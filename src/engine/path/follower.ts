/** One axis of the head that follows the subject: its steps, the turn it is on, and the ends of its travel. */
import type { Axis } from '../plan/schema.ts';
import { RAD, type StepColumns } from './pose.ts';

const TURN = 2 * Math.PI;

/** The same direction, on the turn nearest to an angle. */
const nearest = (angle: number, to: number): number => angle + TURN * Math.round((to - angle) / TURN);

// Below it the series of the arc tangent is exact to the last places with four terms: its fifth is 2e-16 of the first.
const SMALL = 0.01;

/** Angle of a small tangent. */
const smallAngle = (t: number): number => t * (1 - t * t * (1 / 3 - t * t * (1 / 5 - (t * t) / 7)));

/** Whole steps at an angle. */
const stepAt = (angle: number, zero: number, perRad: number): number =>
  Math.floor((angle - zero) * perRad + 0.5);

/**
 * Follows a direction as long as it is near to the first.
 * @param angle - of the first
 * @returns how far that was
 */
function followNear(
  steps: Int32Array,
  sines: Float64Array,
  cosines: Float64Array,
  from: number,
  begin: number,
  end: number,
  angle: number,
  zero: number,
  perRad: number,
): number {
  const firstSine = sines[begin] as number;
  const firstCosine = cosines[begin] as number;
  // Two at a time: see `blocks.ts`.
  for (let i = begin; i < end; i += 2) {
    const next = i + 1 < end ? i + 1 : i;
    const sine = sines[i] as number;
    const cosine = cosines[i] as number;
    const nextSine = sines[next] as number;
    const nextCosine = cosines[next] as number;
    const cross = sine * firstCosine - cosine * firstSine;
    const dot = cosine * firstCosine + sine * firstSine;
    if (!(Math.abs(cross) < dot * SMALL)) return i;
    steps[from + i] = stepAt(angle + smallAngle(cross / dot), zero, perRad);
    const nextCross = nextSine * firstCosine - nextCosine * firstSine;
    const nextDot = nextCosine * firstCosine + nextSine * firstSine;
    if (!(Math.abs(nextCross) < nextDot * SMALL)) return next;
    steps[from + next] = stepAt(angle + smallAngle(nextCross / nextDot), zero, perRad);
  }
  return end;
}

/**
 * Follows a direction, wherever it leads. An array says how it goes on: see {@link Turning} for why.
 *
 * As long as the direction is near to an earlier one, the angle is that one's and the small angle between them, so that
 * it never jumps by a turn; farther on it is worked out anew, as it is for the first of each call.
 * @param way - angle so far, and then; angle of the lens with the axis at 0; steps a radian
 */
function followOn(
  steps: Int32Array,
  sines: Float64Array,
  cosines: Float64Array,
  from: number,
  count: number,
  way: Float64Array,
): void {
  const zero = way[1] as number;
  const perRad = way[2] as number;
  for (let i = 0; i < count; ) {
    const sine = sines[i] as number;
    const cosine = cosines[i] as number;
    const distance2 = sine * sine + cosine * cosine;
    if (!(distance2 > 0 && distance2 < Infinity)) {
      // Nothing to look at: it stays.
      steps[from + i] = stepAt(way[0] as number, zero, perRad);
      i += 1;
      continue;
    }
    const angle = nearest(Math.atan2(sine, cosine), way[0] as number);
    i = followNear(steps, sines, cosines, from, i, count, angle, zero, perRad);
    const lastSine = sines[i - 1] as number;
    const lastCosine = cosines[i - 1] as number;
    way[0] =
      angle + smallAngle((lastSine * cosine - lastCosine * sine) / (lastCosine * cosine + lastSine * sine));
  }
}

/** @param ends - lowest and highest so far, and then */
function widen(ends: Int32Array, steps: Int32Array, from: number, to: number): void {
  let low = ends[0] as number;
  let high = ends[1] as number;
  // Two at a time: see `blocks.ts`.
  for (let k = from; k < to; k += 2) {
    const step = steps[k] as number;
    const next = steps[k + 1 < to ? k + 1 : k] as number;
    if (step < low) low = step;
    if (step > high) high = step;
    if (next < low) low = next;
    if (next > high) high = next;
  }
  ends[0] = low;
  ends[1] = high;
}

/** An axis on its way. */
export class Follower {
  readonly steps: Int32Array;
  readonly stepsPerUnit: number;
  /** Ends of the travel, and of the positions taken so far, whole steps. */
  readonly lowest: number;
  readonly highest: number;
  low = 0;
  high = 0;
  readonly #startRad: number;
  readonly #turnSteps: number;
  #turns = 0;
  /** As {@link followOn} takes it. */
  readonly #way: Float64Array;

  /** @param zeroRad - angle of the lens with this axis at 0 */
  constructor(axis: Axis, { steps, stepsPerUnit }: StepColumns, zeroRad: number) {
    this.steps = steps;
    this.stepsPerUnit = stepsPerUnit;
    this.lowest = Math.round(axis.travelMin * stepsPerUnit);
    this.highest = Math.round(axis.travelMax * stepsPerUnit);
    this.#way = Float64Array.of(0, zeroRad, stepsPerUnit / RAD);
    this.#startRad = zeroRad + Math.min(Math.max(0, axis.travelMin), axis.travelMax) * RAD;
    this.#turnSteps = 360 * stepsPerUnit;
  }

  /** Begins a run: on the turn nearest to the axis's zero, or as many turns from it as `shift` found. */
  begin(): void {
    this.#way[0] = this.#startRad + this.#turns * TURN;
    this.#forget();
  }

  #forget(): void {
    this.low = Number.POSITIVE_INFINITY;
    this.high = Number.NEGATIVE_INFINITY;
  }

  /**
   * Follows a direction through the next frames, wherever it leads.
   * @param sines - of the direction at each frame, times any length, which the cosines share
   * @param from - index of the first frame
   */
  follow(sines: Float64Array, cosines: Float64Array, from: number, count: number): void {
    const { steps } = this;
    followOn(steps, sines, cosines, from, count, this.#way);
    const ends = Int32Array.of(steps[from] as number, steps[from] as number);
    widen(ends, steps, from, from + count);
    this.low = Math.min(this.low, ends[0] as number);
    this.high = Math.max(this.high, ends[1] as number);
  }

  /** Whether the positions that were followed are all within the travel. */
  get fits(): boolean {
    return this.low >= this.lowest && this.high <= this.highest;
  }

  /** Where the travel does not reach, tries whole turns away: true if all fits there, to be followed anew. */
  shift(): boolean {
    if (this.fits) return false;
    const turn = this.#turnSteps;
    const turns =
      this.low < this.lowest
        ? Math.ceil((this.lowest - this.low) / turn)
        : -Math.ceil((this.high - this.highest) / turn);
    const away = turns * turn;
    if (this.low + away < this.lowest || this.high + away > this.highest) return false;
    this.#turns += turns;
    return true;
  }

  /**
   * Stops at the ends of the travel, or goes on a full turn away where that is within it.
   * @param frames - how many have been followed
   * @returns whether it ever had to stop
   */
  keepWithin(frames: number): boolean {
    if (this.fits) return false;
    const { steps, lowest, highest } = this;
    const turn = this.#turnSteps;
    let away = 0;
    let stopped = false;
    this.#forget();
    for (let k = 0; k < frames; k += 1) {
      const wanted = steps[k] as number;
      let step = Math.round(wanted + away);
      if (step < lowest || step > highest) {
        const turns = step < lowest ? Math.ceil((lowest - step) / turn) : -Math.ceil((step - highest) / turn);
        const elsewhere = Math.round(wanted + away + turns * turn);
        if (elsewhere >= lowest && elsewhere <= highest) {
          away += turns * turn;
          step = elsewhere;
        } else {
          stopped = true;
          step = step < lowest ? lowest : highest;
        }
      }
      steps[k] = step;
      this.low = Math.min(this.low, step);
      this.high = Math.max(this.high, step);
    }
    return stopped;
  }
}
