/** The table of positions. */
import { expect, test } from 'vitest';
import type { Plan } from '../../src/engine/plan/schema.ts';
import { schedule } from '../../src/engine/schedule.ts';
import { sheetOf } from '../../src/engine/sheet/sheet.ts';
import { positionsCsv } from '../../src/outputs/positions-csv.ts';
import { planOf } from './plans.ts';

const move = {
  mode: 'moveShootMove',
  tracks: [
    {
      axis: '=Boom, left',
      keyframes: [
        { share: 0, position: 0, ease: { kind: 'linear' } },
        { share: 1, position: 5 },
      ],
    },
  ],
};
const rig = {
  axes: [
    // 200 x 16 x 100 / 360 = 888.88... microsteps a degree.
    { name: '=Boom, left', unit: 'deg', unitsPerTurn: 360, gearRatio: 100, travelMax: 90 },
    { name: 'Slide' },
  ],
};
const recordsOf = (plan: Plan): string[] => {
  const sheet = plan.technique === 'stopMotion' ? sheetOf(plan) : null;
  return [...positionsCsv(plan, schedule(plan), sheet)].join('').split('\r\n');
};

test('has a record a frame, in steps and in the axis’s unit, and no formula', () => {
  const plan = planOf({ pacing: { workedOut: 'clip', eventS: 20, intervalS: 10 }, rig, move });
  expect(recordsOf(plan)).toEqual([
    'frame,clock,elapsedS,intervalS,"\'=Boom, left.steps","\'=Boom, left.deg",Slide.steps,Slide.mm',
    '1,2026-06-21T12:00:00+00:00,0,10,0,0,0,0',
    // 2.5 deg x 888.88 = 2222.2, and 2222 / 888.88 = 2.49975.
    '2,2026-06-21T12:00:10+00:00,10,10,2222,2.49975,0,0',
    '3,2026-06-21T12:00:20+00:00,20,10,4444,4.9995,0,0',
    '',
  ]);
});

test('has a record an exposure in stop-motion', () => {
  const plan = planOf({
    technique: 'stopMotion',
    rig,
    move,
    sheet: {
      shots: [
        {
          name: '+Nod',
          actions: [{ text: 'nods', lengthIn: 'frames', frames: 3, holds: [1] }],
          tracks: move.tracks,
        },
      ],
    },
  });
  const records = recordsOf(plan);
  expect(records[0]).toBe(
    'shot,exposure,firstFrame,clock,"\'=Boom, left.steps","\'=Boom, left.deg",Slide.steps,Slide.mm',
  );
  expect(records[2]).toMatch(/^'\+Nod,2,2,2026-\S+,2222,2.49975,0,0$/);
  expect(records).toHaveLength(5);
});

test('a million frames come in pieces', () => {
  const plan = planOf({ pacing: { workedOut: 'clip', eventS: 999_999, intervalS: 1 } });
  let [longest, records] = [0, 0];
  for (const piece of positionsCsv(plan, schedule(plan), null)) {
    longest = Math.max(longest, piece.length);
    records += piece.split('\r\n').length - 1;
  }
  expect(records).toBe(1_000_001);
  expect(longest).toBeLessThan(500_000);
});
