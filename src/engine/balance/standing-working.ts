/** How load and footing came about: what stands on the support, and how near it is to tipping over. */
import { armRad, RAD } from '../path/pose.ts';
import { DEFINITION, type Draft, sameAs, term, type Worked, type Workings } from '../working/make.ts';
import { ofMargin } from '../working/margins.ts';
import type { Term } from '../working/types.ts';
import { type BalanceRun, massesOf } from './balance.ts';
import { carriedAt, carriersOf } from './carried.ts';
import { farthestMoment, type Masses } from './tip.ts';

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

export function load(of: Worked, run: BalanceRun): Draft {
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

export const totalMass = (of: Worked, { support, tip }: BalanceRun): Draft => ({
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

export function farthest(of: Worked, run: BalanceRun): Draft {
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

export const safe = ({ plan }: Worked, { tip }: BalanceRun): Draft => ({
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

export const farthestTerm = ({ tip }: BalanceRun): Term =>
  term('farthestMm', 'centre of mass off the middle', tip.farthestMm, 'mm', 'balance.farthestMm');
export const safeTerm = ({ tip }: BalanceRun): Term =>
  term('safeMm', 'circle inside the feet', tip.safeMm, 'mm', 'balance.safeMm');

export function lean(of: Worked, run: BalanceRun): Draft {
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

export function marginDrafts(of: Worked, run: BalanceRun): Workings {
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
