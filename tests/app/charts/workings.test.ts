/** Every figure of the run's read-outs and of the charts' tables that names a working has it. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { AXES_TITLE } from '../../../src/app/charts/axesChart.ts';
import { cycleColumns } from '../../../src/app/charts/CyclePanel.tsx';
import { cellAfterKey } from '../../../src/app/charts/cellKeys.ts';
import { clipReading } from '../../../src/app/charts/cursor.ts';
import { cycleLayout } from '../../../src/app/charts/cycleLayout.ts';
import { cycleModel } from '../../../src/app/charts/cycleModel.ts';
import { runCharts } from '../../../src/app/charts/runCharts.ts';
import { runView } from '../../../src/app/charts/runView.ts';
import { skyBand } from '../../../src/app/charts/skyBand.ts';
import { calendarOf } from '../../../src/app/days/calendar.ts';
import { yearColumns } from '../../../src/app/days/YearTable.tsx';
import { standingReadings } from '../../../src/app/rig/pathReadings.ts';
import { ringingFacts } from '../../../src/app/rig/ringingFacts.ts';
import { drawnRig } from '../../../src/app/rig/standing.ts';
import { subjectFacts } from '../../../src/app/rig/subjectFacts.ts';
import { trackFacts } from '../../../src/app/tracks/trackFacts.ts';
import { balanceCautions } from '../../../src/engine/balance/cautions.ts';
import { parsePlan } from '../../../src/engine/plan/parse.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { yearOfDays } from '../../../src/engine/sky/year.ts';
import { workingOf } from '../../../src/engine/working/working.ts';
import { judgeWorking } from '../../engine/working/judge.ts';

const EXAMPLES = new URL('../../../public/examples/', import.meta.url);

function demo(name: string): Plan {
  const read = parsePlan(readFileSync(new URL(name, EXAMPLES), 'utf8'));
  if (!read.ok) throw new Error(`${name} is at fault`);
  return read.plan;
}

describe.each(readdirSync(EXAMPLES))('%s', (name) => {
  const plan = demo(name);
  const made = schedule(plan);
  const view = runView(made, 800);
  const frames = [0, 1, Math.floor(made.totals.frames / 2), made.totals.frames - 1];

  test.each(['position', 'speed', 'steps'] as const)('charts of the run, axes by %s', (quantity) => {
    const charts = runCharts(view, plan, skyBand(view), { quantity, held: null });
    const named = frames.flatMap((k) => [
      ...[...charts.flatMap((chart) => chart.read(k)), clipReading(made, plan, k)].map(({ of }) => of),
      ...charts.flatMap(({ table }) => table.map(({ of }) => of?.(k))),
    ]);
    const figures = new Set(named.filter((of) => typeof of === 'string'));
    expect(figures.size).toBeGreaterThan(20);
    for (const figure of figures) expect(workingOf(plan, made, figure), figure).not.toBe(null);
  });
});

/** A number as a table has it, and half of its last digit. */
function shown(cell: string): { value: number; halfDigit: number } {
  const [, decimals = ''] = cell.split('.');
  return { value: Number(cell.replace('\u2212', '-')), halfDigit: 0.5 * 10 ** -decimals.length };
}

test.each([
  ['trapezoidal', 'moveShootMove', null],
  ['trapezoidal', 'moveShootMove', 4],
  ['trapezoidal', 'moveShootMove', 0.2],
  ['jerkLimited', 'moveShootMove', null],
  ['jerkLimited', 'moveShootMove', 4],
  ['jerkLimited', 'moveShootMove', 0.2],
  ['trapezoidal', 'continuous', null],
] as const)(
  'axes on a %s profile, %s, %s s a move: what stands there is what it comes to',
  (profile, mode, moveS) => {
    const base = demo('harbour-at-dusk.json');
    const plan = { ...base, move: { ...base.move, profile, mode, moveS } };
    const made = schedule(plan);
    const view = runView(made, 800);
    for (const quantity of ['position', 'speed', 'steps'] as const) {
      const charts = runCharts(view, plan, null, { quantity, held: null });
      const columns = charts.filter(({ title }) => title === AXES_TITLE).flatMap(({ table }) => table);
      expect(columns).toHaveLength(2);
      for (const k of [0, 40, 200, 384])
        for (const { cell, of } of columns) {
          const { value, halfDigit } = shown(cell(k));
          const figure = of?.(k) ?? '';
          const off = Math.abs(judgeWorking(plan, made, figure).value - value);
          expect(off, figure).toBeLessThanOrEqual(halfDigit + 1e-9);
        }
    }
  },
);

test.each([
  ['harbour-at-dusk.json', {}],
  ['harbour-at-dusk.json', { exposure: { bracketCount: 3 }, move: { order: 'inTurn' } }],
  ['loaf-proving.json', {}],
] as const)('the cycle of %s with %o as a table', (name, changes) => {
  const base = demo(name);
  const plan = {
    ...base,
    exposure: { ...base.exposure, ...('exposure' in changes && changes.exposure) },
    move: { ...base.move, ...('move' in changes && changes.move) },
  };
  const made = schedule(plan);
  for (const k of [0, 100]) {
    const { columns, rows } = cycleColumns(cycleModel(made, plan, k));
    expect(rows.length).toBeGreaterThan(4);
    const figures = rows.flatMap((row) =>
      columns.map((column) => [column.of?.(row), column.cell(row)] as const),
    );
    expect(figures.filter(([of]) => of).length).toBe(3 * rows.length);
    for (const [of, cell] of figures)
      if (of) {
        // What stands there has three decimals.
        const off = Math.abs(judgeWorking(plan, made, of).value - Number(cell));
        expect(off, of).toBeLessThanOrEqual(0.0005 + 1e-9);
      }
  }
});

test.each(readdirSync(EXAMPLES))('the times of %s that found no room in its bars', (name) => {
  const plan = demo(name);
  const made = schedule(plan);
  const { legend } = cycleLayout(cycleModel(made, plan, 30), 324);
  const times = legend.flatMap((item) => item.times);
  expect(times.length).toBeGreaterThan(2);
  for (const { text, of } of times) {
    const { value, halfDigit } = shown(text);
    expect(Math.abs(judgeWorking(plan, made, of).value - value), of).toBeLessThanOrEqual(halfDigit + 1e-9);
  }
});

test('what drops when camera or weight comes off', () => {
  const plan = demo('harbour-at-dusk.json');
  const made = schedule(plan);
  const cautions = made.rig.balance ? balanceCautions(made.rig.balance) : [];
  const figures = cautions.flatMap(({ pieces = [] }) => pieces.filter((piece) => typeof piece !== 'string'));
  expect(figures.map(({ of }) => of)).toEqual(['balance.cameraOffNm', 'balance.weightOffNm']);
  for (const { text, of } of figures) {
    const { value, halfDigit } = shown(text.replace(/\D+$/, ''));
    const off = Math.abs(Math.abs(judgeWorking(plan, made, of).value) - value);
    expect(off, of).toBeLessThanOrEqual(halfDigit + 1e-9);
  }
});

test.each(readdirSync(EXAMPLES))('where the camera of %s stands and looks', (name) => {
  const plan = demo(name);
  const made = schedule(plan);
  const rig = drawnRig(plan, made.columns.axes, null);
  for (const k of [0, 30]) {
    const readings = standingReadings(rig.at(k));
    expect(readings.length).toBeGreaterThan(4);
    for (const { of = '', value, unit } of readings) {
      const { value: number, halfDigit } = shown(value);
      const metres = unit === 'm' ? 1000 : 1;
      const off = Math.abs(judgeWorking(plan, made, of).value - number * metres);
      expect(off, of).toBeLessThanOrEqual(halfDigit * metres + 1e-9);
    }
  }
});

test.each([false, true])('sentences about tracks, subject and ringing, quiet moves %s', (quiet) => {
  const base = demo('harbour-at-dusk.json');
  // There and back in large steps, with a subject beyond the travel of the pan.
  const axes = base.rig.axes.map((axis) =>
    axis.kind === 'pan'
      ? { ...axis, travelMin: -5, travelMax: 5 }
      : { ...axis, microsteps: 1, gearRatio: 0.1 },
  );
  const tracks = base.move.tracks.map((track) => ({ ...track, thereAndBack: true }));
  const plan: Plan = {
    ...base,
    rig: { ...base.rig, axes },
    ringing: { ...base.ringing, dampingRatio: 0.005 },
    move: { ...base.move, quiet, tracks },
    subject: { ...base.subject, aimed: true, rightMm: 65, forwardMm: 2000 },
  };
  const made = schedule(plan);
  const sentences = [
    ...made.columns.axes.flatMap(trackFacts),
    ...subjectFacts(plan, made.columns.axes, made.rig.aim),
    ...ringingFacts(plan, made.rig.ringing),
  ];
  const figures = sentences.flat().filter((piece) => typeof piece !== 'string');
  const names = figures.map(({ of }) => of.replace(/^axes\.\w+\./, 'axes.'));
  for (const name of ['axes.smallestMoveSteps', 'axes.repeats', 'axes.firstReversal', 'aim.missFrames'])
    expect(names).toContain(name);
  for (const name of ['aim.panToDeg', 'aim.worstFrame', 'ringing.worstFrame', 'ringing.shortestIntervalS'])
    expect(names).toContain(name);
  for (const { of, text } of figures) {
    const [, number = ''] = /^(?:frame )?([−0-9.]+)/.exec(text.replace('once', '1')) ?? [];
    const { value, halfDigit } = shown(number);
    const [times, up] = [/\dm$|\d\u00a0m$/.test(text) ? 1000 : 1, of.includes('shortest') ? 2 : 1];
    const off = Math.abs(judgeWorking(plan, made, of).value - value * times);
    expect(off, `${of}: ${text}`).toBeLessThanOrEqual(halfDigit * times * up + 1e-9);
  }
});

test('the table of a year: sunrises, sunsets, windows and what is to spare', () => {
  const plan = demo('harbour-at-dusk.json');
  const made = schedule(plan);
  const runS = made.totals.eventDurationS + (made.columns.exposureS.at(-1) ?? 0);
  const days = [...yearOfDays(plan, 2026, runS)];
  const columns = yearColumns({ calendar: calendarOf(plan.place, 2026), days, runS });
  const some = days.flatMap((_, index) => (index % 41 === 0 ? [index] : []));
  const figures = some.flatMap((index) =>
    columns.flatMap((column) => (column.figures?.(index) ?? []).map((figure) => ({ ...figure, index }))),
  );
  expect(figures.length).toBeGreaterThan(4 * some.length);
  for (const { of, text, index } of figures) {
    const working = workingOf(plan, made, of);
    expect(working, of).not.toBe(null);
    expect(of.startsWith(`days.${days[index]?.date}.`), of).toBe(true);
    if (/^\d\d:\d\d$/.test(text)) expect(working?.label, of).toContain(`T${text}`);
  }
});

test('keys take the chosen cell of a table', () => {
  const size = { rows: 12, columns: 3 };
  const after = (key: string, row: number, column: number) => cellAfterKey(key, { row, column }, size);
  expect(cellAfterKey('ArrowDown', null, size)).toEqual({ row: 0, column: 0 });
  expect(after('ArrowDown', 0, 1)).toEqual({ row: 1, column: 1 });
  expect(after('ArrowRight', 0, 2)).toEqual({ row: 0, column: 2 });
  expect(after('PageDown', 5, 0)).toEqual({ row: 11, column: 0 });
  expect(after('Home', 5, 2)).toEqual({ row: 0, column: 2 });
  expect(after('a', 5, 2)).toBe(null);
  expect(cellAfterKey('ArrowDown', null, { rows: 0, columns: 3 })).toBe(null);
});
