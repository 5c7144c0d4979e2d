/** What a cycle says in words. */
import type { Plan } from '../../engine/plan/schema.ts';
import type { Schedule } from '../../engine/schedule-types.ts';
import { atLeastText } from '../format/durations.ts';
import { shutterText } from '../format/exposure.ts';
import { shortNumber, withUnit } from '../format/numbers.ts';
import { ALIKE_S, alikeAround, laneS, shortestCycle } from './cycleFrames.ts';
import type { Bar, CycleModel } from './cycleModel.ts';
import { framesText, secondsText } from './format.ts';

/** Which frames have this cycle, and its main times. */
export function sentence(schedule: Schedule, plan: Plan, index: number): string {
  const [first, last] = alikeAround(schedule, index);
  const moveS = Number(schedule.columns.moveS[index]);
  const times = [
    shutterWords(schedule, plan, first, last),
    ...(plan.move.mode === 'moveShootMove' && moveS > 0 ? [`move ${secondsText(moveS)}\u00A0s`] : []),
  ];
  return `${rank(schedule, index)}, ${framesText(first + 1, last + 1)}. ${times.join(', ')}.`;
}

function shutterWords(schedule: Schedule, { exposure }: Plan, first: number, last: number): string {
  const [shortest, longest] = shutterSpan(schedule, first, last) ?? [exposure.shutterS, exposure.shutterS];
  const one = shutterText(longest);
  const shutter = shortest === longest ? one : `${shutterText(shortest)} to ${one}`;
  return exposure.bracketCount > 1
    ? `${exposure.bracketCount} exposures around ${shutter}`
    : `Shutter ${shutter}`;
}

/** Shortest and longest shutter time of some frames, seconds as marked; null if the light is not planned. */
function shutterSpan({ exposure, columns }: Schedule, first: number, last: number): [number, number] | null {
  const before = columns.rung && exposure?.rungs[Number(columns.rung[first])];
  if (!before || !exposure) return null;
  const within = exposure.changes.filter(({ frame }) => frame - 1 > first && frame - 1 <= last);
  const times = [before.shutterS, ...within.map(({ to }) => to.shutterS)];
  return [Math.min(...times), Math.max(...times)];
}

function rank(schedule: Schedule, index: number): string {
  const own = laneS(schedule.columns, index);
  const isLongest = laneS(schedule.columns, schedule.totals.longestCycleFrame - 1) - own < ALIKE_S;
  const isShortest = own - laneS(schedule.columns, shortestCycle(schedule)) < ALIKE_S;
  if (isLongest && isShortest) return 'Every cycle alike';
  if (isLongest) return 'Longest cycle';
  return isShortest ? 'Shortest cycle' : 'Cycle';
}

/** What the interval has to be for this frame, or for all of them. */
export function needs({ totals }: Schedule, index: number, neededS: number): string {
  const most = totals.longestCycleFrame === index + 1 || totals.shortestIntervalS - neededS < 1e-9;
  return `${most ? 'Shortest possible interval' : 'This frame needs'} ${atLeastText(neededS)}`;
}

/** What is left of the interval, or missing. */
export function rest(overS: number, spareS: number, guardS: number): string {
  const say = (seconds: number) => withUnit(shortNumber(seconds), 's');
  if (overS > 0) return `${say(overS)} too short`;
  return spareS < 0 ? `${say(-spareS)} of the guard of ${say(guardS)} is used` : `${say(spareS)} spare`;
}

/** The cycle in words, for those who do not see it. */
export function cycleInWords(model: CycleModel): string {
  const list = (bars: readonly Bar[]) =>
    bars.map((bar) => `${bar.label.toLowerCase()} ${secondsText(bar.durationS)} s`).join(', ');
  const rig = model.rigWord?.toLowerCase() ?? list(model.rig);
  const interval = `Interval ${secondsText(model.intervalS)} s: ${model.rest}`;
  return `Cycle of frame ${model.frame}. Camera: ${list(model.camera)}. Rig: ${rig}. ${interval}.`;
}
