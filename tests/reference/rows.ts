/**
 * What every outside check is made of: one row a quantity and regime, with the worst error over its cases.
 *
 * A `measure.ts` gives rows. Its test asserts on them and `npm run accuracy` prints them, so that a figure in
 * the README is always the one that was asserted.
 */

/** The head of a row. */
export interface RowHead {
  /** What is compared, e.g. `label of a frame`. */
  quantity: string;
  /** Where the expected values come from, with section or page, and how far that was verified. */
  reference: string;
  /** Range of inputs that the row holds for. */
  regime: string;
  /** Largest error allowed, in `unit`. */
  bound: number;
  unit: string;
}

/** A quantity against its reference over one regime. */
export interface Row extends RowHead {
  cases: number;
  /** Largest error, in `unit`. */
  worst: number;
  /** The case with the largest error, with what was got and wanted. */
  worstAt: string;
}

/** One compared number. */
export interface NumberCase {
  at: string;
  got: number;
  want: number;
}

/** One compared text. */
export interface TextCase {
  at: string;
  got: string;
  want: string;
}

/**
 * The value, if it is a finite number. Comparisons with NaN never fail, so every compared number goes through
 * here.
 * @throws RangeError if it is not finite
 */
export function finite(value: number, what: string): number {
  if (!Number.isFinite(value)) throw new RangeError(`${what}: ${value} is not a finite number`);
  return value;
}

/** Difference of two finite numbers, without sign. */
export const absolute = (got: number, want: number): number => Math.abs(got - want);

/** Difference as a share of what was wanted; of 1 where that is smaller than 1e-300. */
export const relative = (got: number, want: number): number =>
  Math.abs(got - want) / (Math.abs(want) > 1e-300 ? Math.abs(want) : 1);

/** A row of numbers. Without a single case it throws: an empty check would always pass. */
export function numberRow(head: RowHead, cases: Iterable<NumberCase>, error = absolute): Row {
  let count = 0;
  let worst = -1;
  let worstAt = '';
  for (const { at, got, want } of cases) {
    count += 1;
    const off = error(
      finite(got, `${head.quantity}, ${at}`),
      finite(want, `${head.quantity}, ${at} (wanted)`),
    );
    if (off > worst) {
      worst = off;
      worstAt = `${at}: got ${got}, wanted ${want}`;
    }
  }
  return filled(head, count, worst, worstAt);
}

/** A row of texts; its error is the number of cases that differ, and its bound must be 0. */
export function textRow(head: Omit<RowHead, 'bound' | 'unit'>, cases: Iterable<TextCase>): Row {
  let count = 0;
  let wrong = 0;
  let worstAt = 'none differs';
  for (const { at, got, want } of cases) {
    count += 1;
    if (got === want) continue;
    if (wrong === 0) worstAt = `${at}: got ${got}, wanted ${want}`;
    wrong += 1;
  }
  return filled({ ...head, bound: 0, unit: 'differ' }, count, wrong, worstAt);
}

function filled(head: RowHead, cases: number, worst: number, worstAt: string): Row {
  if (cases === 0) throw new RangeError(`${head.quantity} (${head.regime}): not a single case`);
  return { ...head, cases, worst, worstAt };
}

/** What `attempt` throws, as `name: message`; `no error` if it throws nothing. */
export function errorOf(attempt: () => unknown): string {
  try {
    attempt();
  } catch (error) {
    return error instanceof Error ? error.name : String(error);
  }
  return 'no error';
}
