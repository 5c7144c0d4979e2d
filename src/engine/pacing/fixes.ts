/** Ways out of what the pacing says. */
import { withUnit } from '../findings/words.ts';
import { numberIn, stepsOf, switchWay, tidy } from '../fixes/build.ts';
import { fasterRun, intervalLonger, intervalShorter, longerRun, slowerRun } from '../fixes/common-ways.ts';
import type { SubjectWays, WaysOut } from '../fixes/types.ts';
import type { Plan } from '../plan/schema.ts';

/** Fewer extra frames at head and tail. @param wanted - handles that should just suffice */
export const fewerHandles = (plan: Plan, wanted?: number) =>
  stepsOf(plan, {
    kind: 'handles-fewer',
    path: 'clip.handlesFrames',
    by: -1,
    ...(wanted !== undefined && { wanted }),
    label: (frames) => `Handles to ${withUnit(frames, frames === 1 ? 'frame' : 'frames')}`,
    needs: 'less for the editor to hold on to',
  });

const noClip: WaysOut = (finding, plan, made) => {
  const { handlesFrames, holdFrames } = plan.clip;
  const { intervalS, dialS, frames } = made.totals;
  // One exposure more than those that the handles take.
  const others = Math.floor((2 * handlesFrames) / holdFrames);
  return [
    ...fewerHandles(plan, Math.ceil(numberIn(finding, 'clipFrames') / 2) - 1),
    ...longerRun(plan, made, others * intervalS),
    ...intervalShorter(plan, made, (dialS * (frames - 1)) / others),
  ];
};

/** A neighbour on the trigger, above or below: the event held, or the clip. */
const notSettable: WaysOut = (_, plan, made) => [
  ...intervalShorter(plan, made),
  ...intervalLonger(plan, made),
  ...slowerRun(plan, made),
  ...fasterRun(plan, made),
];

/** The interval typed as the trigger makes it. */
const stretched: WaysOut = (finding, plan) => {
  const intervalS = tidy(numberIn(finding, 'intervalS'));
  return switchWay(plan, [['pacing.intervalS', intervalS]], {
    kind: 'interval-as-made',
    label: () => `Write ${withUnit(intervalS, 's')} as the interval`,
  });
};

export const pacingWays: SubjectWays<'no-clip' | 'interval-not-settable' | 'interval-stretched'> = {
  'no-clip': noClip,
  'interval-not-settable': notSettable,
  'interval-stretched': stretched,
};
