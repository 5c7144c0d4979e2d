/** What a change does to the figures of the strip. */
import { clockOf, dateOf } from '../format/clock.ts';
import { durationText } from '../format/durations.ts';
import { numberText } from '../format/numbers.ts';
import { FRAMES, type Free, figurePath, paceFigures } from '../store/pacing.ts';
import type { Worked } from '../store/schedules.ts';

/** One figure that changes. */
export interface ChangedFigure {
  /** Id of its input on the page. */
  id: string;
  was: string;
  now: string;
}

const FREE: readonly Free[] = ['event', 'interval', 'clip'];

function figuresOf({ plan, schedule }: Worked): [id: string, text: string][] {
  const pace = paceFigures(plan);
  return [
    ...FREE.map((figure): [string, string] => {
      const value = pace[figure];
      return [figurePath(figure), durationText(value, value < 10 ? 3 : 2)];
    }),
    [FRAMES, numberText(schedule.totals.frames)],
  ];
}

/** Figures of the strip that differ. */
export function changedFigures(before: Worked, after: Worked): ChangedFigure[] {
  const now = new Map(figuresOf(after));
  return figuresOf(before).flatMap(([id, was]) => {
    const text = now.get(id) ?? was;
    return text === was ? [] : [{ id, was, now: text }];
  });
}

/** Start and end on the clock, if they differ; with the date if that does. */
export function changedClock(before: Worked, after: Worked): { was: string; now: string } | null {
  const [a, b] = [before.schedule.totals, after.schedule.totals];
  if (a.firstFrameAt === b.firstFrameAt && a.lastFrameAt === b.lastFrameAt) return null;
  const otherDay = dateOf(a.firstFrameAt) !== dateOf(b.firstFrameAt);
  const text = ({ firstFrameAt: first, lastFrameAt: last }: typeof a) =>
    `${otherDay ? `${dateOf(first)} ` : ''}${clockOf(first)} to ${clockOf(last)}`;
  return { was: text(a), now: text(b) };
}
