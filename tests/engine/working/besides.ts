/**
 * Figures of the sheet and of the sky by the names of their workings: what each working has to come to. Clock times are
 * read from the instants by the platform's own calendar.
 */

import { motorWays } from '../../../src/engine/motion/take-up.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import type { Schedule } from '../../../src/engine/schedule-types.ts';
import { keyOfSheetFinding } from '../../../src/engine/sheet/finding-figures.ts';
import { sheetOf } from '../../../src/engine/sheet/sheet.ts';
import type { Sheet, SheetFindingId, SheetShot } from '../../../src/engine/sheet/types.ts';
import { moonEvents } from '../../../src/engine/sky/day.ts';
import { siteOf } from '../../../src/engine/sky/windows.ts';
import { dayOfYear, yearOfDays } from '../../../src/engine/sky/year.ts';
import { numberOf, ofFinding } from '../../../src/engine/working/said.ts';
import {
  fastest,
  gone,
  lasting,
  type SlowLimits,
  slowLimits,
  topSpeed,
  within,
} from '../../property/slow/profile.ts';

export type Entry = [name: string, value: number];

const formats = new Map<string, Intl.DateTimeFormat>();

/** Seconds since local midnight, by the platform's calendar. */
export function clockS({ zone, utcOffsetMin }: Plan['place'], ms: number): number {
  if (utcOffsetMin !== null) return (((ms / 1000 + utcOffsetMin * 60) % 86_400) + 86_400) % 86_400;
  const format =
    formats.get(zone) ??
    new Intl.DateTimeFormat('en-GB', {
      timeZone: zone,
      hourCycle: 'h23',
      hour: '2-digit',
      minute: '2-digit',
    });
  formats.set(zone, format);
  const [hours = 0, minutes = 0] = format.format(ms).split(':').map(Number);
  return hours * 3600 + minutes * 60 + ((((ms / 1000) % 60) + 60) % 60);
}

const sum = (values: Iterable<number>): number => [...values].reduce((all, value) => all + value, 0);

/** Figures of the exposure sheet. */
export function sheetFigures(plan: Plan): Entry[] {
  if (plan.technique !== 'stopMotion') return [];
  const sheet = sheetOf(plan);
  const { totals, columns, days } = sheet;
  const at = (ms: number) => clockS(plan.place, ms);
  const [num = 24, den = 1] = plan.clip.frameRate.split('/').map(Number);
  const last = sheet.exposures - 1;
  return [
    ['sheet.screenS', (sheet.frames * den) / num],
    ['sheet.frames', sum(columns.frames)],
    ['sheet.exposures', columns.frames.length],
    ['sheet.eachMin', sheet.exposures === 0 ? 0 : totals.workMin / sheet.exposures],
    ['sheet.workMin', totals.workMin],
    ['sheet.days', new Set(days.map(({ date }) => date)).size],
    ['sheet.energyWh', sum(days.flatMap(({ energyWh }) => energyWh.map(({ wh }) => wh)))],
    ['sheet.storageBytes', totals.storageBytes],
    ['sheet.copiesBytes', totals.copiesBytes],
    ['sheet.done', columns.doneMs.filter((ms) => !Number.isNaN(ms)).length],
    ['sheet.left', columns.doneMs.filter(Number.isNaN).length],
    ['sheet.finishAt', at(totals.finishMs)],
    ['sheet.finishAtPace', at(totals.finishAtPaceMs)],
    ['sheet.pace.factor', totals.pace.factor],
    ['sheet.pace.realMin', totals.pace.realMin],
    ['sheet.pace.plannedMin', totals.pace.plannedMin],
    ['sheet.pace.behindMin', Math.abs(totals.pace.realMin - totals.pace.plannedMin)],
    ...days.flatMap((day, d): Entry[] => [
      [`sheet.day.${d + 1}.from`, at(day.fromMs)],
      [`sheet.day.${d + 1}.to`, at(day.toMs)],
      [`sheet.day.${d + 1}.workMin`, day.workMin],
      ...breakFigures(plan, day.date, `sheet.day.${d + 1}.break`),
      ...day.sunSpans.flatMap(({ fromMs, toMs }, n): Entry[] => [
        [`sheet.day.${d + 1}.sun.${n + 1}.from`, at(fromMs)],
        [`sheet.day.${d + 1}.sun.${n + 1}.to`, at(toMs)],
      ]),
      ...(days[d + 1]
        ? [[`sheet.day.${d + 1}.nightS`, ((days[d + 1]?.fromMs ?? 0) - day.toMs) / 1000] as Entry]
        : []),
      ...day.energyWh.flatMap(({ source, wh, packs }): Entry[] => [
        [`sheet.day.${d + 1}.sources.${source}.wh`, wh],
        ...(packs === null ? [] : [[`sheet.day.${d + 1}.sources.${source}.packs`, packs] as Entry]),
      ]),
    ]),
    ...[0, Math.floor(last / 2), last]
      .filter((i) => i >= 0 && i <= last)
      .flatMap((i) => exposureFigures(plan, i, at)),
    ...sheet.shots.flatMap((shot, s): Entry[] => shotFigures(plan, shot, s)),
    ...sheet.actions.map(
      ({ firstExposure, exposures }, a): Entry => [
        `sheet.action.${a + 1}.done`,
        ticked(columns, firstExposure, exposures),
      ],
    ),
    ...sheet.actions.map(({ exposures }, a): Entry => [`sheet.action.${a + 1}.exposures`, exposures]),
    ...sheet.actions.map(({ frames }, a): Entry => [`sheet.action.${a + 1}.frames`, frames]),
    ...sheetFindingFigures(totals),
  ];
}

/** What each finding of a sheet alone states, by the name of the judge's number. */
const OF_SHEET_FINDINGS: Partial<Record<SheetFindingId, string>> = {
  'exposure-too-long': 'longestS',
  'ticks-ignored': 'ticks',
  'sun-on-set': 'days',
  'card-full': 'usableBytes',
};

/** Figures that the findings of a sheet alone state, as they were judged. */
const sheetFindingFigures = ({ findings }: Sheet['totals']): Entry[] =>
  findings.flatMap((finding): Entry[] => {
    const { id, exposure } = finding;
    const what = OF_SHEET_FINDINGS[id];
    const name = (figure: string) => `sheet.findings.${keyOfSheetFinding(finding)}.${figure}`;
    const others =
      id === 'last-short'
        ? numberOf(finding, 'actions')
        : id === 'source-short'
          ? numberOf(finding, 'days')
          : undefined;
    const first = ['exposure-too-long', 'calendar-too-long', 'sun-on-set'].includes(id) ? exposure : null;
    return [
      ...(what === undefined ? [] : [[name(what), numberOf(finding, what)] as Entry]),
      ...(others === undefined ? [] : [[name('more'), others - 1] as Entry]),
      ...(first === null ? [] : [[name('firstExposure'), first] as Entry]),
    ];
  });

/** The breaks of a date, as typed; on one when the clocks change nothing is said of them. */
function breakFigures({ sheet, place }: Plan, date: string, name: string): Entry[] {
  const noonS = clockS(place, Date.parse(`${date}T00:00:00Z`) - 36 * 3_600_000);
  if (noonS !== clockS(place, Date.parse(`${date}T00:00:00Z`) + 60 * 3_600_000)) return [];
  const seconds = (clock: string) => Date.parse(`1970-01-01T${clock}:00Z`) / 1000;
  return sheet.breaks.flatMap(({ from, to }, b): Entry[] => [
    [`${name}.${b + 1}.from`, seconds(from)],
    [`${name}.${b + 1}.to`, seconds(to)],
    [`${name}.${b + 1}.lengthS`, seconds(to) - seconds(from)],
  ]);
}

const ticked = ({ doneMs }: Sheet['columns'], first: number, count: number): number =>
  [...doneMs].filter((ms, i) => i + 1 >= first && i + 1 < first + count && !Number.isNaN(ms)).length;

function shotFigures(
  plan: Plan,
  { firstExposure, exposures, frames, setUpMin }: SheetShot,
  s: number,
): Entry[] {
  const { columns } = sheetOf(plan);
  const own = [...columns.frames].filter((_, i) => columns.shot[i] === s);
  const name = (what: string) => `sheet.shot.${s + 1}.${what}`;
  return [
    [name('exposures'), own.length],
    [name('frames'), own.length === 0 ? frames : sum(own)],
    [name('setUpMin'), setUpMin],
    [name('done'), ticked(columns, firstExposure, exposures)],
  ];
}

function exposureFigures(plan: Plan, i: number, at: (ms: number) => number): Entry[] {
  const { columns } = sheetOf(plan);
  const name = (what: string) => `sheet.exposure.${i + 1}.${what}`;
  const column = (values: ArrayLike<number>) => values[i] as number;
  return [
    [name('clock'), at(column(columns.startMs))],
    [name('takesMin'), column(columns.minutes) + column(columns.rigS) / 60],
    [name('handsOnMin'), column(columns.minutes)],
    [name('handsOffS'), column(columns.rigS)],
    [name('holdFrames'), column(columns.frames)],
    [name('passes'), column(columns.passes).toString(2).replaceAll('0', '').length],
    [name('lastFrame'), column(columns.firstFrame) + column(columns.frames) - 1],
    ...columns.axes.map(
      ({ name: axis, steps, stepsPerUnit }): Entry => [
        name(`axes.${axis}.position`),
        column(steps) / stepsPerUnit,
      ],
    ),
  ];
}

/** Minutes from UTC by the platform's own calendar; null where its text says otherwise. */
function platformOffsetMin({ zone, utcOffsetMin }: Plan['place'], ms: number): number | null {
  if (utcOffsetMin !== null) return utcOffsetMin;
  const format = new Intl.DateTimeFormat('en', { timeZone: zone, timeZoneName: 'longOffset' });
  const text = format.formatToParts(ms).find(({ type }) => type === 'timeZoneName')?.value ?? '';
  const [all, sign, hours = '0', minutes = '0'] = /^GMT(?:([+-])(\d\d):(\d\d))?$/.exec(text) ?? [];
  if (all === undefined) return null;
  return (sign === '-' ? -1 : 1) * (Number(hours) * 60 + Number(minutes));
}

/** The offsets of the clock over a run. */
export const offsetFigures = (plan: Plan, { offsets }: Schedule): Entry[] =>
  offsets.flatMap(({ fromMs }, i) => {
    const offsetMin = platformOffsetMin(plan.place, fromMs);
    return offsetMin === null ? [] : [[`offsets.${i + 1}.offsetMin`, offsetMin]];
  });

/** What lamps leave in one exposure, and between two: the mean of a sine over a box, at twice the mains' frequency. */
function rippleFigures(
  { lamps, exposure }: Plan,
  openS: number | undefined,
  name: (what: string) => string,
): Entry[] {
  const mainsHz = Number(lamps.mainsHz);
  if (!Number.isFinite(mainsHz) || openS === undefined || exposure.bracketCount > 1) return [];
  const turns = 2 * Math.PI * mainsHz * openS;
  const left = lamps.depthShare * Math.abs(Math.sin(turns) / turns);
  return [
    [name('rippleLeftShare'), left],
    [name('rippleShare'), 2 * left],
  ];
}

/** Numbers of findings that their workings come to, as the judges have them. */
const OF_FINDINGS = [
  'shortS',
  'needsS',
  'longestS',
  'exposureS',
  'angleDeg',
  'fewer',
  'keepDialS',
  'allLostFrames',
  'late',
  'beyond',
  'needed',
  'shiftPx',
  'meanMove',
  'takeUps',
  'takeUpS',
  'longestMm',
  'moreKg',
  'usableBytes',
  'swaps',
  'frames',
  'nearestDeg',
  'times',
  'worstPx',
  'worstS',
  'reachedS',
] as const;

/** Figures that findings alone state: worked out by their judges. */
export const findingFigures = ({ findings }: Schedule): Entry[] =>
  findings.flatMap((finding): Entry[] => {
    const { values } = finding;
    return OF_FINDINGS.flatMap((what): Entry[] => {
      const value = values[what];
      const name = ofFinding(finding, what);
      return typeof value === 'number' ? [[name, Math.abs(value)]] : [];
    });
  });

/** Figures of a frame, counted from 1, beside those that the schedule has as they are. */
export function frameFigures(plan: Plan, made: Schedule, frame: number): Entry[] {
  const { columns, exposure, startMs, sources } = made;
  const k = frame - 1;
  const name = (what: string) => `frame.${frame}.${what}`;
  const rung = exposure?.rungs[columns.rung?.[k] ?? 0];
  const [num = 24, den = 1] = plan.clip.frameRate.split('/').map(Number);
  const at = ({ steps, stepsPerUnit }: (typeof columns.axes)[number], n: number) =>
    (steps[n] as number) / stepsPerUnit;
  const inSight = (n: number) => n >= 0 && n < columns.elapsedS.length;
  const swaps = sources.flatMap(({ swapFrames }) => swapFrames).filter((swap) => swap > frame);
  const wholeMs = Math.round((columns.elapsedS[k] as number) * 1000);
  const restS = (columns.elapsedS[k] as number) - wholeMs / 1000;
  return [
    [name('clock'), clockS(plan.place, startMs + wholeMs) + restS],
    [name('clipS'), ((k * plan.clip.holdFrames - plan.clip.handlesFrames) * den) / num],
    ...(rung
      ? ([
          [name('apertureF'), rung.apertureF],
          [name('iso'), rung.iso],
        ] as Entry[])
      : []),
    ...rippleFigures(plan, rung?.openS, name),
    ...(swaps.length > 0 ? [[name('toSwap'), Math.min(...swaps) - frame] as Entry] : []),
    ...columns.axes.flatMap((axis): Entry[] => [
      ...(inSight(k - 1) ? [[name(`axes.${axis.name}.by`), at(axis, k) - at(axis, k - 1)] as Entry] : []),
      ...(inSight(k + 1)
        ? ([
            [name(`axes.${axis.name}.moveSteps`), (axis.steps[k + 1] as number) - (axis.steps[k] as number)],
            [name(`axes.${axis.name}.moveBy`), at(axis, k + 1) - at(axis, k)],
          ] as Entry[])
        : []),
    ]),
  ];
}

/** Highest speed of a move, by its stretches and halving. @param durationS - null: as fast as can be */
function peakBySlow(distance: number, durationS: number | null, limits: SlowLimits): number {
  const soonestS = lasting(fastest(distance, limits));
  // Of all moves only the fastest is as short: there a search by time would have half of the digits.
  if (durationS === null || Math.abs(durationS - soonestS) < 1e-9 * soonestS)
    return topSpeed(distance, limits);
  const speeds = within(distance, durationS, limits).map((_, n, all) => gone(all.slice(0, n + 1)).speed);
  return Math.max(...speeds);
}

/** Speeds of the axes after a frame, counted from 1: they have seven digits where a root was searched for. */
export function speedFigures(plan: Plan, { columns }: Schedule, frame: number): Entry[] {
  const k = frame - 1;
  return columns.axes.flatMap((own): Entry[] => {
    const axis = plan.rig.axes.find(({ name }) => name === own.name);
    const moved = (own.steps[frame] ?? Number.NaN) - (own.steps[k] as number);
    if (!axis || Number.isNaN(moved)) return [];
    const name = `frame.${frame}.axes.${own.name}.speed`;
    if (moved === 0 || plan.move.mode !== 'moveShootMove')
      return [[name, moved / own.stepsPerUnit / (columns.intervalS[k] as number)]];
    const way = motorWays(axis, own)[k] as number;
    const asFast = plan.move.moveS === null && axis.arrive !== 'eitherWay';
    const durationS = asFast ? null : (plan.move.moveS ?? (own.moveS[k] as number));
    return [[name, Math.sign(moved) * peakBySlow(way, durationS, slowLimits(plan, axis))]];
  });
}

/** Figures of the sky on a date. */
export function skyFigures(plan: Plan, made: Schedule, date: string): Entry[] {
  const site = siteOf(plan);
  const runS = made.totals.eventDurationS + (made.columns.exposureS.at(-1) ?? 0);
  const day = site && dayOfYear(plan, date, runS);
  if (!site || !day || day.endMs <= day.startMs) return [];
  const at = (ms: number) => clockS(plan.place, ms);
  const events = [...day.events, ...moonEvents(day, site.latitudeDeg, site.longitudeDeg)];
  const seen = new Set<string>();
  const named = events.flatMap(({ name, ms }): Entry[] => {
    if (ms === null) return [];
    const what = seen.has(name) ? `${name}.second` : name;
    seen.add(name);
    return [[`days.${date}.${what}`, at(ms)]];
  });
  const windows = plan.window.used ? day.windows : [];
  return [
    ...named,
    [`days.${date}.moonLitShare`, day.moonLitShare],
    ...windows.flatMap(({ fromMs, toMs }, w): Entry[] => [
      [`days.${date}.window.${w + 1}.countsS`, (toMs - fromMs) / 1000],
      [`days.${date}.window.${w + 1}.spareS`, (toMs - fromMs) / 1000 - runS],
    ]),
  ];
}

/** How many days of the plan's year there are of a kind. */
export function yearFigures(plan: Plan, made: Schedule): Entry[] {
  if (!plan.window.used || siteOf(plan) === null) return [];
  const year = Number(plan.start.date.slice(0, 4));
  const runS = made.totals.eventDurationS + (made.columns.exposureS.at(-1) ?? 0);
  const verdicts = [...yearOfDays(plan, year, runS)]
    .filter(({ startMs, endMs }) => endMs > startMs)
    .map(({ verdict }) => verdict);
  const count = (wanted: string) => verdicts.filter((verdict) => verdict === wanted).length;
  return [
    [`days.${year}.fits`, count('fits')],
    [`days.${year}.tooShort`, count('too short')],
    [`days.${year}.brightMoon`, count('moon')],
    [`days.${year}.noWindow`, count('no window')],
  ];
}
