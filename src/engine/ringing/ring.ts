/**
 * How a rig rings after one of its own moves.
 *
 * The camera on its arm, seen from the base that moves, is taken as one damped oscillator that the move's acceleration
 * drives: x'' + 2 zeta w x' + w^2 x = -a(t), at rest before the move. Once the move is over it rings freely,
 * x = A e^(-zeta w t) sin(wd t + phase), and A is the envelope here.
 *
 * Source: Duhamel's integral over the move (Thomson, Theory of Vibration, ch. 4: from memory). With
 * L = zeta w + i wd, wd = w sqrt(1 - zeta^2) and |L| = w it is A = |integral of a(s) e^(L s) ds| e^(-zeta w T) / wd. A
 * move is a box of acceleration, spread by a box of jerk, at its start and turned round at its end, each a factor
 * |1 - e^(L x)|; their lengths add up to the move's, so that e^(-zeta w T) goes into them and none can overflow.
 */
import type { MoveShape } from '../motion/profile.ts';

/** What rings. */
export interface Ringing {
  /** Undamped natural frequency, rad/s, positive. */
  omega: number;
  /** Damping ratio, share of critical, at least 0 and below 1. */
  damping: number;
}

/** |1 - e^(-L x)|, without loss where x is short and without overflow where it is long. */
function twoPulses(x: number, decayRate: number, ringRate: number): number {
  const lost = Math.expm1(-decayRate * x);
  const sine = Math.sin((ringRate * x) / 2);
  return Math.sqrt(lost * lost + 4 * (1 + lost) * sine * sine);
}

/**
 * Ring that a move leaves behind.
 * @returns envelope at the end of the move, in the unit of the move's distance
 */
export function ringAfter(shape: MoveShape, { omega, damping }: Ringing): number {
  const root = Math.sqrt(1 - damping * damping);
  const decayRate = damping * omega;
  const ringRate = omega * root;
  const { accel, accelS, durationS, jerkS } = shape;
  const box = twoPulses(accelS - jerkS, decayRate, ringRate);
  const stop = twoPulses(durationS - accelS, decayRate, ringRate);
  const spread = jerkS > 0 ? twoPulses(jerkS, decayRate, ringRate) / (omega * jerkS) : 1;
  return (accel / (omega * omega * root)) * box * stop * spread;
}

/**
 * Time until the envelope of a ring has died down.
 * @param amplitudePx - at the end of the move, px, at least 0
 * @param tolerancePx - what no longer shows, px, positive
 * @returns seconds, 0 if it never shows; Infinity if it shows and nothing damps it
 */
export const settleS = (amplitudePx: number, tolerancePx: number, { omega, damping }: Ringing): number =>
  amplitudePx <= tolerancePx ? 0 : Math.log(amplitudePx / tolerancePx) / (damping * omega);

// A move that already is a whole number of periods long must not become one period longer by a rounding.
const WHOLE = 1e-9;

/**
 * Peak speed of the quiet move: from the start of speeding up to the start of braking it takes whole periods, so that
 * the two ring against each other. With as much acceleration as the fastest; undamped it leaves nothing.
 * @param distance - travel, any unit, at least 0
 * @param fastest - the shortest move over it
 * @returns that unit a second, at most the fastest's; 0 for no travel
 */
export function quietSpeed(distance: number, fastest: MoveShape, { omega, damping }: Ringing): number {
  if (distance === 0) return 0;
  const periodS = (2 * Math.PI) / (omega * Math.sqrt(1 - damping * damping));
  const periods = Math.max(1, Math.ceil(distance / fastest.peakSpeed / periodS - WHOLE));
  return Math.min(fastest.peakSpeed, distance / (periods * periodS));
}
