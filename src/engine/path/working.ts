import {
  DEFINITION,
  type Draft,
  none,
  ofFrame,
  sameAs,
  term,
  type Worked,
  type Workings,
} from '../working/make.ts';
import type { Term } from '../working/types.ts';
import { aimDrafts } from './aim-working.ts';
import {
  aimMiss,
  backgroundMotion,
  blur,
  focal,
  imageDrafts,
  standing,
  subjectMotion,
} from './image-working.ts';
import { CIRCLE, frameLensWorkings, height, levelParts } from './lens-working.ts';
import { geometryOf, hasPose, lensAt, poseAxis, stanceAt } from './pose.ts';

const heightTerm = (of: Worked, symbol: string, words: string, frame: number): Term => {
  const { geometry, stance } = standing(of, frame - 1);
  return term(symbol, words, lensAt(geometry, stance).z, 'mm', ofFrame(frame - 1, 'lensHeightMm'));
};

/** First frame, counted from 1, whose lens is as far from the pivot as it gets. */
function reachFrame(of: Worked, reachMm: number): number {
  const { frames } = of.made.totals;
  const geometry = geometryOf(of.plan);
  for (let k = 0; k < frames; k += 1) {
    const { x, y } = lensAt(geometry, stanceAt(of.plan, of.made.columns.axes, k));
    if (Math.abs(Math.hypot(x, y) - reachMm) <= 1e-12 * reachMm) return k + 1;
  }
  return 1;
}

function reach(of: Worked, reachMm: number): Draft {
  const frame = reachFrame(of, reachMm);
  const at = standing(of, frame - 1);
  const { terms, x, y } = levelParts(of, at);
  if (x.length === 0) return none('Reach', 'mm', 'The lens is on the pivot.');
  return {
    title: 'Reach',
    value: reachMm,
    unit: 'mm',
    expression: `sqrt((${x.join(' + ')}) ^ 2 + (${y.join(' + ')}) ^ 2)`,
    terms,
    frame,
    remarks: [
      'Farthest from the upright through the pivot, of the frames looked at: the ends, the extremes, and some hundred between.',
    ],
    source: CIRCLE,
  };
}

/** Workings of the path. */
function pathDrafts(of: Worked): Workings {
  const summary = of.made.rig.path;
  if (summary === null) return {};
  const { highest, lowest, swingDeg } = summary;
  const measured = (title: string, value: number, remark: string) => (): Draft =>
    sameAs(title, 'measured along the frames looked at', value, 'mm', null, {
      value,
      remarks: [remark, 'Of the ends, the extremes, and some hundred frames between.'],
    });
  return {
    'path.riseMm': () => ({
      title: 'Rise',
      value: summary.riseMm,
      unit: 'mm',
      expression: 'highestMm - lowestMm',
      terms: [
        heightTerm(of, 'highestMm', 'highest', highest.frame),
        heightTerm(of, 'lowestMm', 'lowest', lowest.frame),
      ],
      source: DEFINITION,
    }),
    'path.clearanceMm': () => ({
      ...height(of, lowest.frame - 1),
      title: 'Lowest above the floor',
      frame: lowest.frame,
    }),
    'path.reachMm': () => reach(of, summary.reachMm),
    'path.lengthMm': measured(
      'Way of the lens',
      summary.lengthMm,
      'The straight lines from point to point, all together.',
    ),
    'path.deviationMm': measured(
      'Off a straight line',
      summary.deviationMm,
      'The farthest that a point is from the line between the ends; of a path that comes back, to where it is farthest off.',
    ),
    ...(swingDeg > 0 && {
      'path.swingDeg': () => swing(of, swingDeg),
      'path.sagittaMm': () => sagitta(of, summary.sagittaMm, swingDeg),
    }),
  };
}

function swing({ plan, made }: Worked, swingDeg: number): Draft {
  const index = poseAxis(plan, 'boom');
  const axis = plan.rig.axes[index];
  const columns = made.columns.axes[index];
  const byMm = axis?.unit === 'mm';
  return {
    title: 'Arm swings',
    value: swingDeg,
    unit: 'deg',
    expression: `(highestSteps - lowestSteps) / stepsPerUnit${byMm ? ' / armMm * 180 / pi' : ''}`,
    terms: [
      term('highestSteps', 'highest position', columns?.highestSteps ?? 0, 'steps'),
      term('lowestSteps', 'lowest position', columns?.lowestSteps ?? 0, 'steps'),
      term(
        'stepsPerUnit',
        `microsteps a ${axis?.unit ?? ''}`,
        columns?.stepsPerUnit ?? 1,
        `steps/${axis?.unit ?? ''}`,
        `axes.${axis?.name}.stepsPerUnit`,
      ),
      ...(byMm ? [term('armMm', 'length of the arm', plan.rig.arm.lengthMm, 'mm')] : []),
    ],
    source: CIRCLE,
  };
}

const sagitta = ({ plan }: Worked, value: number, swingDeg: number): Draft => ({
  title: 'Sagitta',
  value,
  unit: 'mm',
  expression: 'armMm * (1 - cos(min(swingDeg / 2, 180) * pi / 180))',
  terms: [
    term('armMm', 'length of the arm', plan.rig.arm.lengthMm, 'mm'),
    term('swingDeg', 'swing of the arm', swingDeg, 'deg', 'path.swingDeg'),
  ],
  remarks: ['How far the arc bulges from its chord: the curve that a slider would not have.'],
  source: CIRCLE,
});

/** Workings of path, aim and picture over the run. */
export const pathWorkings = (of: Worked): Workings => ({
  'camera.focalPx': () => focal(of),
  ...pathDrafts(of),
  ...imageDrafts(of),
  ...aimDrafts(of),
});

/** Workings of path, aim and picture at one frame. */
export function framePathWorkings(of: Worked, k: number): Workings {
  const { subjectPx, aimMissPx } = of.made.columns;
  return {
    ...((hasPose(of.plan) || of.plan.subject.used) && frameLensWorkings(of, k)),
    ...(subjectPx && {
      subjectPx: () => subjectMotion(of, k),
      backgroundPx: () => backgroundMotion(of, k),
      ...(of.plan.move.mode === 'continuous' && { blurPx: () => blur(of, k) }),
    }),
    ...(aimMissPx && { aimMissPx: () => aimMiss(of, k) }),
  };
}
