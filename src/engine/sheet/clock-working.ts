/** How the end of a sheet's work came about, as planned and at the pace so far, and that pace. */
import { laterDraft, minutesPart, momentDraft } from '../time/moment-working.ts';
import {
  DEFINITION,
  type Draft,
  PRACTICE,
  sameAs,
  term,
  type Worked,
  type Workings,
} from '../working/make.ts';
import { ofWorkDay } from '../working/names.ts';
import { lastDayAtPace } from './sheet.ts';
import type { Sheet, SheetDay } from './types.ts';

interface Of {
  plan: Worked['plan'];
  sheet: Sheet;
}

const REST = 'breaks, and time before them that is too short for an exposure';

/** The end of a day of work, from its beginning. */
const dayEnd = (title: string, { plan }: Of, day: SheetDay, d: number | null): Draft => ({
  ...laterDraft(
    title,
    plan.place,
    {
      ms: day.fromMs,
      figure: d === null ? null : ofWorkDay(d, 'from'),
      words: 'work of the last day begins',
    },
    day.toMs,
    [minutesPart('workMin', 'its work', day.workMin, d === null ? null : ofWorkDay(d, 'workMin'))],
    REST,
  ),
  source: PRACTICE,
});

function finish(of: Of): Draft {
  const { plan, sheet } = of;
  const { finishMs } = sheet.totals;
  const title = 'Finish as planned';
  const last = sheet.days.at(-1);
  if (last && last.toMs === finishMs) return dayEnd(title, of, last, sheet.days.length - 1);
  return momentDraft(title, plan.place, finishMs, {
    remarks: ['The last tick, or where the calendar ends that the work is followed on.'],
  });
}

function finishAtPace(of: Of): Draft {
  const { plan, sheet } = of;
  const { finishAtPaceMs, pace } = sheet.totals;
  const title = 'Finish at your pace';
  const remarks = [`What is left takes ${pace.factor} times as long as planned, within working hours.`];
  const last = lastDayAtPace(plan, pace.factor);
  const draft =
    last && Math.abs(last.toMs - finishAtPaceMs) < 1
      ? dayEnd(title, of, { ...last, toMs: finishAtPaceMs }, null)
      : momentDraft(title, plan.place, finishAtPaceMs);
  return { ...draft, remarks: [...(draft.remarks ?? []), ...remarks] };
}

const factor = ({ sheet }: Of): Draft => {
  const { plannedMin, realMin, factor: value } = sheet.totals.pace;
  const counts = plannedMin > 0 && realMin > 0;
  return {
    title: 'Pace so far',
    value,
    unit: '',
    expression: counts ? 'realMin / plannedMin' : '1',
    terms: counts
      ? [
          term('realMin', 'what it took', realMin, 'min', 'sheet.pace.realMin'),
          term('plannedMin', 'what was planned for it', plannedMin, 'min', 'sheet.pace.plannedMin'),
        ]
      : [],
    remarks: counts
      ? ['From the first tick to the last: 1 is as planned, 2 takes twice as long.']
      : ['From the second tick on.'],
    source: PRACTICE,
  };
};

/** When the first and the last exposure were ticked; null if none is. */
function ticksOf({ sheet }: Of): { firstMs: number; lastMs: number } | null {
  const ticked = sheet.columns.doneMs.filter((ms) => !Number.isNaN(ms));
  if (ticked.length === 0) return null;
  return ticked.reduce(
    ({ firstMs, lastMs }, ms) => ({ firstMs: Math.min(firstMs, ms), lastMs: Math.max(lastMs, ms) }),
    { firstMs: Number.POSITIVE_INFINITY, lastMs: Number.NEGATIVE_INFINITY },
  );
}

function real(of: Of): Draft {
  const { realMin } = of.sheet.totals.pace;
  const ticks = ticksOf(of);
  const spanMin = ticks ? (ticks.lastMs - ticks.firstMs) / 60_000 : 0;
  return {
    title: 'Work between the ticks',
    value: realMin,
    unit: 'min',
    expression: 'spanMin - offMin',
    terms: [
      term('spanMin', 'from the first tick to the last', spanMin, 'min'),
      term('offMin', 'breaks, nights and days off between', spanMin - realMin, 'min'),
    ],
    source: PRACTICE,
  };
}

const behind = ({ sheet }: Of): Draft => {
  const { plannedMin, realMin } = sheet.totals.pace;
  return {
    title: realMin >= plannedMin ? 'Behind the plan' : 'Ahead of the plan',
    unit: 'min',
    expression: realMin >= plannedMin ? 'realMin - plannedMin' : 'plannedMin - realMin',
    terms: [
      term('realMin', 'what it took', realMin, 'min', 'sheet.pace.realMin'),
      term('plannedMin', 'what was planned for it', plannedMin, 'min', 'sheet.pace.plannedMin'),
    ],
    source: DEFINITION,
  };
};

/** Workings of the clock of a sheet. */
export const sheetClockWorkings = (of: Of): Workings => ({
  'sheet.finishAt': () => finish(of),
  'sheet.finishAtPace': () => finishAtPace(of),
  'sheet.pace.factor': () => factor(of),
  'sheet.pace.realMin': () => real(of),
  'sheet.pace.plannedMin': () =>
    sameAs(
      'Planned for what was ticked',
      'planned, from the first tick to the last',
      of.sheet.totals.pace.plannedMin,
      'min',
      null,
      {
        remarks: [
          'Of every exposure that was ticked after the first, with its retakes, and the set-up of each shot begun since.',
        ],
      },
    ),
  'sheet.pace.behindMin': () => behind(of),
});
