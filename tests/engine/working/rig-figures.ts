/**
 * Figures of what a run makes of its axes, of the aim and of the picture, by the names of their workings: counted frame
 * by frame, by the second calculation that knows nothing of the engine.
 */
import type { Axis, Plan } from '../../../src/engine/plan/schema.ts';
import type { AxisColumns, Schedule } from '../../../src/engine/schedule-types.ts';
import {
  actingAxis,
  focalPxOf,
  norm,
  positionsAt,
  seen,
  slowPose,
  slowSubject,
  type Vector,
} from '../../property/slow/camera.ts';
import { excusedPx } from '../../property/slow/image.ts';
import { isAimed } from '../../property/slow/motion-findings.ts';
import { goesOnBefore, placed } from '../../property/slow/position.ts';
import type { Entry } from './besides.ts';

const moveTo = (steps: Int32Array, k: number): number => (steps[k] as number) - (steps[k - 1] as number);

/** Indices of the frames that follow another. */
const later = (steps: Int32Array): number[] => [...steps.keys()].slice(1);

/** Indices of the frames that repeat the position before while the axis was to go on. */
function repeatsOf(plan: Plan, made: Schedule, axis: Axis, { steps }: AxisColumns): number[] {
  const { axes, elapsedS, intervalS } = made.columns;
  const moved = (own: Int32Array) => later(own).filter((k) => moveTo(own, k) !== 0);
  const stalls = later(steps).filter((k) => moveTo(steps, k) === 0);
  if (isAimed(plan, axis)) {
    const own = moved(steps);
    const rig = new Set(axes.flatMap((other) => moved(other.steps)));
    return stalls.filter((k) => rig.has(k) && k > (own[0] ?? 0) && k < (own.at(-1) ?? 0));
  }
  const track = plan.move.tracks.find((candidate) => candidate.axis === axis.name);
  if (!track) return [];
  const endS = (elapsedS.at(-1) ?? 0) + (intervalS.at(-1) ?? 0);
  const list = placed(track, [...elapsedS, endS]);
  return stalls.filter((k) => goesOnBefore(track, list, k, steps.length));
}

/** Indices of the frames that the first move after a turn leads to. */
function turnsOf(steps: Int32Array): number[] {
  const moved = later(steps).filter((k) => moveTo(steps, k) !== 0);
  return moved.filter((k, i) => i > 0 && moveTo(steps, k) * moveTo(steps, moved[i - 1] as number) < 0);
}

const perUnitOf = ({ fullStepsPerTurn, microsteps, gearRatio, unitsPerTurn }: Axis): number =>
  (fullStepsPerTurn * microsteps * gearRatio) / unitsPerTurn;

function axisFigures(plan: Plan, made: Schedule): Entry[] {
  if (plan.move.mode === 'still') return [];
  return plan.rig.axes.flatMap((axis, i): Entry[] => {
    const columns = made.columns.axes[i] as AxisColumns;
    const sizes = later(columns.steps)
      .map((k) => Math.abs(moveTo(columns.steps, k)))
      .filter((size) => size > 0);
    if (sizes.length === 0) return [];
    const [largest, smallest] = [Math.max(...sizes), Math.min(...sizes)];
    const perUnit = perUnitOf(axis);
    const [repeats, turns] = [repeatsOf(plan, made, axis, columns), turnsOf(columns.steps)];
    const name = (what: string) => `axes.${axis.name}.${what}`;
    return [
      [name('largestMoveSteps'), largest],
      [name('smallestMoveSteps'), smallest],
      [name('largestMove'), largest / perUnit],
      [name('smallestMove'), smallest / perUnit],
      [name('repeats'), repeats.length],
      ...repeats.slice(0, 1).map((k): Entry => [name('firstRepeat'), k + 1]),
      [name('reversals'), turns.length],
      ...turns.slice(0, 1).map((k): Entry => [name('firstReversal'), k + 1]),
    ];
  });
}

/** The subject at each frame as the camera has it, mm: right, ahead, up. */
const subjectsOf = (plan: Plan, { columns }: Schedule): Vector[] =>
  Array.from(columns.elapsedS, (_, k) => {
    const positions = positionsAt(plan, columns.axes, k);
    return seen(slowPose(plan, positions), slowSubject(plan, positions));
  });

/** Frames of a kind, unless one is so near to the edge of it that roundings decide. @param shares - 1 is the edge */
function beyond(name: string, shares: readonly number[]): Entry[] {
  const open = shares.some((share) => Math.abs(share - 1) < 1e-6);
  return open ? [] : [[name, shares.filter((share) => share > 1).length]];
}

function imageFigures(plan: Plan, made: Schedule, subjects: readonly Vector[]): Entry[] {
  if (made.rig.image === null) return [];
  const { imageWidthPx, imageHeightPx } = plan.camera;
  const shares = subjects.map(([right, forward, up]) => {
    const px = focalPxOf(plan) / forward;
    const side = Math.max(Math.abs(right * px) / (imageWidthPx / 2), Math.abs(up * px) / (imageHeightPx / 2));
    return forward < 1 ? Number.POSITIVE_INFINITY : Math.max(side, 1 / forward);
  });
  return beyond('image.outOfSightFrames', shares);
}

function aimFigures(plan: Plan, made: Schedule, subjects: readonly Vector[]): Entry[] {
  if (made.rig.aim === null) return [];
  const excused = excusedPx({ plan, run: made } as Parameters<typeof excusedPx>[0]);
  const shares = subjects.map((subject) => {
    const [right, forward, up] = subject;
    const off = Math.hypot(right, up);
    const px = forward > 0 ? (focalPxOf(plan) * off) / forward : Number.POSITIVE_INFINITY;
    return norm(subject) < 1 ? 0 : px / excused;
  });
  const first = shares.findIndex((share) => share > 1);
  const misses = beyond('aim.missFrames', shares);
  return [
    ...misses,
    ...(misses.length > 0 && first >= 0 ? [['aim.firstMissFrame', first + 1] as Entry] : []),
    ...(['pan', 'tilt'] as const).flatMap((kind): Entry[] => {
      const axis = actingAxis(plan, kind);
      const columns = made.columns.axes.find(({ name }) => name === axis?.name);
      if (!columns) return [];
      const positions = [...columns.steps].map((step) => step / columns.stepsPerUnit);
      return [
        [`aim.${kind}FromDeg`, Math.min(...positions)],
        [`aim.${kind}ToDeg`, Math.max(...positions)],
      ];
    }),
  ];
}

function ringingFigures({ rig: { ringing }, columns: { ringPx } }: Schedule): Entry[] {
  const worst = ringPx ? Math.max(...ringPx) : 0;
  return [
    ...(ringing && ringPx && worst > 0 ? [['ringing.worstFrame', ringPx.indexOf(worst) + 2] as Entry] : []),
    ...(ringing?.quiet
      ? ([
          ['ringing.shortestIntervalS', ringing.quiet.shortestIntervalS],
          ['ringing.shortestIntervalWithoutS', ringing.quiet.shortestIntervalWithoutS],
        ] as Entry[])
      : []),
  ];
}

/** Figures of the rig over a run. */
export function rigFigures(plan: Plan, made: Schedule): Entry[] {
  const subjects = plan.subject.used ? subjectsOf(plan, made) : [];
  return [
    ...plan.rig.axes.map((axis): Entry => [`axes.${axis.name}.microstep`, 1 / perUnitOf(axis)]),
    ...axisFigures(plan, made),
    ...imageFigures(plan, made, subjects),
    ...aimFigures(plan, made, subjects),
    ...ringingFigures(made),
  ];
}
