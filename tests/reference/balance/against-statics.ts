/** Balance of random rigs against statics that put every mass in space. */
import type { ArmBalance } from '../../../src/engine/balance/arm.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import type { AxisColumns } from '../../../src/engine/schedule-types.ts';
import { finite, type NumberCase, numberRow, type Row, relative } from '../rows.ts';
import { armOf, balanced, randomRigs } from './rigs.ts';
import { centreMm, edgeMm, energyJ, torqueNm, type Weight } from './statics.ts';

const ENERGY = 'derivative of the potential energy of masses in space (computed)';
const STAYS = 'an arm in balance stays where it is put (common practice, no source)';
const POLYGON = 'centre of masses in space against all edges of the feet (computed)';

const RIGS = randomRigs(300);

const weightOf = ({ counterweightKg, counterweightMm }: ArmBalance): Weight => ({
  kg: counterweightKg,
  mm: counterweightMm,
});

/** Position at a moment between frames. */
function positionAt({ steps, stepsPerUnit }: AxisColumns, at: number): number {
  const before = Math.min(Math.floor(at), steps.length - 2);
  const [from, to] = [steps[before] as number, steps[before + 1] as number];
  return (from * (before + 1 - at) + to * (at - before)) / stepsPerUnit;
}

const SLICES = 60;

/** The largest of something over the ten moves of a rig: in slices, then ever narrower about the largest of these. */
function largest(valueAt: (at: number) => number): number {
  const value = (at: number) => finite(valueAt(Math.min(Math.max(0, at), 10)), `at ${at}`);
  const slices = Array.from({ length: 10 * SLICES + 1 }, (_, i) => value(i / SLICES));
  const best = slices.indexOf(Math.max(...slices)) / SLICES;
  let [from, to] = [best - 1 / SLICES, best + 1 / SLICES];
  for (let i = 0; i < 60; i += 1) {
    const third = (to - from) / 3;
    if (value(from + third) < value(to - third)) from += third;
    else to -= third;
  }
  return Math.max(value(best), value((from + to) / 2));
}

/** The same rig with its arm at one angle. */
const stillAt = (plan: Plan, zeroDeg: number): Plan => ({
  ...plan,
  rig: { ...plan.rig, arm: { ...plan.rig.arm, zeroDeg } },
  move: { ...plan.move, tracks: [] },
});

function* torques(): Generator<NumberCase> {
  for (const [i, rig] of RIGS.entries()) {
    const plan = stillAt(rig, -80 + ((i * 37) % 160));
    const arm = armOf(plan);
    const { zeroDeg } = plan.rig.arm;
    if (arm.residualNm === 0) continue;
    yield {
      at: `rig ${i} at ${zeroDeg}°`,
      got: arm.worstNm,
      want: Math.abs(torqueNm(plan, weightOf(arm), zeroDeg)),
    };
  }
}

function* offLoads(): Generator<NumberCase> {
  for (const [i, plan] of RIGS.entries()) {
    const arm = armOf(plan);
    const bare = { ...plan, balance: { ...plan.balance, payloadKg: 0 } };
    yield {
      at: `rig ${i}, camera off`,
      got: arm.cameraOff.armNm,
      want: torqueNm(bare, weightOf(arm), 0),
    };
    yield {
      at: `rig ${i}, weight off`,
      got: arm.weightOff.armNm,
      want: torqueNm(plan, { kg: 0, mm: 0 }, 0),
    };
  }
}

function* worstTorques(): Generator<NumberCase> {
  for (const [i, plan] of RIGS.slice(0, 60).entries()) {
    const { arm, axes } = balanced(plan);
    const boom = axes[0] as AxisColumns;
    if (!arm || arm.residualNm === 0) continue;
    const angleAt = (at: number) => plan.rig.arm.zeroDeg + positionAt(boom, at);
    const want = largest((at) => Math.abs(torqueNm(plan, weightOf(arm), angleAt(at))));
    yield { at: `rig ${i}`, got: arm.worstNm, want };
  }
}

/** Energy that an arm gains or loses anywhere on its way, against that of its payload's lift over an arm's length. */
function* drifts(): Generator<NumberCase> {
  for (const [i, rig] of RIGS.entries()) {
    const { balance } = rig;
    const plan: Plan = { ...rig, balance: { ...balance, workedOut: 'place', counterweightMaxMm: 1e6 } };
    const arm = armOf(plan);
    if (arm.needsNone) continue;
    const level = energyJ(plan, weightOf(arm), 0);
    const lift = (9.80665 * balance.payloadKg * plan.rig.arm.lengthMm) / 1000;
    for (const angle of [-170, -90, -33, 10, 60, 90, 145])
      yield {
        at: `rig ${i} at ${angle}°`,
        got: (energyJ(plan, weightOf(arm), angle) - level) / lift,
        want: 0,
      };
  }
}

function* stillMargins(): Generator<NumberCase> {
  for (const [i, rig] of RIGS.entries()) {
    const plan = stillAt(rig, -170 + ((i * 53) % 340));
    const { arm, tip } = balanced(plan);
    const weight = arm ? weightOf(arm) : { kg: 0, mm: 0 };
    const centre = centreMm(plan, weight, plan.rig.arm.zeroDeg, 0);
    yield { at: `rig ${i}`, got: tip.marginMm / tip.safeMm, want: edgeMm(plan, centre) / tip.safeMm };
  }
}

function* movingMargins(): Generator<NumberCase> {
  for (const [i, plan] of RIGS.slice(0, 100).entries()) {
    const { arm, tip, axes } = balanced(plan);
    const [boom, slide] = axes as [AxisColumns, AxisColumns];
    const weight = arm ? weightOf(arm) : { kg: 0, mm: 0 };
    const want = -largest((at) => {
      const theta = plan.rig.arm.zeroDeg + positionAt(boom, at);
      return -edgeMm(plan, centreMm(plan, weight, theta, positionAt(slide, at)));
    });
    yield { at: `rig ${i}`, got: tip.marginMm / tip.safeMm, want: want / tip.safeMm };
  }
}

export function measureAgainstStatics(): Row[] {
  const torque = { reference: ENERGY, bound: 1e-9, unit: 'relative' };
  const room = { quantity: 'room until it tips over', reference: POLYGON, unit: 'of the radius' };
  return [
    numberRow(
      { ...torque, quantity: 'moment of the arm', regime: 'random arms and arcs, one angle' },
      torques(),
      relative,
    ),
    numberRow(
      { ...torque, quantity: 'moment, camera or weight off', regime: '300 random arms and arcs' },
      offLoads(),
      relative,
    ),
    numberRow(
      {
        ...torque,
        quantity: 'largest moment over a move',
        regime: '60 random moves',
      },
      worstTorques(),
      relative,
    ),
    numberRow(
      {
        quantity: 'energy an arm in balance gains',
        reference: STAYS,
        regime: 'random arms, seven angles',
        bound: 1e-12,
        unit: 'of its lift',
      },
      drifts(),
    ),
    numberRow({ ...room, regime: '300 random rigs that stand still', bound: 1e-9 }, stillMargins()),
    numberRow({ ...room, regime: '100 random moves of arm and slide', bound: 1e-9 }, movingMargins()),
  ];
}
