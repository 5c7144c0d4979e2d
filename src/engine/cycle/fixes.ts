/** Ways out of what the cycle says: what has to be done in an interval takes longer than it. */
import { closerExposures, fewerExposures, noDarkFrames } from '../exposure/camera-ways.ts';
import { shorterByAperture, shorterByIso, thirdsBetween } from '../exposure/setting-ways.ts';
import { seconds } from '../findings/words.ts';
import { numberIn, stepsOf } from '../fixes/build.ts';
import { intervalLonger, slowerRun } from '../fixes/common-ways.ts';
import type { SubjectWays, Way, WaysOut } from '../fixes/types.ts';
import {
  asFastAsMotors,
  axesTogether,
  movesTaking,
  notJerkLimited,
  quietMoves,
  settleByRinging,
} from '../motion/move-ways.ts';
import { smallerTracks } from '../motion/track-ways.ts';
import type { Plan } from '../plan/schema.ts';
import type { Schedule } from '../schedule-types.ts';

/**
 * The setting of the trigger that makes up for seconds that are missing. With fewer frames in the same event each move
 * is longer: of a move at its top speed by as much as the interval.
 */
function dialFor(plan: Plan, { totals, columns }: Schedule, shortS: number, frame: number): number {
  const moveS = plan.move.moveS === null ? (columns.moveS[frame - 1] ?? 0) : 0;
  const share = Math.min(0.8, moveS / totals.intervalS);
  return totals.dialS + shortS / (1 - share);
}

/** Ways to a longer interval. */
export const longerIntervals = (plan: Plan, made: Schedule, shortS: number, frame: number): Way[] => [
  ...intervalLonger(plan, made, dialFor(plan, made, shortS, frame)),
  ...slowerRun(plan, made, made.totals.dialS + shortS),
];

/** Ways to a shorter exposure. @param shortS - seconds that it is too long, all of a frame's together */
function shorterExposures(plan: Plan, { columns }: Schedule, shortS: number, frame: number): Way[] {
  const exposureS = columns.exposureS[frame - 1] ?? 0;
  // A dark frame takes as long again.
  const savedS = plan.camera.noiseReduction ? shortS / 2 : shortS;
  const thirds = exposureS > savedS ? thirdsBetween(exposureS, exposureS - savedS) : Number.NaN;
  const byShutter =
    Number.isNaN(thirds) || exposureS < 0.05
      ? []
      : [shorterByIso(plan, thirds), shorterByAperture(plan, thirds)];
  return [...byShutter.flat(), ...fewerExposures(plan), ...closerExposures(plan)];
}

/** Ways to a rig that is ready sooner after a move. */
const soonerMoves = (plan: Plan, shortS: number): Way[] => [
  ...settleByRinging(plan),
  ...quietMoves(plan),
  ...axesTogether(plan),
  ...notJerkLimited(plan),
  ...asFastAsMotors(plan),
  ...movesTaking(plan, -1, (plan.move.moveS ?? 0) - shortS),
];

const overrun: WaysOut = (finding, plan, made) => {
  const shortS = numberIn(finding, 'shortS');
  const worst = numberIn(finding, 'worstFrame');
  const moveS = made.columns.moveS[worst - 1] ?? 0;
  return [
    ...soonerMoves(plan, shortS),
    ...longerIntervals(plan, made, shortS, worst),
    ...shorterExposures(plan, made, shortS, worst),
    ...(moveS > shortS ? smallerTracks(plan, (moveS - shortS) / moveS) : []),
  ];
};

const notReady: WaysOut = (finding, plan, made) => {
  const shortS = numberIn(finding, 'shortS');
  const worst = numberIn(finding, 'worstFrame');
  return [
    ...noDarkFrames(plan),
    // The camera does not wait for the rig: no move counts.
    ...intervalLonger(plan, made, made.totals.dialS + shortS),
    ...slowerRun(plan, made, made.totals.dialS + shortS),
    ...shorterExposures(plan, made, shortS, worst),
  ];
};

/** Less time asked to be free, in tenths of a second: the last thing to give up. */
const shorterGuard = (plan: Plan, freeS: number): Way[] =>
  stepsOf(plan, {
    kind: 'guard-shorter',
    path: 'cycle.guardS',
    by: -0.1,
    wanted: freeS,
    label: (guardS) => `Guard to ${seconds(guardS)}`,
    needs: 'less time in hand for a slow card or a sticking move',
  });

const guardUsed: WaysOut = (finding, plan, made) => {
  const freeS = numberIn(finding, 'freeS');
  const shortS = numberIn(finding, 'guardS') - freeS;
  const worst = numberIn(finding, 'worstFrame');
  return [
    ...soonerMoves(plan, shortS),
    ...noDarkFrames(plan),
    ...longerIntervals(plan, made, shortS, worst),
    ...shorterExposures(plan, made, shortS, worst),
    ...shorterGuard(plan, freeS),
  ];
};

export const cycleWays: SubjectWays<'cycle-overrun' | 'camera-not-ready' | 'guard-used'> = {
  'cycle-overrun': overrun,
  'camera-not-ready': notReady,
  'guard-used': guardUsed,
};
