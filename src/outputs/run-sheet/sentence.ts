/** The plan in a sentence. */
import { counted, figure, seconds, withUnit } from '../../engine/findings/words.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import type { Schedule } from '../../engine/schedule-types.ts';
import type { Sheet } from '../../engine/sheet/types.ts';

/** `386 frames, one every 14 s over 1:29:50, make 15.44 s at 25 fps: 350 times faster than life.` */
export function planSentence(plan: Plan, { totals }: Schedule): string {
  const { frames, intervalS, eventDurationS, clipLengthS, frameRate, speedUp } = totals;
  const handles =
    plan.clip.handlesFrames > 0 ? `, with handles of ${counted(plan.clip.handlesFrames, 'frame')}` : '';
  const clip = `${withUnit(clipLengthS, 's')} at ${figure(frameRate)} fps${handles}`;
  return `${counted(frames, 'frame')}, one every ${withUnit(intervalS, 's')} over ${seconds(eventDurationS)}, make ${clip}: ${figure(speedUp)} times faster than life.`;
}

/** `96 exposures of 192 frames in 2 shots, 8.5 h of work over 2 days.` */
export function sheetSentence(plan: Plan, { exposures, frames, shots, totals }: Sheet): string {
  const passes = plan.sheet.passes.length > 1 ? `, each of ${plan.sheet.passes.length} passes` : '';
  const soFar =
    totals.done > 0 ? ` ${counted(totals.done, 'exposure')} in the camera, ${totals.left} to go.` : '';
  return `${counted(exposures, 'exposure')} for ${counted(frames, 'frame')} of the clip in ${counted(shots.length, 'shot')}${passes}: ${withUnit(totals.workMin / 60, 'h')} of work over ${counted(totals.days, 'day')}.${soFar}`;
}
