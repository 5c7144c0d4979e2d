/** Dials as a ramp turns them: each setting's marks in the order in which they are used as the light falls. */
import type { Plan, RampStep } from '../plan/schema.ts';
import {
  APERTURE_HALVES,
  APERTURE_THIRDS,
  ISO_HALVES,
  ISO_THIRDS,
  markSeconds,
  SAME_MARK_STOPS,
  SHUTTER_HALVES,
  SHUTTER_THIRDS,
  type Stop,
} from './stops.ts';

/** A mark as it is written and as a number, and the exact value behind it. */
export interface Mark {
  name: string;
  marked: number;
  exact: number;
}

/** One dial: its marks, each brighter than the one before, and how many of them one step takes. */
interface Dial {
  marks: readonly Mark[];
  stride: number;
}

const marksOf = (stops: readonly Stop[]): Mark[] =>
  stops.map(({ mark, exact }) => ({ name: mark, marked: markSeconds(mark), exact }));

/**
 * Shutter times beyond the longest mark, for a trigger that holds the shutter open: the reciprocals of the short
 * ones, 40, 50, 60 s and so on.
 */
const beyond = (marks: readonly Mark[]): Mark[] => {
  const longest = marks.at(-1)?.marked ?? 0;
  return marks
    .filter(({ name }) => name.startsWith('1/'))
    .map(({ name, exact }) => ({ name: name.slice(2), marked: Number(name.slice(2)), exact: 1 / exact }))
    .filter(({ marked }) => marked > longest)
    .reverse();
};

const turned = (stops: readonly Stop[]): Mark[] => marksOf(stops).reverse();

const THIRDS = {
  shutter: turned(SHUTTER_THIRDS),
  iso: marksOf(ISO_THIRDS),
  aperture: turned(APERTURE_THIRDS),
};

const HALVES = {
  shutter: turned(SHUTTER_HALVES),
  iso: marksOf(ISO_HALVES),
  aperture: turned(APERTURE_HALVES),
};

const HELD_OPEN = {
  third: [...THIRDS.shutter, ...beyond(THIRDS.shutter)],
  half: [...HALVES.shutter, ...beyond(HALVES.shutter)],
};

function dialOf(plan: Plan, { setting, step }: RampStep): Dial {
  const series = step === 'half' ? 'half' : 'third';
  const held = setting === 'shutter' && plan.exposure.timedBy === 'trigger';
  const marks = held ? HELD_OPEN[series] : (series === 'half' ? HALVES : THIRDS)[setting];
  return { marks, stride: step === 'full' ? 3 : 1 };
}

/** The marks of the dial that a step of a ramp turns, each brighter than the one before. */
export const dialMarks = (plan: Plan, step: RampStep): readonly Mark[] => dialOf(plan, step).marks;

/** Stops by which one value of a setting lets the picture be brighter than another; f-numbers the other way. */
export const brighterStops = (setting: RampStep['setting'], value: number, than: number): number =>
  setting === 'aperture' ? 2 * Math.log2(than / value) : Math.log2(value / than);

/** Index of the mark nearest to an exact value, by ratio. */
function nearest(marks: readonly Mark[], exact: number): number {
  const away = (mark: Mark) => Math.max(mark.exact / exact, exact / mark.exact);
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (const [i, mark] of marks.entries()) {
    if (away(mark) >= least) continue;
    least = away(mark);
    best = i;
  }
  return best;
}

/**
 * The marks that a step of a ramp goes through, from where the setting is to the last mark not beyond `to`: every
 * mark of the series, or every third one, counted from the mark nearest to where it is. The last one is reached
 * even if the step to it is smaller than the others.
 * @param allows - whether a mark may be used at all
 */
export function marksTo(plan: Plan, from: Mark, step: RampStep, allows: (mark: Mark) => boolean): Mark[] {
  const { marks, stride } = dialOf(plan, step);
  const within = (mark: Mark) =>
    brighterStops(step.setting, mark.marked, step.to) < SAME_MARK_STOPS && allows(mark);
  const last = marks.findLastIndex(within);
  const start = nearest(marks, from.exact);
  const passed = marks.filter((_, i) => i < last && i > start && (i - start) % stride === 0);
  const end = marks[last];
  // Told apart by mark and by value: a setting between two marks may count as either.
  const beyondBoth = (mark: Mark) =>
    Math.min(
      brighterStops(step.setting, mark.marked, from.marked),
      brighterStops(step.setting, mark.exact, from.exact),
    ) > SAME_MARK_STOPS;
  return end && beyondBoth(end) ? [...passed, end] : [];
}
