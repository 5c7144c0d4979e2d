/** The shortest interval of whole runs, quiet moves off and on, with every move's ring integrated. */
import type { Axis, Plan } from '../../../src/engine/plan/schema.ts';
import { pixelsPerUnit } from '../../../src/engine/ringing/pixels.ts';
import { quietSpeed } from '../../../src/engine/ringing/ring.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { axisOf, plainPlan, straight } from '../plans.ts';
import { type NumberCase, numberRow, type Row } from '../rows.ts';
import { dice } from '../sky/ephemeris.ts';
import { driven, envelopeOf, piecesOf } from './integrate.ts';
import { fastestMove, type Limits, moveAt } from './moves.ts';

const RUNS = 30;
const EXPOSURE_S = 0.5;
const GUARD_S = 0.25;

/** A boom that rises by 400 mm, or a slide, over a few frames; every other one of limited jerk. */
function* plans(): Generator<{ at: string; plan: Plan; axis: Axis }> {
  const throwDie = dice(31);
  for (let n = 0; n < RUNS; n += 1) {
    const axis = axisOf({
      name: 'A',
      kind: n % 3 === 0 ? 'slide' : 'boom',
      unit: 'mm',
      maxSpeed: 5 + 60 * throwDie(),
      maxAccel: 20 + 200 * throwDie(),
      maxJerk: 100 + 4000 * throwDie(),
    });
    const frames = 6 + Math.floor(30 * throwDie());
    const track = straight('A', 0, 400);
    for (const keyframe of track.keyframes) keyframe.ease = { kind: 'smooth' };
    const profile = n % 2 === 0 ? 'trapezoidal' : 'jerkLimited';
    const ringing = { frequencyHz: 0.8 + 4 * throwDie(), dampingRatio: 0.008 + 0.05 * throwDie() };
    const plan = plainPlan(frames, 300, {
      exposure: { shutterS: EXPOSURE_S },
      cycle: { guardS: GUARD_S },
      rig: { axes: [axis] },
      move: { mode: 'moveShootMove', settleBy: 'ringing', profile, tracks: [track] },
      subject: { used: true, forwardMm: 2200 },
      ringing,
    });
    yield { at: `run ${n}, ${profile}, ${frames} frames, ${ringing.frequencyHz} Hz`, plan, axis };
  }
}

/** Seconds from the start of a move until its ring no longer shows, integrated. */
function busyS(plan: Plan, axis: Axis, distance: number, quiet: boolean): number {
  const { frequencyHz, dampingRatio, tolerancePx } = plan.ringing;
  const ringing = { omega: 2 * Math.PI * frequencyHz, damping: dampingRatio };
  const jerk = plan.move.profile === 'jerkLimited' ? axis.maxJerk : Number.POSITIVE_INFINITY;
  const limits: Limits = { speed: axis.maxSpeed, accel: axis.maxAccel, jerk };
  const fastest = fastestMove(distance, limits);
  const moves = quiet
    ? [fastest, moveAt(distance, quietSpeed(distance, fastest, ringing), limits)]
    : [fastest];
  const untilStill = moves.map((move) => {
    const unit = move.accel / ringing.omega ** 2;
    const end = driven(piecesOf(move), ringing, 1e-8 * unit);
    const px = envelopeOf(end, ringing) * pixelsPerUnit(plan, axis);
    const decays = Math.log(px / tolerancePx) / (ringing.damping * ringing.omega);
    return move.durationS + Math.max(0, decays);
  });
  return Math.min(...untilStill);
}

function shortestIntegrated(plan: Plan, axis: Axis, steps: Int32Array, perUnit: number, quiet: boolean) {
  const moves = [...steps.subarray(1)].map((step, k) => (step - (steps[k] as number)) / perUnit);
  const busy = moves.map((distance) => (distance > 0 ? busyS(plan, axis, distance, quiet) : 0));
  return EXPOSURE_S + Math.max(...busy) + GUARD_S;
}

function row(quantity: string, regime: string, cases: NumberCase[]): Row {
  const reference = 'every move’s ring integrated by Runge-Kutta (computed)';
  return numberRow({ quantity, reference, regime, bound: 1e-6, unit: 's' }, cases);
}

export function measureWholeRuns(): Row[] {
  const runs = [...plans()].map(({ at, plan, axis }) => {
    const quietPlan = { ...plan, move: { ...plan.move, quiet: true } };
    const off = schedule(plan);
    const { steps, stepsPerUnit } = off.columns.axes[0] as (typeof off.columns.axes)[0];
    const integrated = (quiet: boolean) => shortestIntegrated(plan, axis, steps, stepsPerUnit, quiet);
    const without = { got: off.totals.shortestIntervalS, want: integrated(false) };
    const quiet = { got: schedule(quietPlan).totals.shortestIntervalS, want: integrated(true) };
    return { at, without, quiet };
  });
  const saving = runs.filter(({ quiet, without }) => without.want - quiet.want > 0.05);
  const fast = 'a boom or a slide over 400 mm, 6 to 35 frames';
  return [
    row(
      'shortest interval with a settle by the ringing',
      fast,
      runs.map(({ at, without }) => ({ at, ...without })),
    ),
    row(
      'shortest interval with quiet moves',
      fast,
      runs.map(({ at, quiet }) => ({ at, ...quiet })),
    ),
    row(
      'what quiet moves take off the shortest interval',
      'those of the same runs where it is 0.05 s and more',
      saving.map(({ at, quiet, without }) => ({
        at,
        got: without.got - quiet.got,
        want: without.want - quiet.want,
      })),
    ),
  ];
}
