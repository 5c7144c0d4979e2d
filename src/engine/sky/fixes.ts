/** Ways out of what the sky says: another start, another day, a shorter run, a pane that is blacked out. */
import { rampIsoForShutter } from '../exposure/ramp-ways.ts';
import { shorterByIso, thirdsBetween } from '../exposure/setting-ways.ts';
import { openShutterS } from '../exposure/shutter.ts';
import type { Finding } from '../findings/types.ts';
import { numberIn, switchWay, wordIn } from '../fixes/build.ts';
import { fasterRun, shorterRun } from '../fixes/common-ways.ts';
import { dayEarlier, dayLater, MOST_MINUTES, startEarlier, startLater } from '../fixes/start-ways.ts';
import type { SubjectWays, Way, WaysOut } from '../fixes/types.ts';
import type { Plan } from '../plan/schema.ts';
import { startFor } from '../schedule.ts';
import type { Schedule } from '../schedule-types.ts';
import { nextDate } from '../time/day.ts';
import { skyStart } from './start.ts';
import { setHitSpans } from './windows.ts';
import { dayOfYear } from './year.ts';

const MINUTE_MS = 60_000;

/**
 * Days that are looked at for a first guess: every one of a week, then every tenth of half a year; farther on, the other
 * way round the year is shorter.
 */
const LOOKED_AT = [1, 2, 3, 4, 5, 6, 7, ...Array.from({ length: 18 }, (_, i) => 10 * (i + 1) + 7)];

/** First of the days looked at, that something holds for; then it is looked for between it and the one before. */
function firstDay(holds: (days: number) => boolean): number | null {
  const at = LOOKED_AT.findIndex(holds);
  if (at === -1) return null;
  let high = LOOKED_AT[at] as number;
  let low = LOOKED_AT[at - 1] ?? 0;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** The same run on a later and on an earlier day of those that something holds for. */
function otherDays(plan: Plan, holds: (on: Plan) => boolean): Way[] {
  const on = (days: number): Plan => ({
    ...plan,
    start: { ...plan.start, date: nextDate(plan.start.date, days) },
  });
  const later = firstDay((days) => holds(on(days)));
  const earlier = firstDay((days) => holds(on(-days)));
  return [
    ...(later === null ? [] : dayLater(plan, later)),
    ...(earlier === null ? [] : dayEarlier(plan, earlier)),
  ];
}

const noStartEvent: WaysOut = (finding, plan) => [
  ...switchWay(plan, [['start.tiedTo', 'clock']], {
    kind: 'start-by-clock',
    label: () => `Start by the clock, at ${plan.start.time.replace(/^(\d\d:\d\d):00$/, '$1')}`,
  }),
  ...(wordIn(finding, 'why') === 'no place' ? [] : otherDays(plan, (on) => 'ms' in skyStart(on))),
];

/** Whether the run fits into a window of a plan's day; and as it is planned. */
function fitsOn(plan: Plan, runS: number, asPlanned: boolean): boolean {
  const best = dayOfYear(plan, plan.start.date, runS)?.best ?? null;
  if (best === null || !asPlanned) return best !== null;
  const { startMs } = startFor(plan);
  return startMs >= best.earliestMs && startMs <= best.latestMs;
}

const noWindow: WaysOut = (finding, plan, made) => {
  if (wordIn(finding, 'why') === 'no place') return [];
  const [longestS, runS] = [numberIn(finding, 'longestS'), numberIn(finding, 'runS')];
  const shorter =
    longestS === 0
      ? []
      : [
          ...shorterRun(plan, made, longestS),
          ...fasterRun(plan, made, (made.totals.dialS * longestS) / runS),
        ];
  return [...shorter, ...otherDays(plan, (on) => fitsOn(on, runS, false))];
};

/** Minutes from the planned start to the nearest one later, or earlier, that keeps the run within a window. */
function minutesToWindow({ sky, startMs, columns }: Schedule, side: 1 | -1): number | null {
  const runMs = (columns.elapsedS.at(-1) ?? 0) * 1000;
  const away = (sky?.windows ?? [])
    .filter(({ fromMs, toMs }) => toMs - fromMs >= runMs)
    .map(({ fromMs, toMs }) => (side === 1 ? fromMs - startMs : startMs - (toMs - runMs)))
    .filter((ms) => ms > 0);
  const minutes = Math.min(...away) / MINUTE_MS;
  return minutes <= MOST_MINUTES ? minutes : null;
}

const outsideWindow: WaysOut = (finding, plan, made) => {
  const later = minutesToWindow(made, 1);
  const earlier = minutesToWindow(made, -1);
  const runS = made.columns.elapsedS.at(-1) ?? 0;
  const endsOutside = (finding.frame ?? 1) > 1;
  return [
    ...(earlier === null ? [] : startEarlier(plan, earlier)),
    ...(later === null ? [] : startLater(plan, later)),
    ...(endsOutside ? shorterRun(plan, made, (finding.elapsedS ?? 0) - made.totals.intervalS) : []),
    // Another day takes long to find, and nobody wants it where another time of the same day will do.
    ...(earlier === null && later === null ? otherDays(plan, (on) => fitsOn(on, runS, true)) : []),
  ];
};

/**
 * Another start, so that a stretch of time that the run should keep clear of lies before or after it.
 * @param fromS - seconds from the first shutter opening to where the stretch begins
 * @param toS - to where it ends
 */
function clearOf(plan: Plan, made: Schedule, fromS: number, toS: number): Way[] {
  const runS = made.columns.elapsedS.at(-1) ?? 0;
  return [
    ...startLater(plan, toS / 60),
    ...startEarlier(plan, (runS - fromS) / 60),
    ...(fromS > 0 ? shorterRun(plan, made, fromS - made.totals.intervalS) : []),
  ];
}

/** Seconds to the opening of a frame, counted from 1. */
const elapsedAt = ({ columns }: Schedule, frame: number): number => columns.elapsedS[frame - 1] ?? 0;

const sunInFrame: WaysOut = (_, plan, made) => {
  const stretches = made.sky?.inFrame ?? [];
  const last = stretches.at(-1)?.lastFrame ?? 1;
  const fromS = elapsedAt(made, stretches[0]?.firstFrame ?? 1);
  return [
    ...clearOf(plan, made, fromS, elapsedAt(made, last) + made.totals.intervalS),
    ...dayLater(plan, 30),
    ...dayEarlier(plan, 30),
  ];
};

const blackedOut = (plan: Plan): Way[] =>
  switchWay(plan, [['pane.used', false]], {
    kind: 'pane-blacked-out',
    label: () => 'Black out the pane',
    needs: 'the pane covered before the sun gets there',
  });

/** Farther than this no start is looked for. */
const HALF_DAY_MS = 12 * 60 * MINUTE_MS;

const sunOnSet: WaysOut = (finding, plan, made) => {
  const { startMs, columns } = made;
  const endMs = startMs + (columns.elapsedS.at(-1) ?? 0) * 1000;
  // Said is what of it lies within the run; the sun may be there before and after.
  const hits = setHitSpans(plan, startMs - HALF_DAY_MS, endMs + HALF_DAY_MS);
  const [fromMs, toMs] = [numberIn(finding, 'fromMs'), numberIn(finding, 'toMs')];
  const whole = hits.find((hit) => hit.fromMs < toMs && hit.toMs > fromMs) ?? { fromMs, toMs };
  const seconds = (ms: number) => (ms - startMs) / 1000;
  return [...blackedOut(plan), ...clearOf(plan, made, seconds(whole.fromMs), seconds(whole.toMs))];
};

/** The first settings trail already, or only what the ramp comes to. */
const trailsFromTheStart = (plan: Plan, finding: Finding): boolean =>
  !plan.exposure.ramp.used || openShutterS(plan) > 0.9 * numberIn(finding, 'worstS');

const starTrails: WaysOut = (finding, plan) => {
  const thirds = thirdsBetween(numberIn(finding, 'worstPx'), numberIn(finding, 'allowedPx'));
  return [
    ...(trailsFromTheStart(plan, finding) ? shorterByIso(plan, thirds) : []),
    ...(plan.exposure.ramp.used ? rampIsoForShutter(plan, thirds) : []),
  ];
};

export const skyWays: SubjectWays<
  'no-start-event' | 'no-window' | 'outside-window' | 'sun-in-frame' | 'sun-on-set' | 'star-trails'
> = {
  'no-start-event': noStartEvent,
  'no-window': noWindow,
  'outside-window': outsideWindow,
  'sun-in-frame': sunInFrame,
  'sun-on-set': sunOnSet,
  'star-trails': starTrails,
};
