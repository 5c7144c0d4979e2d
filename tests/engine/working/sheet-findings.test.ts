/**
 * The figures in the sentences of a sheet's findings: each opens a working that comes to what the sentence says, by
 * numbers worked by hand, and what is left of its numbers was typed.
 */
import { expect, test, vi } from 'vitest';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { sheetFindingAsked, sheetStatedIn } from '../../../src/engine/sheet/finding-figures.ts';
import { sheetOf } from '../../../src/engine/sheet/sheet.ts';
import { BARE, production, shotOf } from '../sheet/plans.ts';
import { clockS } from './besides.ts';
import { judgeAll, judgeWorking } from './judge.ts';
import { printed } from './sentences.ts';

vi.setConfig({ testTimeout: 60_000 });

const hour = { ...BARE, minutesPerExposure: 60, workFrom: '09:00', workTo: '18:00' };
const exposures = (count: number): object => ({ shots: [shotOf({ frames: 2 * count })] });
const START_MS = Date.parse('2026-03-02T09:00:00Z');

/** A cell pack of 100 Wh, of which 80 may be drawn, twice, and a lamp of 50 W. */
const lit = {
  power: {
    temperatureC: 20,
    sources: [{ name: 'Cells 7 packs', kind: 'battery', energyWh: 100, reserveShare: 0.2, count: 2 }],
    loads: [{ name: 'Lamp', source: 'Cells 7 packs', alwaysOnW: 50, efficiencyShare: 1 }],
  },
};

/** What a finding states: its figures by how they stand in the sentence, each judged; what was typed is `typed`. */
function stated(plan: Plan, id: string, typed: readonly string[] = []): Record<string, string> {
  const made = schedule(plan);
  const asked = sheetFindingAsked({ plan, made }, id);
  if (!asked) throw new Error(`${id} is not said`);
  const { message } = asked.finding;
  const found = sheetStatedIn(asked.of, asked.finding);
  let rest = message;
  for (const { from, text, of } of found.toReversed()) {
    expect(printed(judgeWorking(plan, made, of)), `${message}: ${of}`).toContain(text);
    expect(message.slice(from, from + text.length)).toBe(text);
    rest = `${rest.slice(0, from)}#${rest.slice(from + text.length)}`;
  }
  for (const each of typed) {
    expect(rest).toContain(each);
    rest = rest.replace(each, '#');
  }
  expect(rest, message).not.toMatch(/\d/);
  judgeAll(plan, made, [1]);
  return Object.fromEntries(found.map(({ text, of }) => [text.replaceAll('\u00A0', ' '), of]));
}

const value = (plan: Plan, figure: string) => judgeWorking(plan, schedule(plan), figure);

test('a start outside the working hours', () => {
  const plan = production({ ...hour, ...exposures(1) }, { start: { date: '2026-03-02', time: '19:30' } });
  expect(stated(plan, 'start-outside-hours')).toEqual({
    '2026-03-02 19:30': 'sheet.findings.start-outside-hours.start',
    '2026-03-03 09:00': 'sheet.findings.start-outside-hours.workFrom',
  });
  expect(value(plan, 'sheet.findings.start-outside-hours.workFrom').value).toBe(9 * 3600);
});

// 09:00 to 12:00 and 13:00 to 18:00: the longest stretch is five hours, the exposure takes six.
test('an exposure that is longer than any stretch of work', () => {
  const breaks = [{ from: '12:00', to: '13:00' }];
  const plan = production({ ...hour, breaks, minutesPerExposure: 360, ...exposures(2) });
  expect(stated(plan, 'exposure-too-long')).toEqual({
    'Exposure 1': 'sheet.findings.exposure-too-long.firstExposure',
    '6:00:00': 'sheet.exposure.1.takesMin',
    '5:00:00': 'sheet.findings.exposure-too-long.longestS',
  });
  expect(value(plan, 'sheet.findings.exposure-too-long.longestS').value).toBe(5 * 3600);
  // From a shift that begins at midnight, and one all day long.
  const all = production({
    ...hour,
    workFrom: '00:00',
    workTo: '23:00',
    minutesPerExposure: 1400,
    ...exposures(1),
  });
  stated(all, 'exposure-too-long');
});

// From 2 March 2026, a Monday: 261 lots of 28 days are 7308, to 5 March 2046 (proleptic Gregorian calendar).
test('work without end', () => {
  const plan = production({ ...hour, minutesPerExposure: 10_000, ...exposures(3000) });
  const found = stated(plan, 'calendar-too-long');
  expect(found['2046-03-05']).toBe('sheet.findings.calendar-too-long.followedTo');
  const { terms } = value(plan, 'sheet.findings.calendar-too-long.followedTo');
  expect(terms.find(({ symbol }) => symbol === 'followed')?.value).toBe(7308);
  const sheet = sheetOf(plan);
  // Ten thousand minutes each, day and night: 7308 days are 1052 of them and begin another.
  const finding = sheet.totals.findings.find(({ id }) => id === 'calendar-too-long');
  expect(finding?.exposure).toBeGreaterThan(1000);
  expect(value(plan, 'sheet.findings.calendar-too-long.firstExposure').value).toBe(finding?.exposure);
});

test('actions whose last exposure is shorter', () => {
  const named = production({
    ...hour,
    shots: [
      shotOf({ frames: 4, text: 'Up' }, { frames: 25, text: 'has 25 frames' }, { frames: 7 }, { frames: 9 }),
    ],
  });
  expect(stated(named, 'last-short', ['has 25 frames'])).toEqual({
    '25 frames': 'sheet.action.2.frames',
    '2 actions': 'sheet.findings.last-short.more',
  });
  const nameless = production({ ...hour, shots: [shotOf({ frames: 4 }, { frames: 25 })] });
  expect(stated(nameless, 'last-short')).toEqual({
    'exposure 3': 'sheet.findings.last-short.actionExposure',
    '25 frames': 'sheet.action.2.frames',
  });
});

test('ticks of exposures that are not there', () => {
  const ticks = [1, 2, 30].map((exposure) => ({ shot: 1, exposure, atMs: START_MS + exposure * 60_000 }));
  const plan = production({ ...hour, ...exposures(3), ticks });
  expect(stated(plan, 'ticks-ignored')).toEqual({ '1 tick': 'sheet.findings.ticks-ignored.ticks' });
  expect(value(plan, 'sheet.findings.ticks-ignored.ticks').value).toBe(1);
});

test('daylight on the set', () => {
  const plan = production(
    { ...hour, minutesPerExposure: 30, ...exposures(40) },
    { place: { zone: 'Europe/Dublin', latitudeDeg: 53.3, longitudeDeg: -6.3 }, pane: { used: true } },
  );
  const { days, columns } = sheetOf(plan);
  const fromMs = days[0]?.sunSpans[0]?.fromMs ?? 0;
  const found = stated(plan, 'sun-on-set');
  expect(Object.values(found)).toEqual([
    'sheet.day.1.sun.1.from',
    'sheet.findings.sun-on-set.firstExposure',
    'sheet.findings.sun-on-set.days',
  ]);
  expect(value(plan, 'sheet.day.1.sun.1.from').value).toBeCloseTo(clockS(plan.place, fromMs), 6);
  const reached = [...columns.startMs].findIndex((ms) => ms + 30 * 60_000 > fromMs) + 1;
  expect(value(plan, 'sheet.findings.sun-on-set.firstExposure').value).toBe(reached);
  expect(value(plan, 'sheet.findings.sun-on-set.days').value).toBe(days.length);
});

// Nine hours at 50 W are 450 Wh: six packs of 80. Eighteen exposures take two days.
test('more packs than are brought', () => {
  const plan = production({ ...hour, ...exposures(18) }, lit);
  expect(stated(plan, 'source-short', ['Cells 7 packs', '2 brought'])).toEqual({
    '2026-03-02': 'sheet.day.1.from',
    '6 packs': 'sheet.day.1.sources.Cells 7 packs.packs',
    '1 day': 'sheet.findings.source-short:Cells 7 packs.more',
  });
});

test('more than the cards hold', () => {
  const plan = production(
    { ...hour, shots: [shotOf({ frames: 160 })] },
    {
      camera: { frameBytes: 1_000_000_000 },
      storage: { cards: [{ name: 'A', cardBytes: 64e9, reserveShare: 0.5 }] },
    },
  );
  expect(stated(plan, 'card-full')).toEqual({
    '80 GB': 'sheet.storageBytes',
    '32 GB': 'sheet.findings.card-full.usableBytes',
  });
});

test('what states no number has no figure', () => {
  expect(stated(production({ ...hour, shots: [{ name: 'One', actions: [] }] }), 'no-exposures')).toEqual({});
  const plan = production({ ...hour, breaks: [{ from: '12:00', to: '13:00' }], ...exposures(4) }, lit);
  expect(stated(plan, 'lamps-stay-on', ['Lamp'])).toEqual({});
});
