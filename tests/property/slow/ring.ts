/** How a move leaves an oscillator: its acceleration integrated against the ring, one phasor for each end of a stretch. */
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { lasting, type Stretch } from './profile.ts';

export interface Oscillator {
  /** Undamped, rad/s. */
  omega: number;
  damping: number;
}

export const oscillatorOf = ({ ringing }: Plan): Oscillator => ({
  omega: 2 * Math.PI * ringing.frequencyHz,
  damping: ringing.dampingRatio,
});

/** Envelope at the end of a move in the unit of its distance, and the size of what was added up to it. */
export function ringOf(
  move: readonly Stretch[],
  { omega, damping }: Oscillator,
): { size: number; summed: number } {
  const rate = omega * Math.sqrt(1 - damping * damping);
  const decay = damping * omega;
  const total = lasting(move);
  let [real, imaginary, summed] = [0, 0, 0];
  /** Adds (a/L - m/L^2) e^(L (t - T)), L = decay + i rate. */
  const add = (sign: number, a: number, m: number, t: number) => {
    const square = omega * omega;
    // 1/L = (decay - i rate)/w^2, and its square.
    const [r1, i1] = [decay / square, -rate / square];
    const [r2, i2] = [r1 * r1 - i1 * i1, 2 * r1 * i1];
    const [pr, pi] = [a * r1 - m * r2, a * i1 - m * i2];
    const height = Math.exp(decay * (t - total));
    const [cosine, sine] = [Math.cos(rate * (t - total)), Math.sin(rate * (t - total))];
    real += sign * height * (pr * cosine - pi * sine);
    imaginary += sign * height * (pr * sine + pi * cosine);
    summed += height * Math.hypot(pr, pi);
  };
  let t = 0;
  for (const { durationS, from, to } of move) {
    if (durationS === 0) continue;
    const slope = (to - from) / durationS;
    add(-1, from, slope, t);
    t += durationS;
    add(1, to, slope, t);
  }
  return { size: Math.hypot(real, imaginary) / rate, summed: summed / rate };
}

/** Seconds until a ring no longer shows. */
export const settlesIn = (px: number, { ringing }: Plan): number => {
  const { omega, damping } = oscillatorOf({ ringing } as Plan);
  return px > 0 ? Math.max(0, Math.log(px / ringing.tolerancePx) / (damping * omega)) : 0;
};

/** Speeds at which a move takes a whole number of rings from its start to the start of braking: the fastest. */
export function quietSpeedOf(distance: number, top: number, { omega, damping }: Oscillator): number {
  const period = (2 * Math.PI) / (omega * Math.sqrt(1 - damping * damping));
  let periods = Math.max(1, Math.floor(distance / top / period) - 1);
  while (distance / (periods * period) > top * (1 + 1e-9)) periods += 1;
  return Math.min(top, distance / (periods * period));
}
