/** How moments, torque, load and footing came about. */
import { armRad, poseAxis, RAD } from '../path/pose.ts';
import { DEFINITION, type Draft, none, sameAs, term, type Worked, type Workings } from '../working/make.ts';
import { ofMargin } from '../working/margins.ts';
import type { Term } from '../working/types.ts';
import { type ArmBalance, type Held, uprightShare } from './arm.ts';
import { type BalanceRun, massesOf } from './balance.ts';
import { carriedAt, carriersOf } from './carried.ts';
import { farthestMoment, type Masses } from './tip.ts';

const LEVER = 'Law of the lever; g is 9.80665 m/s² (CGPM 1901).';
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
const FRONT = 'payloadKg * armMm + armKg * armCentreMm';
const frontTerms = (of: Worked): Term[] => [...payloadTerms(of), ...armTerms(of)];

const kgTerm = ({ arm }: Balanced): Term =>
  term('counterweightKg', 'counterweight', arm.counterweightKg, 'kg', 'balance.counterweightKg');
const placeTerm = ({ arm }: Balanced): Term =>
  term('counterweightMm', 'its place behind the pivot', arm.counterweightMm, 'mm', 'balance.counterweightMm');
const residualTerm = ({ arm }: Balanced): Term =>
  term('residualNm', 'left unbalanced', arm.residualNm, 'N m', 'balance.residualNm');
const uprightTerm = ({ plan }: Worked): Term =>
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

const felt = (of: Balanced): Draft => ({
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

/** Masses that ride, and those that stay, as terms. */
function massTerms({ plan, made }: Worked): { terms: Term[]; riding: string } {
  const { payloadKg, armKg } = plan.balance;
  const arm = made.rig.balance?.arm ?? null;
  return {
    riding: arm ? 'payloadKg + armKg + counterweightKg' : 'payloadKg',
    terms: [
      term('payloadKg', 'payload', payloadKg, 'kg'),
      ...(arm
        ? [
            term('armKg', 'arm itself', armKg, 'kg'),
            term('counterweightKg', 'counterweight', arm.counterweightKg, 'kg', 'balance.counterweightKg'),
          ]
        : []),
    ],
  };
}

function load(of: Worked, run: BalanceRun): Draft {
  const { baseKg, ballastKg } = of.plan.balance;
  const { riding, terms } = massTerms(of);
  return {
    title: 'On the support',
    value: run.support.loadKg,
    unit: 'kg',
    expression: `${riding} + baseKg + ballastKg`,
    terms: [
      ...terms,
      term('baseKg', 'rest of the rig', baseKg, 'kg'),
      term('ballastKg', 'weigh-down', ballastKg, 'kg'),
    ],
    source: DEFINITION,
  };
}

const totalMass = (of: Worked, { support, tip }: BalanceRun): Draft => ({
  title: 'All together',
  value: tip.totalKg,
  unit: 'kg',
  expression: 'loadKg + supportKg',
  terms: [
    term('loadKg', 'on the support', support.loadKg, 'kg', 'balance.loadKg'),
    term('supportKg', 'support itself', of.plan.balance.supportKg, 'kg'),
  ],
  source: DEFINITION,
});

/** Where the carriers are when the centre of mass is farthest off. */
interface Worst {
  masses: Masses;
  totalKg: number;
  slideMm: number;
  armDeg: number;
  hasBoom: boolean;
  hasSlide: boolean;
}

function worstOf({ plan, made }: Worked, { arm, tip }: BalanceRun): Worst {
  const carriers = carriersOf(plan, made.columns.axes);
  const masses = massesOf(plan, arm);
  const at = farthestMoment(carriers, masses, arm ? [arm.worstFrame - 1] : []);
  const stance = carriedAt(carriers, at);
  return {
    masses,
    // Where there is no mass there is nothing off the middle.
    totalKg: tip.totalKg || 1,
    slideMm: stance.slide,
    armDeg: armRad(carriers.geometry, stance) / RAD,
    hasBoom: carriers.geometry.boom !== null,
    hasSlide: carriers.slide !== undefined,
  };
}

function farthest(of: Worked, run: BalanceRun): Draft {
  const { plan } = of;
  const { masses, totalKg, slideMm, armDeg, hasBoom, hasSlide } = worstOf(of, run);
  const slide = 'slideMm * ridingKg * cos(inclineDeg * pi / 180)';
  const arm = 'alongArmKgMm';
  const sum = (parts: readonly (string | false)[]): string =>
    parts.filter((part) => part !== false).join(' + ') || '0';
  const x = sum([
    hasSlide && `${slide} * sin(bearingDeg * pi / 180)`,
    hasBoom && `${arm} * sin(armDeg * pi / 180) * sin(leanDeg * pi / 180)`,
  ]);
  const y = sum([
    hasSlide && `${slide} * cos(bearingDeg * pi / 180)`,
    hasBoom && `${arm} * cos(armDeg * pi / 180)`,
  ]);
  return {
    title: 'Centre of mass off the middle',
    value: run.tip.farthestMm,
    unit: 'mm',
    expression: `sqrt((${x}) ^ 2 + (${y}) ^ 2) / totalKg`,
    terms: [
      ...(hasSlide
        ? [
            term('slideMm', 'slide at that moment', slideMm, 'mm'),
            term('ridingKg', 'what rides on the slide', masses.ridingKg, 'kg'),
            term('inclineDeg', 'incline of the slide', plan.rig.slide.inclineDeg, 'deg'),
            term('bearingDeg', 'bearing of the slide', plan.rig.slide.bearingDeg, 'deg'),
          ]
        : []),
      ...(hasBoom
        ? [
            term(
              'alongArmKgMm',
              'mass by its place along the arm, all together',
              masses.alongArmKgMm,
              'kg mm',
            ),
            term('armDeg', 'angle of the arm from level at that moment', armDeg, 'deg'),
            term('leanDeg', 'lean of the arc', plan.rig.arm.planeTiltDeg, 'deg'),
          ]
        : []),
      run.tip.totalKg > 0
        ? term('totalKg', 'all together', run.tip.totalKg, 'kg', 'balance.totalKg')
        : term('totalKg', 'all together, nothing', totalKg, 'kg'),
    ],
    frame: run.tip.frame,
    remarks: ['At the moment at which it is farthest off, also between two frames.'],
    source: 'Centre of mass (textbook).',
  };
}

const safe = ({ plan }: Worked, { tip }: BalanceRun): Draft => ({
  title: 'Circle inside the feet',
  value: tip.safeMm,
  unit: 'mm',
  expression: 'feetRadiusMm * cos(pi / legs)',
  terms: [
    term('feetRadiusMm', 'radius of the feet', plan.balance.feetRadiusMm, 'mm'),
    term('legs', 'legs', plan.balance.legs, ''),
  ],
  remarks: ['The inscribed circle of the polygon between the feet: half the radius for three legs.'],
  source: 'Inscribed circle of a regular polygon (geometry).',
});

const farthestTerm = ({ tip }: BalanceRun): Term =>
  term('farthestMm', 'centre of mass off the middle', tip.farthestMm, 'mm', 'balance.farthestMm');
const safeTerm = ({ tip }: BalanceRun): Term =>
  term('safeMm', 'circle inside the feet', tip.safeMm, 'mm', 'balance.safeMm');

function lean(of: Worked, run: BalanceRun): Draft {
  const { masses, slideMm, armDeg, totalKg } = worstOf(of, run);
  const { rig } = of.plan;
  const z =
    rig.pivotHeightMm +
    (slideMm * masses.ridingKg * Math.sin(rig.slide.inclineDeg * RAD) +
      masses.alongArmKgMm * Math.sin(armDeg * RAD) * Math.cos(rig.arm.planeTiltDeg * RAD)) /
      totalKg;
  return {
    title: 'Tips on ground that leans',
    value: run.tip.leanDeg,
    unit: 'deg',
    expression: 'atan2(safeMm - farthestMm, max(0, heightMm)) * 180 / pi',
    terms: [safeTerm(run), farthestTerm(run), term('heightMm', 'height of the centre of mass', z, 'mm')],
    frame: run.tip.frame,
    remarks: [
      'What does not move is taken to sit as high as the pivot, so that the lean is rather too small than too large.',
    ],
    source: 'A body tips when its centre of mass is above the edge of its base (statics).',
  };
}

function marginDrafts(of: Worked, run: BalanceRun): Workings {
  const find = (id: string) => of.made.margins.find((margin) => margin.id === id);
  const same = (id: string, which: 'used' | 'available', words: string, figure: string | null): Workings => {
    const margin = find(id);
    if (!margin) return {};
    return {
      [ofMargin(margin, which)]: () =>
        sameAs(`${margin.label}: ${which}`, words, margin[which], margin.unit, figure, {
          value: margin[which],
          frame: margin.frame,
        }),
    };
  };
  return {
    ...same('tip', 'used', 'centre of mass off the middle', 'balance.farthestMm'),
    ...same('tip', 'available', 'circle inside the feet', 'balance.safeMm'),
    ...same('support', 'used', 'on the support', 'balance.loadKg'),
    ...same('support', 'available', 'what its maker allows', null),
    ...(run.arm && same('motor', 'used', 'motor holds', 'balance.motor.neededNm')),
    ...same('motor', 'available', 'holding torque of the motor', null),
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
