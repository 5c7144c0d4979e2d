/**
 * Going through long columns in blocks.
 *
 * A function that is called once and then goes on for long is compiled on the way, knowing nothing of its numbers, and
 * can stay so for many runs. One that is called often, for a block each time, is compiled as a whole. It takes its
 * columns by themselves: code that has read them off an object literal is thrown away when the literal is next made.
 */
const BLOCK = 1024;

/** Calls a function for each block of a column: first index, and the one after the last. */
export function inBlocks(length: number, work: (from: number, to: number) => void): void {
  for (let from = 0; from < length; from += BLOCK) work(from, Math.min(from + BLOCK, length));
}

/** Fills a column from a table. @param of - index into the table of each entry */
export function pick(column: Float64Array, of: Int32Array, table: Float64Array): void {
  inBlocks(of.length, (from, to) => pickBlock(column, of, table, from, to));
}

function pickBlock(
  column: Float64Array,
  of: Int32Array,
  table: Float64Array,
  from: number,
  to: number,
): void {
  for (let k = from; k < to; k += 1) column[k] = table[of[k] as number] as number;
}
