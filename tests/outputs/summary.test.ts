import { describe, expect, test } from 'vitest';
import type { Plan } from '../../src/engine/plan/schema.ts';
import { schedule } from '../../src/engine/schedule.ts';
import { sheetOf } from '../../src/engine/sheet/sheet.ts';
import { cautionsOf } from '../../src/outputs/cautions.ts';
import { hanging, TEXT_WIDTH, wrapped } from '../../src/outputs/paragraphs.ts';
import { summaryText } from '../../src/outputs/summary.ts';
import { planOf } from './plans.ts';

const summaryOf = (plan: Plan): string =>
  summaryText(plan, schedule(plan), plan.technique === 'stopMotion' ? sheetOf(plan) : null);

// Worked by hand: 12 s x 25 fps = 300 frames; 2400 s / 299 = 8.03 s, so 8 s; 2400 / 8 + 1 = 301 frames.
// One frame: 6000 x 4000 px x 14 bit / 8 = 42 MB; 301 of them 12.6 GB.
const dough = planOf({ title: 'Dough', pacing: { workedOut: 'interval', eventS: 2400, clipLengthS: 12 } });

describe('the summary', () => {
  const lines = summaryOf(dough).split('\n');
  const row = (label: string): string => lines.find((line) => line.trimStart().startsWith(label)) ?? '';

  test('says first whether it can be shot', () => {
    expect(lines[0]).toBe('Dough');
    expect(lines[1]).toMatch(/^Shootable\./);
  });

  test('has the figures of a pencil', () => {
    expect(row('Clip')).toContain('12.04 s at 25 fps: 301 frames');
    expect(row('Interval')).toContain('8 s (8.03 s asked for); set the trigger to 8 s, start to start');
    expect(row('Event')).toContain('0:40:00, shown 200 times faster');
    expect(row('Last frame')).toContain('Sun 2026-06-21 12:40:00 +00:00');
    expect(row('In all')).toContain('12.6 GB at 42 MB a frame, 25.3 GB in 2 copies');
  });

  test('has spaces and signs that a search finds', () => {
    expect(summaryOf(dough)).not.toMatch(/[\u00A0\u2212\u202F]/);
  });

  test('shows findings with the frame and the clock', () => {
    const tight = planOf({ pacing: { workedOut: 'event', intervalS: 1 }, camera: { writeS: 5 } });
    const summary = summaryOf(tight);
    expect(summary).toMatch(/^Not shootable/m);
    expect(summary).toMatch(/^ {2}STOP .*frame 1/m);
    expect(summary).toContain('(12:00:00)');
  });

  test('has the settings of a planned light, and the sky among the events', () => {
    const dusk = planOf({
      pacing: { workedOut: 'clip', eventS: 3600, intervalS: 20 },
      start: { date: '2026-05-02', tiedTo: 'sky', event: 'sunset', offsetMin: -20 },
      place: { zone: 'Europe/Lisbon', latitudeDeg: 38.7, longitudeDeg: -9.4 },
      light: { kind: 'sky' },
      exposure: {
        shutterS: 1 / 60,
        apertureF: 5.6,
        ramp: { used: true, steps: [{ setting: 'shutter', to: 8 }] },
      },
    });
    const summary = summaryOf(dusk);
    expect(summary).toMatch(/^ {2}First +1\/\d+, f\/5\.6, ISO 100 for a scene of \d/m);
    expect(summary).toMatch(/^ {2}Last +\S+ s, f\/5\.6/m);
    expect(summary).toMatch(/frame \d+: shutter 1\/30 to 1\/25$/m);
    expect(summary).toMatch(/frame \d+: sunset$/m);
    expect(summaryOf(dough)).not.toContain('for a scene of');
  });

  test('counts swaps that it does not list', () => {
    const thirsty = planOf({
      pacing: { workedOut: 'event', intervalS: 60, clipLengthS: 20 },
      power: {
        sources: [{ name: 'Tiny', energyWh: 1, count: 1000 }],
        loads: [{ name: 'Lamp', source: 'Tiny', alwaysOnW: 40 }],
      },
    });
    expect(summaryOf(thirsty)).toMatch(/… +and \d+ events more/);
  });

  test('fits 100 columns whatever the names are', () => {
    const name = 'W'.repeat(40);
    const long = planOf({
      title: 'T'.repeat(120),
      rig: { axes: [{ name }] },
      power: { sources: [{ name: `${name.slice(1)}s` }], loads: [] },
      storage: { cards: [{ name: 'a long name '.repeat(3) }] },
    });
    for (const line of summaryOf(long).split('\n')) expect(line.length, line).toBeLessThanOrEqual(TEXT_WIDTH);
  });
});

describe('lines', () => {
  test('are broken between words', () => expect(wrapped('one two three', 7)).toEqual(['one two', 'three']));
  test('are cut where a word is too long', () =>
    expect(wrapped('abcdefgh', 3)).toEqual(['abc', 'def', 'gh']));
  test('hang beside their label', () => expect(hanging('a', 'x', 6)).toEqual(['  a   x']));
  test('hang below a label that is too long', () => {
    expect(hanging('abcdef', 'x', 6)).toEqual(['  abcdef', '      x']);
  });
});

describe('the cautions', () => {
  const listed = (fields: object) => cautionsOf(planOf(fields), schedule(planOf(fields)));
  const cautions = (fields: object) => listed(fields).join('\n');
  const axes = [{ name: 'Arm', kind: 'boom' }];

  test('name the arm overhead, and the pinch points of what moves', () => {
    expect(cautions({ rig: { axes } })).toContain('counterweight');
    expect(cautions({ rig: { axes } })).not.toContain('pinch');
    expect(cautions({ rig: { axes }, move: { mode: 'continuous' } })).toContain('pinch');
  });

  test('give the order in which camera and weights go on, once the arm is balanced', () => {
    expect(cautions({ rig: { axes } })).not.toContain('first the camera, then the weights');
    expect(cautions({ rig: { axes }, balance: { used: true } })).toContain(
      'first the camera, then the weights',
    );
  });

  test('name mains, lithium and the sun where they are', () => {
    expect(cautions({})).toMatch(/Lithium/);
    expect(cautions({ power: { sources: [{ name: 'W', kind: 'mains' }], loads: [] } })).toMatch(/Mains/);
    expect(cautions({ power: { sources: [], loads: [] } })).not.toMatch(/Lithium|Mains/);
    expect(cautions({ place: { latitudeDeg: 43 } })).toMatch(/never look at the sun/);
  });

  test('always say who decides', () => expect(listed({}).at(-1)).toMatch(/the operator decides/));
});
