/** What whole steps, lost motion and misplaced keyframes say of a moving rig. */
import { seconds, withUnit } from '../findings/words.ts';
import type { Axis, Plan, Track } from '../plan/schema.ts';
import { pixelsPassed } from '../ringing/pixels.ts';
import type { Draft, Run } from '../run.ts';
import type { AxisColumns } from '../schedule-types.ts';
import { type KeyframeFault, placeKeyframes, runClock } from './keyframes.ts';
import { isAimed } from './motion.ts';
import { overrunsAt, takeUpOf } from './take-up.ts';

// One or two repeats at the ends of an ease are nothing that shows.
const STALLS = 3;

// Nor are steps that shift the picture by less: common practice, no source.
const SHOWS_PX = 0.5;

function stairStepping(plan: Plan, axis: Axis, columns: AxisColumns): Draft[] {
  const { name, unit } = axis;
  const { repeats, firstRepeat, stepsPerUnit } = columns;
  if (repeats < STALLS || firstRepeat === null) return [];
  const microstep = 1 / stepsPerUnit;
  const perUnit = pixelsPassed(plan, axis);
  const shiftPx = perUnit === null ? null : perUnit * microstep;
  if (shiftPx !== null && shiftPx < SHOWS_PX) return [];
  const shift = shiftPx === null ? '' : `, ${withUnit(shiftPx, 'px')} in the picture`;
  const meanMove = meanSteps(columns) * microstep;
  return [
    {
      id: 'stair-stepping',
      severity: 'warning',
      subject: 'move',
      message: `${name} repeats its position on ${repeats} frames while its track goes on, from frame ${firstRepeat}: a microstep is ${withUnit(microstep, unit)}${shift}, and the track moves ${withUnit(meanMove, unit)} a frame.`,
      frame: firstRepeat,
      values: { axis: name, repeats, microstep, meanMove, ...(shiftPx !== null && { shiftPx }) },
    },
  ];
}

/** Mean steps a frame, while the track goes on. */
const meanSteps = (columns: AxisColumns): number => wayOf(columns) / (columns.moves + columns.repeats);

function wayOf({ steps, lowestSteps, highestSteps, reversals }: AxisColumns): number {
  if (reversals === 0) return highestSteps - lowestSteps;
  let way = 0;
  for (let k = 1; k < steps.length; k += 1) way += Math.abs((steps[k] as number) - (steps[k - 1] as number));
  return way;
}

/** How often, in words. */
export const times = (count: number): string => (count === 1 ? 'once' : `${count} times`);

/** Lost motion that nothing takes up. */
function lostOnTheWay(axis: Axis, { reversals, firstReversal }: AxisColumns): Draft[] {
  const { name, unit, backlash } = axis;
  if (backlash === 0 || firstReversal === null) return [];
  return [
    {
      id: 'reversal',
      severity: 'warning',
      subject: 'move',
      message: `${name} turns back ${times(reversals)}, first before frame ${firstReversal}: its backlash of ${withUnit(backlash, unit)} cannot be taken up between frames, and it lags behind by as much.`,
      frame: firstReversal,
      values: { axis: name, reversals, backlash },
    },
  ];
}

/** Lost motion that is taken up between exposures, and the time for it. */
function takenUp(axis: Axis, columns: AxisColumns): Draft[] {
  const { name, unit, backlash } = axis;
  const { takeUps, takeUpS, steps, firstReversal } = columns;
  if (takeUps === 0) return [];
  const { side, overrun } = takeUpOf(axis);
  const firstOverrun = steps.findIndex((_, k) => overrunsAt(steps, k, side)) + 1;
  const frame = side === 0 ? (firstReversal ?? 1) : firstOverrun;
  // A move of fixed time does it in that time.
  const costs = takeUpS > 0.0005 ? `, which takes ${seconds(takeUpS)} in all` : '';
  const way = side === 1 ? 'up' : 'down';
  return [
    {
      id: 'backlash-taken-up',
      severity: 'note',
      subject: 'move',
      message:
        side === 0
          ? `${name} turns back ${times(takeUps)}, first before frame ${frame}: its backlash of ${withUnit(backlash, unit)} is taken up${costs}.`
          : `${name} arrives going ${way}: ${times(takeUps)}, first before frame ${frame}, it overruns by ${withUnit(overrun, unit)} and comes back${costs}.`,
      frame,
      values: { axis: name, takeUps, takeUpS, backlash, overrun },
    },
  ];
}

function keyframeOrder(run: Run, track: Track, faults: readonly KeyframeFault[]): Draft[] {
  const [first] = faults;
  if (!first) return [];
  const { keyframe, what, index } = first;
  const end = track.thereAndBack ? 'turn halfway through its' : 'run of';
  const where = Math.ceil(index) + 1;
  const order = `stands no later than keyframe ${keyframe - 1}, and is moved up to it`;
  const beyond = `would be at frame ${where}, beyond the ${end} ${run.pace.frames} frames: it is not reached`;
  const more = faults.length > 1 ? ` ${faults.length - 1} more of its keyframes are misplaced.` : '';
  return [
    {
      id: 'keyframe-order',
      severity: 'warning',
      subject: 'move',
      message: `Keyframe ${keyframe} of ${track.axis} ${what === 'order' ? order : beyond}.${more}`,
      frame: null,
      values: { axis: track.axis, keyframe, misplaced: faults.length },
    },
  ];
}

/** Whether a track is gone by: not that of an axis which the aim sets. */
function isFollowed({ plan, rig }: Run, { axis: name }: Track): boolean {
  const axis = plan.rig.axes.find((one) => one.name === name);
  return axis !== undefined && (rig.aim === null || !isAimed(plan, axis));
}

function misplaced(run: Run): Draft[] {
  const clock = runClock(run.columns.intervalS);
  return run.plan.move.tracks
    .filter((track) => isFollowed(run, track))
    .flatMap((track) => keyframeOrder(run, track, placeKeyframes(track, clock).faults));
}

/** What is said of a rig that moves. */
export function judgeSteps(run: Run): Draft[] {
  const { mode } = run.plan.move;
  const drafts = run.plan.rig.axes.flatMap((axis, i) => {
    const columns = run.columns.axes[i];
    if (!columns) return [];
    const lost = mode === 'continuous' ? lostOnTheWay(axis, columns) : takenUp(axis, columns);
    return [...stairStepping(run.plan, axis, columns), ...lost];
  });
  return [...misplaced(run), ...drafts];
}
