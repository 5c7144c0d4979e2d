/** What the motion of the image comes to: how far it blurs, and how long things take to cross the frame on screen. */
import type { Plan } from '../plan/schema.ts';
import type { ImageMotion, Largest } from './image.ts';

/** The motion of the image over a run. Frames count from 1. */
export interface ImageSummary {
  /** Largest motion from a frame to the next, px. */
  subject: Largest;
  background: Largest;
  /** Frames whose picture does not show the subject. */
  outOfSightFrames: number;
  /** While the shutter is open; null unless the rig moves all the time. */
  blur: Blur | null;
  /** A still thing across the whole width of the frame; null if the background never moves. */
  crossing: Crossing | null;
}

/** The largest blur, of whichever of the two has it. */
export interface Blur extends Largest {
  of: 'subject' | 'background';
  /** First frame with more than the plan allows. */
  firstOver: number | null;
}

/** The shortest crossing. */
export interface Crossing {
  /** Seconds on screen. */
  shortestS: number;
  frame: number;
  /** First frame with less than the plan asks for. */
  firstUnder: number | null;
}

/** The times of a run that blur and crossing go by. */
export interface ImageTimes {
  exposureS: Float64Array;
  intervalS: Float64Array;
  /** Frames a second of the clip. */
  frameRate: number;
}

/** What the motion of the image comes to. */
export function imageSummaryOf(plan: Plan, motion: ImageMotion, times: ImageTimes): ImageSummary {
  const { subject, background, outOfSightFrames } = motion;
  return {
    subject,
    background,
    outOfSightFrames,
    blur: plan.move.mode === 'continuous' ? blurOf(plan, motion, times) : null,
    crossing: background.px > 0 ? crossingOf(plan, motion, times) : null,
  };
}

/** Blur of a frame: its motion to the next, for the share of the interval that the shutter is open. */
function blurOf(
  plan: Plan,
  { subjectPx, backgroundPx }: ImageMotion,
  { exposureS, intervalS }: ImageTimes,
): Blur {
  const { blurMaxPx } = plan.subject;
  const blur: Blur = { px: 0, frame: 1, of: 'subject', firstOver: null };
  for (let k = 0; k < subjectPx.length; k += 1) {
    const ofSubject = subjectPx[k] as number;
    const ofBackground = backgroundPx[k] as number;
    const openShare = (exposureS[k] as number) / (intervalS[k] as number);
    const px = Math.max(ofSubject, ofBackground) * openShare;
    if (px > blurMaxPx) blur.firstOver ??= k + 1;
    if (px <= blur.px) continue;
    blur.px = px;
    blur.frame = k + 1;
    blur.of = ofSubject >= ofBackground ? 'subject' : 'background';
  }
  return blur;
}

/** A still thing goes by at the speed of the background, one motion for each exposure of the clip. */
function crossingOf(
  { camera, clip, subject }: Plan,
  { background, backgroundPx }: ImageMotion,
  { frameRate }: ImageTimes,
): Crossing {
  const widthPxS = (camera.imageWidthPx * clip.holdFrames) / frameRate;
  const shortestS = widthPxS / background.px;
  const mostPx = widthPxS / subject.crossingMinS;
  const firstUnder =
    shortestS < subject.crossingMinS ? backgroundPx.findIndex((px) => px > mostPx) + 1 : null;
  return { shortestS, frame: background.frame, firstUnder };
}
