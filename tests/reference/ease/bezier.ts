/**
 * The cubic Bezier easing from its definition alone: W3C CSS Easing Functions Level 1, section 2.3. The curve has
 * the control points (0, 0), (x1, y1), (x2, y2), (1, 1); the value at x is the y of the point whose x it is.
 *
 * Counted in whole 2^-110ths: where a curve is flat, doubles cannot tell which point has the x that is asked for.
 */
const PLACES = 110n;
const ONE = 1n << PLACES;

/** A double as whole 2^-110ths, exact from 2^-27 up. */
const fixed = (value: number): bigint => BigInt(Math.trunc(value * 2 ** 80)) << (PLACES - 80n);

const toDouble = (value: bigint): number => Number(value >> (PLACES - 80n)) / 2 ** 80;

const mix = (a: bigint, b: bigint, t: bigint): bigint => a + (((b - a) * t) >> PLACES);

/** De Casteljau's construction in one coordinate: the lines divided at t, three times over. */
function casteljau(t: bigint, p1: bigint, p2: bigint): bigint {
  const middle = mix(p1, p2, t);
  return mix(mix(mix(0n, p1, t), middle, t), mix(middle, mix(p2, ONE, t), t), t);
}

/** Parameter of the point whose x is given, by halving. */
export function parameterAt(x1: number, x2: number, x: number): bigint {
  const [p1, p2, wanted] = [fixed(x1), fixed(x2), fixed(x)];
  let low = 0n;
  let high = ONE;
  while (high - low > 1n) {
    const middle = (low + high) >> 1n;
    if (casteljau(middle, p1, p2) < wanted) low = middle;
    else high = middle;
  }
  return high;
}

/** The y of the point with a parameter. */
export const heightAt = (t: bigint, y1: number, y2: number): number =>
  toDouble(casteljau(t, fixed(y1), fixed(y2)));
