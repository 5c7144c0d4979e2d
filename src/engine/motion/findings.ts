/** What the motion says: does every axis stay within its travel, speed and acceleration. */
import type { Margin } from '../findings/types.ts';
import { withUnit } from '../findings/words.ts';
import type { Axis } from '../plan/schema.ts';
import type { Draft, Judge, Run } from '../run.ts';
import type { AxisColumns } from '../schedule-types.ts';
import { fixedTimeAccel, fixedTimeSpeed } from './profile.ts';

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
}

function demandOf(run: Run, axis: Axis, columns: AxisColumns): AxisDemand {
  const { steps, stepsPerUnit, lowestSteps: lowest, highestSteps: highest } = columns;
  // Rounding to whole steps may carry a position at the very end of its travel half a step beyond.
  const low = axis.travelMin * stepsPerUnit - 0.5;
  const high = axis.travelMax * stepsPerUnit + 0.5;
  const outside = lowest < low || highest > high ? steps.findIndex((step) => step < low || step > high) : -1;
  return {
    axis,
    minimum: lowest / stepsPerUnit,
    maximum: highest / stepsPerUnit,
    firstOutside: outside === -1 ? null : outside + 1,
    ...peaksOf(run, axis, columns),
  };
}

function peaksOf(
  run: Run,
  axis: Axis,
  { steps, stepsPerUnit }: AxisColumns,
): Pick<AxisDemand, 'speed' | 'accel'> {
  const { mode, moveS } = run.plan.move;
  const { intervalS } = run.columns;
  const moves = steps.length - 1;
  const distance = (k: number) => Math.abs((steps[k + 1] as number) - (steps[k] as number)) / stepsPerUnit;
  if (mode === 'moveShootMove' && moveS !== null) {
    const accel = peakOf(moves, axis.maxAccel, (k) => fixedTimeAccel(distance(k), moveS));
    // Where the acceleration does not suffice there is no speed to speak of: that finding says it all.
    const speed = peakOf(moves, axis.maxSpeed, (k) => {
      const value = fixedTimeSpeed(distance(k), axis.maxAccel, moveS);
      return Number.isFinite(value) ? value : 0;
    });
    return { speed, accel };
  }
  if (mode === 'continuous') {
    const velocity = (k: number) =>
      ((steps[k + 1] as number) - (steps[k] as number)) / stepsPerUnit / (intervalS[k] as number);
    return {
      speed: peakOf(moves, axis.maxSpeed, (k) => Math.abs(velocity(k))),
      accel: peakOf(moves, axis.maxAccel, (k) =>
        k === 0 ? 0 : Math.abs(velocity(k) - velocity(k - 1)) / (intervalS[k] as number),
      ),
    };
  }
  return { speed: null, accel: null };
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

function overLimit(
  id: 'speed' | 'acceleration',
  axis: Axis,
  peak: Peak | null,
  limit: number,
  unit: string,
): Draft[] {
  if (!peak || peak.firstOver === null) return [];
  const verb = id === 'speed' ? 'would have to run at' : 'would have to accelerate at';
  return [
    {
      id,
      severity: 'stop',
      subject: 'move',
      message: `${axis.name} ${verb} ${withUnit(peak.largest, unit)}, and can do ${withUnit(limit, unit)}, from frame ${peak.firstOver}.`,
      frame: peak.firstOver,
      values: { axis: axis.name, needed: peak.largest, limit, worstFrame: peak.largestFrame },
    },
  ];
}

function draftsOf(demand: AxisDemand): Draft[] {
  const { axis } = demand;
  return [
    ...travel(demand),
    ...overLimit('speed', axis, demand.speed, axis.maxSpeed, `${axis.unit}/s`),
    ...overLimit('acceleration', axis, demand.accel, axis.maxAccel, `${axis.unit}/s²`),
  ];
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
    findings: demands.flatMap(draftsOf),
    margins: demands.flatMap((demand) => marginsOf(run, demand)),
  };
};
