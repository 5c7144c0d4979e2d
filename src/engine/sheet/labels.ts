/** Timecode over a production: one label after another from its first. */
import type { Plan } from '../plan/schema.ts';
import { frameOfTimecode, hasDropFrame, labelsPerSecond, timecodes } from '../time/timecode.ts';

/** Whether the production's timecode is drop-frame: asked for, and the rate has it. */
export const dropsFrames = ({ sheet, clip }: Plan): boolean =>
  sheet.dropFrame && hasDropFrame(clip.frameRate);

/**
 * Frame, counted from 0, that the first timecode names. Its last sign may be either of both, and its frames may have
 * two digits where labels have three: which it is, the rate says.
 * @throws RangeError if no such label exists at the rate
 */
export function startFrameOf(plan: Plan): number {
  const { frameRate } = plan.clip;
  const [, clock = '', frames = ''] = /^(.*)[:;](\d+)$/.exec(plan.sheet.startTimecode) ?? [];
  const digits = labelsPerSecond(frameRate) > 100 ? 3 : 2;
  return frameOfTimecode(
    `${clock}${dropsFrames(plan) ? ';' : ':'}${frames.padStart(digits, '0')}`,
    frameRate,
  );
}

/**
 * Timecodes of a production.
 * @returns label of a frame counted from 1; after 24 hours they begin anew
 * @throws RangeError if the first timecode does not exist at the rate
 */
export function labeller(plan: Plan): (frame: number) => string {
  const first = startFrameOf(plan);
  const labels = timecodes(plan.clip.frameRate, dropsFrames(plan));
  return (frame) => labels(first + frame - 1);
}
