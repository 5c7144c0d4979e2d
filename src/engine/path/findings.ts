/** What the path says: does the aim hold, does the rig's motion blur the picture, does the frame go by too fast. */
import type { Margin } from '../findings/types.ts';
import { counted, seconds, withUnit } from '../findings/words.ts';
import type { Plan } from '../plan/schema.ts';
import type { Draft } from '../run.ts';
import type { AimSummary } from './aim.ts';
import type { ImageSummary } from './image-summary.ts';
import { poseAxis } from './pose.ts';

/** What is judged. */
export interface PathJudged {
  aim: AimSummary | null;
  image: ImageSummary | null;
}

function motionBlur({ subject }: Plan, { blur }: ImageSummary): Draft[] {
  if (blur === null || blur.firstOver === null) return [];
  const { px, of, frame, firstOver } = blur;
  return [
    {
      id: 'motion-blur',
      severity: 'warning',
      subject: 'move',
      message: `While the shutter is open the ${of} moves by up to ${withUnit(px, 'px')}; you allow ${withUnit(subject.blurMaxPx, 'px')}, from frame ${firstOver}.`,
      frame: firstOver,
      values: { blurPx: px, blurMaxPx: subject.blurMaxPx, of, worstFrame: frame },
    },
  ];
}

function panningFast({ subject }: Plan, { crossing, background }: ImageSummary): Draft[] {
  if (crossing === null || crossing.firstUnder === null) return [];
  const { shortestS, frame, firstUnder } = crossing;
  const { crossingMinS } = subject;
  return [
    {
      id: 'panning-fast',
      severity: 'warning',
      subject: 'move',
      message: `What stands still crosses the frame in ${seconds(shortestS)} on screen; you want at least ${seconds(crossingMinS)}, from frame ${firstUnder}.`,
      frame: firstUnder,
      values: {
        crossingS: shortestS,
        crossingMinS,
        backgroundPx: background.px,
        worstFrame: frame,
      },
    },
  ];
}

/** Why the aim does not hold: axes at the end of their travel, and those that there are not. */
function aimLimits(plan: Plan, { limits, lacks }: AimSummary): string {
  const ended = limits.map((kind) => {
    const name = plan.rig.axes[poseAxis(plan, kind)]?.name ?? kind;
    return `${name} is at the end of its travel`;
  });
  return [...ended, ...lacks.map((kind) => `there is no ${kind} axis`)].join(' and ');
}

function aimOutOfLimits(plan: Plan, aim: AimSummary): Draft[] {
  const { firstMissFrame, missFrames, worstDeg, worstPx, worstFrame } = aim;
  if (firstMissFrame === null || worstFrame === null) return [];
  const why = aimLimits(plan, aim);
  return [
    {
      id: 'aim-out-of-limits',
      severity: 'warning',
      subject: 'move',
      message: `The subject is up to ${withUnit(worstDeg, 'deg')} (${withUnit(worstPx, 'px')}) off the middle of the picture, in ${counted(missFrames, 'frame')} from frame ${firstMissFrame}: ${why}.`,
      frame: firstMissFrame,
      values: {
        worstDeg,
        worstPx,
        missFrames,
        worstFrame,
        limits: aim.limits.join(' '),
        lacks: aim.lacks.join(' '),
      },
    },
  ];
}

function marginsOf({ subject }: Plan, { blur, crossing }: ImageSummary): Margin[] {
  const margins: Margin[] = [];
  if (blur !== null)
    margins.push({
      id: 'blur',
      subject: 'move',
      label: 'Blur',
      used: blur.px,
      available: subject.blurMaxPx,
      unit: 'px',
      reserve: 0,
      left: subject.blurMaxPx - blur.px,
      frame: blur.frame,
      when: `largest at frame ${blur.frame}`,
    });
  if (crossing !== null)
    margins.push({
      id: 'crossing',
      subject: 'move',
      label: 'Crossing time',
      used: subject.crossingMinS,
      available: crossing.shortestS,
      unit: 's',
      reserve: 0,
      left: crossing.shortestS - subject.crossingMinS,
      frame: crossing.frame,
      when: `shortest at frame ${crossing.frame}`,
    });
  return margins;
}

/** What a run's aim and its motion of the image say. */
export function judgePath(
  { plan }: { plan: Plan },
  { aim, image }: PathJudged,
): { findings: Draft[]; margins: Margin[] } {
  const findings = [
    ...(aim ? aimOutOfLimits(plan, aim) : []),
    ...(image ? [...motionBlur(plan, image), ...panningFast(plan, image)] : []),
  ];
  return { findings, margins: image ? marginsOf(plan, image) : [] };
}
