/** The exposure of a run, frame by frame, and where the light is beyond what the settings can take. */
import type { Rung } from '../../engine/exposure/ladder.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import type { ExposureSummary, Schedule } from '../../engine/schedule-types.ts';
import { shortNumber } from '../format/numbers.ts';
import { type Stretch, xOfFrame } from './chart.ts';
import { textWidth } from './names.ts';
import type { RunView } from './runView.ts';
import { thin } from './thin.ts';

/** A run whose light is planned. */
export interface Exposed {
  exposure: ExposureSummary;
  rung: Uint16Array;
  evScene: Float32Array;
  evError: Float32Array;
  /** Settings of a frame, counted from 0. */
  rungAt(index: number): Rung;
  /** Exposure value that a frame should be given. */
  wantedAt(index: number): number;
}

/** The exposure of a run; null if its light is not planned. */
export function exposedRun({ exposure, columns: { rung, evScene, evError } }: Schedule): Exposed | null {
  if (exposure === null || rung === null || evScene === null || evError === null) return null;
  const rungAt = (index: number) => exposure.rungs[Number(rung[index])] as Rung;
  const wantedAt = (index: number) => rungAt(index).ev100 + Number(evError[index]);
  return { exposure, rung, evScene, evError, rungAt, wantedAt };
}

/** Stretches of frames whose light lies farther beyond an end of the ramp than the plan allows, to the pixel. */
export function outOfRange(view: RunView, { exposure, evError, wantedAt }: Exposed, plan: Plan): Stretch[] {
  const { toleranceStops } = plan.exposure.ramp;
  const brightest = exposure.rungs[0]?.ev100 ?? 0;
  const dimmest = exposure.rungs.at(-1)?.ev100 ?? 0;
  const found: { side: number; worst: number; first: number; last: number }[] = [];
  let sideBefore = 0;
  for (const index of thin(view.pixels, evError)) {
    const wanted = wantedAt(index);
    const off = wanted > brightest ? wanted - brightest : Math.min(0, wanted - dimmest);
    const side = Math.abs(off) > toleranceStops ? Math.sign(off) : 0;
    const stretch = found.at(-1);
    if (side !== 0 && side === sideBefore && stretch) {
      stretch.last = index;
      stretch.worst = Math.max(stretch.worst, Math.abs(off));
    } else if (side !== 0) found.push({ side, worst: Math.abs(off), first: index, last: index });
    sideBefore = side;
  }
  return found.map(({ side, worst, first, last }) => {
    const fromX = xOfFrame(view, first + 1);
    // A single frame is seen as well.
    const toX = Math.max(xOfFrame(view, last + 1), fromX + 2);
    const label = `up to ${shortNumber(worst)} stops too ${side > 0 ? 'bright' : 'dark'}`;
    return { fromX, toX, label: textWidth(label) + 16 < toX - fromX ? label : '' };
  });
}
