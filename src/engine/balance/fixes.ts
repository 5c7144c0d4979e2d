/** Ways out of what the balance says: the counterweight, the arm, and what the rig stands on. */
import { withUnit } from '../findings/words.ts';
import { numberIn, stepsOf, switchWay, tidy } from '../fixes/build.ts';
import type { SubjectWays, Way, WaysOut } from '../fixes/types.ts';
import { smallerTracks } from '../motion/track-ways.ts';
import type { Plan } from '../plan/schema.ts';
import type { Schedule } from '../schedule-types.ts';

const plates = (kg: number): string => `${withUnit(kg, 'kg')} of plates, and the arm locked while they go on`;

/** The counterweight where it balances the arm, or at the end of the rear arm. */
function counterweightPlaced(plan: Plan, { rig }: Schedule): Way[] {
  const { workedOut, counterweightMaxMm, counterweightMm } = plan.balance;
  const balancedMm = rig.balance?.arm?.balancedMm ?? null;
  if (workedOut === 'place') return [];
  const fits = balancedMm !== null && balancedMm <= counterweightMaxMm;
  const placeMm = workedOut === 'residual' && fits ? Math.round(balancedMm) : counterweightMaxMm;
  if (workedOut === 'mass' && counterweightMm <= counterweightMaxMm) return [];
  return switchWay(plan, [['balance.counterweightMm', placeMm]], {
    kind: 'counterweight-place',
    label: () => `Counterweight to ${withUnit(placeMm, 'mm')}`,
  });
}

/** The mass that balances the arm where the counterweight sits. */
function counterweightWeighed(plan: Plan, { rig }: Schedule): Way[] {
  const arm = rig.balance?.arm;
  if (!arm || plan.balance.workedOut !== 'residual') return [];
  const kg = arm.needsNone ? 0 : tidy(arm.balancedKg ?? Number.NaN, 2);
  if (Number.isNaN(kg)) return [];
  const mm = Math.min(plan.balance.counterweightMm, plan.balance.counterweightMaxMm);
  return switchWay(
    plan,
    [
      ['balance.counterweightKg', kg],
      ['balance.counterweightMm', mm],
    ],
    {
      kind: 'counterweight-mass',
      label: () => (kg === 0 ? 'Take the counterweight off' : `Counterweight of ${withUnit(kg, 'kg')}`),
      needs: kg === 0 ? null : plates(kg),
    },
  );
}

/** A heavier or a lighter counterweight, whose place is worked out. @param wantedKg - that should just suffice */
const counterweightBy = (plan: Plan, side: 1 | -1, wantedKg: number): Way[] =>
  plan.balance.workedOut === 'place'
    ? stepsOf(plan, {
        kind: side === 1 ? 'counterweight-heavier' : 'counterweight-lighter',
        path: 'balance.counterweightKg',
        by: side * 0.1,
        wanted: wantedKg,
        label: (kg) => `Counterweight of ${withUnit(kg, 'kg')}`,
        needs: plates,
      })
    : [];

/** A counterweight farther behind the pivot, whose mass is worked out: it is lighter there. */
const counterweightFarther = (plan: Plan): Way[] =>
  plan.balance.workedOut === 'mass'
    ? stepsOf(plan, {
        kind: 'counterweight-farther',
        path: 'balance.counterweightMm',
        by: 10,
        until: plan.balance.counterweightMaxMm,
        label: (mm) => `Counterweight to ${withUnit(mm, 'mm')}`,
      })
    : [];

const balancing = (plan: Plan, made: Schedule): Way[] => {
  const arm = made.rig.balance?.arm;
  const { counterweightMaxMm, counterweightKg } = plan.balance;
  // Mass times place of what balances it, at the end of the rear arm.
  const atEndKg = arm ? ((arm.balancedMm ?? 0) * counterweightKg) / counterweightMaxMm : 0;
  return [
    ...counterweightPlaced(plan, made),
    ...counterweightWeighed(plan, made),
    ...counterweightBy(plan, 1, atEndKg),
  ];
};

const outOfBalance: WaysOut = (_, plan, made) => balancing(plan, made);

/** A shorter arm, in whole centimetres. @param wantedMm - that should just suffice */
const shorterArm = (plan: Plan, wantedMm: number): Way[] =>
  stepsOf(plan, {
    kind: 'arm-shorter',
    path: 'rig.arm.lengthMm',
    by: -10,
    wanted: wantedMm,
    label: (mm) => `Arm of ${withUnit(mm, 'mm')}`,
    needs: 'an arm that can be set shorter; balance and test it anew',
  });

const armOverloaded: WaysOut = (finding, plan) => shorterArm(plan, numberIn(finding, 'longestMm'));

/** Less or more hung from the middle of the support. @param wantedKg - that should just suffice */
const weighDown = (plan: Plan, side: 1 | -1, wantedKg: number): Way[] =>
  stepsOf(plan, {
    kind: side === 1 ? 'weigh-down-more' : 'weigh-down-less',
    path: 'balance.ballastKg',
    by: side * 0.5,
    wanted: wantedKg,
    label: (kg) => (kg === 0 ? 'No weigh-down' : `Weigh it down with ${withUnit(kg, 'kg')}`),
    needs: (kg) => (side === 1 ? `${withUnit(kg, 'kg')} to hang from the middle` : 'a look at how it stands'),
  });

const supportOverloaded: WaysOut = (finding, plan) => {
  const overKg = numberIn(finding, 'loadKg') - numberIn(finding, 'ratedKg');
  return [
    ...weighDown(plan, -1, plan.balance.ballastKg - overKg),
    ...counterweightBy(plan, -1, plan.balance.counterweightKg - overKg),
    ...counterweightFarther(plan),
  ];
};

/** Feet farther apart, in whole centimetres. @param wantedMm - that should just suffice */
const widerFeet = (plan: Plan, wantedMm: number): Way[] =>
  stepsOf(plan, {
    kind: 'feet-wider',
    path: 'balance.feetRadiusMm',
    by: 10,
    wanted: wantedMm,
    until: 3000,
    label: (mm) => `Feet at ${withUnit(mm, 'mm')} from the middle`,
    needs: 'a support that spreads so wide, and room for it',
  });

const tipsOver: WaysOut = (finding, plan, made) => {
  const { feetRadiusMm, ballastKg } = plan.balance;
  const [farthestMm, safeMm] = [numberIn(finding, 'farthestMm'), numberIn(finding, 'safeMm')];
  // A fifth of the radius is to be left.
  const share = (0.8 * safeMm) / farthestMm;
  return [
    ...weighDown(plan, 1, ballastKg + numberIn(finding, 'moreKg')),
    ...widerFeet(plan, feetRadiusMm / share),
    ...balancing(plan, made),
    ...smallerTracks(plan, share),
  ];
};

export const balanceWays: SubjectWays<
  'out-of-balance' | 'motor-cannot-hold' | 'arm-overloaded' | 'support-overloaded' | 'tips-over'
> = {
  'out-of-balance': outOfBalance,
  'motor-cannot-hold': outOfBalance,
  'arm-overloaded': armOverloaded,
  'support-overloaded': supportOverloaded,
  'tips-over': tipsOver,
};
