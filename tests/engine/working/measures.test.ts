/** How what is measured beside the rig came about. */
import { expect, test } from 'vitest';
import { schedule } from '../../../src/engine/schedule.ts';
import { ofMeasure } from '../../../src/engine/working/measures.ts';
import { workingOf } from '../../../src/engine/working/working.ts';
import { planOf } from '../../outputs/plans.ts';
import { judgeWorking } from './judge.ts';

const plan = planOf({});
const made = schedule(plan);

// Rao, Mechanical Vibrations, ch. 2 (from memory): a static deflection of 10 mm is 31.316 rad/s, 4.984 Hz; from 10 to
// 5 mm in five swings is a decrement of 0.13863, a damping ratio of 0.022058. The others are quotients.
test.each([
  ['measure.sag.10.frequencyHz', ofMeasure('sag', [10]), 4.984],
  ['measure.swings.10:4.1.frequencyHz', ofMeasure('swings', [10, 4.1]), 2.43902],
  ['measure.decay.10:5:5.dampingRatio', ofMeasure('decay', [10, 5, 5]), 0.022058],
  ['measure.write.20:36.writeS', ofMeasure('write', [20, 36]), 1.8],
  // Two minutes in three seconds of 25 frames: 75 intervals.
  ['measure.crossing.120:3:25.intervalS', ofMeasure('crossing', [120, 3, 25]), 1.6],
  ['measure.card.20:40:52000000.bytesPerS', ofMeasure('card', [20, 40, 52e6]), 26e6],
] as const)('%s', (name, figure, value) => {
  expect(figure).toBe(name);
  expect(judgeWorking(plan, made, figure).value / value).toBeCloseTo(1, 4);
});

test.each([
  'measure.sag.0.frequencyHz',
  'measure.sag.10:2.frequencyHz',
  'measure.sag.10.writeS',
  'measure.sag..frequencyHz',
  'measure.decay.5:10:5.dampingRatio',
  'measure.write.0:36.writeS',
  'measure.toString.1.frequencyHz',
  'measure.crossing.120:0:25.intervalS',
])('%s is no figure', (name) => {
  expect(workingOf(plan, made, name)).toBe(null);
});
