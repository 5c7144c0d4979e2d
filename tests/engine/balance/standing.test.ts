/** Where the centre of mass is worst during a move. */
import { expect, test } from 'vitest';
import { newKeyframe } from '../../../src/engine/plan/parse.ts';
import { balanced, rigOf } from '../../reference/balance/rigs.ts';
import { straight } from '../../reference/plans.ts';

const MASSES = { payloadKg: 2, armKg: 0, counterweightKg: 0, baseKg: 0, ballastKg: 0, supportKg: 8 };
const onSlide = { balance: { ...MASSES, feetRadiusMm: 500, legs: 3 } };

test('the far end of a slide, whichever side it is on', () => {
  expect(balanced(rigOf({ slide: [0, 600] }, onSlide)).tip).toMatchObject({ frame: 11 });
  const back = balanced(rigOf({ slide: [-900, 600] }, onSlide)).tip;
  expect(back.frame).toBe(1);
  expect(back.farthestMm).toBeCloseTo(180, 9);
});

test('a slide that climbs carries its load less far out', () => {
  const steep = { ...onSlide, rig: { slide: { inclineDeg: 60 } } };
  expect(balanced(rigOf({ slide: [0, 600] }, steep)).tip.farthestMm).toBeCloseTo(60, 9);
});

test('an arm out of balance is worst level, also between two frames, and not where it is upright', () => {
  const out = { balance: { ...MASSES, workedOut: 'residual' as const }, rig: { arm: { lengthMm: 1000 } } };
  expect(balanced(rigOf({ boom: [90, 90] }, out)).tip.farthestMm).toBeCloseTo(0, 9);
  // Two of ten kilograms at 1000 mm.
  expect(balanced(rigOf({ boom: [-45, 55] }, out)).tip.farthestMm).toBeCloseTo(200, 9);
});

test('an arm in balance leaves the centre of mass where the slide has it', () => {
  const rig = { arm: { lengthMm: 800 }, slide: { bearingDeg: 30 } };
  const balance = { ...MASSES, counterweightKg: 6, workedOut: 'place' as const };
  // 2 + 6 kg of 16 ride 500 mm out.
  const { tip } = balanced(rigOf({ boom: [-60, 60], slide: [0, 500] }, { rig, balance }));
  expect(tip.farthestMm).toBeCloseTo(250, 9);
});

test('there and back: worst in the middle of the run', () => {
  const plan = rigOf({ slide: [0, 0] }, onSlide);
  const tracks = [{ ...straight('Slide', 0, 700), thereAndBack: true }];
  const { tip } = balanced({ ...plan, move: { ...plan.move, tracks } });
  expect(tip.frame).toBe(6);
  expect(tip.farthestMm).toBeCloseTo(140, 9);
});

test('the lean that tips: less the higher and the less is left', () => {
  const low = balanced(rigOf({ slide: [0, 600] }, { ...onSlide, rig: { pivotHeightMm: 500 } })).tip;
  const high = balanced(rigOf({ slide: [0, 600] }, { ...onSlide, rig: { pivotHeightMm: 1500 } })).tip;
  expect(low.leanDeg).toBeCloseTo((Math.atan(130 / 500) * 180) / Math.PI, 9);
  expect(high.leanDeg).toBeCloseTo((Math.atan(130 / 1500) * 180) / Math.PI, 9);
});

test('more legs, more room', () => {
  const safe = (legs: number) =>
    balanced(rigOf({}, { balance: { ...MASSES, feetRadiusMm: 500, legs } })).tip.safeMm;
  expect(safe(3)).toBeCloseTo(250, 9);
  expect(safe(4)).toBeCloseTo(500 / Math.SQRT2, 9);
});

test('a jab of two frames in a long run does not escape', () => {
  const jab = [
    [0.4, 0],
    [0.40005, 700],
    [0.4001, 0],
  ].map(([share = 0, position = 0]) => newKeyframe({ share, position, ease: { kind: 'linear' } }));
  const plan = rigOf({ slide: [0, 0] }, onSlide);
  const { tip } = balanced({
    ...plan,
    pacing: { ...plan.pacing, clipLengthS: 20_001 },
    move: { ...plan.move, tracks: [{ axis: 'Slide', thereAndBack: false, keyframes: jab }] },
  });
  // 0.40005 x 20,000 is the 8,001st move: frame 8,002.
  expect(tip.frame).toBe(8002);
  expect(tip.farthestMm).toBeCloseTo(140, 6);
});

test('a counterweight that is not needed weighs nothing', () => {
  const tailHeavy = { ...MASSES, armKg: 6, armCentreMm: -500, counterweightKg: 5 };
  const { tip, support } = balanced(rigOf({ boom: [0, 0] }, { balance: tailHeavy }));
  expect(support.loadKg).toBe(8);
  expect(tip.totalKg).toBe(16);
});
