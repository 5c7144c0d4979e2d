import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { test, vi } from 'vitest';
import { parsePlan, serialisePlan } from '../../src/engine/plan/parse.ts';
import type { Plan } from '../../src/engine/plan/schema.ts';
import { Room } from '../../src/engine/room.ts';
import { roomsOf, schedule } from '../../src/engine/schedule.ts';
import { must, same } from './close.ts';
import { deepFreeze, litPlans, plans, rigPlans } from './plans.ts';
import { PATIENCE_MS, settings } from './settings.ts';

vi.setConfig({ testTimeout: PATIENCE_MS });

const every = fc.oneof(
  plans.map(({ plan }) => plan),
  litPlans,
  rigPlans.map(({ plan }) => plan),
);

const property = (check: (plan: Plan) => void) => fc.assert(fc.property(every, check), settings());

function parsedOf(text: string): Plan {
  const parsed = parsePlan(text);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return parsed.plan;
}

test('the text of a plan is read back as the same plan', () => {
  property((plan) => {
    const read = parsedOf(serialisePlan(plan));
    must(isDeepStrictEqual(read, plan), 'another plan came back');
    // Fields may be put in order once, and then no more.
    const text = serialisePlan(read);
    same(serialisePlan(parsedOf(text)), text, 'text');
  });
});

test('the same plan gives the same schedule, and stays as it was', () => {
  property((plan) => {
    const before = structuredClone(plan);
    const first = schedule(deepFreeze(plan));
    must(isDeepStrictEqual(plan, before), 'the plan was changed');
    must(isDeepStrictEqual(schedule(before), first), 'another schedule came out');
  });
});

/** Room in which something has been left. */
class UsedRoom extends Room {
  override f64(length: number) {
    return super.f64(length).fill(Number.NaN);
  }
  override f32(length: number) {
    return super.f32(length).fill(Number.NaN);
  }
  override i32(length: number) {
    return super.i32(length).fill(-77);
  }
  override u16(length: number) {
    return super.u16(length).fill(7777);
  }
  override u8(length: number) {
    return super.u8(length).fill(77);
  }
}

test('a room used before gives the same schedule as a new one', () => {
  const room = new UsedRoom();
  property((plan) => {
    must(isDeepStrictEqual(schedule(plan, { room }), schedule(plan)), 'another schedule came out');
  });
});

/** Edits that leave the moves as they are, and edits that do not. */
const EDITS: readonly ((plan: Plan) => Plan)[] = [
  (plan) => ({ ...plan, cycle: { guardS: plan.cycle.guardS + 0.5 } }),
  (plan) => ({ ...plan, pacing: { ...plan.pacing, intervalS: plan.pacing.intervalS * 1.5 } }),
  (plan) => ({ ...plan, camera: { ...plan.camera, writeS: plan.camera.writeS + 1 } }),
  (plan) => ({ ...plan, move: { ...plan.move, settleS: plan.move.settleS + 1 } }),
  (plan) => ({ ...plan, move: { ...plan.move, mode: 'continuous' } }),
  (plan) => ({ ...plan, move: { ...plan.move, mode: 'moveShootMove', quiet: !plan.move.quiet } }),
  (plan) => ({ ...plan, camera: { ...plan.camera, imageHeightPx: plan.camera.imageHeightPx / 4 } }),
  (plan) => ({ ...plan, camera: { ...plan.camera, focalLengthMm: plan.camera.focalLengthMm * 2 } }),
  (plan) => ({ ...plan, subject: { ...plan.subject, used: true, aimed: !plan.subject.aimed } }),
  (plan) => ({ ...plan, subject: { ...plan.subject, heightMm: plan.subject.heightMm + 500 } }),
  (plan) => ({ ...plan, subject: { ...plan.subject, blurMaxPx: 1, crossingMinS: 30 } }),
  (plan) => ({ ...plan, ringing: { ...plan.ringing, dampingRatio: 0.1, measuredSettleS: null } }),
  (plan) => ({ ...plan, balance: { ...plan.balance, used: true, payloadKg: 3 } }),
  (plan) => ({ ...plan, rig: { ...plan.rig, arm: { ...plan.rig.arm, lengthMm: 700 } } }),
  (plan) => ({
    ...plan,
    rig: { ...plan.rig, axes: plan.rig.axes.map((axis) => ({ ...axis, maxSpeed: axis.maxSpeed * 2 })) },
  }),
];

test('an edited plan gives the same schedule, whatever is taken over from before', () => {
  const edits = fc.tuple(every, fc.array(fc.constantFrom(...EDITS), { minLength: 1, maxLength: 4 }));
  fc.assert(
    fc.property(edits, ([plan, all]) => {
      const rooms = [new UsedRoom(), new UsedRoom(), new UsedRoom()];
      let edited = plan;
      let before = schedule(plan, { room: rooms[0] as Room });
      for (const edit of all) {
        edited = edit(edited);
        const inUse = roomsOf(before);
        const room = rooms.find((one) => !inUse.includes(one)) as Room;
        before = schedule(edited, { room, before });
        must(isDeepStrictEqual(before, schedule(edited)), 'another schedule came out');
      }
    }),
    settings(0.5),
  );
});

test('every column has an entry for each frame, and every number is one', () => {
  property((plan) => {
    const { columns, totals, sources } = schedule(plan);
    const { axes, sources: packs, sky, ...plain } = columns;
    for (const [name, column] of Object.entries({ ...plain, ...sky })) {
      if (column === null) continue;
      same(column.length, totals.frames, `${name}: length`);
      must(column.every(Number.isFinite), `${name}: not finite`);
    }
    for (const axis of axes) {
      same(axis.steps.length, totals.frames, `${axis.name}: length`);
      must(
        axis.moveS.length === totals.frames && axis.moveS.every((s) => Number.isFinite(s) && s >= 0),
        `${axis.name}: moveS`,
      );
    }
    for (const [i, pack] of packs.entries()) {
      const mains = plan.power.sources[i]?.kind === 'mains';
      must(
        pack.leftWh.every((wh) => (mains ? wh === Number.POSITIVE_INFINITY : Number.isFinite(wh) && wh >= 0)),
        `${pack.name}: leftWh`,
      );
    }
    for (const [name, value] of Object.entries(totals)) {
      must(typeof value === 'string' ? value !== '' : Number.isFinite(value), `${name}: ${value}`);
    }
    for (const name of [
      'exposureS',
      'holdS',
      'cameraS',
      'moveS',
      'settleS',
      'rigS',
      'elapsedS',
      'intervalS',
    ] as const) {
      must(
        columns[name].every((seconds) => seconds >= 0),
        `${name}: negative`,
      );
    }
    for (const { drawnWh, meanW, needed } of sources) {
      must(drawnWh >= -1e-12 && meanW >= -1e-9 && needed >= 1, `${drawnWh} Wh, ${meanW} W, ${needed} packs`);
    }
  });
});

test('the settings of a frame expose its scene as the error says, and its interval is kept', () => {
  fc.assert(
    fc.property(litPlans, (plan) => {
      const { columns, exposure, totals } = schedule(plan);
      if (exposure === null || columns.rung === null) return;
      const { rungs, shortestIntervalS, longestIntervalS } = exposure;
      let elapsed = 0;
      for (let k = 0; k < totals.frames; k += 1) {
        must(rungs[columns.rung[k] as number] !== undefined, `frame ${k + 1}: no such settings`);
        must(
          Math.abs((columns.elapsedS[k] as number) - elapsed) < 1e-6 * (1 + elapsed),
          `frame ${k + 1}: elapsed`,
        );
        const interval = columns.intervalS[k] as number;
        must(
          interval >= shortestIntervalS - 1e-9 && interval <= longestIntervalS + 1e-9,
          `frame ${k + 1}: interval`,
        );
        elapsed += interval;
      }
    }),
    settings(),
  );
});
