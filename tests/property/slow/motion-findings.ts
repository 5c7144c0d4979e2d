/** What is expected to be said of the axes: travel, speed, acceleration, jerk, lost motion, whole steps, keyframes. */
import type { Axis, Plan } from '../../../src/engine/plan/schema.ts';
import type { Judged } from '../judged.ts';
import { actingAxis, focalPxOf, subjectAtRestMm } from './camera.ts';
import { above, type Expected, either, firstOf, sure, type Table } from './expected.ts';
import { motorWays, pxPerUnit } from './moves.ts';
import { goesOnBefore, placed } from './position.ts';
import { leastS, slowLimits, speedWithin } from './profile.ts';
import { elapsedOf } from './run.ts';

interface Given {
  plan: Plan;
  axis: Axis;
  steps: Int32Array;
  perUnit: number;
  intervalS: number;
}

const sideOf = ({ arrive }: Axis): number => ({ eitherWay: 0, upwards: 1, downwards: -1 })[arrive];

/** Frame by frame: whether the load gets out of its travel, by more than the rounding to whole steps. */
function outside({ plan, axis, steps, perUnit }: Given): Expected[] {
  const side = plan.move.mode === 'moveShootMove' ? sideOf(axis) : 0;
  const past = side === 0 ? 0 : (axis.overrun ?? 2 * axis.backlash);
  return Array.from(steps, (step, k) => {
    const wrongWay = side * (step - (steps[k - 1] ?? step)) < 0;
    const reach = step / perUnit - (wrongWay ? side * past : 0);
    const beyond = Math.max(axis.travelMin - reach, reach - axis.travelMax);
    return above(beyond - 0.5 / perUnit, 0, 1e-6);
  });
}

interface Demand {
  speed: Expected[];
  accel: Expected[];
}

/** Moves of a fixed time. Where acceleration or jerk do not suffice there is no speed to speak of. */
function inFixedTime({ plan, axis, steps, perUnit }: Given, fixedS: number): Demand {
  const limits = slowLimits(plan, axis);
  const known = new Map<number, { speed: Expected; accel: Expected }>();
  const judge = (distance: number) => {
    const accel = above(leastS(distance, limits), fixedS);
    const speed = accel === 'no' ? above(speedWithin(distance, fixedS, limits), limits.speed, 1e-6) : accel;
    return { accel, speed: speed === 'yes' && accel === 'yes' ? ('no' as const) : speed };
  };
  const found = motorWays(axis, steps, perUnit).map((ways) =>
    ways.map((distance) => {
      const is = known.get(distance) ?? judge(distance);
      known.set(distance, is);
      return is;
    }),
  );
  const all = (of: 'speed' | 'accel') => found.map((ways) => either(...ways.map((way) => way[of])));
  return { speed: all('speed'), accel: all('accel') };
}

/** Without a stop: the speed between two frames, and how much it changes from one stretch to the next. */
function withoutStop({ axis, steps, perUnit, intervalS }: Given): Demand {
  const speeds = Array.from(
    steps.subarray(1),
    (step, k) => (step - (steps[k] as number)) / perUnit / intervalS,
  );
  return {
    speed: speeds.map((speed) => above(Math.abs(speed), axis.maxSpeed)),
    accel: speeds.map((speed, k) =>
      above(Math.abs(speed - (speeds[k - 1] ?? speed)) / intervalS, axis.maxAccel),
    ),
  };
}

function demandOf(given: Given): Demand {
  const { mode, moveS } = given.plan.move;
  if (mode === 'continuous') return withoutStop(given);
  if (mode === 'moveShootMove' && moveS !== null) return inFixedTime(given, moveS);
  return { speed: [], accel: [] };
}

/** Indices of the moves that turn back, or go the wrong way for their axis. */
function turns({ steps }: Given, side: number): number[] {
  let before = side;
  const found: number[] = [];
  for (let k = 1; k < steps.length; k += 1) {
    const move = Math.sign((steps[k] as number) - (steps[k - 1] as number));
    if (move === 0) continue;
    if (move === -before) found.push(k);
    if (side === 0) before = move;
  }
  return found;
}

function reversal(given: Given, table: Table): void {
  const { axis, plan } = given;
  const between = plan.move.mode === 'moveShootMove';
  const side = between ? sideOf(axis) : 0;
  const past = side === 0 ? 0 : (axis.overrun ?? 2 * axis.backlash);
  const [first] = turns(given, side);
  const holds = plan.move.mode !== 'still' && axis.backlash + past > 0 && first !== undefined;
  const said = (severity: 'note' | 'warning') =>
    holds ? ({ is: 'yes', frame: first + 1, severity } as const) : 'no';
  table.set(`reversal ${axis.name}`, between ? 'no' : said('warning'));
  table.set(`backlash-taken-up ${axis.name}`, between ? said('note') : 'no');
}

/** Whether the aim sets an axis. */
export const isAimed = (plan: Plan, axis: Axis): boolean =>
  plan.subject.used &&
  plan.subject.aimed &&
  (actingAxis(plan, 'pan') === axis || actingAxis(plan, 'tilt') === axis);

/** Indices of the frames that repeat the position before while the track goes on. */
export function repeatsOf({ plan, run, slow }: Judged, axis: Axis): number[] {
  const columns = run.columns.axes;
  const { steps } = columns.find(({ name }) => name === axis.name) ?? { steps: new Int32Array() };
  if (plan.move.mode === 'still') return [];
  const moves = (all: Int32Array, k: number) => k > 0 && all[k] !== all[k - 1];
  const stalls = Array.from(steps.keys()).filter((k) => k > 0 && !moves(steps, k));
  const track = plan.move.tracks.find((candidate) => candidate.axis === axis.name);
  if (isAimed(plan, axis)) {
    const own = Array.from(steps.keys()).filter((k) => moves(steps, k));
    const [first = 0, last = 0] = [own[0], own.at(-1)];
    const others = columns.filter(({ name }) => name !== axis.name);
    return stalls.filter((k) => k > first && k < last && others.some((other) => moves(other.steps, k)));
  }
  if (!track) return [];
  const list = placed(track, elapsedOf(slow));
  return stalls.filter((k) => goesOnBefore(track, list, k, steps.length));
}

/** Pixels that the picture passes in one step; null where nobody knows. */
function passesPx(plan: Plan, axis: Axis): number | null {
  if (axis.kind === 'turntable' || axis.kind === 'focus') return null;
  if (axis.kind !== 'boom' && axis.kind !== 'slide') return pxPerUnit(plan, axis);
  if (!plan.subject.used) return null;
  const perMm = focalPxOf(plan) / subjectAtRestMm(plan);
  return axis.kind === 'boom' && axis.unit === 'deg'
    ? (perMm * plan.rig.arm.lengthMm * Math.PI) / 180
    : perMm;
}

function stairs(judged: Judged, { plan, axis, perUnit }: Given, table: Table): void {
  const repeats = repeatsOf(judged, axis);
  const px = passesPx(plan, axis);
  const shows = px === null ? 'yes' : above(px / perUnit, 0.5);
  const many = repeats.length >= 3;
  const frame = (repeats[0] ?? 0) + 1;
  table.set(`stair-stepping ${axis.name}`, many ? { is: shows, frame } : 'no');
}

function keyframes({ plan, slow }: Judged, table: Table): void {
  for (const track of plan.move.tracks) {
    const list = placed(track, elapsedOf(slow));
    const onEdge = list.some(({ edge }, i) => i > 0 && edge > 0 && edge < 1e-12);
    const wrong = list.some(({ late, beyond }) => late || beyond);
    // The aim goes where it must, whatever the track says.
    const axis = plan.rig.axes.find(({ name }) => name === track.axis);
    const idle = plan.move.mode === 'still' || (axis !== undefined && isAimed(plan, axis));
    table.set(`keyframe-order ${track.axis}`, idle ? 'no' : onEdge ? 'open' : sure(wrong));
  }
}

export function motionFindings(judged: Judged, table: Table): void {
  const { plan, run, slow } = judged;
  plan.rig.axes.forEach((axis, i) => {
    const { steps = new Int32Array(), stepsPerUnit: perUnit = Number.NaN } = run.columns.axes[i] ?? {};
    const given: Given = { plan, axis, steps, perUnit, intervalS: slow.frames[0]?.intervalS ?? Number.NaN };
    const { speed, accel } = demandOf(given);
    table.set(`travel ${axis.name}`, firstOf(outside(given)));
    table.set(`speed ${axis.name}`, firstOf(speed));
    table.set(`acceleration ${axis.name}`, firstOf(accel));
    reversal(given, table);
    stairs(judged, given, table);
  });
  keyframes(judged, table);
}
