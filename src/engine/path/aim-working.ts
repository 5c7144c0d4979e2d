/** How well the aim holds over a run, and what it asks of pan and tilt: how that came about. */
import { firstAt } from '../leap.ts';
import type { AxisColumns } from '../schedule-types.ts';
import { countWhere, frameFound, whereRemark } from '../working/found.ts';
import { type Draft, ofFrame, sameAs, term, type Worked, type Workings } from '../working/make.ts';
import { type AimKind, type AimSummary, smallestMissPx } from './aim.ts';
import { seenFrom } from './camera-pose.ts';
import { aimMiss, PINHOLE, poseOf, standing } from './image-working.ts';
import { poseAxis, subjectAt } from './pose.ts';

function worstDeg(of: Worked, value: number, frame: number): Draft {
  const at = standing(of, frame - 1);
  const { x, y, z } = seenFrom(poseOf(at), subjectAt(at.geometry, at.stance));
  return {
    title: 'Aim is off by',
    value,
    unit: 'deg',
    expression: 'atan2(offMm, aheadMm) * 180 / pi',
    terms: [
      term('offMm', 'subject off the lens axis', Math.hypot(x, y), 'mm'),
      term('aheadMm', 'ahead of the lens', z, 'mm'),
    ],
    frame,
    source: PINHOLE,
  };
}

/** Frames whose image centre misses the subject. */
function missFrames(of: Worked, value: number): Draft {
  const { frames } = of.made.totals;
  const missPx = of.made.columns.aimMissPx;
  const misses = (k: number): boolean => (missPx?.[k] ?? 0) > 0;
  const allowed = Number(smallestMissPx(of.plan, of.made.columns.axes).toPrecision(3));
  return {
    title: 'Frames off the centre',
    value,
    unit: 'frames',
    expression: 'frames - heldFrames',
    terms: [
      term('frames', 'frames', frames, 'frames', 'totals.frames'),
      term('heldFrames', 'frames at which the aim holds', frames - countWhere(frames, misses), 'frames'),
    ],
    remarks: [
      `The aim holds where the centre of the image is at most ${allowed} px off the subject: one pixel, or what a step of pan and tilt is, whichever is more.`,
      whereRemark(frames, misses),
    ],
    source: PINHOLE,
  };
}

/** Lowest or highest position of an axis that aims. */
function end(name: string, columns: AxisColumns, which: 'lowest' | 'highest'): Draft {
  const { lowestSteps, highestSteps, stepsPerUnit, unit } = columns;
  const position = which === 'lowest' ? lowestSteps : highestSteps;
  const k = firstAt(columns, position);
  const what = ofFrame(k, `axes.${name}.position`);
  return sameAs(
    `${name}: ${which} position`,
    `position at frame ${k + 1}`,
    position / stepsPerUnit,
    unit,
    what,
    { frame: k + 1, remarks: [`The ${which} of all frames; the first of several.`] },
  );
}

function endsOf({ plan, made }: Worked, kind: AimKind): Workings {
  const index = poseAxis(plan, kind);
  const [axis, columns] = [plan.rig.axes[index], made.columns.axes[index]];
  if (!axis || !columns) return {};
  return {
    [`aim.${kind}FromDeg`]: () => end(axis.name, columns, 'lowest'),
    [`aim.${kind}ToDeg`]: () => end(axis.name, columns, 'highest'),
  };
}

function missDrafts(of: Worked, summary: AimSummary): Workings {
  const { firstMissFrame, worstFrame } = summary;
  return {
    'aim.missFrames': () => missFrames(of, summary.missFrames),
    ...(firstMissFrame !== null && {
      'aim.firstMissFrame': () =>
        frameFound(
          'First frame off the centre',
          'first frame at which the aim does not hold',
          firstMissFrame,
        ),
    }),
    ...(worstFrame !== null && {
      'aim.worstFrame': () =>
        frameFound(
          'Frame farthest off',
          'frame at which the lens looks farthest past the subject',
          worstFrame,
        ),
      'aim.worstPx': () => ({ ...aimMiss(of, worstFrame - 1), frame: worstFrame }),
      'aim.worstDeg': () => worstDeg(of, summary.worstDeg, worstFrame),
    }),
  };
}

/** Workings of the aim over the run. */
export function aimDrafts(of: Worked): Workings {
  const summary = of.made.rig.aim;
  if (summary === null) return {};
  return { ...missDrafts(of, summary), ...endsOf(of, 'pan'), ...endsOf(of, 'tilt') };
}
