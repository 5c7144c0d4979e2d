/**
 * Sine and cosine of an axis's angle at every frame, a block of frames at a time.
 *
 * An axis stands at whole steps. Its angle is a multiple of some hundred steps and a rest of less: the sine and
 * cosine of both are read from two short tables and put together by the addition formulas, which is exact to the last
 * places of a double and takes a tenth of the time of working them out.
 */
import type { AxisColumns } from '../schedule-types.ts';
import type { StepColumns } from './pose.ts';

/** Frames worked on at a time: few enough that what belongs to them stays in the nearest memory. */
export const BLOCK = 256;

/** Lowest and highest position of an axis, steps. */
export type Range = Pick<AxisColumns, 'lowestSteps' | 'highestSteps'>;

function rangeOf(steps: Int32Array): Range {
  let low = steps[0] as number;
  let high = low;
  for (let k = 1; k < steps.length; k += 1) {
    const step = steps[k] as number;
    if (step < low) low = step;
    else if (step > high) high = step;
  }
  return { lowestSteps: low, highestSteps: high };
}

/** Sine and cosine of `count` angles, one after another. */
function circle(count: number, first: number, apart: number): Float64Array {
  const table = new Float64Array(2 * count);
  for (let i = 0; i < count; i += 1) {
    table[2 * i] = Math.sin(first + i * apart);
    table[2 * i + 1] = Math.cos(first + i * apart);
  }
  return table;
}

// What an index is put through (&): it stays, or is 0.
export const ALL = -1;
export const FIRST = 0;

const ONE_FRAME = new Int32Array(1);

/**
 * What loops over frames read of an axis that turns: of s = steps[index & every] - low the entries at 2 (s >>> bits) of the
 * coarse table and at 2 (s & rest) of the fine one, each a sine and then a cosine; every, low, bits and rest are the
 * whole numbers.
 *
 * An array, since nothing but arrays may be read in such a loop: the compiled code of one that reads the fields of a
 * class is thrown away whenever memory is collected while the class has no instance.
 */
export type Turn = readonly [steps: Int32Array, whole: Int32Array, coarse: Float64Array, fine: Float64Array];

/** An axis that turns, or one that the rig does not have. */
export class Turning {
  /** Of the frames of the block filled last. */
  readonly sin = new Float64Array(BLOCK);
  readonly cos = new Float64Array(BLOCK);
  /** Whether it turns at all during the run. */
  readonly moves: boolean;
  readonly turn: Turn;

  /**
   * @param columns - of the axis; undefined for an axis that the rig does not have, which stays at its zero
   * @param zeroRad - angle at its zero
   * @param radPerUnit - angle of one of its units
   * @param range - of its steps, where it is known
   */
  constructor(columns: StepColumns | undefined, zeroRad: number, radPerUnit: number, range?: Range) {
    const steps = columns?.steps ?? ONE_FRAME;
    const { lowestSteps: low, highestSteps: high } = range ?? rangeOf(steps);
    const radPerStep = columns ? radPerUnit / columns.stepsPerUnit : 0;
    const count = high - low + 1;
    this.moves = count > 1;
    // Two tables of about the same length.
    const bits = Math.ceil(Math.log2(count) / 2);
    const stride = 2 ** bits;
    const coarse = circle(Math.ceil(count / stride), zeroRad + low * radPerStep, stride * radPerStep);
    const fine = circle(Math.min(stride, count), 0, radPerStep);
    this.turn = [steps, Int32Array.of(this.moves ? ALL : FIRST, low, bits, stride - 1), coarse, fine];
    this.sin.fill(coarse[0] as number);
    this.cos.fill(coarse[1] as number);
  }

  /** Works out the frames from one index to before another, at most a block. */
  fill(from: number, to: number): void {
    if (this.moves) fillTurn(this.sin, this.cos, this.turn, from, to);
  }
}

function fillTurn(
  sin: Float64Array,
  cos: Float64Array,
  [steps, whole, coarse, fine]: Turn,
  from: number,
  to: number,
): void {
  const low = whole[1] as number;
  const bits = whole[2] as number;
  const rest = whole[3] as number;
  for (let k = from; k < to; k += 1) {
    const step = (steps[k] as number) - low;
    const c = (step >>> bits) << 1;
    const f = (step & rest) << 1;
    const sinC = coarse[c] as number;
    const cosC = coarse[c + 1] as number;
    const sinF = fine[f] as number;
    const cosF = fine[f + 1] as number;
    sin[k - from] = sinC * cosF + cosC * sinF;
    cos[k - from] = cosC * cosF - sinC * sinF;
  }
}
