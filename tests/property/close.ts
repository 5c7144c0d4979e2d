/** Comparing numbers of an engine with numbers of a judge. */

/**
 * Throws if two numbers are not the same to 1e-9 of the larger of `want` and `scale`.
 * @param scale - size of what was added and taken away on the way to a number that may be near 0
 */
export function close(got: number | undefined, want: number, what: string, scale = 0): void {
  if (got === undefined || !Number.isFinite(got) || !Number.isFinite(want)) {
    if (got === want) return;
    throw new Error(`${what}: got ${got}, wanted ${want}`);
  }
  const allowed = 1e-9 * Math.max(Math.abs(want), scale) + 1e-15;
  if (Math.abs(got - want) > allowed) throw new Error(`${what}: got ${got}, wanted ${want}`);
}

/** Throws if two numbers are farther apart than allowed. */
export function near(got: number | undefined, want: number, what: string, allowed: number): void {
  if (got === undefined || !(Math.abs(got - want) <= allowed))
    throw new Error(`${what}: got ${got}, wanted ${want} within ${allowed}`);
}

/** Throws if two values are not the same. */
export function same(got: unknown, want: unknown, what: string): void {
  if (!Object.is(got, want)) throw new Error(`${what}: got ${String(got)}, wanted ${String(want)}`);
}

/** Throws if something does not hold. */
export function must(holds: boolean, what: string): void {
  if (!holds) throw new Error(what);
}

/**
 * {@link close} for a whole column against one number a frame.
 * @param scaleAt - size of what went into the number of a frame
 */
export function closeAll(
  got: ArrayLike<number> | undefined,
  wanted: readonly number[],
  name: string,
  scaleAt: (k: number) => number = () => 0,
): void {
  if (got?.length !== wanted.length)
    throw new Error(`${name}: ${got?.length} entries, wanted ${wanted.length}`);
  for (let k = 0; k < wanted.length; k += 1) {
    const [a, b] = [got[k] as number, wanted[k] as number];
    // Only what is not plainly the same is looked at more closely.
    if (a !== b) close(a, b, `${name}[${k}]`, scaleAt(k));
  }
}
