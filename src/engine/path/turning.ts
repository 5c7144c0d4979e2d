/**
 * Sine and cosine of an axis's angle at every frame.
 *
 * An axis stands at whole steps. Its angle is a multiple of some hundred steps and a rest of less: the sine and
 * cosine of both are read from two short tables and put together by the addition formulas, which is exact to the last
 * places of a double and takes a tenth of the time of working them out. An axis with fewer positions than frames has
 * that done once for each position, any other for each frame.
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

/** Sine and cosine of `count` angles, one pair after another. */
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

/** Places that frames take in turn: a block has its own, and the last of the block before still has its. */
const PLACES = Int32Array.from({ length: 2 * BLOCK }, (_, place) => place);

/**
 * What loops over frames read of an axis that turns: of s = of[index & every] - low the entries 2 s and 2 s + 1 of the table,
 * a sine and a cosine; every and low are the whole numbers.
 *
 * An array, since nothing but arrays may be read in such a loop: the compiled code of one that reads the fields of a
 * class is thrown away whenever memory is collected while the class has no instance.
 */
export type Turn = readonly [of: Int32Array, whole: Int32Array, table: Float64Array];

/** Index of a frame's sine in its table. */
export const placeOf = ([of, whole]: Turn, k: number): number =>
  ((of[k & (whole[0] as number)] as number) - (whole[1] as number)) << 1;

/** Where a position is in the two short tables: low, bits and rest of `coarse[(s - low) >>> bits]`, `fine[(s - low) & rest]`. */
type Split = readonly [steps: Int32Array, whole: Int32Array, coarse: Float64Array, fine: Float64Array];

/** An axis that turns, or one that the rig does not have. */
export class Turning {
  /** Whether it turns at all during the run. */
  readonly moves: boolean;
  readonly turn: Turn;
  /** null where each position has its sine and cosine already. */
  readonly #split: Split | null;

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
    const isShort = count <= steps.length;
    this.#split = isShort ? null : [steps, Int32Array.of(low, bits, stride - 1), coarse, fine];
    this.turn = isShort
      ? [steps, Int32Array.of(this.moves ? ALL : FIRST, low), product(coarse, fine)]
      : [PLACES, Int32Array.of(PLACES.length - 1, 0), new Float64Array(2 * PLACES.length)];
  }

  /** Works out the frames from one index to before another: of one block, and at most a block before it. */
  fill(from: number, to: number): void {
    if (this.#split) fillFrames(this.turn[2], this.#split, from, to);
  }
}

/** Sine and cosine of each coarse angle and each fine one, which may be some more than there are positions. */
function product(coarse: Float64Array, fine: Float64Array): Float64Array {
  const table = new Float64Array((coarse.length * fine.length) / 2);
  let at = 0;
  for (let c = 0; c < coarse.length; c += 2) {
    const sinC = coarse[c] as number;
    const cosC = coarse[c + 1] as number;
    for (let f = 0; f < fine.length; f += 2) {
      const sinF = fine[f] as number;
      const cosF = fine[f + 1] as number;
      table[at] = sinC * cosF + cosC * sinF;
      table[at + 1] = cosC * cosF - sinC * sinF;
      at += 2;
    }
  }
  return table;
}

function fillFrames(
  table: Float64Array,
  [steps, whole, coarse, fine]: Split,
  from: number,
  to: number,
): void {
  const low = whole[0] as number;
  const bits = whole[1] as number;
  const rest = whole[2] as number;
  const places = PLACES.length - 1;
  for (let k = from; k < to; k += 1) {
    const step = (steps[k] as number) - low;
    const c = (step >>> bits) << 1;
    const f = (step & rest) << 1;
    const sinC = coarse[c] as number;
    const cosC = coarse[c + 1] as number;
    const sinF = fine[f] as number;
    const cosF = fine[f + 1] as number;
    const place = (k & places) << 1;
    table[place] = sinC * cosF + cosC * sinF;
    table[place + 1] = cosC * cosF - sinC * sinF;
  }
}
