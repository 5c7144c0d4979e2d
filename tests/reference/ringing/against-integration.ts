/** Ring, settle, quiet move and what is measured, against an oscillator integrated step by step. */
import { fastestShape, type MoveShape, shapeAtSpeed } from '../../../src/engine/motion/profile.ts';
import {
  dampingFromSwings,
  frequencyFromSag,
  frequencyFromSwings,
} from '../../../src/engine/ringing/measure.ts';
import { quietSpeed, type Ringing, ringAfter, settleS } from '../../../src/engine/ringing/ring.ts';
import { type NumberCase, numberRow, type Row, relative } from '../rows.ts';
import { driven, envelopeOf, farthest, free, piecesOf, type State, swings } from './integrate.ts';
import { type Case, cases, fastestMove, moveAt, type QuietCase, quietCases } from './moves.ts';

const INTEGRATION = 'Runge-Kutta integration of x" + 2 zeta w x\' + w^2 x = -a(t) (computed)';
const CASES = 400;
// Far below the bounds, and far above what rounding leaves after thousands of steps.
const PRECISE = 1e-8;

/** Deflection under a steady acceleration. */
const staticOf = (accel: number, { omega }: Ringing): number => accel / (omega * omega);

interface Done extends Case {
  /** Deflection under the move's acceleration held for ever: what the ring is counted in. */
  unit: number;
  end: State;
}

const integrated = (): Done[] =>
  [...cases(CASES, 4)].map((one) => {
    const unit = staticOf(one.shape.accel, one.ringing);
    return { ...one, unit, end: driven(piecesOf(one.shape), one.ringing, PRECISE * unit) };
  });

function ringRows(done: readonly Done[]): Row[] {
  const compared = (which: (one: Done) => boolean): NumberCase[] =>
    done.filter(which).map(({ at, shape, ringing, unit, end }) => ({
      at,
      got: ringAfter(shape, ringing) / unit,
      want: envelopeOf(end, ringing) / unit,
    }));
  const row = (regime: string, which: (one: Done) => boolean) =>
    numberRow(
      {
        quantity: 'ring at the end of a move',
        reference: INTEGRATION,
        regime,
        bound: 1e-8,
        unit: 'of the deflection under its acceleration',
      },
      compared(which),
    );
  return [
    row('limited acceleration, with cruise, damping 0 to 0.3', (c) => c.shape.jerkS === 0 && !isTriangle(c)),
    row('limited acceleration, no cruise, damping 0 to 0.3', (c) => c.shape.jerkS === 0 && isTriangle(c)),
    row('limited jerk, damping 0 to 0.3', (c) => c.shape.jerkS > 0),
    row('undamped', (c) => c.ringing.damping === 0),
  ];
}

const isTriangle = ({ shape }: Case): boolean => shape.durationS === 2 * shape.accelS;

interface Settled extends Done {
  tolerance: number;
  settle: number;
  /** After the settle, integrated. */
  later: State;
}

/** Every third ring that takes some time to die down, with a tolerance of a hundredth to nine tenths of it. */
function* settled(done: readonly Done[]): Generator<Settled> {
  for (const [n, one] of done.entries()) {
    const { ringing, end, unit } = one;
    const amplitude = envelopeOf(end, ringing);
    if (n % 3 !== 0 || ringing.damping < 0.01 || amplitude < 1e-4 * unit) continue;
    const tolerance = amplitude * 0.01 * 90 ** ((n % 50) / 49);
    const settle = settleS(ringAfter(one.shape, ringing), tolerance, ringing);
    const later = driven([free(settle)], ringing, PRECISE * tolerance, end);
    yield { ...one, tolerance, settle, later };
  }
}

function settleRows(done: readonly Done[]): Row[] {
  const all = [...settled(done)];
  return [
    numberRow(
      {
        quantity: 'ring left after the settle beside the tolerance',
        reference: INTEGRATION,
        regime: 'damping 0.01 to 0.3, tolerance 0.01 to 0.9 of the ring',
        bound: 1e-6,
        unit: 'relative',
      },
      all.map(({ at, later, ringing, tolerance }) => ({
        at,
        got: envelopeOf(later, ringing),
        want: tolerance,
      })),
      relative,
    ),
    numberRow(
      {
        quantity: 'displacement above the tolerance after the settle, or below it just before',
        reference: INTEGRATION,
        regime: 'settles of half a swing and more',
        bound: 1e-4,
        unit: 'of the tolerance',
      },
      all.flatMap(visible),
    ),
  ];
}

/** After the settle nothing shows any more; in the half swing before it something did. */
function visible({ at, ringing, end, tolerance, settle, later }: Settled): NumberCase[] {
  const root = Math.sqrt(1 - ringing.damping ** 2);
  const halfSwing = Math.PI / (ringing.omega * root);
  if (settle < halfSwing) return [];
  const before = driven([free(settle - halfSwing)], ringing, PRECISE * tolerance, end);
  const excess = farthest(later, 4 * halfSwing, ringing) / tolerance - 1;
  const shortfall = 1 - farthest(before, halfSwing, ringing) / (tolerance * root);
  return [{ at, got: Math.max(0, excess, shortfall), want: 0 }];
}

interface Pair extends QuietCase {
  fastRing: number;
  quietRing: number;
  /** Deflection under the acceleration. */
  unit: number;
  /** Seconds that the quiet move saves in move and settle together, by the engine. */
  saves: number;
  /** The same, with both rings integrated. */
  savesIntegrated: number;
}

/** What the engine makes of both moves, and what is integrated over moves put together without it. */
function pairOf(one: QuietCase): Pair {
  const { distance, limits, ringing } = one;
  const motor = { maxSpeed: limits.speed, maxAccel: limits.accel, maxJerk: limits.jerk };
  const shape = fastestShape(distance, motor);
  const speed = quietSpeed(distance, shape, ringing);
  const fast = fastestMove(distance, limits);
  const quiet = moveAt(distance, speed, limits);
  const unit = staticOf(fast.accel, ringing);
  // The worst that the fastest could leave is four deflections.
  const tolerance = unit / 20;
  const busyS = (durationS: number, ring: number) => durationS + settleS(ring, tolerance, ringing);
  const engineS = (made: MoveShape) => busyS(made.durationS, ringAfter(made, ringing));
  const ringOf = (made: MoveShape) => envelopeOf(driven(piecesOf(made), ringing, PRECISE * unit), ringing);
  const [fastRing, quietRing] = [ringOf(fast), ringOf(quiet)];
  return {
    ...one,
    fastRing,
    quietRing,
    unit,
    saves: engineS(shape) - engineS(shapeAtSpeed(distance, speed, motor)),
    savesIntegrated: busyS(fast.durationS, fastRing) - busyS(quiet.durationS, quietRing),
  };
}

function quietRows(): Row[] {
  const undamped = [...quietCases(100, 11, 0)].map(pairOf);
  const damped = [...quietCases(200, 12, 0.05)].map(pairOf);
  const offered = damped.filter((pair) => pair.saves > 0);
  return [
    numberRow(
      {
        quantity: 'ring that a quiet move leaves',
        reference: INTEGRATION,
        regime: 'undamped, limited acceleration and limited jerk',
        bound: 1e-8,
        unit: 'of the deflection under its acceleration',
      },
      undamped.map(({ at, quietRing, unit }) => ({ at, got: quietRing / unit, want: 0 })),
    ),
    numberRow(
      {
        quantity: 'move and settle that a quiet move saves, where it is offered',
        reference: INTEGRATION,
        regime: 'damping 0.0025 to 0.05',
        bound: 1e-6,
        unit: 's',
      },
      offered.map(({ at, saves, savesIntegrated }) => ({ at, got: saves, want: savesIntegrated })),
    ),
    numberRow(
      {
        quantity: 'ring of a quiet move above the fastest’s, where it is offered',
        reference: INTEGRATION,
        regime: 'damping 0.0025 to 0.05',
        bound: 0,
        unit: 'of the fastest’s',
      },
      offered.map(({ at, quietRing, fastRing }) => ({
        at,
        got: Math.max(0, quietRing / fastRing - 1),
        want: 0,
      })),
    ),
  ];
}

/** What a practitioner would count on a swinging arm, from an arm that is integrated. */
function measuredRows(): Row[] {
  const damping: NumberCase[] = [];
  const frequency: NumberCase[] = [];
  for (const zeta of [0.005, 0.02, 0.035, 0.1, 0.3]) {
    for (const hertz of [1, 5, 12]) {
      const ringing = { omega: 2 * Math.PI * hertz, damping: zeta };
      const seen = swings({ x: 1, v: 0.3 }, 5, ringing);
      const [first, last] = [seen[0] as (typeof seen)[0], seen[4] as (typeof seen)[0]];
      const at = `zeta ${zeta}, ${hertz} Hz`;
      damping.push({ at, got: dampingFromSwings(first.height, last.height, 4), want: zeta });
      const natural = frequencyFromSwings(4, last.atS - first.atS) / Math.sqrt(1 - zeta * zeta);
      frequency.push({ at, got: natural, want: hertz });
    }
  }
  const head = { reference: INTEGRATION, regime: '1st to 5th swing, damping 0.005 to 0.3', bound: 1e-6 };
  return [
    numberRow(
      { ...head, quantity: 'damping ratio from counted swings', unit: 'relative' },
      damping,
      relative,
    ),
    numberRow({ ...head, quantity: 'frequency from counted swings', unit: 'relative' }, frequency, relative),
    sagRow(),
  ];
}

/** A mass on a spring that its own weight stretches by the sag, let go and timed. */
function sagRow(): Row {
  const compared = [0.1, 1, 7.3, 25].map((sagMm) => {
    // Stiffness over mass is g over the sag.
    const ringing = { omega: Math.sqrt(9806.65 / sagMm), damping: 0 };
    const seen = swings({ x: 0, v: 1 }, 3, ringing);
    const periodS = ((seen[2]?.atS ?? Number.NaN) - (seen[0]?.atS ?? Number.NaN)) / 2;
    return { at: `${sagMm} mm`, got: frequencyFromSag(sagMm), want: 1 / periodS };
  });
  return numberRow(
    {
      quantity: 'frequency from sag',
      reference: INTEGRATION,
      regime: 'a mass on a spring that its weight stretches so far, timed',
      bound: 1e-6,
      unit: 'relative',
    },
    compared,
    relative,
  );
}

export function measureAgainstIntegration(): Row[] {
  const done = integrated();
  return [...ringRows(done), ...settleRows(done), ...quietRows(), ...measuredRows()];
}
