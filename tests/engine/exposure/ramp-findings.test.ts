import { describe, expect, test } from 'vitest';
import type { Finding, FindingId } from '../../../src/engine/findings/types.ts';
import type { Plan, RampStep } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { plainPlan, type Some } from '../../reference/plans.ts';

const step = (setting: RampStep['setting'], to: number, change: Partial<RampStep> = {}): RampStep => ({
  setting,
  to,
  step: 'third',
  by: 'camera',
  ...change,
});

type Exposure = Some<Plan['exposure']>;

/** 100 frames every 10 s of steady studio light; f/8 at 1/60, ISO 100: right for EV 12. */
const studio = (studioEv: number, exposure: Exposure = {}, change: Some<Plan> = {}) =>
  plainPlan(100, 10, {
    light: { kind: 'studio', studioEv },
    camera: { exactStops: true },
    exposure: { shutterS: 1 / 60, apertureF: 8, iso: 100, timedBy: 'camera', ...exposure },
    ...change,
  });

/** Two hours over a sunset on the equator, 720 frames: EV falls from about 13 to the night's. */
const dusk = (ramp: Some<Plan['exposure']['ramp']>, exposure: Exposure = {}, change: Some<Plan> = {}) =>
  plainPlan(720, 10, {
    start: { date: '2026-03-20', time: '17:10' },
    place: { latitudeDeg: 0, longitudeDeg: 0, zone: 'Etc/UTC' },
    light: { kind: 'sky' },
    camera: { exactStops: true },
    exposure: {
      shutterS: 1 / 125,
      apertureF: 8,
      iso: 100,
      timedBy: 'camera',
      ...exposure,
      ramp: { used: true, ...ramp },
    },
    ...change,
  });

const found = (plan: Plan, id: FindingId) => schedule(plan).findings.filter((finding) => finding.id === id);
const figure = (finding: Finding | undefined, name: string) => finding?.values[name];
const text = (message: string | undefined) => message?.replaceAll('\u00A0', ' ');

describe('light out of range', () => {
  test('settings that stay within the tolerance are fine', () => {
    expect(found(studio(12.4), 'light-out-of-range')).toEqual([]);
    expect(found(studio(11.6), 'light-out-of-range')).toEqual([]);
  });

  test('says which side, by how much, in how many frames and where the ramp ends', () => {
    const [bright] = found(studio(14), 'light-out-of-range');
    expect(bright).toMatchObject({
      severity: 'warning',
      frame: 1,
      values: { frames: 100, worstStops: 2, side: 'too bright' },
    });
    expect(text(bright?.message)).toBe(
      '100 frames up to 2 stops too bright, from frame 1: the settings stay at 1/60, f/8, ISO 100.',
    );
    const [dark] = found(studio(10.5), 'light-out-of-range');
    expect(dark?.values).toMatchObject({ worstStops: 1.5, side: 'too dark' });
  });

  test('more than three stops is beyond saving', () => {
    expect(found(studio(9), 'light-out-of-range')[0]?.severity).toBe('warning');
    expect(found(studio(8.9), 'light-out-of-range')[0]?.severity).toBe('stop');
  });

  test('a ramp that reaches far enough has none; one that ends too soon says from which frame', () => {
    const far = dusk({
      steps: [step('shutter', 4), step('iso', 51_200), step('aperture', 1.4)],
    });
    expect(found(far, 'light-out-of-range')).toEqual([]);
    const near = dusk({ steps: [step('shutter', 1)] });
    const { columns } = schedule(near);
    const [dark, ...more] = found(near, 'light-out-of-range');
    expect(more).toEqual([]);
    const error = columns.evError as Float32Array;
    const first = error.findIndex((stops) => stops < -0.5);
    expect(dark?.frame).toBe(first + 1);
    expect(figure(dark, 'frames')).toBe(error.filter((stops) => stops < -0.5).length);
    expect(figure(dark, 'worstStops')).toBeCloseTo(-Math.min(...error), 5);
    expect(dark?.message).toContain('the ramp ends at 1\u00A0s, f/8, ISO\u00A0100');
  });

  test('an error within the ramp is no end of it', () => {
    // Steps of a stop and a hysteresis of one leave errors of up to 1.5 stops, and no frame out of range.
    const coarse = dusk({
      hysteresisStops: 1,
      toleranceStops: 0.1,
      steps: [
        step('shutter', 4, { step: 'full' }),
        step('iso', 51_200, { step: 'full' }),
        step('aperture', 1.4, { step: 'full' }),
      ],
    });
    const worst = Math.max(...((schedule(coarse).columns.evError ?? []) as Float32Array).map(Math.abs));
    expect(worst).toBeGreaterThan(1.3);
    expect(
      found(coarse, 'light-out-of-range').filter((finding) => figure(finding, 'side') === 'too dark'),
    ).toEqual([]);
  });

  test('light that is not planned says nothing', () => {
    expect(found(studio(3, {}, { light: { kind: 'none' } }), 'light-out-of-range')).toEqual([]);
  });
});

describe('a shutter beyond the cycle', () => {
  const steps = [step('shutter', 15)];

  test('says what the cycle leaves and where the step ends', () => {
    const [cut] = found(dusk({ steps }), 'shutter-beyond-cycle');
    expect(cut).toMatchObject({
      severity: 'warning',
      values: { step: 1, wantedS: 15, reachedS: 8, binds: 'cycle' },
    });
    expect(text(cut?.message)).toBe(
      'Step 1 of the ramp (shutter) asks for 15 s; the cycle leaves room for 10 s, so it ends at 8 s.',
    );
    expect(found(dusk({ steps: [step('shutter', 8)] }), 'shutter-beyond-cycle')).toEqual([]);
  });

  test('by the angle it is what was asked for', () => {
    const [cut] = found(dusk({ steps }, { shutterAngleMaxDeg: 180 }), 'shutter-beyond-cycle');
    expect(cut).toMatchObject({ severity: 'note', values: { reachedS: 4, binds: 'angle' } });
    expect(text(cut?.message)).toContain('a shutter angle of 180° allows 5 s, so it ends at 4 s');
  });
});

test('steps that lead nowhere are noted one by one', () => {
  const notes = found(
    dusk({ steps: [step('shutter', 1 / 250), step('iso', 100), step('iso', 700)] }),
    'ramp-step-idle',
  );
  expect(notes.map(({ message }) => text(message))).toEqual([
    'Step 1 of the ramp (shutter), to 0.004 s, would go back towards brighter light and is left out.',
    'Step 2 of the ramp (ISO), to ISO 100, changes nothing.',
    'Step 3 of the ramp (ISO), to ISO 700, ends at ISO 640, the last mark on the way.',
  ]);
  expect(notes.every(({ severity }) => severity === 'note')).toBe(true);
});

describe('a change by hand', () => {
  const byHand = (changeS: number) =>
    dusk({ changeS, steps: [step('shutter', 4), step('iso', 6400, { step: 'full', by: 'hand' })] });

  test('that fits into the interval is fine', () => {
    expect(found(byHand(4), 'change-does-not-fit')).toEqual([]);
  });

  test('that does not says how many frames it loses', () => {
    // At 4 s of shutter 6 s are free: 25 s need 19 more, two intervals of 10 s.
    const [late] = found(byHand(25), 'change-does-not-fit');
    expect(late).toMatchObject({ severity: 'warning', values: { changeS: 25, lostFrames: 2 } });
    expect(text(late?.message)).toContain('ISO 100 to 200 by hand takes 25 s and loses 2 frames');
    const changes = schedule(byHand(25)).exposure?.changes ?? [];
    expect(late?.frame).toBe(changes.find(({ by }) => by === 'hand')?.frame);
    expect(figure(late, 'allLostFrames')).toBe(2 * Number(figure(late, 'changes')));
  });

  test('by the camera takes no time', () => {
    expect(
      found(dusk({ changeS: 25, steps: [step('shutter', 4), step('iso', 6400)] }), 'change-does-not-fit'),
    ).toEqual([]);
  });
});

describe('an interval that grows', () => {
  const steps = [step('shutter', 8)];
  const endToStart = { counts: 'endToStart', stepS: 0.5, minS: 1 } as const;
  const growing = (change: Some<Plan> = {}) => dusk({ steps }, {}, { trigger: endToStart, ...change });

  test('says from what to what, how much later it ends, and which setting would keep the end', () => {
    const [grows] = found(growing(), 'interval-grows');
    const { columns, totals } = schedule(growing());
    const longest = Math.max(...columns.intervalS);
    expect(grows?.values).toMatchObject({ longestIntervalS: longest });
    expect(longest).toBeCloseTo(totals.dialS + 8, 9);
    const end = columns.elapsedS.at(-1) as number;
    const laterS = end - 719 * (columns.intervalS[0] as number);
    expect(figure(grows, 'laterS')).toBeCloseTo(laterS, 6);
    expect(laterS).toBeGreaterThan(600);
    // That setting ends in time; the next one of the trigger would not. 1/125 is open for 1/128 s.
    const keepDialS = Number(figure(grows, 'keepDialS'));
    const endAt = (dialS: number) => {
      const pacing = { workedOut: 'event', clipLengthS: 720, intervalS: dialS + 1 / 128 } as const;
      const kept = schedule(growing({ pacing }));
      expect(kept.totals.dialS).toBe(dialS);
      return kept.columns.elapsedS.at(-1) as number;
    };
    expect(endAt(keepDialS)).toBeLessThan(end - laterS + 15);
    expect(endAt(keepDialS + 0.5)).toBeGreaterThan(end - laterS - 15);
  });

  test('within an event that is given costs frames', () => {
    const plan = growing({ pacing: { workedOut: 'clip', eventS: 7200, intervalS: 10 } });
    const [grows] = found(plan, 'interval-grows');
    const { columns, totals } = schedule(plan);
    const steady = Math.floor(7200 / (columns.intervalS[0] as number)) + 1;
    expect(figure(grows, 'fewer')).toBe(steady - totals.frames);
    expect(figure(grows, 'fewer')).toBeGreaterThan(50);
  });

  test('start to start does not', () => {
    expect(found(dusk({ steps }), 'interval-grows')).toEqual([]);
  });
});

describe('blur', () => {
  test('is only spoken of if an angle was asked for and the first settings exceed it', () => {
    const blurred = studio(2, { shutterS: 6, shutterAngleMaxDeg: 180 });
    const [note] = found(blurred, 'blur-share');
    expect(note).toMatchObject({ severity: 'note', frame: 1, values: { allowedDeg: 180 } });
    // A mark of 6 s is open for 6.35 s of 10.
    expect(figure(note, 'angleDeg')).toBeCloseTo(36 * 2 ** (8 / 3), 9);
    expect(found(studio(2, { shutterS: 6 }), 'blur-share')).toEqual([]);
    expect(found(studio(2, { shutterS: 4, shutterAngleMaxDeg: 180 }), 'blur-share')).toEqual([]);
  });
});

describe('ripple', () => {
  const lamps = { mainsHz: '60', depthShare: 1, limitShare: 0.01 } as const;

  test('says what is left at the real time, and the nearest times that keep within', () => {
    const [ripple] = found(studio(12, {}, { lamps }), 'ripple');
    expect(ripple).toMatchObject({ severity: 'warning', frame: 1 });
    // 6.5 % to either side.
    expect(figure(ripple, 'worstChangeShare')).toBeCloseTo(0.12994, 4);
    expect(text(ripple?.message)).toMatch(
      /^Lamps on 60 Hz: at 1\/60, really 1\/64 s, frames differ by up to 13 %; you allow 1 %\. Nearest that keep within it: /,
    );
  });

  test('is none if the time cancels it, or nothing is on the mains', () => {
    const held = studio(12, { timedBy: 'trigger' }, { lamps });
    expect(found(held, 'ripple')).toEqual([]);
    expect(found(studio(12, {}, { lamps: { ...lamps, mainsHz: 'none' } }), 'ripple')).toEqual([]);
    expect(found(studio(12, {}, { lamps: { ...lamps, limitShare: 0.13 } }), 'ripple')).toEqual([]);
  });

  test('counts every exposure of a bracket', () => {
    const shot = { timedBy: 'trigger', bracketCount: 3, bracketStops: 2 } as const;
    expect(figure(found(studio(12, shot, { lamps }), 'ripple')[0], 'openS')).toBeCloseTo(1 / 240, 9);
  });

  test('in a ramp goes by the shutter times in use, from the first frame that has one', () => {
    const plan = dusk({ steps: [step('shutter', 1), step('iso', 12_800)] }, { shutterS: 1 / 30 }, { lamps });
    const [ripple] = found(plan, 'ripple');
    const { columns } = schedule(plan);
    expect(ripple?.frame).toBe(1);
    expect(figure(ripple, 'shutterTimes')).toBeGreaterThan(1);
    expect(columns.rung?.at(-1)).toBeGreaterThan(0);
  });

  test('is spoken of without planned light too', () => {
    expect(found(studio(12, {}, { lamps, light: { kind: 'none' } }), 'ripple')).toHaveLength(1);
  });
});
