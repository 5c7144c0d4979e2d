/** How moments, torque, load and footing came about. */
import { armRad, poseAxis, RAD } from '../path/pose.ts';
import { DEFINITION, type Draft, none, sameAs, term, type Worked, type Workings } from '../working/make.ts';
import type { Term } from '../working/types.ts';
import { type ArmBalance, type Held, uprightShare } from './arm.ts';
import type { BalanceRun } from './balance.ts';
import { carriedAt, carriersOf } from './carried.ts';
import {
  farthest,
  farthestTerm,
  lean,
  load,
  marginDrafts,
  safe,
  safeTerm,
  totalMass,
} from './standing-working.ts';

export const LEVER = 'Law of the lever; g is 9.80665 m/s² (CGPM 1901).';
const GRAVITY = '9.80665 / 1000';

/** What the workings here go by. */
interface Balanced extends Worked {
  run: BalanceRun;
  arm: ArmBalance;
}

const payloadTerms = ({ plan }: Worked): Term[] => [
  term('payloadKg', 'payload', plan.balance.payloadKg, 'kg'),
  term('armMm', 'length of the arm', plan.rig.arm.lengthMm, 'mm'),
];
const armTerms = ({ plan }: Worked): Term[] => [
  term('armKg', 'arm itself', plan.balance.armKg, 'kg'),
  term('armCentreMm', 'its centre ahead of the pivot', plan.balance.armCentreMm, 'mm'),
];
export const FRONT = 'payloadKg * armMm + armKg * armCentreMm';
export const frontTerms = (of: Worked): Term[] => [...payloadTerms(of), ...armTerms(of)];

const kgTerm = ({ arm }: Balanced): Term =>
  term('counterweightKg', 'counterweight', arm.counterweightKg, 'kg', 'balance.counterweightKg');
const placeTerm = ({ arm }: Balanced): Term =>
  term('counterweightMm', 'its place behind the pivot', arm.counterweightMm, 'mm', 'balance.counterweightMm');
const residualTerm = ({ arm }: Pick<Balanced, 'arm'>): Term =>
  term('residualNm', 'left unbalanced', arm.residualNm, 'N m', 'balance.residualNm');
const uprightTerm = ({ plan }: Pick<Worked, 'plan'>): Term =>
  term('uprightShare', 'cosine of the lean of the arc', uprightShare(plan), '');

const ahead = (of: Balanced): Draft => ({
  title: 'Ahead of the pivot',
  value: of.arm.aheadNm,
  unit: 'N m',
  expression: `(payloadKg * armMm + max(0, armKg * armCentreMm)) * ${GRAVITY}`,
  terms: frontTerms(of),
  remarks: ['The arm level in an upright arc.'],
  source: LEVER,
});

const residual = (of: Balanced): Draft => ({
  title: 'Left unbalanced',
  value: of.arm.residualNm,
  unit: 'N m',
  expression: `(${FRONT} - counterweightKg * counterweightMm) * ${GRAVITY}`,
  terms: [...frontTerms(of), kgTerm(of), placeTerm(of)],
  remarks: ['Positive: the camera’s end is the heavier. The arm level in an upright arc.'],
  source: LEVER,
});

export const felt = (of: Pick<Balanced, 'plan' | 'arm'>): Draft => ({
  title: 'Left unbalanced, about the arm’s own axis',
  unit: 'N m',
  expression: 'abs(residualNm) * uprightShare',
  terms: [residualTerm(of), uprightTerm(of)],
  source: LEVER,
});

function mass(of: Balanced): Draft {
  const { plan, arm } = of;
  const base = { title: 'Counterweight', value: arm.counterweightKg, unit: 'kg' };
  if (plan.balance.workedOut !== 'mass')
    return arm.needsNone && plan.balance.workedOut === 'place'
      ? none('Counterweight', 'kg', 'It needs none: even without one the camera’s end is not the heavier.')
      : { ...sameAs('', 'counterweight as typed', plan.balance.counterweightKg, 'kg', null), ...base };
  if (arm.needsNone || arm.counterweightMm === 0)
    return none(
      'Counterweight',
      'kg',
      arm.needsNone ? 'It needs none.' : 'At the pivot itself no mass balances anything.',
    );
  return {
    ...base,
    expression: `(${FRONT}) / counterweightMm`,
    terms: [...frontTerms(of), placeTerm(of)],
    source: LEVER,
  };
}

function place(of: Balanced): Draft {
  const { plan, arm } = of;
  const { workedOut, counterweightMaxMm, counterweightMm } = plan.balance;
  const base = { title: 'Place of the counterweight', value: arm.counterweightMm, unit: 'mm' };
  const end = term('rearMm', 'end of the rear arm', counterweightMaxMm, 'mm');
  if (arm.needsNone && workedOut !== 'residual') return none(base.title, 'mm', 'It needs no counterweight.');
  if (workedOut !== 'place')
    return {
      ...base,
      expression: 'min(typedMm, rearMm)',
      terms: [term('typedMm', 'place as typed', counterweightMm, 'mm'), end],
      source: DEFINITION,
    };
  return {
    ...base,
    expression: `min((${FRONT}) / counterweightKg, rearMm)`,
    terms: [...frontTerms(of), kgTerm(of), end],
    remarks: ['Where it balances what is in front, or the end of the rear arm.'],
    source: LEVER,
  };
}

const balanced = (of: Balanced): Draft => ({
  title: 'Would balance at',
  value: of.arm.balancedMm ?? 0,
  unit: 'mm',
  expression: `(${FRONT}) / counterweightKg`,
  terms: [...frontTerms(of), kgTerm(of)],
  source: LEVER,
});

/** Cosine of the arm's angle where that is nearest to level, or 1 where it passes level. */
function levelShare({ plan, made, arm }: Balanced): { expression: string; terms: Term[]; remark: string } {
  const carriers = carriersOf(plan, made.columns.axes);
  const angleRad = armRad(carriers.geometry, carriedAt(carriers, arm.worstFrame - 1));
  const share =
    arm.residualNm === 0
      ? Math.abs(Math.cos(angleRad))
      : arm.worstNm / (Math.abs(arm.residualNm) * uprightShare(plan));
  if (Math.abs(share - 1) < 1e-12)
    return { expression: '1', terms: [], remark: 'The arm passes level, where it is heaviest.' };
  return {
    expression: 'abs(cos(armDeg * pi / 180))',
    terms: [term('armDeg', 'angle of the arm from level', angleRad / RAD, 'deg')],
    remark: 'Where the arm is nearest to level it is heaviest.',
  };
}

function worst(of: Balanced): Draft {
  const { expression, terms, remark } = levelShare(of);
  return {
    title: 'Heaviest of the move',
    value: of.arm.worstNm,
    unit: 'N m',
    expression: `abs(residualNm) * uprightShare * ${expression}`,
    terms: [residualTerm(of), uprightTerm(of), ...terms],
    frame: of.arm.worstFrame,
    remarks: [remark],
    source: LEVER,
  };
}

function ratio({ plan, arm }: Balanced): Draft {
  const axis = plan.rig.axes[poseAxis(plan, 'boom')];
  const byMm = axis?.unit === 'mm';
  return {
    title: 'Turns of the motor for one of the arm',
    value: arm.motor.ratio,
    unit: '',
    expression: `gearRatio * ${byMm ? '2 * pi * armMm' : '360'} / unitsPerTurn`,
    terms: [
      term('gearRatio', 'turns of the motor for one of the output', axis?.gearRatio ?? 1, ''),
      ...(byMm ? [term('armMm', 'length of the arm', plan.rig.arm.lengthMm, 'mm')] : []),
      term(
        'unitsPerTurn',
        `${axis?.unit} of a turn of the output`,
        axis?.unitsPerTurn ?? 1,
        axis?.unit ?? '',
      ),
    ],
    source: DEFINITION,
  };
}

const gearing = ({ plan, arm }: Balanced): Term[] => [
  term('ratio', 'turns of the motor for one of the arm', arm.motor.ratio, '', 'balance.motor.ratio'),
  term(
    'efficiency',
    'efficiency of the drive',
    plan.rig.axes[poseAxis(plan, 'boom')]?.driveEfficiencyShare ?? 1,
    '',
  ),
];

function needed(of: Balanced): Draft {
  const { expression, terms, remark } = levelShare(of);
  return {
    title: 'Motor holds',
    value: of.arm.motor.neededNm,
    unit: 'N m',
    expression: `abs(residualNm) * uprightShare / (ratio * efficiency) * ${expression}`,
    terms: [residualTerm(of), uprightTerm(of), ...gearing(of), ...terms],
    frame: of.arm.worstFrame,
    remarks: [remark, 'As if it raised the heavier end; what speeding up takes is not in it.'],
    source: LEVER,
  };
}

const inHand = ({ arm }: Balanced): Draft => ({
  title: 'Torque in hand, share of what is needed',
  value: arm.motor.marginShare ?? 0,
  unit: '',
  expression: '(torqueNm - neededNm) / neededNm',
  terms: [
    term('torqueNm', 'holding torque of the motor', arm.motor.torqueNm ?? 0, 'N m'),
    term('neededNm', 'motor holds', arm.motor.neededNm, 'N m', 'balance.motor.neededNm'),
  ],
  source: 'Torque margin (Parker, EIPKB1 “Torque Margin”): at least a half for steppers without feedback.',
});

/** What is to be held with one end off. */
function oneOff(of: Balanced, which: 'cameraOff' | 'weightOff', title: string): Draft {
  const held: Held = of.arm[which];
  return {
    title,
    value: held.armNm,
    unit: 'N m',
    expression:
      which === 'weightOff'
        ? `(${FRONT}) * ${GRAVITY} * uprightShare`
        : `(residualNm - payloadKg * armMm * ${GRAVITY}) * uprightShare`,
    terms: [
      ...(which === 'weightOff' ? frontTerms(of) : [residualTerm(of), ...payloadTerms(of)]),
      uprightTerm(of),
    ],
    remarks: ['The arm level. Positive: the camera’s end drops.'],
    source: LEVER,
  };
}

const allowed = ({ plan, arm }: Balanced): Draft => ({
  title: 'Payload allowed at this arm',
  value: arm.payloadAllowedKg ?? 0,
  unit: 'kg',
  expression: 'ratedKg * ratedMm / armMm',
  terms: [
    term('ratedKg', 'what its maker allows', plan.balance.ratedKg ?? 0, 'kg'),
    term('ratedMm', 'at an arm of', plan.balance.ratedMm, 'mm'),
    term('armMm', 'length of the arm', plan.rig.arm.lengthMm, 'mm'),
  ],
  remarks: ['The same moment: heavier camera, shorter arm.'],
  source: 'Law of the lever; common practice, no source: the maker’s table comes first.',
});

function armDrafts(of: Worked, run: BalanceRun): Workings {
  if (run.arm === null) return {};
  const at: Balanced = { ...of, run, arm: run.arm };
  const { arm } = at;
  return {
    'balance.counterweightKg': () => mass(at),
    'balance.counterweightMm': () => place(at),
    ...(arm.balancedMm !== null && { 'balance.balancedMm': () => balanced(at) }),
    'balance.aheadNm': () => ahead(at),
    'balance.residualNm': () => residual(at),
    'balance.feltNm': () => felt(at),
    'balance.worstNm': () => worst(at),
    'balance.motor.ratio': () => ratio(at),
    'balance.motor.neededNm': () => needed(at),
    ...(arm.motor.marginShare !== null && { 'balance.motor.marginShare': () => inHand(at) }),
    'balance.cameraOffNm': () => oneOff(at, 'cameraOff', 'To hold with the camera off'),
    'balance.weightOffNm': () => oneOff(at, 'weightOff', 'To hold with the counterweight off'),
    ...(arm.payloadAllowedKg !== null && { 'balance.payloadAllowedKg': () => allowed(at) }),
  };
}

/** Workings of the balance. */
export function balanceWorkings(of: Worked): Workings {
  const run = of.made.rig.balance;
  if (run === null) return {};
  return {
    ...armDrafts(of, run),
    'balance.loadKg': () => load(of, run),
    'balance.totalKg': () => totalMass(of, run),
    'balance.farthestMm': () => farthest(of, run),
    'balance.safeMm': () => safe(of, run),
    'balance.marginMm': () => ({
      title: 'From tipping over',
      value: run.tip.marginMm,
      unit: 'mm',
      expression: 'safeMm - farthestMm',
      terms: [safeTerm(run), farthestTerm(run)],
      frame: run.tip.frame,
      source: DEFINITION,
    }),
    'balance.leanDeg': () => lean(of, run),
    ...marginDrafts(of, run),
  };
}
