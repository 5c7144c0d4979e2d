import { describe, expect, test } from 'vitest';
import type { Plan } from '../../src/engine/plan/schema.ts';
import { schedule } from '../../src/engine/schedule.ts';
import { framesCsv } from '../../src/outputs/frames-csv.ts';
import { planOf } from './plans.ts';

/** A second reader of RFC 4180, which knows nothing of the writer. */
function recordsOf(csv: string): string[][] {
  const records: string[][] = [];
  let record: string[] = [];
  const cell = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/gy;
  let at = 0;
  for (let found = cell.exec(csv); found; found = cell.exec(csv)) {
    at = cell.lastIndex;
    record.push(found[1]?.replaceAll('""', '"') ?? found[2] ?? '');
    if (found[3] === '\r\n') {
      records.push(record);
      record = [];
    }
  }
  expect(at, 'the reader stops where the text ends').toBe(csv.length);
  return records;
}

const tableOf = (plan: Plan): string[][] => recordsOf([...framesCsv(plan, schedule(plan))].join(''));

const slide = {
  name: 'Slide',
  unit: 'mm',
  fullStepsPerTurn: 200,
  microsteps: 16,
  gearRatio: 1,
  unitsPerTurn: 40,
  travelMax: 1000,
};
const twoAxes = planOf({
  pacing: { workedOut: 'event', intervalS: 10, clipLengthS: 0.2 },
  start: { date: '2026-03-01', time: '06:00:00' },
  rig: {
    axes: [slide, { ...slide, name: 'Pan', kind: 'pan', unit: 'deg', unitsPerTurn: 360, travelMin: -90 }],
  },
  move: {
    mode: 'moveShootMove',
    tracks: [
      {
        axis: 'Slide',
        keyframes: [
          { share: 0, position: 0, ease: { kind: 'linear' } },
          { share: 1, position: 100 },
        ],
      },
    ],
  },
});

describe('the table of frames', () => {
  const [headings = [], ...rows] = tableOf(twoAxes);
  const column = (name: string): string[] => rows.map((row) => row[headings.indexOf(name)] ?? 'missing');

  test('begins with frame, clock, elapsed and the axes, then the rest', () => {
    expect(headings.slice(0, 7)).toEqual([
      'frame',
      'clock',
      'elapsedS',
      'Slide.steps',
      'Slide.mm',
      'Pan.steps',
      'Pan.deg',
    ]);
    expect(headings.slice(7)).toEqual([
      'intervalS',
      'exposureS',
      'cameraS',
      'moveS',
      'settleS',
      'rigS',
      'spareS',
      'Camera pack.leftWh',
      'card',
      'cardBytes',
      'bufferBytes',
      'event',
    ]);
  });

  test('has one row a frame, each as long as the headings', () => {
    expect(column('frame')).toEqual(['1', '2', '3', '4', '5']);
    for (const row of rows) expect(row).toHaveLength(headings.length);
  });

  // 100 mm in 4 moves; 200 x 16 steps for 40 mm are 80 steps a millimetre.
  test('has positions in whole steps and in the unit of the axis', () => {
    expect(column('Slide.steps')).toEqual(['0', '2000', '4000', '6000', '8000']);
    expect(column('Slide.mm')).toEqual(['0', '25', '50', '75', '100']);
    expect(column('Pan.deg')).toEqual(['0', '0', '0', '0', '0']);
  });

  test('has the clock with its offset, and what happens', () => {
    expect(column('clock')[1]).toBe('2026-03-01T06:00:10+00:00');
    expect(column('elapsedS')).toEqual(['0', '10', '20', '30', '40']);
    expect(column('event')).toEqual(['first frame', '', '', '', 'last frame']);
    expect(column('card')[4]).toBe('Card A');
    expect(column('cardBytes')[4]).toBe(String(5 * 42_000_000));
  });
});

// EV 9 by APEX (EXP-08, from memory): f/8 is Av 6, 1/8 s Tv 3, ISO 100.
const lit = planOf({
  pacing: { workedOut: 'event', intervalS: 10, clipLengthS: 0.12 },
  place: { latitudeDeg: 0, longitudeDeg: 0 },
  exposure: { shutterS: 1 / 8, apertureF: 8, iso: 100 },
  light: { kind: 'studio', studioEv: 8.5 },
});

test('a planned light brings its settings, its scene and the sky', () => {
  const [headings = [], ...rows] = tableOf(lit);
  const column = (name: string): string[] => rows.map((row) => row[headings.indexOf(name)] ?? 'missing');
  expect(headings.slice(headings.indexOf('exposureS') + 1, headings.indexOf('cameraS'))).toEqual([
    'shutter',
    'apertureF',
    'iso',
    'sceneEv',
    'brighterStops',
    'sunAltitudeDeg',
    'sunAzimuthDeg',
    'moonAltitudeDeg',
  ]);
  expect(column('shutter')).toEqual(['1/8', '1/8', '1/8']);
  expect(column('apertureF')).toEqual(['8', '8', '8']);
  expect(column('iso')).toEqual(['100', '100', '100']);
  expect(column('sceneEv')).toEqual(['8.5', '8.5', '8.5']);
  // Half a stop less light than the settings are right for.
  expect(column('brighterStops')).toEqual(['-0.5', '-0.5', '-0.5']);
  // On the equator at the June solstice the noon sun stands 23.4 deg north of the zenith.
  for (const altitude of column('sunAltitudeDeg'))
    expect(Math.abs(Number(altitude) - 66.56)).toBeLessThan(0.1);
});

test('changes of the exposure stand among the events', () => {
  const dusk = planOf({
    pacing: { workedOut: 'clip', eventS: 1800, intervalS: 20 },
    start: { date: '2026-05-02', tiedTo: 'sky', event: 'sunset' },
    place: { zone: 'Europe/Lisbon', latitudeDeg: 38.7, longitudeDeg: -9.4 },
    light: { kind: 'sky' },
    exposure: {
      shutterS: 1 / 30,
      apertureF: 5.6,
      ramp: { used: true, steps: [{ setting: 'shutter', to: 4 }] },
    },
  });
  const [headings = [], ...rows] = tableOf(dusk);
  const [shutter, event] = [headings.indexOf('shutter'), headings.indexOf('event')];
  const changed = rows.filter((row, k) => k > 0 && row[shutter] !== rows[k - 1]?.[shutter]);
  expect(changed.length).toBeGreaterThan(10);
  for (const row of changed)
    expect(row[event]).toMatch(new RegExp(`shutter \\S+ to ${row[shutter]}(\\ss)?$`));
});

// tz database, Europe/Paris: on 2026-10-25 at 01:00 UTC from +02:00 to +01:00.
test('the clock of the table follows the change of the clocks', () => {
  const [headings = [], ...rows] = tableOf(
    planOf({
      pacing: { workedOut: 'event', intervalS: 1800, clipLengthS: 0.16 },
      start: { date: '2026-10-25', time: '01:45:00' },
      place: { zone: 'Europe/Paris' },
    }),
  );
  expect(rows.map((row) => row[headings.indexOf('clock')])).toEqual([
    '2026-10-25T01:45:00+02:00',
    '2026-10-25T02:15:00+02:00',
    '2026-10-25T02:45:00+02:00',
    '2026-10-25T02:15:00+01:00',
  ]);
});

test('names that a spreadsheet would work out are made safe, and odd ones are quoted', () => {
  const name = '=cmd|"A", 1';
  const plan = planOf({
    pacing: { workedOut: 'event', clipLengthS: 0.08 },
    rig: { axes: [{ ...slide, name }] },
    power: { sources: [{ name: '@pack' }], loads: [] },
    storage: { cards: [{ name: '-card' }] },
  });
  const [headings = [], first = []] = tableOf(plan);
  expect(headings).toContain(`'${name}.steps`);
  expect(headings).toContain("'@pack.leftWh");
  expect(first[headings.indexOf('card')]).toBe("'-card");
});

test('the mains have no energy left to show', () => {
  const plan = planOf({ power: { sources: [{ name: 'Wall', kind: 'mains' }], loads: [] } });
  const [headings = [], first = []] = tableOf(plan);
  expect(first[headings.indexOf('Wall.leftWh')]).toBe('');
});

test('a long table comes in pieces, none of them long', () => {
  const plan = planOf({ pacing: { workedOut: 'event', intervalS: 2, clipLengthS: 4000 } });
  let records = 0;
  for (const piece of framesCsv(plan, schedule(plan))) {
    expect(piece.length).toBeLessThan(1_000_000);
    records += piece.split('\r\n').length - 1;
  }
  expect(records).toBe(100_001);
});
