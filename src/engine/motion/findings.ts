/** What the motion says: does every axis stay within its travel, speed, acceleration and jerk. */
import type { Margin } from '../findings/types.ts';
import { withUnit } from '../findings/words.ts';
import type { Axis } from '../plan/schema.ts';
import type { Draft, Judge, Run } from '../run.ts';
import type { AxisColumns } from '../schedule-types.ts';
import { fixedTimeAccel, fixedTimeJerk, fixedTimeSpeed, limitsOf } from './profile.ts';
import { judgeSteps } from './step-findings.ts';
import { motorWays, overrunsAt, takeUpOf } from './take-up.ts';

/** Where a quantity first passes its limit and where it is largest; frames counted from 1. */
interface Peak {
  largest: number;
  largestFrame: number;
  firstOver: number | null;
}

// A limit met to the last digit is met: positions are whole steps, so that quotients carry a rounding.
const OVER = 1 + 1e-9;

function peakOf(frames: number, limit: number, valueAt: (k: number) => number): Peak {
  const peak: Peak = { largest: 0, largestFrame: 1, firstOver: null };
  for (let k = 0; k < frames; k += 1) {
    const value = valueAt(k);
    if (value > peak.largest) {
      peak.largest = value;
      peak.largestFrame = k + 1;
    }
    if (value > limit * OVER) peak.firstOver ??= k + 1;
  }
  return peak;
}

/** What one axis has to do, beside what it can. */
interface AxisDemand {
  axis: Axis;
  minimum: number;
  maximum: number;
  firstOutside: number | null;
  /** null where the motor's own figures decide, so that nothing can be exceeded. */
  speed: Peak | null;
  accel: Peak | null;
  jerk: Peak | null;
}

/** Where the load gets to at an index, steps: past its position where the axis overruns to arrive from its side. */
function reachAt(
  { plan }: Pick<Run, 'plan'>,
  axis: Axis,
  { steps, stepsPerUnit }: AxisColumns,
): ((k: number) => number) | null {
  const { side, overrun } = takeUpOf(axis);
  if (plan.move.mode !== 'moveShootMove' || side === 0 || overrun === 0) return null;
  const past = side * overrun * stepsPerUnit;
  return (k) => (steps[k] as number) - (overrunsAt(steps, k, side) ? past : 0);
}

/** Steps of the lowest and the highest place that the load gets to. */
function rangeOf(columns: AxisColumns, reach: ((k: number) => number) | null): [number, number] {
  let { lowestSteps: lowest, highestSteps: highest } = columns;
  if (reach === null) return [lowest, highest];
  for (let k = 0; k < columns.steps.length; k += 1) {
    lowest = Math.min(lowest, reach(k));
    highest = Math.max(highest, reach(k));
  }
  return [lowest, highest];
}

/** Lowest and highest place that the load of an axis gets to, in its unit. */
export const travelOf = (run: Pick<Run, 'plan'>, axis: Axis, columns: AxisColumns): number[] =>
  rangeOf(columns, reachAt(run, axis, columns)).map((steps) => steps / columns.stepsPerUnit);

function demandOf(run: Run, axis: Axis, columns: AxisColumns): AxisDemand {
  const { steps, stepsPerUnit } = columns;
  const reach = reachAt(run, axis, columns);
  const [lowest, highest] = rangeOf(columns, reach);
  // Rounding to whole steps may carry a position at the very end of its travel half a step beyond.
  const low = axis.travelMin * stepsPerUnit - 0.5;
  const high = axis.travelMax * stepsPerUnit + 0.5;
  const isOutside = (step: number, k: number) => {
    const place = reach ? reach(k) : step;
    return place < low || place > high;
  };
  const outside = lowest < low || highest > high ? steps.findIndex(isOutside) : -1;
  return {
    axis,
    minimum: lowest / stepsPerUnit,
    maximum: highest / stepsPerUnit,
    firstOutside: outside === -1 ? null : outside + 1,
    ...peaksOf(run, axis, columns),
  };
}

type Peaks = Pick<AxisDemand, 'speed' | 'accel' | 'jerk'>;

function peaksOf(run: Run, axis: Axis, columns: AxisColumns): Peaks {
  const { mode, moveS } = run.plan.move;
  if (mode === 'continuous') return continuousPeaks(run, axis, columns);
  if (mode === 'moveShootMove' && moveS !== null) return fixedTimePeaks(run, axis, columns, moveS);
  return { speed: null, accel: null, jerk: null };
}

function fixedTimePeaks(run: Run, axis: Axis, columns: AxisColumns, moveS: number): Peaks {
  const { maxSpeed, maxAccel, maxJerk } = limitsOf(axis, run.plan.move.profile);
  const ways = motorWays(axis, columns);
  const moves = ways.length - 1;
  const way = (k: number) => ways[k] as number;
  // Where acceleration or jerk do not suffice there is no speed to speak of: that finding says it all.
  const speedFor = (distance: number) => {
    const value = fixedTimeSpeed(distance, maxAccel, moveS, maxJerk);
    return Number.isFinite(value) ? value : 0;
  };
  const { side, beyond } = takeUpOf(axis);
  const backSpeed = speedFor(beyond);
  const comesBack = (k: number) => overrunsAt(columns.steps, k + 1, side);
  return {
    speed: peakOf(moves, maxSpeed, (k) => Math.max(speedFor(way(k)), comesBack(k) ? backSpeed : 0)),
    accel: peakOf(moves, maxAccel, (k) => fixedTimeAccel(way(k), moveS, maxJerk)),
    jerk: peakOf(moves, maxJerk, (k) => fixedTimeJerk(way(k), moveS)),
  };
}

function continuousPeaks(run: Run, axis: Axis, { steps, stepsPerUnit }: AxisColumns): Peaks {
  const { intervalS } = run.columns;
  const moves = steps.length - 1;
  const velocity = (k: number) =>
    ((steps[k + 1] as number) - (steps[k] as number)) / stepsPerUnit / (intervalS[k] as number);
  return {
    speed: peakOf(moves, axis.maxSpeed, (k) => Math.abs(velocity(k))),
    accel: peakOf(moves, axis.maxAccel, (k) =>
      k === 0 ? 0 : Math.abs(velocity(k) - velocity(k - 1)) / (intervalS[k] as number),
    ),
    jerk: null,
  };
}

const demandsOf = (run: Run): AxisDemand[] =>
  run.plan.rig.axes.flatMap((axis, i) => {
    const columns = run.columns.axes[i];
    return columns ? [demandOf(run, axis, columns)] : [];
  });

function travel({ axis, firstOutside, minimum, maximum }: AxisDemand): Draft[] {
  if (firstOutside === null) return [];
  const beyond = Math.max(maximum - axis.travelMax, axis.travelMin - minimum);
  const range = `${withUnit(axis.travelMin, axis.unit)} to ${withUnit(axis.travelMax, axis.unit)}`;
  return [
    {
      id: 'travel',
      severity: 'stop',
      subject: 'move',
      message: `${axis.name} would be ${withUnit(beyond, axis.unit)} beyond its travel of ${range}, from frame ${firstOutside}.`,
      frame: firstOutside,
      values: {
        axis: axis.name,
        minimum,
        maximum,
        travelMin: axis.travelMin,
        travelMax: axis.travelMax,
        beyond,
      },
    },
  ];
}

/** A peak, its limit, and how to say it. */
interface Limit {
  id: 'speed' | 'acceleration';
  peak: Peak | null;
  limit: number;
  unit: string;
  verb: string;
}

function overLimit(axis: Axis, { id, peak, limit, unit, verb }: Limit): Draft[] {
  if (!peak || peak.firstOver === null) return [];
  return [
    {
      id,
      severity: 'stop',
      subject: 'move',
      message: `${axis.name} would have to ${verb} ${withUnit(peak.largest, unit)}, and can do ${withUnit(limit, unit)}, from frame ${peak.firstOver}.`,
      frame: peak.firstOver,
      values: { axis: axis.name, needed: peak.largest, limit, worstFrame: peak.largestFrame },
    },
  ];
}

function draftsOf(demand: AxisDemand): Draft[] {
  const { axis, speed, accel, jerk } = demand;
  const { unit, maxSpeed, maxAccel, maxJerk } = axis;
  const atSpeed: Limit = { id: 'speed', peak: speed, limit: maxSpeed, unit: `${unit}/s`, verb: 'run at' };
  const id = 'acceleration';
  // Too much of both is said once: that of which there is too much first.
  const jerkFirst = (jerk?.firstOver ?? Infinity) < (accel?.firstOver ?? Infinity);
  const peak = jerkFirst ? null : accel;
  const atAccel: Limit = { id, peak, limit: maxAccel, unit: `${unit}/s²`, verb: 'accelerate at' };
  const asked = jerkFirst ? jerk : null;
  const verb = 'change its acceleration by';
  const atJerk: Limit = { id, peak: asked, limit: maxJerk, unit: `${unit}/s³`, verb };
  return [...travel(demand), ...[atSpeed, atAccel, atJerk].flatMap((limit) => overLimit(axis, limit))];
}

function marginsOf(run: Run, demand: AxisDemand): Margin[] {
  const { axis, minimum, maximum, firstOutside, speed } = demand;
  const available = axis.travelMax - axis.travelMin;
  const beyond = Math.max(0, maximum - axis.travelMax, axis.travelMin - minimum);
  const used = firstOutside === null ? maximum - minimum : available + beyond;
  const base = { subject: 'move' as const, reserve: 0 };
  const travelMargin: Margin = {
    ...base,
    id: `travel:${axis.name}`,
    label: `${axis.name} travel`,
    used,
    available,
    unit: axis.unit,
    left: available - used,
    frame: firstOutside ?? run.pace.frames,
    when: `from ${withUnit(minimum, axis.unit)} to ${withUnit(maximum, axis.unit)}`,
  };
  if (!speed) return [travelMargin];
  const speedMargin: Margin = {
    ...base,
    id: `speed:${axis.name}`,
    label: `${axis.name} speed`,
    used: speed.largest,
    available: axis.maxSpeed,
    unit: `${axis.unit}/s`,
    left: axis.maxSpeed - speed.largest,
    frame: speed.largestFrame,
    when: `fastest at frame ${speed.largestFrame}`,
  };
  return [travelMargin, speedMargin];
}

export const judgeMotion: Judge = (run) => {
  const demands = demandsOf(run);
  // A rig that stands still only has to be able to stand where it is.
  if (run.plan.move.mode === 'still') return { findings: demands.flatMap(travel), margins: [] };
  return {
    findings: [...demands.flatMap(draftsOf), ...judgeSteps(run)],
    margins: demands.flatMap((demand) => marginsOf(run, demand)),
  };
};
