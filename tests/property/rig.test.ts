/** The rig over random plans: steps, camera, aim, picture and balance, each worked out a second time. */
import fc from 'fast-check';
import { test, vi } from 'vitest';
import { close, must, near, same } from './close.ts';
import { type Judged, judged } from './judged.ts';
import { type Case, rigPlans } from './plans.ts';
import { PATIENCE_MS, settings } from './settings.ts';
import { actingAxis, armDeg, directionTo, positionsAt, slowPose, slowSubject } from './slow/camera.ts';
import { verdictOf } from './slow/expected.ts';
import { expectedFindings } from './slow/findings.ts';
import { distanceTo, excusedPx, takesPart } from './slow/image.ts';
import {
  aheadOf,
  armMoment,
  atMotor,
  insideFeetMm,
  offMiddleMm,
  onSupportKg,
  slowCounterweight,
} from './slow/masses.ts';
import { isAimed, repeatsOf } from './slow/motion-findings.ts';
import { motorWays } from './slow/moves.ts';

vi.setConfig({ testTimeout: PATIENCE_MS });

const property = (check: (given: Judged) => void, drawn = rigPlans) =>
  fc.assert(
    fc.property(drawn, (given) => check(judged(given))),
    settings(),
  );

test('steps: largest, smallest, repeats, reversals and lost motion are those of the positions', () => {
  property((given) => {
    const { plan, run } = given;
    const between = plan.move.mode === 'moveShootMove';
    plan.rig.axes.forEach((axis, i) => {
      const columns = run.columns.axes[i];
      if (!columns) throw new Error(`axes[${i}] is missing`);
      const { steps, stepsPerUnit } = columns;
      const moves = Array.from(steps.subarray(1), (step, k) => step - (steps[k] as number));
      const sizes = moves.filter((move) => move !== 0).map(Math.abs);
      const signed = moves.map((move, k) => ({ move, k })).filter(({ move }) => move !== 0);
      const turns = signed.filter(({ move }, n) => (signed[n - 1]?.move ?? move) * move < 0);
      const repeats = repeatsOf(given, axis);
      same(columns.lowestSteps, Math.min(...steps), `${axis.name}: lowestSteps`);
      same(columns.highestSteps, Math.max(...steps), `${axis.name}: highestSteps`);
      same(columns.moves, sizes.length, `${axis.name}: moves`);
      same(columns.largestMoveSteps, Math.max(0, ...sizes), `${axis.name}: largestMoveSteps`);
      same(
        columns.smallestMoveSteps,
        sizes.length > 0 ? Math.min(...sizes) : 0,
        `${axis.name}: smallestMoveSteps`,
      );
      same(columns.reversals, turns.length, `${axis.name}: reversals`);
      same(columns.firstReversal, turns[0] ? turns[0].k + 2 : null, `${axis.name}: firstReversal`);
      same(columns.repeats, repeats.length, `${axis.name}: repeats`);
      same(
        columns.firstRepeat,
        repeats[0] === undefined ? null : repeats[0] + 1,
        `${axis.name}: firstRepeat`,
      );
      const ways = motorWays(axis, steps, stepsPerUnit);
      const lost = moves.filter((move, k) => {
        const longest = Math.max(0, ...(ways[k] ?? []));
        return longest > Math.abs(move / stepsPerUnit) * (1 + 1e-9);
      });
      same(columns.takeUps, between ? lost.length : 0, `${axis.name}: takeUps`);
    });
  });
});

test('path: where the lens gets to, and how far from straight', () => {
  property((given) => {
    const { plan, run } = given;
    same(run.rig.path === null, !takesPart(given), 'path');
    if (run.rig.path === null) return;
    const all = given.images.map(({ pose }) => pose.place);
    const path = run.rig.path;
    const heights = all.map(([, , up]) => up);
    const scale = Math.max(...all.map((place) => Math.hypot(...place)));
    const is = (got: number, want: number, what: string) => close(got, want, what, scale);
    is(path.riseMm, Math.max(...heights) - Math.min(...heights), 'riseMm');
    is(path.clearanceMm, Math.min(...heights), 'clearanceMm');
    is(path.reachMm, Math.max(...all.map(([x, y]) => Math.hypot(x, y))), 'reachMm');
    const lengths = all.slice(1).map((place, k) => {
      const before = all[k] as (typeof all)[number];
      return Math.hypot(place[0] - before[0], place[1] - before[1], place[2] - before[2]);
    });
    close(
      path.lengthMm,
      lengths.reduce((sum, mm) => sum + mm, 0),
      'lengthMm',
      scale * all.length,
    );
    for (const end of ['first', 'last'] as const) {
      const place = all.at(end === 'first' ? 0 : -1) as (typeof all)[number];
      is(path[end].rightMm, place[0], `${end}: rightMm`);
      is(path[end].forwardMm, place[1], `${end}: forwardMm`);
      is(path[end].heightMm, place[2], `${end}: heightMm`);
    }
    const angles = run.columns.elapsedS.length;
    const arm = Array.from(
      { length: angles },
      (_, k) => armDeg(plan, positionsAt(plan, run.columns.axes, k)) ?? 0,
    );
    const swing = Math.max(...arm) - Math.min(...arm);
    close(path.swingDeg, swing, 'swingDeg', 360);
    const half = Math.min(swing / 2, 180);
    const hasArm = actingAxis(plan, 'boom') !== undefined;
    const sagitta = hasArm ? plan.rig.arm.lengthMm * (1 - Math.cos((half * Math.PI) / 180)) : 0;
    close(path.sagittaMm, sagitta, 'sagittaMm', plan.rig.arm.lengthMm);
  });
});

test('picture: pixels that subject and background move, each point projected by itself', () => {
  property((given) => {
    const { plan, run } = given;
    const { subjectPx, backgroundPx } = run.columns;
    const wanted = plan.subject.used && plan.move.mode !== 'still' && takesPart(given);
    same(subjectPx !== null && backgroundPx !== null, wanted, 'columns');
    if (subjectPx === null || backgroundPx === null) return;
    // An angle of a rounding is so many pixels; near the lens it is more.
    for (const [k, image] of given.images.entries()) {
      const next = given.images[k + 1]?.subject ?? image.subject;
      const closest = Math.max(0.5, Math.min(image.subject[1], next[1]));
      const noise = 1e-9 * plan.camera.imageWidthPx * (1 + (1000 + distanceTo(image)) / closest) ** 2;
      if (image.subjectPx !== null)
        near(subjectPx[k], image.subjectPx, `subjectPx[${k}]`, 1e-6 * image.subjectPx + noise);
      if (image.backgroundPx !== null)
        near(
          backgroundPx[k],
          image.backgroundPx,
          `backgroundPx[${k}]`,
          1e-6 * image.backgroundPx * (1 + image.backgroundPx / plan.camera.imageWidthPx) +
            1e-7 * plan.camera.imageWidthPx,
        );
    }
  });
});

/** Whether an axis can stand at an angle, as it is or a turn away: surely, surely not, or on the edge. */
function reaches(travelMin: number, travelMax: number, wanted: number, step: number): boolean | null {
  const turn = Math.ceil((travelMin - wanted - step) / 360);
  const at = wanted + 360 * turn;
  if (at > travelMax + step) return false;
  return at >= travelMin + step && at <= travelMax - step ? true : null;
}

/** Degrees between two angles, turns left out. */
const apart = (a: number, b: number): number => Math.abs(((((a - b + 180) % 360) + 360) % 360) - 180);

/** With a subject to aim at. */
const aimed = rigPlans.map(({ plan, marked }) => ({
  marked,
  plan: { ...plan, subject: { ...plan.subject, used: true, aimed: true } },
}));

test('aim: pan and tilt stand where the subject is, wherever their travel reaches', () => {
  property((given) => {
    const { plan, run } = given;
    const { aimMissPx, axes } = run.columns;
    if (aimMissPx === null) throw new Error('aimMissPx is missing');
    const excused = excusedPx(given);
    const held = (kind: 'pan' | 'tilt', k: number, wanted: number, what: string): boolean | null => {
      const axis = actingAxis(plan, kind);
      const columns = axes.find(({ name }) => name === axis?.name);
      if (!axis || !columns) return false;
      const step = 1 / columns.stepsPerUnit;
      // A whole turn away from a whole step there may be none.
      const nearest = Number.isInteger(360 / step) ? step / 2 : step;
      const can = reaches(axis.travelMin, axis.travelMax, wanted, step);
      const position = (columns.steps[k] as number) * step;
      must(
        position >= axis.travelMin - step && position <= axis.travelMax + step,
        `${what}: ${kind} at ${position}, out of its travel`,
      );
      if (can === true)
        must(
          apart(position, wanted) <= nearest + 1e-7,
          `${what}: ${kind} at ${position}, wanted ${wanted} to a step of ${step}`,
        );
      return can;
    };
    /** A pan turns by a whole turn only where its travel ends. */
    const goesOn = (k: number, position: number, what: string) => {
      const axis = actingAxis(plan, 'pan');
      const before = positionsAt(plan, axes, k - 1).pan;
      if (!axis || Math.abs(position - before) < 185) return;
      const nearer = position + 360 * Math.round((before - position) / 360);
      must(
        nearer < axis.travelMin + 1 || nearer > axis.travelMax - 1,
        `${what}: pan goes from ${before} to ${position}, and could go to ${nearer}`,
      );
    };
    let heldBefore = false;
    for (const [k, image] of given.images.entries()) {
      const what = `frame ${k + 1}`;
      const positions = positionsAt(plan, axes, k);
      const point = slowSubject(plan, positions);
      const { panDeg, tiltDeg, level } = directionTo(plan, slowPose(plan, positions), point);
      if (level <= 1 || distanceTo(image) <= 2) heldBefore = false;
      else {
        const pan = held('pan', k, panDeg, what);
        if (pan === true && heldBefore) goesOn(k, positions.pan, what);
        heldBefore = pan === true;
        // With the pan elsewhere the tilt gets as near as it can.
        const tilt = pan === true ? held('tilt', k, tiltDeg, what) : null;
        if (pan === true && tilt === true) same(aimMissPx[k], 0, `${what}: aimMissPx`);
      }
      const sure = distanceTo(image) > 1.01 && Math.abs(image.offPx / excused - 1) > 1e-5;
      if (sure)
        near(
          aimMissPx[k],
          image.offPx > excused ? image.offPx : 0,
          `${what}: aimMissPx`,
          1e-5 * image.offPx * (1 + image.offPx / excused),
        );
    }
    for (const axis of plan.rig.axes.filter((one) => isAimed(plan, one))) {
      const { steps = new Int32Array(), stepsPerUnit = 1 } =
        axes.find(({ name }) => name === axis.name) ?? {};
      const range = [Math.min(...steps) / stepsPerUnit, Math.max(...steps) / stepsPerUnit];
      const summary = run.rig.aim;
      const said =
        axis.kind === 'pan'
          ? [summary?.panFromDeg, summary?.panToDeg]
          : [summary?.tiltFromDeg, summary?.tiltToDeg];
      close(said[0] ?? Number.NaN, range[0] as number, `${axis.name}: from`, 1);
      close(said[1] ?? Number.NaN, range[1] as number, `${axis.name}: to`, 1);
    }
  }, aimed);
});

test('balance: moments, torque, load and footing are those of the masses in space', () => {
  property((given) => {
    const { plan, run } = given;
    const { balance } = run.rig;
    same(balance !== null, plan.balance.used, 'balance');
    if (balance === null) return;
    const { arm, support, tip } = balance;
    const boom = actingAxis(plan, 'boom');
    same(arm !== null, boom !== undefined, 'arm');
    close(support.loadKg, onSupportKg(plan), 'loadKg', 50);
    close(tip.safeMm, insideFeetMm(plan), 'safeMm');
    const frames = Array.from({ length: run.totals.frames }, (_, k) =>
      positionsAt(plan, run.columns.axes, k),
    );
    const off = Math.max(...frames.map((positions) => offMiddleMm(plan, positions)));
    must(tip.farthestMm >= off - 1e-6 * (1 + off), `farthestMm ${tip.farthestMm}, and at a frame ${off}`);
    close(tip.marginMm, tip.safeMm - tip.farthestMm, 'marginMm', tip.safeMm + tip.farthestMm);
    if (arm === null) return;
    const weight = slowCounterweight(plan);
    close(arm.counterweightKg, weight.kg, 'counterweightKg', 1);
    close(arm.counterweightMm, weight.mm, 'counterweightMm', 1);
    if (!weight.edge) same(arm.fits, weight.fits, 'fits');
    const { armKg, armCentreMm } = plan.balance;
    const scale = aheadOf(plan) + 0.01 * (weight.kg * weight.mm + Math.abs(armKg * armCentreMm));
    close(arm.aheadNm, aheadOf(plan), 'aheadNm', 1);
    const upright = Math.cos((plan.rig.arm.planeTiltDeg * Math.PI) / 180);
    close(arm.residualNm * upright, armMoment(plan, 0), 'residualNm', scale);
    const moments = frames.map((positions) => armMoment(plan, armDeg(plan, positions) ?? 0));
    const most = Math.max(...moments.map(Math.abs));
    must(
      arm.worstNm >= most - 1e-8 * scale && arm.worstNm <= Math.abs(armMoment(plan, 0)) + 1e-8 * scale,
      `worstNm ${arm.worstNm}, and at a frame ${most}`,
    );
    close(arm.motor.neededNm, atMotor(plan, arm.worstNm), 'neededNm', scale);
    close(arm.motor.levelNm, atMotor(plan, armMoment(plan, 0)), 'levelNm', scale);
  });
});

/** Moves that ring, of a camera that is soon ready. */
const ringers = rigPlans.map(({ plan, marked }): Case => {
  const { camera, move, ringing } = plan;
  return {
    marked,
    plan: {
      ...plan,
      camera: { ...camera, writeS: 0, noiseReduction: false },
      move: { ...move, mode: 'moveShootMove', settleBy: 'ringing', quiet: false, moveS: null },
      ringing: { ...ringing, measuredSettleS: null },
    },
  };
});

test('quiet moves are offered where they save time, and save as much as they say', () => {
  property((given) => {
    const { plan, run, slow } = given;
    if (slow.frames.some(({ tied }) => tied)) return;
    const offered = run.findings.find(({ id }) => id === 'quiet-move');
    const wanted = verdictOf(expectedFindings(given).get('quiet-move') ?? 'open').is;
    if (wanted !== 'open') same(offered !== undefined, wanted === 'yes', 'quiet-move');
    const quiet = judged({ ...given, plan: { ...plan, move: { ...plan.move, quiet: true } } });
    const longest = Math.max(...quiet.slow.frames.map(({ rigS, cameraS }) => Math.max(rigS, cameraS)));
    near(quiet.run.totals.shortestIntervalS, longest + plan.cycle.guardS, 'with quiet moves', 1e-6 * longest);
    if (!offered) return;
    const { fromS, toS } = offered.values;
    close(Number(fromS), run.totals.shortestIntervalS, 'fromS');
    close(Number(toS), quiet.run.totals.shortestIntervalS, 'toS');
  }, ringers);
});
