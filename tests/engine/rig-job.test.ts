/**
 * One job from end to end: a boom rises 400 mm and keeps a point framed that is 1.2 m away.
 *
 * What is wanted is worked out here from the drawing of the rig, and the ring by integrating the oscillator itself.
 */
import { describe, expect, test } from 'vitest';
import type { Axis, Plan } from '../../src/engine/plan/schema.ts';
import { schedule } from '../../src/engine/schedule.ts';
import type { AxisColumns } from '../../src/engine/schedule-types.ts';
import { axisOf, plainPlan, type Some, straight } from '../reference/plans.ts';

const DEG = Math.PI / 180;
const ARM_MM = 1000;
const PIVOT_MM = 1200;
/** An arm of a metre rises 400 mm from asin(-0.2) to asin(0.2) from level. */
const SWING_DEG = (2 * Math.asin(0.2)) / DEG;
/** 1.2 m from the lens where the arm is level: a triangle of 3, 4 and 5. */
const SUBJECT = { rightMm: 720, forwardMm: 1960, heightMm: PIVOT_MM };
const FOCAL_PX = 4000;
const FRAMES = 41;
const INTERVAL_S = 10;
const EXPOSURE_S = 2;

const BOOM = axisOf({
  name: 'Boom',
  kind: 'boom',
  unit: 'deg',
  gearRatio: 200,
  unitsPerTurn: 360,
  travelMin: -40,
  travelMax: 60,
  maxSpeed: 2,
  maxAccel: 4,
  torqueNm: 0.4,
});

const head = (name: string, kind: 'pan' | 'tilt'): Axis =>
  axisOf({
    name,
    kind,
    unit: 'deg',
    microsteps: 64,
    gearRatio: 100,
    unitsPerTurn: 360,
    travelMin: -180,
    travelMax: 180,
    maxSpeed: 10,
    maxAccel: 4,
  });

const plan = (move: Some<Plan['move']>): Plan =>
  plainPlan(FRAMES, INTERVAL_S, {
    camera: { focalLengthMm: 24, sensorWidthMm: 36, imageWidthPx: 6000, imageHeightPx: 4000 },
    exposure: { shutterS: EXPOSURE_S },
    rig: {
      axes: [BOOM, head('Pan', 'pan'), head('Tilt', 'tilt')],
      pivotHeightMm: PIVOT_MM,
      lensBearingDeg: 0,
      arm: { lengthMm: ARM_MM, planeTiltDeg: 0, zeroDeg: 0, keepsLevel: true },
    },
    subject: { used: true, aimed: true, ...SUBJECT, backgroundM: 100, blurMaxPx: 3 },
    ringing: { frequencyHz: 2, dampingRatio: 0.02, tolerancePx: 0.5, flexMm: ARM_MM },
    balance: {
      used: true,
      workedOut: 'place',
      payloadKg: 2,
      armKg: 1.2,
      armCentreMm: 150,
      counterweightKg: 6,
      counterweightMaxMm: 500,
      baseKg: 1.5,
      supportKg: 4,
      ballastKg: 0,
      feetRadiusMm: 500,
      legs: 3,
    },
    move: { mode: 'continuous', tracks: [straight('Boom', -SWING_DEG / 2, SWING_DEG / 2)], ...move },
  });

const columnsOf = (run: ReturnType<typeof schedule>, name: string): AxisColumns => {
  const found = run.columns.axes.find((axis) => axis.name === name);
  if (!found) throw new Error(`no axis ${name}`);
  return found;
};

/** Where the lens is at an index, and what is between it and the subject, mm. */
function lensAt(index: number) {
  const angle = (-0.5 + index / (FRAMES - 1)) * SWING_DEG * DEG;
  const [forward, up] = [ARM_MM * Math.cos(angle), ARM_MM * Math.sin(angle)];
  const away = [SUBJECT.rightMm, SUBJECT.forwardMm - forward, -up] as const;
  return { place: [0, forward, PIVOT_MM + up] as const, away, distance: Math.hypot(...away) };
}

describe('a boom that rises 400 mm with the aim locked on a point 1.2 m away', () => {
  const run = schedule(plan({}));

  test('rises 400 mm, and bulges by its sagitta', () => {
    const { path } = run.rig;
    expect(lensAt((FRAMES - 1) / 2).distance).toBeCloseTo(1200, 9);
    // A whole step of the boom is 0.0005 degrees: 0.01 mm.
    expect(path?.riseMm).toBeCloseTo(400, 1);
    expect(path?.swingDeg).toBeCloseTo(SWING_DEG, 2);
    // 1000 (1 - cos(asin(0.2))) = 1000 (1 - sqrt(0.96)).
    expect(path?.sagittaMm).toBeCloseTo(20.204, 2);
    expect(path?.deviationMm).toBeCloseTo(20.204, 2);
  });

  test('shows the pan and the tilt that keep the point framed', () => {
    const [pan, tilt] = [columnsOf(run, 'Pan'), columnsOf(run, 'Tilt')];
    for (let k = 0; k < FRAMES; k += 1) {
      const [right, forward, up] = lensAt(k).away;
      const elevation = Math.atan(up / Math.hypot(right, forward)) / DEG;
      expect((pan.steps[k] as number) / pan.stepsPerUnit).toBeCloseTo(Math.atan(right / forward) / DEG, 2);
      expect((tilt.steps[k] as number) / tilt.stepsPerUnit).toBeCloseTo(elevation, 2);
    }
    // The tilt goes from as far up as down; the pan is the same at both ends.
    expect(run.rig.aim).toMatchObject({ missFrames: 0, limits: [], lacks: [] });
    expect(run.rig.aim?.tiltToDeg).toBeCloseTo(9.336, 2);
    expect(run.rig.aim?.tiltFromDeg).toBeCloseTo(-9.336, 2);
    expect(run.rig.aim?.panToDeg).toBeCloseTo(36.87, 2);
    expect(run.rig.aim?.panFromDeg).toBeCloseTo(36.3, 2);
  });

  test('shows the blur of what is behind the point', () => {
    let most = 0;
    for (let k = 0; k + 1 < FRAMES; k += 1) {
      const [here, next] = [lensAt(k), lensAt(k + 1)];
      // 100 m ahead of this frame's lens, seen from the next: the tangent of the angle between two directions.
      const point = here.away.map((mm, i) => {
        const start = (here.place[i] as number) - (next.place[i] as number);
        return start + (100_000 * mm) / here.distance;
      });
      const [a, b] = [point, next.away];
      const along = (a[0] as number) * b[0] + (a[1] as number) * b[1] + (a[2] as number) * b[2];
      const across = Math.hypot(
        (a[1] as number) * b[2] - (a[2] as number) * b[1],
        (a[2] as number) * b[0] - (a[0] as number) * b[2],
        (a[0] as number) * b[1] - (a[1] as number) * b[0],
      );
      most = Math.max(most, (FOCAL_PX * across) / along);
    }
    const { image } = run.rig;
    expect(most).toBeGreaterThan(30);
    // Half a step of pan, tilt and boom at either end is some hundredths of a pixel.
    expect(Math.abs((image?.background.px ?? 0) - most)).toBeLessThan(0.1);
    expect(image?.subject.px).toBeLessThan(0.1);
    expect(image?.blur?.of).toBe('background');
    expect(Math.abs((image?.blur?.px ?? 0) - (most * EXPOSURE_S) / INTERVAL_S)).toBeLessThan(0.02);
    expect(run.findings.find(({ id }) => id === 'motion-blur')).toMatchObject({ severity: 'warning' });
  });

  test('shows its balance', () => {
    const { balance } = run.rig;
    // 2 kg x 1000 mm + 1.2 kg x 150 mm = 6 kg x 363.3 mm.
    expect(balance?.arm).toMatchObject({ counterweightKg: 6, fits: true });
    expect(balance?.arm?.counterweightMm).toBeCloseTo(363.333, 3);
    expect(balance?.arm?.residualNm).toBeCloseTo(0, 9);
    expect(balance?.support.loadKg).toBeCloseTo(2 + 1.2 + 6 + 1.5, 9);
    expect(balance?.tip.farthestMm).toBeCloseTo(0, 6);
    // Off the arm the camera leaves 6 kg at 363.3 mm, less 1.2 kg at 150 mm.
    expect(balance?.arm?.cameraOff.armNm).toBeCloseTo(-2 * 9.80665, 6);
  });
});

/** Acceleration of a trapezoid at a moment, given what it takes and how hard it speeds up. */
function trapezoid(distance: number, durationS: number, accel: number) {
  const rest = Math.sqrt(Math.max(0, (accel * durationS) ** 2 - 4 * accel * distance));
  const speedUpS = (accel * durationS - rest) / (2 * accel);
  return (t: number): number =>
    t < speedUpS ? accel : t > durationS ? 0 : t > durationS - speedUpS ? -accel : 0;
}

const STEP_S = 2e-4;

/**
 * Integrates x'' + 2 z w x' + w^2 x = -a(t) from rest by Runge and Kutta's rule of the fourth order.
 * @returns the largest |x| over two periods from a moment on
 */
function swingAfter(accelAt: (t: number) => number, fromS: number, { ringing }: Plan): number {
  const omega = 2 * Math.PI * ringing.frequencyHz;
  const push = (t: number, x: number, v: number) =>
    -accelAt(t) - 2 * ringing.dampingRatio * omega * v - omega * omega * x;
  let [x, v, most] = [0, 0, 0];
  const count = Math.ceil((fromS + 2 / ringing.frequencyHz) / STEP_S);
  for (let i = 0; i < count; i += 1) {
    const t = i * STEP_S;
    const half = STEP_S / 2;
    const [v1, a1] = [v, push(t, x, v)];
    const [v2, a2] = [v + half * a1, push(t + half, x + half * v1, v + half * a1)];
    const [v3, a3] = [v + half * a2, push(t + half, x + half * v2, v + half * a2)];
    const [v4, a4] = [v + STEP_S * a3, push(t + STEP_S, x + STEP_S * v3, v + STEP_S * a3)];
    x += (STEP_S / 6) * (v1 + 2 * v2 + 2 * v3 + v4);
    v += (STEP_S / 6) * (a1 + 2 * a2 + 2 * a3 + a4);
    if (t >= fromS) most = Math.max(most, Math.abs(x));
  }
  return most;
}

/** Pixels by which the picture still swings from a moment after a frame's move has begun, all axes together. */
function swingPx(given: Plan, run: ReturnType<typeof schedule>, k: number, fromS: number): number {
  const lens = Math.hypot(SUBJECT.rightMm, SUBJECT.forwardMm - ARM_MM);
  // A nod of 1.5 / R for a millimetre at the tip, and a millimetre at the subject's distance.
  const boomPx = FOCAL_PX * ARM_MM * DEG * (1.5 / ARM_MM + 1 / lens);
  return given.rig.axes.reduce((total, axis) => {
    const { steps, stepsPerUnit, moveS } = columnsOf(run, axis.name);
    const distance = Math.abs((steps[k + 1] as number) - (steps[k] as number)) / stepsPerUnit;
    if (distance === 0) return total;
    const px = axis.kind === 'boom' ? boomPx : FOCAL_PX * DEG;
    const accelAt = trapezoid(distance, moveS[k] as number, axis.maxAccel);
    return total + px * swingAfter(accelAt, fromS, given);
  }, 0);
}

describe('quiet moves between the exposures of that job', () => {
  const loud = plan({ mode: 'moveShootMove', settleBy: 'ringing', quiet: false });
  const still = plan({ mode: 'moveShootMove', settleBy: 'ringing', quiet: true });
  const [before, after] = [schedule(loud), schedule(still)];

  test('shorten the shortest interval by as much as was offered', () => {
    const saved = before.totals.shortestIntervalS - after.totals.shortestIntervalS;
    expect(saved).toBeGreaterThan(1);
    const offered = before.findings.find(({ id }) => id === 'quiet-move');
    expect(offered?.values).toMatchObject({
      savesS: expect.closeTo(saved, 9),
      toS: expect.closeTo(after.totals.shortestIntervalS, 9),
    });
    expect(after.findings.some(({ id }) => id === 'quiet-move')).toBe(false);
    expect(after.rig.ringing?.quiet?.savesS).toBeCloseTo(saved, 9);
  });

  test('leave the picture within its tolerance after the shortened settle: integrated', () => {
    const { tolerancePx } = still.ringing;
    for (const k of [0, 1, 13, 20, FRAMES - 2]) {
      const busyS = (after.columns.moveS[k] as number) + (after.columns.settleS[k] as number);
      expect(swingPx(still, after, k, busyS)).toBeLessThanOrEqual(tolerancePx * 1.01);
      // The plain move of the same frame is shorter, and at that moment it still swings by more.
      expect(swingPx(loud, before, k, busyS)).toBeGreaterThan(2 * tolerancePx);
      const settledS = (before.columns.moveS[k] as number) + (before.columns.settleS[k] as number);
      expect(settledS).toBeGreaterThan(busyS + 1);
      expect(swingPx(loud, before, k, settledS)).toBeLessThanOrEqual(tolerancePx * 1.01);
    }
  });
});
