/** One axis of the head that follows the subject: its steps, the turn it is on, and the ends of its travel. */
import type { Axis } from '../plan/schema.ts';
import { RAD, type StepColumns } from './pose.ts';

const TURN = 2 * Math.PI;

/** The same direction, on the turn nearest to an angle. */
const nearest = (angle: number, to: number): number => angle + TURN * Math.round((to - angle) / TURN);

// Below it the series of the arc tangent is exact to the last places with four terms: its fifth is 2e-16 of the first.
const SMALL = 0.01;

/** An axis on its way. */
export class Follower {
  readonly steps: Int32Array;
  readonly stepsPerUnit: number;
  /** Ends of the travel, and of the positions taken so far, whole steps. */
  readonly lowest: number;
  readonly highest: number;
  low = 0;
  high = 0;
  readonly #zeroRad: number;
  readonly #startRad: number;
  readonly #turnSteps: number;
  #turns = 0;
  #angle = 0;

  /** @param zeroRad - angle of the lens with this axis at 0 */
  constructor(axis: Axis, { steps, stepsPerUnit }: StepColumns, zeroRad: number) {
    this.steps = steps;
    this.stepsPerUnit = stepsPerUnit;
    this.lowest = Math.round(axis.travelMin * stepsPerUnit);
    this.highest = Math.round(axis.travelMax * stepsPerUnit);
    this.#zeroRad = zeroRad;
    this.#startRad = zeroRad + Math.min(Math.max(0, axis.travelMin), axis.travelMax) * RAD;
    this.#turnSteps = 360 * stepsPerUnit;
  }

  /** Begins a run: on the turn nearest to the axis's zero, or as many turns from it as `shift` found. */
  begin(): void {
    this.#angle = this.#startRad + this.#turns * TURN;
    this.#forget();
  }

  #forget(): void {
    this.low = Number.POSITIVE_INFINITY;
    this.high = Number.NEGATIVE_INFINITY;
  }

  /**
   * Follows a direction through the next frames, wherever it leads.
   *
   * The angle goes on by the small angle from the frame before, so that it never jumps by a turn; the first of each
   * call is worked out anew, so that no error adds up.
   * @param sines - of the direction at each frame, times any length, which the cosines share
   * @param from - index of the first frame
   */
  follow(sines: Float64Array, cosines: Float64Array, from: number, count: number): void {
    const { steps } = this;
    // Known to be numbers from here on: a field of a class may hold anything, and what a loop hands on would be an object.
    const zero = Number(this.#zeroRad);
    const perRad = this.stepsPerUnit / RAD;
    let angle = Number(this.#angle);
    let low = Number(this.low);
    let high = Number(this.high);
    let sineBefore = 0;
    let cosineBefore = 0;
    for (let i = 0; i < count; i += 1) {
      const sine = sines[i] as number;
      const cosine = cosines[i] as number;
      const cross = sine * cosineBefore - cosine * sineBefore;
      const dot = cosine * cosineBefore + sine * sineBefore;
      const most = dot * SMALL;
      if (cross < most && cross > -most) {
        const t = cross / dot;
        const t2 = t * t;
        angle += t * (1 - t2 * (1 / 3 - t2 * (1 / 5 - t2 / 7)));
      } else if (sine !== 0 || cosine !== 0) {
        angle = nearest(Math.atan2(sine, cosine), angle);
      }
      sineBefore = sine;
      cosineBefore = cosine;
      const step = Math.floor((angle - zero) * perRad + 0.5);
      steps[from + i] = step;
      if (step < low) low = step;
      if (step > high) high = step;
    }
    this.#angle = angle;
    this.low = low;
    this.high = high;
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
