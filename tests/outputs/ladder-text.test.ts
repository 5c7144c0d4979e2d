import { expect, test } from 'vitest';
import { intervalLadder } from '../../src/engine/fixes/interval-ladder.ts';
import type { Plan } from '../../src/engine/plan/schema.ts';
import { schedule } from '../../src/engine/schedule.ts';
import { ladderText } from '../../src/outputs/ladder-text.ts';
import { plainPlan, type Some } from '../reference/plans.ts';

const text = (change: Some<Plan>) => {
  const plan = plainPlan(101, 4, { trigger: { stepS: 1, minS: 1 }, ...change });
  return ladderText(intervalLadder(plan, schedule(plan), { each: 2 }));
};

// 0.5 s of exposure and 2.7 s of write: 3.2 s are needed.
test('is a line of headings and a line a setting, in columns, the present one marked', () => {
  expect(text({ camera: { writeS: 2.7 }, start: { date: '2026-06-21', time: '12:00' } })).toBe(
    [
      '   Interval  Frames   Clip  Last frame            Spare  Swaps  Cards  Findings',
      '        2 s     101  101 s  2026-06-21 12:03:20  -1.2 s      0      1  stop: camera-not-ready',
      '        3 s     101  101 s  2026-06-21 12:05:00  -0.2 s      0      1  stop: camera-not-ready',
      '>       4 s     101  101 s  2026-06-21 12:06:40   0.8 s      0      1  none',
      '        5 s     101  101 s  2026-06-21 12:08:20   1.8 s      0      1  none',
      '        6 s     101  101 s  2026-06-21 12:10:00   2.8 s      0      1  none',
      '',
    ].join('\n'),
  );
});

test('has the dial where it is not the interval, and the settings where the light is planned', () => {
  const [head = ''] = text({
    trigger: { stepS: 1, minS: 1, counts: 'endToStart' },
    light: { kind: 'studio', studioEv: 7 },
  }).split('\n');
  expect(head.trim().split(/ {2,}/)).toEqual([
    'Interval',
    'Dial',
    'Frames',
    'Clip',
    'Last frame',
    'Spare',
    'First exposure',
    'Last exposure',
    'Swaps',
    'Cards',
    'Findings',
  ]);
});
