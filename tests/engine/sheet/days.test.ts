import { describe, expect, test } from 'vitest';
import { sheetOf } from '../../../src/engine/sheet/sheet.ts';
import { both } from '../../../src/engine/sky/spans.ts';
import { setHitSpans } from '../../../src/engine/sky/windows.ts';
import { BARE, production, shotOf } from './plans.ts';

const hours = {
  ...BARE,
  minutesPerExposure: 59,
  workFrom: '09:00',
  workTo: '13:00',
  breaks: [{ from: '11:00', to: '12:00' }],
};
/** A camera that takes a minute an exposure: 10 s of lag, 20 s of shutter, 30 s of writing. */
const minute = {
  camera: { shutterLagS: 10, writeS: 30, exactStops: false },
  exposure: { shutterS: 20 },
};
const load = (watts: object) => ({
  power: {
    temperatureC: 25,
    sources: [{ name: 'P', kind: 'battery', energyWh: 100, reserveShare: 0.2, count: 1 }],
    loads: [{ name: 'L', source: 'P', efficiencyShare: 1, ...watts }],
  },
});
/** Three exposures of an hour: 9, 10 and 12 o’clock; the day lasts for 4 hours, 14 400 s. */
const day = (watts: object, sheet: object = {}) =>
  sheetOf(production({ ...hours, shots: [shotOf({ frames: 6 })], ...sheet }, { ...minute, ...load(watts) }))
    .days;

describe('energy of a day', () => {
  test.each<[string, object, number]>([
    ['always on: all day, breaks included', { alwaysOnW: 100 }, 100 * 14_400],
    ['exposing: 3 x 20 s', { exposingW: 9 }, 9 * 60],
    ['writing: 3 x 30 s', { writingW: 8 }, 8 * 90],
    ['idle: the rest of the day', { idleW: 5 }, 5 * (14_400 - 60 - 90)],
    ['a rig that holds: all day', { holdingW: 2 }, 2 * 14_400],
    ['half of it lost on the way', { alwaysOnW: 100, efficiencyShare: 0.5 }, 200 * 14_400],
  ])('%s', (_, watts, joules) => {
    const [only, ...others] = day(watts);
    expect(others).toEqual([]);
    expect(only?.energyWh[0]?.wh).toBeCloseTo(joules / 3600, 9);
  });

  test('each pass exposes and writes', () => {
    const passes = [{ name: 'Key' }, { name: 'Rim', shutterS: 40 }];
    // 58 min of animating and 60 + 80 s of camera would be more than an hour.
    const [only] = day({ exposingW: 9 }, { passes, minutesPerExposure: 50 });
    expect(only?.energyWh[0]?.wh).toBeCloseTo((9 * 3 * 60) / 3600, 9);
  });

  test('the rig moves between exposures: 10 mm at 5 mm/s and 5 mm/s² take 3 s', () => {
    const axis = { name: 'A', source: 'P', maxSpeed: 5, maxAccel: 5, holdW: 1, moveW: 7 };
    const keyframes = [
      { share: 0, position: 0, ease: { kind: 'linear' } },
      { share: 1, position: 25 },
    ];
    const plan = production(
      { ...hours, minutesPerExposure: 50, shots: [shotOf({ frames: 6 })] },
      {
        ...minute,
        ...load({ movingW: 3, holdingW: 1 }),
        rig: { axes: [axis] },
        move: { mode: 'moveShootMove', settleS: 2, tracks: [{ axis: 'A', keyframes }] },
      },
    );
    const sheet = sheetOf(plan);
    expect(Array.from(sheet.columns.rigS)).toEqual([60, 65, 65]);
    expect(Array.from(sheet.columns.axes[0]?.from ?? [])).toEqual([0, 1, 1]);
    const [only] = sheet.days;
    const lasts = ((only?.toMs ?? 0) - (only?.fromMs ?? 0)) / 1000;
    expect(only?.energyWh[0]?.wh).toBeCloseTo(((1 + 1) * lasts + (7 - 1 + 3 - 1) * 6) / 3600, 9);
  });

  test('test frames expose and write too', () => {
    const [only] = day({ exposingW: 9 }, { testFrames: 2, minutesPerExposure: 50 });
    expect(only?.energyWh[0]?.wh).toBeCloseTo((9 * 5 * 20) / 3600, 9);
  });

  test('what is done draws with its retakes', () => {
    const ticks = [{ shot: 1, exposure: 1, atMs: Date.UTC(2026, 2, 2, 10, 0), retakes: 2 }];
    const [only] = day({ exposingW: 9, writingW: 8 }, { ticks });
    expect(only?.energyWh[0]?.wh).toBeCloseTo((9 * 5 * 20 + 8 * 5 * 30) / 3600, 9);
  });

  test('packs that a day takes, and a warning if more than are brought', () => {
    // 4 h x 50 W = 200 Wh; a pack gives 80.
    const plan = production(
      { ...hours, shots: [shotOf({ frames: 6 })] },
      { ...minute, ...load({ alwaysOnW: 50 }) },
    );
    const { days, totals } = sheetOf(plan);
    expect(days[0]?.energyWh).toEqual([{ source: 'P', wh: 200, packs: 3 }]);
    expect(totals.findings[0]).toMatchObject({
      id: 'source-short',
      severity: 'warning',
      values: { needed: 3 },
    });
    expect(totals.energyWh).toBe(200);
  });
});

describe('storage', () => {
  const two = { ...BARE, passes: [{ name: 'Key' }, { name: 'Rim' }] };
  const camera = { camera: { frameBytes: 1_000_000_000 }, storage: { copies: 3 } };

  test('all passes, and copies', () => {
    const shots = [
      shotOf(
        { frames: 6 },
        { frames: 4, passes: ['Rim'], details: [{ exposure: 2, passes: ['Key', 'Rim'] }] },
      ),
    ];
    const { totals } = sheetOf(production({ ...two, shots }, camera));
    expect(totals.storageBytes).toBe((3 * 2 + 1 + 2) * 1e9);
    expect(totals.copiesBytes).toBe(27e9);
  });

  test('more than the cards hold is said', () => {
    const { totals } = sheetOf(production({ ...two, shots: [shotOf({ frames: 80 })] }, camera));
    expect(totals.findings).toMatchObject([{ id: 'card-full', severity: 'warning' }]);
  });
});

describe('sun on the set', () => {
  const fields = {
    place: { zone: 'Europe/Dublin', latitudeDeg: 53.3, longitudeDeg: -6.3 },
    pane: { used: true },
  };

  test('within the working day, as the sky has it', () => {
    const plan = production({ ...BARE, minutesPerExposure: 30, shots: [shotOf({ frames: 80 })] }, fields);
    const { days, totals } = sheetOf(plan);
    expect(days.length).toBe(3);
    for (const { fromMs, toMs, sunSpans } of days) {
      expect(sunSpans.length).toBeGreaterThan(0);
      const all = setHitSpans(plan, fromMs - 3_600_000, toMs + 3_600_000);
      const want = both(all, [{ fromMs, toMs }]);
      expect(sunSpans.map((span) => Math.round(span.fromMs / 1000))).toEqual(
        want.map((span) => Math.round(span.fromMs / 1000)),
      );
    }
    expect(totals.findings).toMatchObject([{ id: 'sun-on-set', values: { days: 3 } }]);
  });

  test('none without a place, and none with the pane in the north', () => {
    const shots = [shotOf({ frames: 20 })];
    const spans = (change: object) =>
      sheetOf(production({ ...BARE, shots }, { ...fields, ...change })).days[0]?.sunSpans;
    expect(spans({ place: {} })).toEqual([]);
    expect(spans({ pane: { used: true, facingDeg: 0 } })).toEqual([]);
    expect(spans({})).not.toEqual([]);
  });
});
