import { describe, expect, test } from 'vitest';
import { easeFunction } from '../../../src/engine/motion/ease.ts';
import { figuresOf, optionsOf } from '../../../src/engine/onset/outcome.ts';
import { cutTo, type Happened, type Keep, replanned } from '../../../src/engine/onset/rest.ts';
import {
  firstStretch,
  lastOpensMs,
  madeOf,
  opensMs,
  type Stretch,
} from '../../../src/engine/onset/stretch.ts';
import { newAxis, readPlan } from '../../../src/engine/plan/parse.ts';
import type { Ease, Plan } from '../../../src/engine/plan/schema.ts';
import { startFor } from '../../../src/engine/schedule.ts';
import { planFile, planOf } from '../../outputs/plans.ts';
import { harbour } from './demo.ts';

const DEMO = harbour();
const onTime = (plan: Plan): Stretch => firstStretch(plan, startFor(plan).startMs);
const WAS = onTime(DEMO);

/** Frame `shot + 1` opens later than planned. */
const late = (of: Stretch, shot: number, byS: number, more = 0): Happened => ({
  shot,
  nextMs: opensMs(madeOf(of), shot) + byS * 1000,
  endMs: lastOpensMs(of),
  more,
});

function rest(of: Stretch, happened: Happened, keep: Keep): Stretch {
  const planned = replanned(of, happened, keep);
  if ('why' in planned) throw new Error(planned.why);
  return planned.stretch;
}

const why = (of: Stretch, happened: Happened, keep: Keep): string => {
  const planned = replanned(of, happened, keep);
  return 'why' in planned ? planned.why : '';
};

describe('a rest that is planned again on time is what it was', () => {
  const shot = 137;
  const whole = madeOf(WAS);
  const left = madeOf(rest(WAS, late(WAS, shot, 0), 'clipAndInterval'));

  test('frame by frame: times, cards, light', () => {
    expect(left.totals.frames).toBe(386 - shot);
    for (let j = 0; j < left.totals.frames; j += 1) {
      expect(opensMs(left, j)).toBe(opensMs(whole, shot + j));
      expect(left.columns.cardBytes[j]).toBe((whole.columns.cardBytes[shot + j] ?? 0) - shot * 52e6);
      expect(left.columns.evScene?.[j]).toBeCloseTo(whole.columns.evScene?.[shot + j] ?? 0, 3);
    }
  });

  test('energy, and the swap at the same frame', () => {
    expect(left.sources[0]?.swapFrames).toEqual([311 - shot]);
    const gap = left.columns.sources.map(({ leftWh }, s) =>
      Math.max(...leftWh.map((wh, j) => Math.abs(wh - (whole.columns.sources[s]?.leftWh[shot + j] ?? 0)))),
    );
    // The rig's moves where an ease was cut are a little other ones.
    expect(Math.max(...gap)).toBeLessThan(0.02);
  });

  test('the rig begins and ends where it did, and goes nearly the same way between', () => {
    left.columns.axes.forEach((axis, a) => {
      const before = whole.columns.axes[a]?.steps ?? new Int32Array();
      expect([axis.steps[0], axis.steps.at(-1)]).toEqual([before[shot], before.at(-1)]);
      const range = axis.highestSteps - axis.lowestSteps;
      axis.steps.forEach((steps, j) => {
        expect(Math.abs(steps - (before[shot + j] ?? 0)) / range).toBeLessThan(0.01);
      });
    });
  });

  test('the plan of it is one that a file can hold', () => {
    const { plan } = rest(WAS, late(WAS, shot, 300), 'endAndInterval');
    const read = readPlan(JSON.parse(JSON.stringify(plan)));
    expect(read).toMatchObject({ ok: true });
  });
});

// 386 frames at 14 s, 5390 s; 5 min late, before the first frame. By hand:
describe('started five minutes late', () => {
  const happened = late(WAS, 0, 300);

  test('keeping clip and interval, the end is five minutes later', () => {
    const stretch = rest(WAS, happened, 'clipAndInterval');
    expect(madeOf(stretch).totals).toMatchObject({ frames: 386, intervalS: 14 });
    expect(lastOpensMs(stretch) - lastOpensMs(WAS)).toBe(300_000);
  });

  test('keeping end and interval, floor(5090 / 14) + 1 = 364 frames are left', () => {
    const stretch = rest(WAS, happened, 'endAndInterval');
    expect(madeOf(stretch).totals).toMatchObject({ frames: 364, intervalS: 14 });
    expect(lastOpensMs(stretch)).toBeLessThanOrEqual(lastOpensMs(WAS));
    expect(lastOpensMs(WAS) - lastOpensMs(stretch)).toBeLessThan(14_000);
  });

  test('keeping end and clip, the trigger goes down to 13 s: 5090 / 385 = 13.2', () => {
    const stretch = rest(WAS, happened, 'endAndClip');
    expect(madeOf(stretch).totals).toMatchObject({ frames: 386, intervalS: 13, dialS: 13 });
    expect(lastOpensMs(stretch)).toBeLessThanOrEqual(lastOpensMs(WAS));
  });

  test('the consequences are said: figures, and findings that come and go', () => {
    const options = optionsOf({ plan: DEMO, of: WAS, was: WAS, lost: 0, happened });
    const said = new Map(options.map((option) => [option.keep, option]));
    const fewer = said.get('endAndInterval');
    if (!fewer || 'why' in fewer) throw new Error('cannot be had');
    expect([fewer.now.frames, fewer.before.frames]).toEqual([364, 386]);
    expect(fewer.now.clipS).toBeCloseTo(364 / 25, 9);
    const later = said.get('clipAndInterval');
    if (!later || 'why' in later) throw new Error('cannot be had');
    expect(later.now.endMs - later.before.endMs).toBe(300_000);
    // Half an hour later the night is darker than the ramp reaches.
    const muchLater = optionsOf({ plan: DEMO, of: WAS, was: WAS, lost: 0, happened: late(WAS, 0, 5400) })[0];
    if (!muchLater || 'why' in muchLater) throw new Error('cannot be had');
    expect(muchLater.came.map(({ id }) => id)).toContain('outside-window');
    const ranks = muchLater.came.map(({ severity }) => ['stop', 'warning', 'note'].indexOf(severity));
    expect(ranks).toEqual([...ranks].sort());
  });
});

describe('what cannot be had says why', () => {
  test('the end is past', () => {
    expect(why(WAS, late(WAS, 0, 6000), 'endAndInterval')).toBe('The end that was planned is past.');
    expect(why(WAS, late(WAS, 0, 6000), 'endAndClip')).toBe('The end that was planned is past.');
  });

  test('the cycle does not fit into a shorter interval', () => {
    // 100 frames in 886 s instead of 1386 leave 8 s each: with 6.35 s of exposure (6 s marked) the rig needs over 9 s.
    const steady = { ...DEMO.exposure, shutterS: 6, ramp: { ...DEMO.exposure.ramp, used: false } };
    const of = onTime({ ...DEMO, exposure: steady });
    expect(why(of, late(of, 286, 500), 'endAndClip')).toMatch(/8.s/);
    expect(replanned(of, late(of, 286, 500), 'endAndInterval')).toHaveProperty('stretch');
  });

  test('the trigger cannot be set so short', () => {
    const slow = { ...DEMO, trigger: { ...DEMO.trigger, minS: 14 } };
    expect(why(onTime(slow), late(onTime(slow), 0, 300), 'endAndClip')).toMatch(
      /It would take an interval of 13\.2\d.s; the shortest that Wired trigger can be set to is 14.s\./,
    );
  });

  test('all frames are shot', () => {
    expect(why(WAS, late(WAS, 386, 0), 'clipAndInterval')).toBe('All frames are shot.');
  });
});

describe('paused, lost, stopped', () => {
  test('after a pause of 4 min at frame 200 the frames before it stay counted', () => {
    const stretch = rest(WAS, late(WAS, 200, 240), 'endAndInterval');
    expect(stretch.framesBefore).toBe(200);
    // 186 frames at 14 s were left: 2590 s, of which 2350 remain: floor(2350 / 14) + 1.
    expect(madeOf(stretch).totals.frames).toBe(168);
    expect(figuresOf(DEMO, stretch, 0)).toMatchObject({ frames: 368, clipS: 368 / 25 });
  });

  test('the packs go on draining over a pause', () => {
    const [on, off] = [0, 3600].map(
      (s) => rest(WAS, late(WAS, 100, s), 'clipAndInterval').usedWh['Rig pack'] ?? 0,
    );
    // By hand: controller 1.2 W / 0.9 and the axes' holding 2.2 + 1.1 W, for an hour.
    expect((off ?? 0) - (on ?? 0)).toBeCloseTo(1.2 / 0.9 + 3.3, 6);
  });

  test('cards have the room, and the packs the charge, that the frames before have left', () => {
    // 32 GB less 5 % in reserve, less 200 frames of 52 MB.
    const half = madeOf(rest(WAS, late(WAS, 200, 0), 'clipAndInterval'));
    expect(half.cards[0]?.usableBytes).toBeCloseTo(32e9 * 0.95 - 200 * 52e6, -1);
    // The swap before frame 311 is still to be made when 310 are shot; ten frames later it is not.
    const due = rest(WAS, late(WAS, 310, 0), 'clipAndInterval');
    expect(madeOf(due).sources[0]?.swapFrames).toEqual([1]);
    const after = rest(WAS, late(WAS, 320, 0), 'clipAndInterval');
    expect(madeOf(after).sources[0]?.swapFrames).toEqual([]);
    expect([due, after].map(({ plan }) => plan.power.sources[0]?.count)).toEqual([3, 2]);
  });

  test('lost frames are made up for at the end, or leave the clip shorter', () => {
    const happened = late(WAS, 100, 0, 3);
    const longer = rest(WAS, happened, 'clipAndInterval');
    expect(figuresOf(DEMO, longer, 3)).toMatchObject({ frames: 389, clipS: 386 / 25 });
    expect(lastOpensMs(longer) - lastOpensMs(WAS)).toBe(3 * 14_000);
    expect(figuresOf(DEMO, rest(WAS, happened, 'endAndInterval'), 3)).toMatchObject({
      frames: 386,
      clipS: 383 / 25,
    });
  });

  test('stopped early the rig goes as it would have gone', () => {
    const cut = cutTo(WAS, 250);
    const [made, whole] = [madeOf(cut), madeOf(WAS)];
    expect(made.totals.frames).toBe(250);
    expect(opensMs(made, 249)).toBe(opensMs(whole, 249));
    made.columns.axes.forEach((axis, a) => {
      expect(axis.steps.at(-1)).toBe(whole.columns.axes[a]?.steps[249]);
    });
    expect(madeOf(cutTo(WAS, 1)).totals.frames).toBe(1);
  });

  test('replanned twice, everything is still in its place', () => {
    const once = rest(WAS, late(WAS, 100, 60), 'clipAndInterval');
    const twice = rest(once, late(once, 100, 60), 'clipAndInterval');
    expect(twice.framesBefore).toBe(200);
    expect(lastOpensMs(twice) - lastOpensMs(WAS)).toBe(120_000);
    expect(madeOf(twice).columns.axes[0]?.steps[0]).toBe(madeOf(WAS).columns.axes[0]?.steps[200]);
  });
});

describe('a track that is cut', () => {
  const EASES: Ease[] = [
    { kind: 'linear' },
    { kind: 'hold' },
    { kind: 'smooth' },
    { kind: 'smoother' },
    { kind: 'cubicBezier', x1: 0.2, y1: 0, x2: 0.5, y2: 1 },
    { kind: 'ramped', headShare: 0.2, tailShare: 0.3 },
  ];
  const planWith = (ease: Ease, thereAndBack: boolean): Plan =>
    planOf({
      pacing: { workedOut: 'event', intervalS: 10, clipLengthS: 8 },
      rig: { axes: [{ ...newAxis(), name: 'Slide', kind: 'slide', travelMin: 0, travelMax: 1000 }] },
      move: {
        mode: 'moveShootMove',
        tracks: [
          {
            axis: 'Slide',
            thereAndBack,
            keyframes: [
              { share: 0.1, position: 100, ease },
              { share: 0.9, position: 900, ease: { kind: 'linear' } },
            ],
          },
        ],
      },
    });

  test.each(EASES.flatMap((ease) => [false, true].map((back) => [ease.kind, back, ease] as const)))(
    '%s, there and back %s: the rest is as it was',
    (_, back, ease) => {
      const of = onTime(planWith(ease, back));
      const before = madeOf(of).columns.axes[0];
      const perMm = before?.stepsPerUnit ?? 1;
      for (const shot of [1, 30, 77, 120, 199]) {
        const left = madeOf(rest(of, late(of, shot, 0), 'clipAndInterval')).columns.axes[0];
        const misses = [...(left?.steps ?? [])].map((steps, j) =>
          Math.abs(steps - (before?.steps[shot + j] ?? 0)),
        );
        // All but the fifth-order ease are cut exactly, to the whole step at which the rig stands.
        const exact = ['linear', 'hold', 'smooth', 'cubicBezier', 'ramped'].includes(ease.kind);
        expect(Math.max(...misses)).toBeLessThanOrEqual(exact ? 1 : 800 * perMm * 0.015);
      }
    },
  );

  test('eases are what the test says', () => {
    expect(easeFunction({ kind: 'smooth' })(0.5)).toBe(0.5);
  });
});

test('an end-to-start trigger keeps its dial setting', () => {
  const plan = planOf({
    ...planFile({}),
    pacing: { workedOut: 'clip', eventS: 600, intervalS: 8 },
    trigger: { counts: 'endToStart', stepS: 1, minS: 1 },
    exposure: { shutterS: 2 },
    camera: { exactStops: true, shutterLagS: 0.1, writeS: 0.5 },
  });
  const of = onTime(plan);
  const { dialS, frames, intervalS } = madeOf(of).totals;
  const left = madeOf(rest(of, late(of, 20, 30), 'clipAndInterval')).totals;
  expect(left).toMatchObject({ dialS, intervalS, frames: frames - 20 });
  const shorter = madeOf(rest(of, late(of, 20, 100), 'endAndClip')).totals;
  expect(shorter.frames).toBe(frames - 20);
  expect(shorter.dialS).toBeLessThan(dialS);
  expect(Number.isInteger(shorter.dialS)).toBe(true);
});
