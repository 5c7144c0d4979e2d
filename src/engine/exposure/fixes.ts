/** Ways out of what exposure, ramp and lamps say. */
import { longerIntervals } from '../cycle/fixes.ts';
import type { Finding } from '../findings/types.ts';
import { numberIn, stepsOf, wordIn } from '../fixes/build.ts';
import { intervalLonger, shorterRun, slowerRun } from '../fixes/common-ways.ts';
import { startEarlier, startLater } from '../fixes/start-ways.ts';
import type { SubjectWays, Way, WaysOut } from '../fixes/types.ts';
import { flickerFreeShutters } from '../light/lamps.ts';
import { quietMoves, settleByRinging } from '../motion/move-ways.ts';
import type { Plan } from '../plan/schema.ts';
import { freeAfter } from '../run.ts';
import type { Schedule } from '../schedule-types.ts';
import { noDarkFrames, timedByTrigger } from './camera-ways.ts';
import { darkerNight, moreTolerance, otherFilter } from './light-ways.ts';
import { rampByCamera, rampLargerSteps, rampOn, rampTidied } from './ramp-step-ways.ts';
import { rampFurther, rampFurtherAll, rampIsoForShutter, rampShutterLess } from './ramp-ways.ts';
import {
  dialAlone,
  shorterByAperture,
  shorterByIso,
  shuttersWithIso,
  thirdsBetween,
} from './setting-ways.ts';
import { openAtMarkS, openShutterS } from './shutter.ts';

/** By the mark it would fit: then it is worth doing something about. */
const markedExact: WaysOut = ({ severity }, plan) =>
  severity === 'note' ? [] : [...timedByTrigger(plan), ...shorterByIso(plan, 3)];

/** Whether the scene gets darker over the run. */
const falls = ({ columns: { evScene } }: Schedule): boolean =>
  evScene !== null && (evScene[0] ?? 0) > (evScene.at(-1) ?? 0);

/**
 * Another start, away from the end of the run that has the wrong light, and a run that ends before it.
 * @param side - 1 for too bright
 */
function otherTimes(finding: Finding, plan: Plan, made: Schedule, side: 1 | -1): Way[] {
  if (plan.light.kind !== 'sky') return [];
  const { elapsedS } = made.columns;
  const endS = elapsedS.at(-1) ?? 0;
  const firstS = finding.elapsedS ?? 0;
  // Light that gets worse as it goes: earlier, by as long as the last frames are out of range.
  const worsens = falls(made) === (side === -1);
  if (worsens) return [...startEarlier(plan, (endS - firstS) / 60), ...shorterRun(plan, made, firstS)];
  const outS = (elapsedS[numberIn(finding, 'frames')] ?? endS) - (elapsedS[0] ?? 0);
  return startLater(plan, outS / 60);
}

const tooDark = (plan: Plan, made: Schedule, stops: number): Way[] => {
  const thirds = Math.ceil(3 * stops - 1e-6);
  const settings = plan.exposure.ramp.used
    ? [
        ...rampFurther(plan, 'iso', thirds),
        ...rampFurther(plan, 'shutter', thirds),
        ...rampFurther(plan, 'aperture', thirds),
        ...rampFurtherAll(plan, made.exposure?.ceiling.ceilingS ?? 0, thirds),
        ...shorterByAperture(plan, thirds),
      ]
    : [
        ...rampOn(plan),
        ...dialAlone(plan, 'shutter', 1, thirds),
        ...dialAlone(plan, 'iso', 1, thirds),
        ...dialAlone(plan, 'aperture', 1, thirds),
      ];
  return [...settings, ...otherFilter(plan, -1, Math.ceil(stops)), ...darkerNight(plan, stops)];
};

const tooBright = (plan: Plan, stops: number): Way[] => {
  const thirds = Math.ceil(3 * stops - 1e-6);
  return [
    ...(plan.exposure.ramp.used ? [] : rampOn(plan)),
    ...dialAlone(plan, 'shutter', -1, thirds),
    ...dialAlone(plan, 'iso', -1, thirds),
    ...otherFilter(plan, 1, Math.ceil(stops - 1e-6)),
    ...dialAlone(plan, 'aperture', -1, thirds),
  ];
};

const outOfRange: WaysOut = (finding, plan, made) => {
  const worst = numberIn(finding, 'worstStops');
  const stops = worst - plan.exposure.ramp.toleranceStops;
  const bright = wordIn(finding, 'side') === 'too bright';
  return [
    ...(bright ? tooBright(plan, stops) : tooDark(plan, made, stops)),
    ...otherTimes(finding, plan, made, bright ? 1 : -1),
    ...moreTolerance(plan, worst),
  ];
};

const beyondCycle: WaysOut = (finding, plan, made) => {
  const index = numberIn(finding, 'step') - 1;
  const [wantedS, reachedS, ceilingS] = ['wantedS', 'reachedS', 'ceilingS'].map((name) =>
    numberIn(finding, name),
  );
  const [wanted, reached, ceiling] = [wantedS ?? 0, reachedS ?? 0, ceilingS ?? 0];
  const thirds = thirdsBetween(wanted, reached);
  if (wordIn(finding, 'binds') === 'angle')
    return [
      ...widerAngle(plan, ((plan.exposure.shutterAngleMaxDeg ?? 0) * openAtMarkS(plan, wanted)) / ceiling),
      ...rampIsoForShutter(plan, thirds, index),
      ...rampShutterLess(plan, index, reached),
    ];
  return [
    ...rampIsoForShutter(plan, thirds, index),
    ...noDarkFrames(plan),
    ...settleByRinging(plan),
    ...quietMoves(plan),
    ...longerIntervals(plan, made, openAtMarkS(plan, wanted) - ceiling, made.totals.longestCycleFrame),
    ...rampShutterLess(plan, index, reached),
  ];
};

const stepIdle: WaysOut = (_, plan, { findings }) =>
  rampTidied(
    plan,
    findings
      .filter(({ id }) => id === 'ramp-step-idle')
      .map((finding) => ({
        step: numberIn(finding, 'step'),
        reached: numberIn(finding, 'reached'),
        onDial: wordIn(finding, 'why') === 'dial',
      })),
  );

/** Seconds missing for work just before a frame. */
export const handsShortS = (made: Schedule, frame: number | null, handsS: number): number =>
  handsS - freeAfter(made, (frame ?? 2) - 1);

const changeByHand: WaysOut = (finding, plan, made) => {
  const shortS = handsShortS(made, finding.frame, numberIn(finding, 'changeS'));
  return [
    ...rampByCamera(plan),
    ...rampLargerSteps(plan),
    ...longerIntervals(plan, made, shortS, (finding.frame ?? 2) - 1),
  ];
};

/** A wider shutter angle, in steps of ten degrees. */
const widerAngle = (plan: Plan, wantedDeg: number): Way[] =>
  stepsOf(plan, {
    kind: 'shutter-angle',
    path: 'exposure.shutterAngleMaxDeg',
    by: 10,
    wanted: wantedDeg,
    label: (angleDeg) => `Shutter angle up to ${angleDeg}°`,
    needs: 'more blur of motion',
  });

const blurShare: WaysOut = (finding, plan, made) => {
  const share = numberIn(finding, 'angleDeg') / numberIn(finding, 'allowedDeg');
  const thirds = thirdsBetween(share, 1);
  const extraS = openShutterS(plan) * (share - 1);
  const dialS = made.totals.dialS;
  const wanted = plan.trigger.counts === 'endToStart' ? dialS + extraS : dialS * share;
  return [
    ...shorterByIso(plan, thirds),
    ...shorterByAperture(plan, thirds),
    ...intervalLonger(plan, made, wanted),
    ...slowerRun(plan, made, wanted),
    ...widerAngle(plan, numberIn(finding, 'angleDeg')),
  ];
};

const ripple: WaysOut = (_, plan) =>
  shuttersWithIso(
    plan,
    'shutter-for-lamps',
    flickerFreeShutters(plan).map(({ shutterS }) => shutterS),
  );

export const exposureWays: SubjectWays<
  | 'shutter-marked-exact'
  | 'light-out-of-range'
  | 'shutter-beyond-cycle'
  | 'ramp-step-idle'
  | 'change-does-not-fit'
  | 'interval-grows'
  | 'blur-share'
  | 'ripple'
> = {
  'shutter-marked-exact': markedExact,
  'light-out-of-range': outOfRange,
  'shutter-beyond-cycle': beyondCycle,
  'ramp-step-idle': stepIdle,
  'change-does-not-fit': changeByHand,
  'interval-grows': () => [],
  'blur-share': blurShare,
  ripple,
};
