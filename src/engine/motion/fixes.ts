/** Ways out of what the motion says. */
import type { Finding } from '../findings/types.ts';
import { numberIn, wordIn } from '../fixes/build.ts';
import { intervalLonger, intervalShorter, longerRun, shorterRun, slowerRun } from '../fixes/common-ways.ts';
import type { SubjectWays, Way, WaysOut } from '../fixes/types.ts';
import type { Plan } from '../plan/schema.ts';
import type { Schedule } from '../schedule-types.ts';
import { evenerEase, gentlerEase, keyframesDropped, keyframesFitted, lastMeant } from './keyframe-ways.ts';
import { asFastAsMotors, betweenExposures, movesTaking, notJerkLimited } from './move-ways.ts';
import { smallerTrack, trackClamped, trackShifted } from './track-ways.ts';

const travel: WaysOut = (finding, plan) => {
  const axis = wordIn(finding, 'axis');
  const [least, most] = [numberIn(finding, 'minimum'), numberIn(finding, 'maximum')];
  const [low, high] = [numberIn(finding, 'travelMin'), numberIn(finding, 'travelMax')];
  const first = plan.move.tracks.find((track) => track.axis === axis)?.keyframes[0]?.position ?? 0;
  const share = Math.min(
    most > high ? (high - first) / (most - first) : 1,
    least < low ? (low - first) / (least - first) : 1,
  );
  const shift = most > high ? high - most : low - least;
  return [
    ...(most - least <= high - low ? trackShifted(plan, axis, shift) : []),
    ...trackClamped(plan, axis),
    ...(plan.move.mode === 'still' ? [] : smallerTrack(plan, axis, share)),
  ];
};

/** A run in which everything goes slower. @param factor - by how much, that should just suffice */
const slower = (plan: Plan, made: Schedule, factor: number): Way[] => [
  ...slowerRun(plan, made, made.totals.dialS * factor),
  ...longerRun(plan, made, made.totals.eventDurationS * factor),
];

/** How many times more is needed than there is. */
const excess = (finding: Finding): number => numberIn(finding, 'needed') / numberIn(finding, 'limit');

/** Ways to slower moves between exposures that have a time of their own. */
const slowerMoves = (plan: Plan, made: Schedule, factor: number, ofTime: number): Way[] => [
  ...movesTaking(plan, 1, (plan.move.moveS ?? 0) * ofTime),
  ...asFastAsMotors(plan),
  ...intervalShorter(plan, made, made.totals.dialS / factor),
];

const speed: WaysOut = (finding, plan, made) => {
  const [axis, factor] = [wordIn(finding, 'axis'), excess(finding)];
  const continuous = plan.move.mode === 'continuous';
  return [
    ...evenerEase(plan, axis),
    ...(continuous ? slower(plan, made, factor) : slowerMoves(plan, made, factor, factor)),
    ...smallerTrack(plan, axis, 1 / factor),
  ];
};

const acceleration: WaysOut = (finding, plan, made) => {
  const [axis, factor] = [wordIn(finding, 'axis'), excess(finding)];
  const root = Math.sqrt(factor);
  const continuous = plan.move.mode === 'continuous';
  return [
    ...(continuous ? gentlerEase(plan, axis) : notJerkLimited(plan)),
    ...(continuous ? slower(plan, made, root) : slowerMoves(plan, made, factor, root)),
    ...smallerTrack(plan, axis, 1 / factor),
  ];
};

const stairStepping: WaysOut = (finding, plan, made) => {
  const axis = wordIn(finding, 'axis');
  const factor = Math.max(1, numberIn(finding, 'microstep') / numberIn(finding, 'meanMove'));
  const { dialS, eventDurationS } = made.totals;
  return [
    ...evenerEase(plan, axis),
    ...intervalLonger(plan, made, dialS * factor),
    ...shorterRun(plan, made, eventDurationS / factor),
  ];
};

const keyframeOrder: WaysOut = (finding, plan, made) => {
  const axis = wordIn(finding, 'axis');
  const { intervalS } = made.columns;
  return [
    ...keyframesFitted(plan, axis, intervalS),
    ...keyframesDropped(plan, axis, intervalS),
    ...longerRun(plan, made, lastMeant(plan, axis, intervalS) * made.totals.intervalS),
  ];
};

const reversal: WaysOut = (_, plan) => betweenExposures(plan);

export const motionWays: SubjectWays<
  'keyframe-order' | 'travel' | 'speed' | 'acceleration' | 'stair-stepping' | 'reversal' | 'backlash-taken-up'
> = {
  'keyframe-order': keyframeOrder,
  travel,
  speed,
  acceleration,
  'stair-stepping': stairStepping,
  reversal,
  'backlash-taken-up': () => [],
};
