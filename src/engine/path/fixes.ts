/** Ways out of what the path says: blur, a picture that goes by too fast, an aim that does not hold. */
import { rampIsoForShutter } from '../exposure/ramp-ways.ts';
import { shorterByAperture, shorterByIso, thirdsBetween } from '../exposure/setting-ways.ts';
import { numberIn } from '../fixes/build.ts';
import { intervalShorter, longerRun, slowerRun } from '../fixes/common-ways.ts';
import type { SubjectWays, WaysOut } from '../fixes/types.ts';
import { evenerEase } from '../motion/keyframe-ways.ts';
import { betweenExposures } from '../motion/move-ways.ts';
import { smallerTrack, smallerTracks } from '../motion/track-ways.ts';
import { poseAxis } from './pose.ts';

const motionBlur: WaysOut = (finding, plan, made) => {
  const factor = numberIn(finding, 'blurPx') / numberIn(finding, 'blurMaxPx');
  const thirds = thirdsBetween(factor, 1);
  const { dialS, eventDurationS } = made.totals;
  return [
    ...shorterByIso(plan, thirds),
    ...shorterByAperture(plan, thirds),
    ...(plan.exposure.ramp.used ? rampIsoForShutter(plan, thirds) : []),
    ...betweenExposures(plan),
    ...slowerRun(plan, made, dialS * factor),
    ...longerRun(plan, made, eventDurationS * factor),
    ...smallerTracks(plan, 1 / factor),
  ];
};

const panningFast: WaysOut = (finding, plan, made) => {
  const factor = numberIn(finding, 'crossingMinS') / numberIn(finding, 'crossingS');
  const { dialS, eventDurationS } = made.totals;
  const pan = plan.rig.axes[poseAxis(plan, 'pan')]?.name;
  const ofPan = pan === undefined ? [] : smallerTrack(plan, pan, 1 / factor);
  return [
    ...(pan === undefined ? [] : evenerEase(plan, pan)),
    ...intervalShorter(plan, made, dialS / factor),
    ...longerRun(plan, made, eventDurationS * factor),
    ...(ofPan.length > 0 ? ofPan : smallerTracks(plan, 1 / factor)),
  ];
};

const aimOutOfLimits: WaysOut = (_, plan) => smallerTracks(plan);

export const pathWays: SubjectWays<'motion-blur' | 'panning-fast' | 'aim-out-of-limits'> = {
  'motion-blur': motionBlur,
  'panning-fast': panningFast,
  'aim-out-of-limits': aimOutOfLimits,
};
