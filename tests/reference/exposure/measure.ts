/** Exposure values and stop series against APEX, published worked values and the tables of marked stops. */
import { apexAv, apexSv, apexTv, ev, ev100 } from '../../../src/engine/exposure/apex.ts';
import {
  APERTURE_HALVES,
  APERTURE_THIRDS,
  exactShutterS,
  ISO_HALVES,
  ISO_THIRDS,
  SHUTTER_HALVES,
  SHUTTER_THIRDS,
  type Stop,
} from '../../../src/engine/exposure/stops.ts';
import { type NumberCase, numberRow, type Row, relative, textRow } from '../rows.ts';
import { APERTURE_HALF_TABLE, APERTURE_TABLE, ISO_TABLE, SHUTTER_TABLE } from './tables.ts';

const RAY = 'EXP-01: EV = log2(N^2/t), Ray 2000 p. 318 as quoted in “Exposure value” (V2)';
const SUNNY = 'EXP-06: sunny-16 rule (from memory)';
const APEX = 'EXP-08: APEX, Exif 2.x Annex C (from memory)';
const MARKS = 'third-stop marks in common use (list from memory), exact values printed in tables (computed)';
const POWERS = 'series of powers of two (computed)';
const FORUM =
  'dpreview.com/forums/post/31437081: 15 s exposes 16 s, 30 s exposes 32 s (measured by a user, V2)';

const seconds = (text: string): number => {
  const [over, under = '1'] = text.split('/');
  return Number(over) / Number(under);
};

const exactOf = (series: readonly Stop[], mark: string): number =>
  series.find((stop) => stop.mark === mark)?.exact ?? Number.NaN;

/** Half a unit of the last printed digit, as a share of the value: 1/50.80 is good to 0.005 in 50.80. */
function printedTo(text: string): number {
  const digits = text.split('/').at(-1) ?? '';
  const places = digits.includes('.') ? digits.length - digits.indexOf('.') - 1 : 0;
  const exact = Number.isInteger(Math.log2(Number(digits)));
  return exact ? 1e-12 : (0.5 * 10 ** -places) / Number(digits);
}

/** Error in units of what the table's last digit allows. */
function* shutterTable(): Generator<NumberCase> {
  for (const [mark, exact] of SHUTTER_TABLE) {
    const off = Math.abs(exactOf(SHUTTER_THIRDS, mark) / seconds(exact) - 1);
    yield { at: mark, got: off / printedTo(exact), want: 0 };
  }
}

function* fromTable(
  series: readonly Stop[],
  table: readonly (readonly [string, number])[],
): Generator<NumberCase> {
  for (const [mark, want] of table) yield { at: mark, got: exactOf(series, mark), want };
}

/** Every mark of every series, in stops from the exact value behind it. */
function markingErrors(series: readonly Stop[], stopsOf: (ratio: number) => number): number[] {
  return series.map(({ mark, exact }) => Math.abs(stopsOf(seconds(mark) / exact)));
}

function* steps(series: readonly Stop[], ratio: number): Generator<NumberCase> {
  for (let i = 1; i < series.length; i += 1) {
    const [a, b] = [series[i - 1] as Stop, series[i] as Stop];
    yield { at: `${a.mark} to ${b.mark}`, got: b.exact / a.exact, want: ratio };
  }
}

const evCases: NumberCase[] = [
  { at: 'f/1, 1 s', got: ev(1, 1), want: 0 },
  { at: 'f/16, 1/125 as marked', got: ev(16, 1 / 125), want: 14.966 },
  { at: 'f/16, 1/128', got: ev(16, 1 / 128), want: 15 },
];

const apexCases: NumberCase[] = [
  { at: 'Av of f/8', got: apexAv(8), want: 6 },
  { at: 'Av of f/5.6 as marked', got: apexAv(5.6), want: 4.9709 },
  { at: 'Tv of 1/64', got: apexTv(1 / 64), want: 6 },
  { at: 'Tv of 1/60 as marked', got: apexTv(1 / 60), want: 5.9069 },
  { at: 'Sv of ISO 100', got: apexSv(100), want: 5 },
];

/** Ev = Av + Tv = Bv + Sv, and one stop of anything is one. */
function* identities(): Generator<NumberCase> {
  for (const n of [1, 2.8, 8, 22]) {
    for (const t of [30, 1, 1 / 60, 1 / 4000]) {
      for (const iso of [50, 100, 3200]) {
        const at = `f/${n}, ${t} s, ISO ${iso}`;
        yield { at: `${at}: Ev = Av + Tv`, got: apexAv(n) + apexTv(t), want: Math.log2((n * n) / t) };
        yield {
          at: `${at}: EV100`,
          got: ev100(n, t, iso),
          want: Math.log2((n * n) / t) - Math.log2(iso / 100),
        };
        yield { at: `${at}: half the time`, got: ev100(n, t / 2, iso) - ev100(n, t, iso), want: 1 };
        yield { at: `${at}: twice the speed`, got: ev100(n, t, 2 * iso) - ev100(n, t, iso), want: -1 };
      }
    }
  }
}

function* exactOfMarked(): Generator<NumberCase> {
  for (const [mark] of SHUTTER_TABLE) {
    yield { at: mark, got: exactShutterS(seconds(mark)), want: exactOf(SHUTTER_THIRDS, mark) };
  }
}

/** Times between marks, bulb times: no dial has them, so they stay. */
const UNMARKED = [0.0123, 0.07, 7, 17, 22, 45, 60, 90, 300, 7200];

export function measureExposure(): Row[] {
  const thirds = 2 ** (-1 / 3);
  return [
    numberRow(
      {
        quantity: 'exposure value',
        reference: RAY,
        regime: '3 published values, to 3 places',
        bound: 5e-4,
        unit: 'EV',
      },
      evCases,
    ),
    numberRow(
      {
        quantity: 'exposure value at ISO 100',
        reference: SUNNY,
        regime: 'f/16 at 1/ISO',
        bound: 5e-4,
        unit: 'EV',
      },
      [{ at: 'ISO 100', got: ev100(16, 1 / 100, 100), want: 14.644 }],
    ),
    numberRow(
      {
        quantity: 'APEX values',
        reference: APEX,
        regime: '5 values, to 4 places',
        bound: 5e-5,
        unit: 'stops',
      },
      apexCases,
    ),
    numberRow(
      {
        quantity: 'APEX identities',
        reference: APEX,
        regime: 'f/1-22, 30-1/4000 s, ISO 50-3200',
        bound: 1e-12,
        unit: 'stops',
      },
      identities(),
    ),
    textRow(
      { quantity: 'marks of the shutter dial', reference: MARKS, regime: 'third stops, 30 s to 1/8000' },
      [
        {
          at: 'list',
          got: SHUTTER_THIRDS.map((s) => s.mark).join(' '),
          want: SHUTTER_TABLE.map((s) => s[0]).join(' '),
        },
      ],
    ),
    textRow(
      { quantity: 'marks of the aperture ring', reference: MARKS, regime: 'third stops, f/1 to f/32' },
      [
        {
          at: 'list',
          got: APERTURE_THIRDS.map((s) => s.mark).join(' '),
          want: APERTURE_TABLE.map((s) => s[0]).join(' '),
        },
      ],
    ),
    numberRow(
      {
        quantity: 'exact shutter time of a mark',
        reference: MARKS,
        regime: 'third stops',
        bound: 1.01,
        unit: 'half last digits',
      },
      shutterTable(),
    ),
    numberRow(
      {
        quantity: 'exact f-number of a mark',
        reference: MARKS,
        regime: 'third stops, to 4 places',
        bound: 5.1e-5,
        unit: 'f/',
      },
      fromTable(APERTURE_THIRDS, APERTURE_TABLE),
    ),
    numberRow(
      {
        quantity: 'exact f-number of a mark',
        reference: MARKS,
        regime: 'half stops, to 4 places',
        bound: 5.1e-5,
        unit: 'f/',
      },
      fromTable(APERTURE_HALVES, APERTURE_HALF_TABLE),
    ),
    numberRow(
      {
        quantity: 'exact ISO of a mark',
        reference: MARKS,
        regime: 'third stops, to 5 digits',
        bound: 5e-5,
        unit: 'relative',
      },
      fromTable(ISO_THIRDS, ISO_TABLE),
      relative,
    ),
    numberRow(
      {
        quantity: 'largest marking error of the shutter dial',
        reference: MARKS,
        regime: 'third stops: 30, 15, 1/15, 1/30, 1/60',
        bound: 5e-4,
        unit: 'stops',
      },
      [
        { at: 'all marks', got: Math.max(...markingErrors(SHUTTER_THIRDS, Math.log2)), want: 0.093 },
        {
          at: 'how many have it',
          got: markingErrors(SHUTTER_THIRDS, Math.log2).filter((e) => e > 0.092).length,
          want: 5,
        },
      ],
    ),
    numberRow(
      {
        quantity: 'largest marking error of the aperture ring',
        reference: MARKS,
        regime: 'third and half stops, under a sixth of a stop',
        bound: 1 / 6,
        unit: 'stops',
      },
      [
        { at: 'thirds', got: Math.max(...markingErrors(APERTURE_THIRDS, (r) => 2 * Math.log2(r))), want: 0 },
        { at: 'halves', got: Math.max(...markingErrors(APERTURE_HALVES, (r) => 2 * Math.log2(r))), want: 0 },
      ],
    ),
    numberRow(
      {
        quantity: 'largest marking error of half-stop ISO speeds',
        reference: POWERS,
        regime: 'marks from memory, a twentieth of a stop and less',
        bound: 0.05,
        unit: 'stops',
      },
      [{ at: 'all marks', got: Math.max(...markingErrors(ISO_HALVES, Math.log2)), want: 0 }],
    ),
    numberRow(
      {
        quantity: 'largest marking error of the half-stop shutter dial',
        reference: POWERS,
        regime: 'a mark is nearer its value than half a step, but for 0.3',
        bound: 0.25,
        unit: 'stops',
      },
      [{ at: 'all marks', got: Math.max(...markingErrors(SHUTTER_HALVES, Math.log2)), want: 0 }],
    ),
    numberRow(
      {
        quantity: 'ratio of neighbouring stops',
        reference: POWERS,
        regime: 'all six series',
        bound: 1e-12,
        unit: 'relative',
      },
      [
        ...steps(SHUTTER_THIRDS, thirds),
        ...steps(SHUTTER_HALVES, 2 ** -0.5),
        ...steps(APERTURE_THIRDS, 2 ** (1 / 6)),
        ...steps(APERTURE_HALVES, 2 ** 0.25),
        ...steps(ISO_THIRDS, 2 ** (1 / 3)),
        ...steps(ISO_HALVES, Math.SQRT2),
      ],
      relative,
    ),
    numberRow(
      {
        quantity: 'what a marked shutter time exposes',
        reference: FORUM,
        regime: '15 s and 30 s',
        bound: 0,
        unit: 's',
      },
      [
        { at: '15', got: exactShutterS(15), want: 16 },
        { at: '30', got: exactShutterS(30), want: 32 },
      ],
    ),
    numberRow(
      {
        quantity: 'what a marked shutter time exposes',
        reference: MARKS,
        regime: 'every mark typed as a number',
        bound: 0,
        unit: 's',
      },
      exactOfMarked(),
    ),
    numberRow(
      {
        quantity: 'what a time that is no mark exposes',
        reference: 'definition: no dial, no rounding',
        regime: 'between marks, and longer than any',
        bound: 0,
        unit: 's',
      },
      UNMARKED.map((s) => ({ at: `${s} s`, got: exactShutterS(s), want: s })),
    ),
  ];
}
