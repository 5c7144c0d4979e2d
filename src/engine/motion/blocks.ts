/**
 * Going through long columns in blocks.
 *
 * A function that is called once and then goes on for long is compiled on the way, knowing nothing of its numbers, and
 * can stay so for many runs. One that is called often, for a block each time, is compiled as a whole. It takes its
 * columns by themselves: code that has read them off an object literal is thrown away when the literal is next made.
 *
 * Compiled code looks at every array anew in each turn of a loop, whether it is still what it was: as long as working
 * out an entry takes. The loops that matter take two entries a turn; the last of an odd number is taken twice.
 */
/** Entries of a block. */
export const BLOCK = 1024;

/** Calls a function for each block of a column: first index, and the one after the last. */
export function inBlocks(length: number, work: (from: number, to: number) => void): void {
  for (let from = 0; from < length; from += BLOCK) work(from, Math.min(from + BLOCK, length));
}

/** A column to be filled, and its value by index. */
export interface Picked {
  column: Float64Array;
  table: ArrayLike<number>;
}

/** Columns that have been filled so, all else of which are zero throughout. */
export interface Coded {
  /** Code of each frame: an index of the tables. */
  of: Int32Array;
  columns: readonly Picked[];
}

/**
 * Fills columns from tables, four at a time: their values side by side in one table are found in half the time.
 * @param of - index of each entry
 */
export function pickAll(of: Int32Array, picked: readonly Picked[]): void {
  for (let i = 0; i < picked.length; i += 4) {
    const one = picked[i] as Picked;
    const four = [one, picked[i + 1] ?? one, picked[i + 2] ?? one, picked[i + 3] ?? one];
    const table = new Float64Array(4 * one.table.length);
    four.forEach(({ table: own }, j) => {
      for (let n = 0; n < own.length; n += 1) table[4 * n + j] = own[n] as number;
    });
    const [a, b, c, d] = four.map(({ column }) => column) as [Column, Column, Column, Column];
    inBlocks(of.length, (from, to) => pickFour(a, b, c, d, of, table, from, to));
  }
}

type Column = Float64Array;

function pickFour(
  a: Column,
  b: Column,
  c: Column,
  d: Column,
  of: Int32Array,
  table: Float64Array,
  from: number,
  to: number,
): void {
  for (let k = from; k < to; k += 2) {
    const next = k + 1 < to ? k + 1 : k;
    const i = (of[k] as number) << 2;
    const j = (of[next] as number) << 2;
    a[k] = table[i] as number;
    a[next] = table[j] as number;
    b[k] = table[i + 1] as number;
    b[next] = table[j + 1] as number;
    c[k] = table[i + 2] as number;
    c[next] = table[j + 2] as number;
    d[k] = table[i + 3] as number;
    d[next] = table[j + 3] as number;
  }
}
