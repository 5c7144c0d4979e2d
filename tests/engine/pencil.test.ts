/**
 * A job worked out with a pencil: 12 s at 25 fps of a 40-minute event, on a slide of 300 mm, with one battery for
 * camera and slide. Everything else is as in a new plan. The figures are written out beside each check.
 */
import { describe, expect, test } from 'vitest';
import { defaultPlan, newAxis, newKeyframe } from '../../src/engine/plan/parse.ts';
import type { Ease, Plan } from '../../src/engine/plan/schema.ts';
import { schedule } from '../../src/engine/schedule.ts';

function job(ease: Ease): Plan {
  const plan = defaultPlan();
  plan.clip.frameRate = '25';
  plan.pacing = { ...plan.pacing, workedOut: 'interval', clipLengthS: 12, eventS: 2400 };
  plan.rig = { ...plan.rig, axes: [{ ...newAxis(), name: 'Slide', travelMax: 300, source: 'Camera pack' }] };
  plan.power = {
    ...plan.power,
    sources: plan.power.sources.map((source) => ({ ...source, count: 1 })),
  };
  plan.move = {
    ...plan.move,
    mode: 'moveShootMove',
    tracks: [
      {
        axis: 'Slide',
        thereAndBack: false,
        keyframes: [
          newKeyframe({ share: 0, position: 0, ease }),
          newKeyframe({ share: 1, position: 300, ease }),
        ],
      },
    ],
  };
  return plan;
}

describe('12 s at 25 fps of 40 minutes, straight', () => {
  const { totals, columns, sources, cards, findings, counts, events } = schedule(job({ kind: 'linear' }));

  test('pacing', () => {
    // 12 x 25 = 300 frames; 2400/299 = 8.0268 s; whole seconds: 8 s; 2400/8 = 300 intervals: 301 frames.
    expect(totals.rawIntervalS).toBeCloseTo(8.026756, 6);
    expect(totals).toMatchObject({
      intervalS: 8,
      dialS: 8,
      frames: 301,
      clipFrames: 301,
      eventDurationS: 2400,
    });
    // 301/25 = 12.04 s; 8 x 25 = 200 times as fast.
    expect(totals.clipLengthS).toBeCloseTo(12.04, 12);
    expect(totals.speedUp).toBe(200);
  });

  test('clock: noon to 12:40', () => {
    expect(totals.firstFrameAt).toBe('2026-06-21T12:00:00+00:00');
    expect(totals.lastFrameAt).toBe('2026-06-21T12:40:00+00:00');
  });

  test('move: 1 mm between frames, 80 steps each', () => {
    // 200 x 16 / 40 = 80 steps a mm; 300 mm in 300 moves.
    const steps = columns.axes[0]?.steps ?? new Int32Array();
    expect(steps[0]).toBe(0);
    expect(steps[300]).toBe(24_000);
    expect(new Set(Array.from(steps.subarray(1), (step, k) => step - (steps[k] ?? 0)))).toEqual(
      new Set([80]),
    );
    // 20 mm/s and 40 mm/s2: top speed needs 10 mm; 1 mm is a triangle: 2 sqrt(1/40) = 0.316228 s.
    expect(columns.moveS[0]).toBeCloseTo(0.316228, 6);
    expect(columns.moveS[300]).toBe(0);
  });

  test('cycle', () => {
    // Shutter 1/60 is 1/64 = 0.015625 s. Camera: 0.1 + 0.015625 + 0.8 = 0.915625 s.
    expect(columns.cameraS[0]).toBeCloseTo(0.915625, 12);
    // Rig: 0.115625 + 0.316228 + 1 = 1.431853 s.
    expect(columns.rigS[0]).toBeCloseTo(1.431853, 6);
    // Spare: 8 - 0.5 - 1.431853 = 6.068147 s; shortest: 1.431853 + 0.5.
    expect(totals.tightestSpareS).toBeCloseTo(6.068147, 6);
    expect(totals.shortestIntervalS).toBeCloseTo(1.931853, 6);
  });

  test('power: one battery is enough', () => {
    // Camera, a frame: 4 W x 0.815625 s + 2 W x 7.184375 s = 17.63125 J, 300 times; the last 4 x 0.815625 + 2 x 0.1.
    const cameraJ = 300 * 17.63125 + 3.4625;
    // Slide: 6 W x 0.316228 s + 1.5 W x 7.683772 s = 13.423025 J, 300 times; the last 1.5 x 0.915625.
    const slideJ = 300 * (6 * 0.31622777 + 1.5 * (8 - 0.31622777)) + 1.5 * 0.915625;
    expect(cameraJ + slideJ).toBeCloseTo(9321.12, 2);
    expect(sources[0]?.drawnWh).toBeCloseTo(9321.12 / 3600, 5);
    // 7.2 V x 2 Ah = 14.4 Wh; at 20 degrees 96 % of it; 15 % kept: 11.7504 Wh.
    expect(sources[0]?.ratedWh).toBeCloseTo(14.4, 12);
    expect(sources[0]?.usableWh).toBeCloseTo(11.7504, 10);
    expect(sources[0]).toMatchObject({ needed: 1, swapFrames: [], shortAtFrame: null });
  });

  test('card: 301 frames of 42 MB', () => {
    expect(totals.frameBytes).toBe(42e6);
    expect(totals.storageBytes).toBe(12_642e6);
    expect(cards[0]).toMatchObject({
      firstFrame: 1,
      lastFrame: 301,
      usedBytes: 12_642e6,
      usableBytes: 60_800e6,
    });
  });

  test('it can be shot', () => {
    expect(counts).toMatchObject({ stop: 0, warning: 0 });
    expect(findings.filter(({ severity }) => severity !== 'note')).toEqual([]);
    expect(events.map(({ kind, frame }) => [kind, frame])).toEqual([
      ['firstFrame', 1],
      ['lastFrame', 301],
    ]);
  });
});

describe('the same, eased in and out', () => {
  const { columns, counts } = schedule(job({ kind: 'smooth' }));
  const steps = columns.axes[0]?.steps ?? new Int32Array();

  test('the same ends and middle, slow at the ends', () => {
    // 3u2 - 2u3 at 1/300: 3.326e-5 x 24 000 = 0.798 steps: one. At a quarter 0.15625, at the half 0.5.
    expect([0, 1, 75, 150, 300].map((k) => steps[k])).toEqual([0, 1, 3750, 12_000, 24_000]);
  });

  test('the longest move is in the middle: 1.5 mm', () => {
    // Slope 1.5 in the middle: 120 steps = 1.5 mm, 2 sqrt(1.5/40) = 0.387298 s.
    const longest = Math.max(...columns.moveS);
    expect(longest).toBeCloseTo(0.387298, 3);
    expect(Math.abs(columns.moveS.indexOf(longest) - 149.5)).toBeLessThan(15);
    expect(counts.stop).toBe(0);
  });
});
