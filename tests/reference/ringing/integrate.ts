/** A damped oscillator driven by a move, integrated step by step: nothing here knows a closed form. */
import type { MoveShape } from '../../../src/engine/motion/profile.ts';
import type { Ringing } from '../../../src/engine/ringing/ring.ts';

/** A stretch of the move over which the acceleration changes evenly. */
export interface Piece {
  lengthS: number;
  from: number;
  to: number;
}

/** Displacement against the base, and its speed. */
export interface State {
  x: number;
  v: number;
}

export const AT_REST: State = { x: 0, v: 0 };

/** The acceleration of a move, piece by piece. */
export function piecesOf({ accel, accelS, durationS, jerkS }: MoveShape): Piece[] {
  const pulse = (height: number): Piece[] => [
    { lengthS: jerkS, from: 0, to: height },
    { lengthS: accelS - 2 * jerkS, from: height, to: height },
    { lengthS: jerkS, from: height, to: 0 },
  ];
  return [...pulse(accel), { lengthS: durationS - 2 * accelS, from: 0, to: 0 }, ...pulse(-accel)];
}

/** The driving acceleration at the beginning, the middle and the end of a step. */
interface Accels {
  a0: number;
  a1: number;
  a2: number;
}

const NONE: Accels = { a0: 0, a1: 0, a2: 0 };

/** One step of the classical fourth-order Runge-Kutta method for x'' = -a(t) - 2 zeta w x' - w^2 x. */
function step({ x, v }: State, h: number, accels: Accels, { omega, damping }: Ringing): State {
  const pull = (position: number, speed: number, accel: number) =>
    -accel - 2 * damping * omega * speed - omega * omega * position;
  const { a0, a1, a2 } = accels;
  const p1 = pull(x, v, a0);
  const v2 = v + (h / 2) * p1;
  const p2 = pull(x + (h / 2) * v, v2, a1);
  const v3 = v + (h / 2) * p2;
  const p3 = pull(x + (h / 2) * v2, v3, a1);
  const v4 = v + h * p3;
  const p4 = pull(x + h * v3, v4, a2);
  return { x: x + (h / 6) * (v + 2 * v2 + 2 * v3 + v4), v: v + (h / 6) * (p1 + 2 * p2 + 2 * p3 + p4) };
}

function through(start: State, piece: Piece, ringing: Ringing, perRadian: number, seen: (x: number) => void) {
  const { lengthS, from, to } = piece;
  const steps = Math.max(1, Math.ceil(lengthS * ringing.omega * perRadian));
  const h = lengthS / steps;
  const at = (n: number) => from + ((to - from) * n) / steps;
  let state = start;
  for (let n = 0; n < steps; n += 1) {
    state = step(state, h, { a0: at(n), a1: at(n + 0.5), a2: at(n + 1) }, ringing);
    seen(state.x);
  }
  return state;
}

/** Height of the free swing that a state belongs to, its decay taken out. */
export function envelopeOf({ x, v }: State, { omega, damping }: Ringing): number {
  const ringRate = omega * Math.sqrt(1 - damping * damping);
  return Math.hypot(x, (v + damping * omega * x) / ringRate);
}

/**
 * State at the end of the pieces. Steps are halved until halving them again changes the envelope by less than
 * `precise`; an error of the fourth order is then a fifteenth of that.
 */
export function driven(pieces: readonly Piece[], ringing: Ringing, precise: number, start = AT_REST): State {
  const run = (perRadian: number) =>
    pieces
      .filter((piece) => piece.lengthS > 0)
      .reduce((state, piece) => through(state, piece, ringing, perRadian, () => undefined), start);
  let coarse = run(12);
  for (let perRadian = 24; perRadian <= 3072; perRadian *= 2) {
    const fine = run(perRadian);
    if (envelopeOf({ x: fine.x - coarse.x, v: fine.v - coarse.v }, ringing) < precise) return fine;
    coarse = fine;
  }
  throw new RangeError(`the integration does not come to within ${precise}`);
}

/** Farthest from rest in a stretch of free ringing, by steps of 1/100 radian. */
export function farthest(start: State, lengthS: number, ringing: Ringing): number {
  let most = Math.abs(start.x);
  through(start, { lengthS, from: 0, to: 0 }, ringing, 100, (x) => {
    most = Math.max(most, Math.abs(x));
  });
  return most;
}

/** Free ringing for a time. */
export const free = (lengthS: number): Piece => ({ lengthS, from: 0, to: 0 });

/** The moments at which free ringing from a state is at its farthest, with how far: `count` of them. */
export function swings(start: State, count: number, ringing: Ringing): { atS: number; height: number }[] {
  const h = 1 / (ringing.omega * 2000);
  const found: { atS: number; height: number }[] = [];
  let state = start;
  for (let n = 0; found.length < count; n += 1) {
    const next = step(state, h, NONE, ringing);
    // Speed goes through zero on the upper side: there the swing is at its height.
    if (state.v > 0 && next.v <= 0) {
      const share = state.v / (state.v - next.v);
      const peak = step(state, share * h, NONE, ringing);
      found.push({ atS: (n + share) * h, height: peak.x });
    }
    state = next;
  }
  return found;
}
