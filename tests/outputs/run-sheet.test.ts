/** What the run sheet says, worked by hand. */
import { describe, expect, test } from 'vitest';
import type { Plan } from '../../src/engine/plan/schema.ts';
import { schedule } from '../../src/engine/schedule.ts';
import { sheetOf } from '../../src/engine/sheet/sheet.ts';
import { plainText } from '../../src/outputs/paragraphs.ts';
import { runSheet } from '../../src/outputs/run-sheet/run-sheet.ts';
import { runSheetText } from '../../src/outputs/run-sheet/text.ts';
import type { RunSheet } from '../../src/outputs/run-sheet/types.ts';
import { newDates } from '../../src/outputs/run-sheet/when.ts';
import { planOf } from './plans.ts';

const sheetFor = (plan: Plan): RunSheet =>
  runSheet(plan, schedule(plan), plan.technique === 'stopMotion' ? sheetOf(plan) : null);

const lapse = (fields: object = {}): Plan =>
  planOf({
    title: 'Reed bed',
    pacing: { workedOut: 'clip', eventS: 3600, intervalS: 20 },
    start: { date: '2026-06-21', time: '12:00' },
    day: {
      travelMin: 30,
      setUpMin: 25,
      balanceMin: 10,
      rehearsalMin: 0,
      testFramesMin: 5,
      inHandMin: 15,
      packUpMin: 40,
    },
    camera: { writeS: 0, shutterLagS: 0 },
    exposure: { shutterS: 1 / 60 },
    ...fields,
  });

const clockOf = ({ clock }: RunSheet): string[] =>
  clock.map(({ clock: at, frame, text, hand }) =>
    plainText(`${hand ? '*' : ' '} ${at} ${frame === null ? '' : `${frame} `}${text}`),
  );

test('the clock goes back from the first frame, and on from the last', () =>
  // 15 + 5 + 10 + 25 + 30 min before noon is 10:35.
  expect(clockOf(sheetFor(lapse()))).toEqual([
    '* 10:35 Leave, 30 min',
    '* 11:05 Set-up, 25 min',
    '* 11:30 Balance and home, 10 min',
    '* 11:40 Test frames, 5 min',
    '  11:45 Time in hand, 15 min',
    '* 12:00:00 1 First frame',
    '* 13:00:00 181 Last frame',
    '* 13:00 Pack up, 40 min',
    '* 13:40 Leave for home, 30 min',
    '  14:10 Home',
  ]));

test('the plan is a sentence', () =>
  expect(plainText(sheetFor(lapse()).sentence)).toBe(
    // 181 frames / 25 fps = 7.24 s; 20 s x 25 fps.
    '181 frames, one every 20 s over 1:00:00, make 7.24 s at 25 fps: 500 times faster than life.',
  ));

describe('over midnight and changes of the clocks', () => {
  const day = { travelMin: 180, inHandMin: 0, testFramesMin: 0, rehearsalMin: 0, balanceMin: 0, setUpMin: 0 };
  const at = (date: string, time: string, zone: string) =>
    sheetFor(lapse({ start: { date, time }, place: { zone }, day })).clock;

  test('the local clock is that of each moment', () => {
    // Clocks in Paris go from 03:00 back to 02:00 on 25 October 2026: three hours before 03:30 CET is 01:30 CEST.
    const [leave, first] = at('2026-10-25', '03:30', 'Europe/Paris');
    expect([leave?.clock, first?.clock]).toEqual(['01:30', '03:30:00']);
    // Clocks in New York go from 02:00 on to 03:00 on 8 March 2026: three hours before 04:30 EDT is 00:30 EST.
    const [early] = at('2026-03-08', '04:30', 'America/New_York');
    expect(early?.clock).toBe('00:30');
  });

  test('each date stands once, before its first line', () => {
    const dates = newDates(at('2026-01-01', '01:00', 'Pacific/Kiritimati'), true);
    expect(dates).toEqual(['Wed 31 Dec 2025', 'Thu 1 Jan 2026', null, null, null, null]);
  });
});

describe('sun and moon', () => {
  test('stand in the clock from leaving until home, and for the day in a line', () => {
    const sheet = sheetFor(
      lapse({
        start: { date: '2026-08-08', time: '20:30' },
        place: { latitudeDeg: 43.3, longitudeDeg: 6.4, zone: 'Europe/Paris' },
      }),
    );
    const texts = clockOf(sheet).map((line) => line.slice(2));
    expect(texts).toContain('20:47:35 Sunset');
    expect(texts.join()).not.toContain('Sunrise');
    expect(sheet.sun).toHaveLength(1);
    expect(sheet.sun[0]?.text).toMatch(/sunrise 06:31:\d\d at \d+°.*sunset 20:47:35 at 29\d°/);
  });

  test('may do nothing at all', () => {
    const polar = { latitudeDeg: 89, longitudeDeg: 15, zone: 'Arctic/Longyearbyen' };
    const sheet = sheetFor(lapse({ place: polar }));
    expect(sheet.sun[0]?.text).not.toMatch(/sunrise|sunset/);
    expect(clockOf(sheet).join()).not.toMatch(/rise|set(?!-)/);
  });

  test('of several days stop at the third', () => {
    const place = { latitudeDeg: 43.3, longitudeDeg: 6.4, zone: 'Europe/Paris' };
    const sheet = sheetFor(
      lapse({ place, pacing: { workedOut: 'clip', eventS: 9 * 86_400, intervalS: 60 } }),
    );
    expect(sheet.sun).toHaveLength(3);
    expect(sheet.clock.length).toBeLessThan(120);
  });
});

describe('what to bring', () => {
  const bring = (fields: object) =>
    sheetFor(lapse(fields)).bring.map(({ label, text }) => plainText(`${label}: ${text}`));

  test('cells by source, cards that are used, filter, and what the user adds', () => {
    const lines = bring({
      // 4 W over about an hour from packs of 3 Wh, of which 15 % stay: 4 / 2.55 takes two.
      power: {
        temperatureC: 25,
        sources: [
          { name: 'Pack', energyWh: 3, count: 3 },
          { name: 'Socket', kind: 'mains' },
        ],
        loads: [{ name: 'Body', source: 'Pack', alwaysOnW: 4 }],
      },
      storage: {
        copies: 2,
        cards: [
          { name: 'A', cardBytes: 64e9 },
          { name: 'B', cardBytes: 64e9 },
        ],
      },
      camera: { frameBytes: 10e6 },
      exposure: { filterStops: 3 },
      day: { bring: ['Head torch', 'Tea'] },
    });
    expect(lines).toEqual([
      'Camera: Camera, lens of 24 mm',
      'Trigger: Trigger',
      'Filter: ND of 3 stops (density 0.903, ND8)',
      'Pack: 3 packs of 3 Wh, 2 needed; in the cabin only, when you fly',
      'Socket: Mains lead, residual-current device',
      expect.stringMatching(/^A: empty: 1.8 GB of \d/),
      'Copies: room for 3.6 GB in 2 copies',
      'Also: Head torch',
      ': Tea',
    ]);
  });

  test('more packs than the plan has are said', () => {
    const [line] = bring({
      power: {
        sources: [{ name: 'Pack', energyWh: 1, count: 2 }],
        loads: [{ name: 'Body', source: 'Pack', alwaysOnW: 4 }],
      },
    }).filter((text) => text.startsWith('Pack'));
    expect(line).toMatch(/^Pack: \d packs of 1 Wh: MORE than the 2 that the plan has/);
  });

  test('the counterweight as it comes to, and the weigh-down', () => {
    const lines = bring({
      rig: { axes: [{ name: 'Boom', kind: 'boom', unit: 'deg', travelMax: 30 }] },
      // (1.5 kg x 1000 mm + 1 kg x 200 mm) / 400 mm = 4.25 kg.
      balance: { used: true, workedOut: 'mass', counterweightMm: 400, ballastKg: 6 },
    });
    expect(lines).toEqual(
      expect.arrayContaining(['Counterweight: 4.25 kg, with a tether and a stop', 'Weigh-down: 6 kg']),
    );
  });
});

describe('changes of the exposure', () => {
  const dusk = (eventS: number, by: 'hand' | 'camera', step: 'full' | 'third') =>
    lapse({
      pacing: { workedOut: 'clip', eventS, intervalS: 20 },
      start: { date: '2026-08-08', time: '20:00' },
      place: { latitudeDeg: 43.3, longitudeDeg: 6.4, zone: 'Europe/Paris' },
      light: { kind: 'sky' },
      exposure: {
        shutterS: 1 / 125,
        ramp: {
          used: true,
          steps: [
            { setting: 'shutter', to: 1, step: 'full', by },
            { setting: 'iso', to: 3200, step, by: 'camera' },
          ],
        },
      },
    });

  test('stand one by one if they fit, by hand in the clock too', () => {
    const plan = dusk(5400, 'hand', 'full');
    const { changes, clock, changesGrouped } = sheetFor(plan);
    expect(changesGrouped).toBe(false);
    expect(changes.map(({ frame }) => frame)).toEqual(
      schedule(plan).exposure?.changes.map(({ frame }) => frame),
    );
    const byHand = changes.filter(({ by }) => by === 'hand');
    expect(byHand.length).toBeGreaterThan(3);
    const inClock = clock.filter(({ text }) => text.includes('by hand'));
    expect(inClock.map(({ frame }) => frame)).toEqual(byHand.map(({ frame }) => frame));
  });

  test('are taken together by the camera if they are many, each way by itself, those by hand never', () => {
    const plan = dusk(40_000, 'hand', 'third');
    const all = schedule(plan).exposure?.changes ?? [];
    const { changes, changesGrouped } = sheetFor(plan);
    expect(changesGrouped).toBe(true);
    expect(changes.reduce((sum, { count }) => sum + count, 0)).toBe(all.length);
    const byHand = changes.filter(({ by }) => by === 'hand');
    expect(byHand.map(({ frame }) => frame)).toEqual(
      all.filter(({ by }) => by === 'hand').map(({ frame }) => frame),
    );
    for (const { count, from, to } of changes) if (count > 1) expect(from).not.toBe(to);
    expect(changes.filter(({ by }) => by === 'camera').length).toBeGreaterThanOrEqual(2);
  });

  test('are none under steady light', () => expect(sheetFor(lapse()).changes).toEqual([]));
});

test('more moments than fit are counted', () => {
  const sheet = sheetFor(
    lapse({
      pacing: { workedOut: 'clip', eventS: 40_000, intervalS: 20 },
      power: {
        sources: [{ name: 'Pack', energyWh: 1, count: 99 }],
        loads: [{ name: 'Body', source: 'Pack', alwaysOnW: 6 }],
      },
    }),
  );
  expect(sheet.clock.filter(({ text }) => text.includes('swap'))).toHaveLength(48);
  expect(sheet.left.moments).toBeGreaterThan(0);
});

describe('the rig', () => {
  const rig = {
    axes: [{ name: 'Slide' }, { name: 'Pan', unit: 'deg', unitsPerTurn: 360, travelMin: -90, travelMax: 90 }],
  };
  const key = (position: number, place: object) => ({ position, ease: { kind: 'linear' }, ...place });

  test('stands in a table at its keyframes, there and back', () => {
    const { rig: table, left } = sheetFor(
      lapse({
        rig,
        move: {
          mode: 'moveShootMove',
          tracks: [
            {
              axis: 'Slide',
              keyframes: [key(0, { share: 0 }), key(100, { at: 'frame', frame: 61 }), key(200, { share: 1 })],
            },
            {
              axis: 'Pan',
              thereAndBack: true,
              keyframes: [key(0, { share: 0 }), key(30, { share: 0.5 }), key(45, { share: 1 })],
            },
          ],
        },
      }),
    );
    // 181 frames: Pan is half way there at index 45, turns at 90, and is half way back at 135.
    expect(table?.rows.map(({ frame }) => frame)).toEqual([1, 46, 61, 91, 136, 181]);
    expect(table?.rows[2]).toMatchObject({ clock: '12:20:00', steps: [8000, expect.any(Number)] });
    expect(table?.rows[2]?.units[0]).toBe(100);
    expect(left.keyframes).toBe(0);
  });

  test('that stands still has one row, none no table', () => {
    expect(sheetFor(lapse({ rig })).rig?.rows).toHaveLength(1);
    expect(sheetFor(lapse()).rig).toBeNull();
  });

  test('of very many keyframes shows the first, and the last of all', () => {
    const keyframes = Array.from({ length: 60 }, (_, k) => key(k, { share: k / 59 }));
    const move = { mode: 'moveShootMove', tracks: [{ axis: 'Slide', keyframes }] };
    const { rig: table, left } = sheetFor(lapse({ rig, move }));
    expect(table?.rows).toHaveLength(16);
    expect(table?.rows.at(-1)?.frame).toBe(181);
    expect(left.keyframes).toBe(44);
  });
});

test('no caution is given twice, and the last says who decides', () => {
  const boom = { name: 'Boom', kind: 'boom', unit: 'deg', travelMax: 30 };
  const plan = lapse({
    rig: { axes: [boom] },
    move: { mode: 'moveShootMove', tracks: [{ axis: 'Boom', keyframes: [{ position: 0 }] }] },
    balance: { used: true },
  });
  const { cautions } = sheetFor(plan);
  expect(new Set(cautions).size).toBe(cautions.length);
  expect(cautions.filter((text) => /pinch/i.test(text))).toHaveLength(1);
  expect(cautions.at(-1)).toMatch(/the operator decides/);
});

test('what is wrong is said, the worst first', () => {
  const { findings, verdict } = sheetFor(lapse({ camera: { writeS: 30 } }));
  expect(verdict).toMatch(/^Not shootable/);
  expect(findings[0]?.severity).toBe('stop');
});

describe('stop-motion', () => {
  const plan = planOf({
    title: 'Gate',
    technique: 'stopMotion',
    start: { date: '2026-10-23', time: '09:00' },
    sheet: {
      daysOff: [],
      passes: [{ name: 'Key' }, { name: 'Rim', shutterS: 2 }],
      shots: [{ name: 'One', actions: [{ text: 'walks', lengthIn: 'frames', frames: 400, holds: [1] }] }],
    },
    power: {
      sources: [{ name: 'Pack', energyWh: 20, count: 1 }],
      loads: [{ name: 'Body', source: 'Pack', alwaysOnW: 4 }],
    },
  });

  test('has its days, shots and passes, and no clock of a run', () => {
    const sheet = sheetFor(plan);
    const { days } = sheetOf(plan);
    expect(sheet.work).toHaveLength(days.length);
    expect(sheet.work[0]).toMatchObject({
      date: 'Fri 23 Oct 2026',
      from: '09:00',
      exposures: `1 to ${days[0]?.lastExposure}`,
    });
    expect(sheet.shots[0]?.text).toMatch(/set up in 60\smin, 3\stest frames, then 400\sexposures/);
    expect(sheet.dials.slice(0, 2).map(({ label, text }) => plainText(`${label} ${text}`))).toEqual([
      'Pass Key 1/60, f/8, ISO 100',
      'Pass Rim 2 s, f/8, ISO 100',
    ]);
    expect(sheet.clock).toEqual([]);
    expect(sheet.bring.find(({ label }) => label === 'Pack')?.text).toMatch(/a day; charger$/);
  });

  test('is plain text too', () =>
    expect(runSheetText(sheetFor(plan))).toMatch(/\nDays\n {2}Fri 23 Oct 2026 +09:00 to /));
});

test('the text has lines of at most 100 characters, and boxes to tick', () => {
  const text = runSheetText(sheetFor(lapse({ title: 'Long '.repeat(20).trim(), notes: 'x'.repeat(300) })));
  for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
  expect(text).toContain('[ ] 11:05');
  expect(text).toMatch(/\n {6}11:45 +Time in hand/);
});
