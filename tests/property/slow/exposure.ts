/** Exposures of one frame, one after another, in plain words. */
import type { Plan } from '../../../src/engine/plan/schema.ts';

/** Marks on half-stop dials that no third-stop dial has, seconds. */
const HALF_MARKS = [3, 1.5, 0.7, 1 / 45, 1 / 90, 1 / 180, 1 / 350, 1 / 750, 1 / 1500, 1 / 3000, 1 / 6000];

/**
 * Exact time of a marked one: the nearest whole third of a stop from a second, or half of one.
 * @param marked - whether the number is a mark at all; other times are kept as they are
 */
export function exactSeconds(shutterS: number, marked: boolean): number {
  if (!marked) return shutterS;
  const stops = Math.log2(shutterS);
  const half = HALF_MARKS.some((mark) => Math.abs(mark / shutterS - 1) < 1e-6);
  return half ? 2 ** (Math.round(stops * 2) / 2) : 2 ** (Math.round(stops * 3) / 3);
}

export interface Shot {
  lagS: number;
  openS: number;
  darkS: number;
  writeS: number;
}

/** The shots of one frame: a bracket around the shutter time, each with lag, dark frame and write. */
export function shotsOf(plan: Plan, marked: boolean): Shot[] {
  const { exposure, camera } = plan;
  let middleS = exposure.shutterS;
  if (exposure.timedBy === 'camera') {
    if (camera.exactStops) middleS = exactSeconds(middleS, marked);
    middleS *= camera.shutterCorrection;
  }
  const shots: Shot[] = [];
  for (let i = 0; i < exposure.bracketCount; i += 1) {
    const openS = middleS * 2 ** (exposure.bracketStops * (i - (exposure.bracketCount - 1) / 2));
    // It goes by what the dial says, whatever the shutter makes of that.
    const saidS = exposure.timedBy === 'camera' ? openS / camera.shutterCorrection : openS;
    const darkS = camera.noiseReduction && saidS >= camera.noiseReductionFromS ? openS : 0;
    shots.push({ lagS: camera.shutterLagS, openS, darkS, writeS: camera.writeS });
  }
  return shots;
}
