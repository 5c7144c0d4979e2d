/** How the figures of one day of work came about: its clock, its work, what it draws, the sun on the set. */
import { ofSource } from '../energy/drawn-working.ts';
import { drawOf } from '../energy/energy.ts';
import { sunMomentWorkings } from '../sky/sun-moment-working.ts';
import { siteOf } from '../sky/windows.ts';
import { laterDraft, minutesPart, momentDraft } from '../time/moment-working.ts';
import { DEFINITION, type Draft, PRACTICE, term, type Worked, type Workings } from '../working/make.ts';
import { ofWorkDay } from '../working/names.ts';
import type { Term } from '../working/types.ts';
import { knownSheet } from './known.ts';
import { pauseWorkings } from './pause-working.ts';
import { takesMin } from './texts.ts';
import type { DayEnergy, Sheet, SheetDay } from './types.ts';

/** A day of a sheet, counted from 0. */
interface One extends Worked {
  sheet: Sheet;
  d: number;
  day: SheetDay;
}

const titled = ({ day }: One, what: string): string => `${day.date}: ${what}`;

const begins = (of: One): Draft =>
  momentDraft(titled(of, 'work begins'), of.plan.place, of.day.fromMs, {
    remarks: ['With the working hours; on the first day not before the plan’s start, and not after a tick.'],
    source: PRACTICE,
  });

const ends = (of: One): Draft => ({
  ...laterDraft(
    titled(of, 'work ends'),
    of.plan.place,
    { ms: of.day.fromMs, figure: ofWorkDay(of.d, 'from'), words: 'work begins' },
    of.day.toMs,
    [minutesPart('workMin', 'work', of.day.workMin, ofWorkDay(of.d, 'workMin'))],
    'breaks, and time before them that is too short for an exposure',
  ),
  source: PRACTICE,
});

/** The exposures of the day that are left, and whether some of it is done. */
function onDay({ sheet, day }: One): { leftMin: number; left: number; done: boolean } {
  const { startMs, doneMs } = sheet.columns;
  let [leftMin, left, done] = [0, 0, false];
  for (let i = (day.firstExposure ?? 1) - 1; i < (day.lastExposure ?? 0); i += 1) {
    const ms = startMs[i] as number;
    if (ms < day.fromMs || ms > day.toMs) continue;
    if (Number.isNaN(doneMs[i])) {
      leftMin += takesMin(sheet, i);
      left += 1;
    } else done = true;
  }
  return { leftMin, left, done };
}

function work(of: One): Draft {
  const { leftMin, left, done } = onDay(of);
  return {
    title: titled(of, 'work'),
    value: of.day.workMin,
    unit: 'min',
    expression: 'exposuresMin + otherMin',
    terms: [
      term('exposuresMin', `${left} exposures to be done, as planned`, leftMin, 'min'),
      term(
        'otherMin',
        done ? 'set-ups, test frames, and what is done, as it went' : 'set-ups and test frames',
        of.day.workMin - leftMin,
        'min',
      ),
    ],
    remarks: ['Breaks left out.'],
    source: DEFINITION,
  };
}

/** Watts over the seconds in which they are drawn. */
const drawing = (name: string, words: string, watts: number, seconds: number): Term[] =>
  watts === 0 ? [] : [term(`${name}W`, `draw ${words}`, watts, 'W'), term(`${name}S`, words, seconds, 's')];

function energy(of: One, { source: name, wh }: DayEnergy): Draft {
  const source = of.plan.power.sources.find((each) => each.name === name);
  const { spent } = of.day;
  const title = titled(of, `energy from ${name}`);
  if (!source) return { title, value: wh, unit: 'Wh', expression: '0', terms: [], source: DEFINITION };
  const { periodW, exposureW, busyW, moveW, axesW } = drawOf(of.plan, source);
  const axes = of.plan.rig.axes.flatMap((axis, a) =>
    drawing(`axis${a + 1}`, `as ${axis.name} moves, on top`, axesW[a] ?? 0, spent.axisMoveS[a] ?? 0),
  );
  const terms = [
    ...drawing('present', 'from the beginning of work to its end', periodW, spent.presentS),
    ...drawing('exposing', 'while the shutter is open, on top', exposureW, spent.exposureS),
    ...drawing('writing', 'while the camera is busy, on top', busyW, spent.busyS),
    ...drawing('moving', 'while the rig moves, on top', moveW, spent.moveS),
    ...axes,
  ];
  const watts = terms.filter(({ unit }) => unit === 'W').map(({ symbol }) => symbol.slice(0, -1));
  return {
    title,
    value: wh,
    unit: 'Wh',
    expression:
      watts.length === 0 ? '0' : `(${watts.map((each) => `${each}W * ${each}S`).join(' + ')}) / 3600`,
    terms,
    remarks: ['Lamps and camera stay on over breaks.'],
    source: 'Energy is power by time; the watts are those of the plan.',
  };
}

function packs(of: One, { source: name, wh, packs: count }: DayEnergy): Draft {
  const usableWh = of.made.sources.find((each) => each.name === name)?.usableWh ?? Number.NaN;
  return {
    title: titled(of, `packs of ${name}`),
    value: count ?? 0,
    unit: 'packs',
    expression: 'max(1, ceil(wh / usableWh * (1 - 1e-9)))',
    terms: [
      term('wh', 'energy of the day', wh, 'Wh', ofWorkDay(of.d, ofSource(name, 'wh'))),
      term('usableWh', 'usable of a pack', usableWh, 'Wh', ofSource(name, 'usableWh')),
    ],
    remarks: ['A pack that is used up to its last digit is not overdrawn.'],
    source: PRACTICE,
  };
}

function sunWorkings(of: One): Workings {
  const site = siteOf(of.plan);
  const edge = (what: 'from' | 'to', n: number, ms: number, ofWork: number): Workings =>
    site === null
      ? {}
      : sunMomentWorkings(
          `sun.${n + 1}.${what}`,
          {
            place: of.plan.place,
            site,
            title: titled(of, `sun on the set ${n + 1}, ${what}`),
            ms,
            remarks: ms === ofWork ? [`It is there as work ${what === 'from' ? 'begins' : 'ends'}.`] : [],
          },
          (key) => ofWorkDay(of.d, key),
        );
  return Object.assign(
    {},
    ...of.day.sunSpans.flatMap(({ fromMs, toMs }, n) => [
      edge('from', n, fromMs, of.day.fromMs),
      edge('to', n, toMs, of.day.toMs),
    ]),
  );
}

/** Workings of one day of work, counted from 0; names without the `sheet.day.N.` before them. */
export function workDayWorkings({ plan, made }: Worked, d: number): Workings {
  const sheet = knownSheet(plan);
  const day = sheet?.days[d];
  if (!sheet || !day) return {};
  const of = { plan, made, sheet, d, day };
  return {
    from: () => begins(of),
    to: () => ends(of),
    workMin: () => work(of),
    ...pauseWorkings(plan, sheet, d),
    ...Object.assign(
      {},
      ...day.energyWh.map((each) => ({
        [ofSource(each.source, 'wh')]: () => energy(of, each),
        ...(each.packs !== null && { [ofSource(each.source, 'packs')]: () => packs(of, each) }),
      })),
    ),
    ...sunWorkings(of),
  };
}
