import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  addKeyframe,
  addKeyframeAfter,
  addKeyframeAt,
  aimedAxes,
  elapsedAt,
  indexAt,
  indexOf,
  keyframesOf,
  moveKeyframe,
  placeBy,
  removeKeyframe,
  roomOf,
  type Span,
  spanOf,
} from '../../../src/app/store/keyframes.ts';
import { crossFaults } from '../../../src/engine/plan/check.ts';
import { newKeyframe } from '../../../src/engine/plan/parse.ts';
import type { Ease, Keyframe, Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { testPlan } from '../plan.ts';

/** The plan of 301 frames 12 s apart, its slide on these keyframes. */
function slideOn(keyframes: readonly Keyframe[], thereAndBack = false): Plan {
  const plan = testPlan();
  return {
    ...plan,
    move: { ...plan.move, tracks: [{ axis: 'Slide', keyframes: [...keyframes], thereAndBack }] },
  };
}

const at = (share: number, position: number, ease: Ease = { kind: 'linear' }): Keyframe =>
  newKeyframe({ share, position, ease });
const atFrame = (frame: number, position: number): Keyframe => newKeyframe({ at: 'frame', frame, position });
const atTime = (timeS: number, position: number): Keyframe => newKeyframe({ at: 'time', timeS, position });

const elapsedS = Float64Array.from({ length: 301 }, (_, k) => k * 12);
const whole = spanOf(elapsedS, false);
const half = spanOf(elapsedS, true);
const framesOf = (plan: Plan, span = whole) => keyframesOf(plan, 0).map((one) => indexOf(one, span) + 1);
const stepsOf = (plan: Plan) => schedule(plan).columns.axes[0]?.steps ?? new Int32Array();

test('the plan of these tests has those frames', () => {
  expect([...schedule(slideOn([at(0, 0), at(1, 300)])).columns.elapsedS]).toEqual([...elapsedS]);
});

describe('places', () => {
  test('shares, frames and times are indices of frames', () => {
    expect([at(0.5, 0), atFrame(151, 0), atTime(1800, 0)].map((one) => indexOf(one, whole))).toEqual([
      150, 150, 150,
    ]);
    expect(indexOf(at(1, 0), half)).toBe(150);
    expect(indexOf(atTime(18, 0), whole)).toBe(1.5);
    expect(indexOf(atTime(3612, 0), whole)).toBe(301);
  });

  test('moments and indices lead back to each other, however uneven the frames', () => {
    const uneven: Span = { lastIndex: 4, elapsedS: [0, 1, 3, 3.5, 10] };
    for (const index of [0, 0.25, 1, 1.5, 2, 3, 3.75, 4, 5]) {
      expect(indexAt(uneven, elapsedAt(uneven, index))).toBeCloseTo(index, 12);
    }
    expect(elapsedAt(uneven, 3.5)).toBe(6.75);
  });

  test('a run of one frame has one place', () => {
    const one = spanOf([0], false);
    const plan = slideOn([at(0, 5), at(1, 6)]);
    expect(keyframesOf(moveKeyframe(plan, 0, 1, { index: 3, position: 7 }, one), 0)[1]).toMatchObject({
      share: 1,
      position: 7,
    });
    expect(addKeyframe(plan, 0, one)).toBeNull();
  });
});

describe('a keyframe that is placed in another way stays where it is', () => {
  test.each(['share', 'frame', 'time'] as const)('at a %s', (kind) => {
    const plan = slideOn([at(0, 0), at(0.64, 310), at(1, 300)]);
    const placed = placeBy(plan, 0, 1, kind, whole);
    const keyframe = keyframesOf(placed, 0)[1] as Keyframe;
    expect(keyframe).toMatchObject({ at: kind, position: 310 });
    expect(indexOf(keyframe, whole)).toBeCloseTo(192, 9);
    expect([...stepsOf(placed)]).toEqual([...stepsOf(plan)]);
    expect(crossFaults(placed)).toEqual([]);
    const back = placeBy(placed, 0, 1, 'share', whole);
    expect(keyframesOf(back, 0)[1]?.share).toBeCloseTo(0.64, 12);
  });

  test('between two frames it goes to the nearest that is free', () => {
    const near = slideOn([at(0, 0), at(0.5, 1), at(0.5014, 2), at(1, 3)]);
    expect(framesOf(placeBy(near, 0, 2, 'frame', whole))[2]).toBe(152);
    // Half of a run of 301 frames that comes back ends at frame 151.
    expect(keyframesOf(placeBy(slideOn([at(0, 0), at(1, 9)], true), 0, 1, 'frame', half), 0)[1]?.frame).toBe(
      151,
    );
  });
});

describe('moving', () => {
  const plan = slideOn([at(0, 0), atFrame(101, 50), atTime(2400, 80), at(1, 300)]);

  test('keeps the kind, goes by whole frames, and changes what is asked', () => {
    expect(keyframesOf(moveKeyframe(plan, 0, 1, { index: 120.4 }, whole), 0)[1]).toMatchObject({
      at: 'frame',
      frame: 121,
      position: 50,
    });
    expect(keyframesOf(moveKeyframe(plan, 0, 2, { index: 150.6, position: 90 }, whole), 0)[2]).toMatchObject({
      at: 'time',
      timeS: 151 * 12,
      position: 90,
    });
    expect(keyframesOf(moveKeyframe(plan, 0, 3, { index: 240 }, whole), 0)[3]).toMatchObject({
      at: 'share',
      share: 0.8,
    });
    expect(keyframesOf(moveKeyframe(plan, 0, 1, { position: 51 }, whole), 0)[1]).toMatchObject({
      frame: 101,
      position: 51,
    });
  });

  test('never passes a neighbour or the run', () => {
    expect(framesOf(moveKeyframe(plan, 0, 1, { index: 500 }, whole))).toEqual([1, 200, 201, 301]);
    expect(framesOf(moveKeyframe(plan, 0, 1, { index: -9 }, whole))).toEqual([1, 2, 201, 301]);
    expect(framesOf(moveKeyframe(plan, 0, 3, { index: 900 }, whole))).toEqual([1, 101, 201, 301]);
    expect(framesOf(moveKeyframe(plan, 0, 0, { index: 900 }, whole))).toEqual([100, 101, 201, 301]);
  });

  test('stays in its frame if the neighbours leave no other', () => {
    const tight = slideOn([atFrame(10, 0), at(10 / 300, 5), atFrame(12, 9)]);
    expect(roomOf(keyframesOf(tight, 0), 1, whole)).toEqual([10, 10]);
    expect(moveKeyframe(tight, 0, 1, { index: 200 }, whole)).toEqual(tight);
  });

  test('a track that comes back ends half way, between two frames if need be', () => {
    const even = spanOf(elapsedS.slice(0, 300), true);
    const back = slideOn([at(0, 0), at(0.5, 9)], true);
    expect(keyframesOf(moveKeyframe(back, 0, 1, { index: 290 }, even), 0)[1]?.share).toBe(1);
  });

  test('positions stay within what the plan takes', () => {
    expect(keyframesOf(moveKeyframe(plan, 0, 1, { position: 1e9 }, whole), 0)[1]?.position).toBe(1_000_000);
  });
});

describe('adding', () => {
  test('goes half way to the next, at the end, in the widest gap, where there is room', () => {
    const plan = slideOn([at(0, 0), atFrame(101, 50), at(0.9, 300)]);
    expect(framesOf(addKeyframeAfter(plan, 0, 0, whole)?.plan as Plan)).toEqual([1, 51, 101, 271]);
    expect(addKeyframeAfter(plan, 0, 2, whole)).toMatchObject({ index: 3 });
    expect(framesOf(addKeyframeAfter(plan, 0, 2, whole)?.plan as Plan)).toEqual([1, 101, 271, 301]);
    expect(framesOf(addKeyframe(plan, 0, whole)?.plan as Plan)).toEqual([1, 101, 186, 271]);
    expect(addKeyframeAfter(slideOn([atFrame(5, 0), atFrame(6, 1)]), 0, 0, whole)).toBeNull();
    expect(addKeyframeAfter(slideOn([at(0, 0), at(1, 1)]), 0, 1, whole)).toBeNull();
  });

  test('is placed as the one before it, and not where one is', () => {
    const plan = slideOn([atTime(0, 0), at(1, 300)]);
    const added = addKeyframeAt(plan, 0, 75, whole);
    expect(keyframesOf(added?.plan as Plan, 0)[1]).toMatchObject({ at: 'time', timeS: 900 });
    expect(addKeyframeAt(added?.plan as Plan, 0, 75, whole)).toBeNull();
  });

  test('before the first and after the last the axis waits', () => {
    const plan = slideOn([atFrame(101, 40), atFrame(201, 80)]);
    const [before, after] = [20, 280].map((index) => addKeyframeAt(plan, 0, index, whole)?.plan as Plan);
    expect(keyframesOf(before as Plan, 0)[0]).toMatchObject({ frame: 21, position: 40 });
    expect(keyframesOf(after as Plan, 0)[2]).toMatchObject({ frame: 281, position: 80 });
    for (const added of [before, after]) expect([...stepsOf(added as Plan)]).toEqual([...stepsOf(plan)]);
  });

  test('no track takes more than a thousand', () => {
    const many = Array.from({ length: 1000 }, (_, k) => at(k / 2000, k));
    expect(addKeyframeAt(slideOn(many), 0, 290, whole)).toBeNull();
  });

  const eases: Ease[] = [
    { kind: 'linear' },
    { kind: 'hold' },
    { kind: 'smooth' },
    { kind: 'smoother' },
    { kind: 'ramped', headShare: 0.3, tailShare: 0.2 },
    { kind: 'ramped', headShare: 0, tailShare: 1 },
    { kind: 'cubicBezier', x1: 0.42, y1: 0, x2: 0.58, y2: 1 },
    { kind: 'cubicBezier', x1: 0.2, y1: 1.6, x2: 0.7, y2: 0.9 },
  ];

  // A microstep of the slide is 1/80 mm, and positions are kept to a thousandth of a millimetre.
  test.each(eases)('leaves the move as it is, $kind', (ease) => {
    const plan = slideOn([at(0, 0, ease), at(1, 300)]);
    const before = stepsOf(plan);
    for (const index of [30, 75, 150, 200, 290]) {
      const added = addKeyframeAt(plan, 0, index, whole)?.plan as Plan;
      expect(crossFaults(added)).toEqual([]);
      const off = stepsOf(added).map((step, k) => Math.abs(step - Number(before[k])));
      const worstMm = Math.max(...off) / 80;
      expect(worstMm, `${ease.kind} at ${index}`).toBeLessThanOrEqual(boundMm(ease, index / 300));
    }
  });

  /** Fifth orders, and ramps cut while they speed up or slow down, are no beziers: within 1.5 % of the travel. */
  function boundMm(ease: Ease, u: number): number {
    const cruising = ease.kind === 'ramped' && u >= ease.headShare && u <= 1 - ease.tailShare;
    return ease.kind === 'smoother' || (ease.kind === 'ramped' && !cruising) ? 4.5 : 1 / 80;
  }
});

test('between two frames next to each other no keyframe is placed at a frame', () => {
  const plan = slideOn([at(55 / 150, 0), at(0.37, 120), at(56 / 150, 300)], true);
  expect(placeBy(plan, 0, 1, 'frame', half)).toBe(plan);
});

describe('whatever is done', () => {
  const edit = fc.oneof(
    fc.record({ do: fc.constant('move' as const), k: fc.nat(9), index: fc.integer({ min: -50, max: 400 }) }),
    fc.record({ do: fc.constant('add' as const), k: fc.nat(9), index: fc.integer({ min: -50, max: 400 }) }),
    fc.record({ do: fc.constant('after' as const), k: fc.nat(9), index: fc.nat(2) }),
    fc.record({ do: fc.constant('place' as const), k: fc.nat(9), index: fc.nat(2) }),
    fc.record({ do: fc.constant('remove' as const), k: fc.nat(9), index: fc.nat(2) }),
  );

  test('keyframes stay in order and the plan holds together', () => {
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 30 }), fc.boolean(), (edits, back) => {
        const span = back ? half : whole;
        let plan = slideOn([at(0, 0), at(0.37, 120, { kind: 'smooth' }), at(1, 300)], back);
        for (const one of edits) {
          const count = keyframesOf(plan, 0).length;
          const k = one.k % count;
          if (one.do === 'move')
            plan = moveKeyframe(plan, 0, k, { index: one.index, position: one.index }, span);
          else if (one.do === 'add') plan = addKeyframeAt(plan, 0, one.index, span)?.plan ?? plan;
          else if (one.do === 'after') plan = addKeyframeAfter(plan, 0, k, span)?.plan ?? plan;
          else if (one.do === 'place')
            plan = placeBy(plan, 0, k, (['share', 'frame', 'time'] as const)[one.index] ?? 'share', span);
          else if (count > 1) plan = removeKeyframe(plan, 0, k);
          const places = framesOf(plan, span);
          expect(places.every((place, i) => i === 0 || place > Number(places[i - 1]))).toBe(true);
          expect(places.every((place) => place >= 1 && place <= span.lastIndex + 1 + 1e-9)).toBe(true);
          expect(crossFaults(plan)).toEqual([]);
        }
      }),
      { numRuns: 300 },
    );
  });
});

test('aimed axes are the first pan and the first tilt, if there is something to aim at', () => {
  const plan = testPlan();
  const aimed = { ...plan, subject: { ...plan.subject, used: true, aimed: true } };
  expect(aimedAxes(plan)).toEqual([]);
  expect(aimedAxes(aimed)).toEqual(['Pan']);
  expect(aimedAxes({ ...aimed, subject: { ...aimed.subject, used: false } })).toEqual([]);
});
