import { describe, expect, test } from 'vitest';
import { crossingIntervalS, paceOf } from '../../../src/engine/pacing/pacing.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { plainPlan, type Some } from '../../reference/plans.ts';

const pace = (change: Some<Plan>) => paceOf(plainPlan(10, 10, { trigger: { stepS: 1, minS: 1 }, ...change }));

describe('the event is worked out', () => {
  test('fence posts, not rails: 300 frames every 8 s take 299 intervals', () => {
    const { frames, eventDurationS } = pace({
      clip: { frameRate: '25' },
      pacing: { workedOut: 'event', clipLengthS: 12, intervalS: 8 },
    });
    expect([frames, eventDurationS]).toEqual([300, 2392]);
  });

  test('one frame takes no time', () => {
    const { frames, eventDurationS } = pace({
      pacing: { workedOut: 'event', clipLengthS: 0.5, intervalS: 8 },
    });
    expect([frames, eventDurationS]).toEqual([1, 0]);
  });

  test('23.976: 12.012 s are 288 frames exactly, and not one more', () => {
    const clip = { frameRate: '24000/1001' };
    expect(pace({ clip, pacing: { workedOut: 'event', clipLengthS: 12.012, intervalS: 8 } }).frames).toBe(
      288,
    );
    expect(pace({ clip, pacing: { workedOut: 'event', clipLengthS: 12.0121, intervalS: 8 } }).frames).toBe(
      289,
    );
    expect(pace({ clip, pacing: { workedOut: 'event', clipLengthS: 10, intervalS: 8 } }).frames).toBe(240);
  });

  test('handles stand at both ends and are not part of the clip', () => {
    const got = pace({
      clip: { frameRate: '25', handlesFrames: 12 },
      pacing: { workedOut: 'event', clipLengthS: 10, intervalS: 4 },
    });
    expect(got).toMatchObject({ frames: 274, clipFrames: 274, clipLengthS: 10, eventDurationS: 1092 });
  });

  test('on twos: half the exposures, rounded up, each held for two frames', () => {
    const got = pace({
      clip: { frameRate: '24', holdFrames: 2, handlesFrames: 1 },
      pacing: { workedOut: 'event', clipLengthS: 2.1, intervalS: 30 },
    });
    // ceil(50.4) = 51, and 2 handles: 53 frames, 27 exposures, 54 frames.
    expect(got).toMatchObject({ frames: 27, clipFrames: 54 });
    expect(got.clipLengthS).toBeCloseTo(52 / 24, 12);
    expect(got.speedUp).toBeCloseTo((30 * 24) / 2, 9);
  });
});

describe('the interval is worked out', () => {
  const worked = (eventS: number, clipLengthS: number, trigger: Some<Plan['trigger']>) =>
    pace({ clip: { frameRate: '25' }, pacing: { workedOut: 'interval', eventS, clipLengthS }, trigger });

  test('rounded down to the dial, and counted again: 30 min in 10 s', () => {
    // 1800/249 = 7.2289: dial 7; 1800/7 = 257.1: 258 frames.
    const got = worked(1800, 10, { stepS: 1, minS: 1 });
    expect(got).toMatchObject({ intervalS: 7, dialS: 7, frames: 258, eventDurationS: 1799, settable: true });
    expect(got.rawIntervalS).toBeCloseTo(1800 / 249, 12);
  });

  test('half seconds', () => {
    // Dial 7; in quarters 7; in tenths 7.2, 1800/7.2 = 250 exactly: 251 frames.
    expect(worked(1800, 10, { stepS: 0.5 })).toMatchObject({ dialS: 7, frames: 258 });
    expect(worked(1800, 10, { stepS: 0.1, minS: 0.1 })).toMatchObject({
      dialS: 7.2,
      frames: 251,
      eventDurationS: 1800,
    });
  });

  test('an interval that the dial has is not rounded at all', () => {
    // 249 x 7.2 = 1792.8.
    expect(worked(1792.8, 10, { stepS: 0.1, minS: 0.1 })).toMatchObject({
      dialS: 7.2,
      frames: 250,
      eventDurationS: 1792.8,
    });
  });

  test('the longest setting caps it', () => {
    expect(worked(100_000, 2, { stepS: 1, maxS: 30 })).toMatchObject({
      dialS: 30,
      frames: 3334,
      settable: true,
    });
  });

  test('below the shortest setting it cannot be set, and stays what it is', () => {
    expect(worked(100, 10, { stepS: 1, minS: 1 })).toMatchObject({
      settable: false,
      frames: 250,
      rawIntervalS: 100 / 249,
      intervalS: 100 / 249,
    });
  });

  test('a clip of one frame: two are the least that span an event', () => {
    expect(worked(60, 0.01, { stepS: 1, minS: 1 })).toMatchObject({ frames: 2, intervalS: 60 });
  });
});

describe('the clip is worked out', () => {
  test('every whole interval that the event holds, and one more frame', () => {
    const clip = { frameRate: '25' };
    const at = (eventS: number, intervalS: number) =>
      pace({ clip, pacing: { workedOut: 'clip', eventS, intervalS }, trigger: { stepS: 0.1, minS: 0.1 } });
    expect(at(2400, 8)).toMatchObject({ frames: 301, eventDurationS: 2400, clipLengthS: 12.04 });
    expect(at(2399.99, 8).frames).toBe(300);
    expect(at(7, 8).frames).toBe(1);
    // 0.3/0.1 is 2.9999999999999996 in doubles.
    expect(at(0.3, 0.1).frames).toBe(4);
  });

  test('handles that take everything leave no clip', () => {
    expect(
      pace({ clip: { handlesFrames: 20 }, pacing: { workedOut: 'clip', eventS: 90, intervalS: 10 } })
        .clipLengthS,
    ).toBe(0);
  });
});

describe('a trigger that counts from closing to opening', () => {
  const endToStart = (change: Some<Plan>) =>
    pace({ ...change, trigger: { stepS: 1, minS: 1, counts: 'endToStart', ...change.trigger } });

  test('the dial is the interval less the open shutter', () => {
    const got = endToStart({
      exposure: { shutterS: 0.7 },
      pacing: { workedOut: 'clip', eventS: 870, intervalS: 8.7 },
    });
    expect(got).toMatchObject({ dialS: 8, intervalS: 8.7, frames: 101, settable: true });
  });

  test('an interval between two settings is stretched to the nearer', () => {
    const at = (intervalS: number) =>
      endToStart({ exposure: { shutterS: 0.5 }, pacing: { workedOut: 'event', intervalS } });
    expect(at(8)).toMatchObject({ dialS: 8, intervalS: 8.5, rawIntervalS: 8 });
    expect(at(7.9)).toMatchObject({ dialS: 7, intervalS: 7.5 });
  });

  test('worked out, it goes down', () => {
    // 51 frames: raw 8.7, open 0.7: dial 8 exactly.
    expect(
      endToStart({
        exposure: { shutterS: 0.7 },
        pacing: { workedOut: 'interval', eventS: 435, clipLengthS: 51 },
      }),
    ).toMatchObject({ dialS: 8, intervalS: 8.7, frames: 51 });
    expect(
      endToStart({
        exposure: { shutterS: 0.8 },
        pacing: { workedOut: 'interval', eventS: 435, clipLengthS: 51 },
      }),
    ).toMatchObject({ dialS: 7, intervalS: 7.8, frames: 56 });
  });

  test('lag is no open shutter, but the lag between two shots of a bracket passes while it waits', () => {
    const camera = { shutterLagS: 0.3, writeS: 0.2 };
    const one = endToStart({
      camera,
      exposure: { shutterS: 2 },
      pacing: { workedOut: 'event', intervalS: 10 },
    });
    expect(one).toMatchObject({ dialS: 8, intervalS: 10 });
    // Two of 1 and 4 s with half-way 2 s, spaced 2 stops: 1 + write 0.2 + lag 0.3 + 4 = 5.5 s.
    const two = endToStart({
      camera,
      exposure: { shutterS: 2, bracketCount: 2, bracketStops: 2 },
      pacing: { workedOut: 'event', intervalS: 10.5 },
    });
    expect(two).toMatchObject({ dialS: 5, intervalS: 10.5 });
  });

  test('an interval shorter than the exposure cannot be set', () => {
    const got = endToStart({ exposure: { shutterS: 20 }, pacing: { workedOut: 'event', intervalS: 10 } });
    expect(got.settable).toBe(false);
    expect(got.intervalS).toBe(10);
  });
});

describe('settable or not', () => {
  test.each([
    [7, 1, true],
    [7.5, 1, false],
    [7.5, 0.5, true],
    [0.3, 0.1, true],
    [0.35, 0.1, false],
    [4000, 1, false],
    [0.5, 0.5, false],
  ])('%d s on a dial of %d s steps, from 1 to 3600: %s', (intervalS, stepS, settable) => {
    const minS = stepS === 0.1 ? 0.1 : 1;
    expect(
      pace({ pacing: { workedOut: 'event', intervalS }, trigger: { stepS, minS, maxS: 3600 } }).settable,
    ).toBe(settable);
  });
});

describe('a subject that crosses the frame', () => {
  test.each([
    // A cloud takes 10 min and should take 8 s at 25 fps: 600/200.
    [600, 8, 25, 3],
    [60, 4, 24000 / 1001, 60 / (4 * (24000 / 1001))],
  ])('%d s in %d s at %d fps: every %d s', (realS, screenS, rate, want) =>
    expect(crossingIntervalS(realS, screenS, rate)).toBeCloseTo(want, 12),
  );

  test.each([
    [0, 8, 25, 'realS'],
    [60, -1, 25, 'screenS'],
    [60, 8, Number.NaN, 'frameRate'],
  ])('%d, %d, %d is refused and %s named', (realS, screenS, rate, name) =>
    expect(() => crossingIntervalS(realS, screenS, rate)).toThrow(new RegExp(name)),
  );
});
