/** How the figures came about that the findings of the balance state. */
import type { Finding } from '../findings/types.ts';
import { figure, percent, withUnit } from '../findings/words.ts';
import { DEFINITION, term, type Worked, worth } from '../working/make.ts';
import { firstFrame, numberOf, type Said, type Sayer, type Sayers } from '../working/said.ts';
import type { ArmBalance } from './arm.ts';
import { FRONT, felt, frontTerms, LEVER } from './working.ts';

/** What is left unbalanced, as a share of what hangs ahead. */
function feltShare(of: Worked, arm: ArmBalance, feltNm: number): Said {
  return {
    text: percent(feltNm / arm.aheadNm),
    what: 'feltShare',
    draft: () => ({
      title: 'Left unbalanced, share of what hangs ahead',
      unit: '',
      expression: 'feltNm / aheadNm',
      terms: [
        term('feltNm', 'left unbalanced, about the arm’s own axis', feltNm, 'N m', 'balance.feltNm'),
        term(
          'aheadNm',
          'ahead of the pivot',
          of.made.rig.balance?.arm?.aheadNm ?? 0,
          'N m',
          'balance.aheadNm',
        ),
      ],
      source: DEFINITION,
    }),
  };
}

/** The counterweight that would balance the arm at the place where it sits. */
const wouldBalance = (of: Worked, { balancedKg, counterweightMm }: ArmBalance): Said => ({
  text: withUnit(balancedKg ?? 0, 'kg'),
  what: 'balancedKg',
  draft: () => ({
    title: 'Counterweight that would balance it there',
    unit: 'kg',
    expression: `(${FRONT}) / counterweightMm`,
    terms: [
      ...frontTerms(of),
      term('counterweightMm', 'its place behind the pivot', counterweightMm, 'mm', 'balance.counterweightMm'),
    ],
    source: LEVER,
  }),
});

const wouldSit = (balancedMm: number): Said[] =>
  ['would have to sit at ', 'balances it at '].map((lead) => ({
    text: withUnit(balancedMm, 'mm'),
    lead,
    of: 'balance.balancedMm',
  }));

const outOfBalance: Sayer = (of) => {
  const arm = of.made.rig.balance?.arm;
  if (!arm) return [];
  const feltNm = worth(felt({ ...of, arm }));
  return [
    { text: withUnit(feltNm, 'N m'), of: 'balance.feltNm' },
    ...(arm.aheadNm > 0 ? [feltShare(of, arm, feltNm)] : []),
    ...(arm.balancedMm === null ? [] : wouldSit(arm.balancedMm)),
    ...(arm.balancedKg === null ? [] : [wouldBalance(of, arm)]),
    { text: withUnit(arm.counterweightKg, 'kg'), of: 'balance.counterweightKg' },
  ];
};

/** The longest arm that bears the payload. */
const longestArm = ({ plan: { balance } }: Worked, finding: Finding): Said => ({
  text: withUnit(numberOf(finding, 'longestMm'), 'mm'),
  what: 'longestMm',
  draft: () => ({
    title: 'Longest arm for this payload',
    unit: 'mm',
    expression: 'ratedKg * ratedMm / payloadKg',
    terms: [
      term('ratedKg', 'what its maker allows', balance.ratedKg ?? 0, 'kg'),
      term('ratedMm', 'at an arm of', balance.ratedMm, 'mm'),
      term('payloadKg', 'payload', balance.payloadKg, 'kg'),
    ],
    remarks: ['The same moment: heavier camera, shorter arm.'],
    source: 'Law of the lever; common practice, no source: the maker’s table comes first.',
  }),
});

/** What hung from the middle leaves a fifth in hand. */
function moreMass({ made }: Worked, finding: Finding): Said {
  const tip = made.rig.balance?.tip;
  return {
    text: withUnit(numberOf(finding, 'moreKg'), 'kg'),
    what: 'moreKg',
    draft: () => ({
      title: 'To hang from the middle',
      value: numberOf(finding, 'moreKg'),
      unit: 'kg',
      expression: 'ceil(10 * totalKg * (farthestMm / (4 / 5 * safeMm) - 1)) / 10',
      terms: [
        term('totalKg', 'all together', tip?.totalKg ?? 0, 'kg', 'balance.totalKg'),
        term('farthestMm', 'centre of mass off the middle', tip?.farthestMm ?? 0, 'mm', 'balance.farthestMm'),
        term('safeMm', 'edge of the feet from the middle', tip?.safeMm ?? 0, 'mm', 'balance.safeMm'),
      ],
      remarks: [
        'It draws the centre of mass towards the middle, until a fifth of the way to the edge is in hand; up to the next tenth of a kilogram. That fifth is common practice, no source.',
      ],
      source: 'Centre of mass: the mean of places by their masses.',
    }),
  };
}

export const BALANCE_SAYS: Sayers = {
  'out-of-balance': outOfBalance,
  'motor-cannot-hold': (_, finding) => [
    { text: withUnit(numberOf(finding, 'neededNm'), 'N m'), of: 'balance.motor.neededNm' },
    { text: percent(numberOf(finding, 'marginShare')), of: 'balance.motor.marginShare' },
    firstFrame(finding, 'first frame at which the motor has too little in hand'),
  ],
  'arm-overloaded': (of, finding) => [
    { text: withUnit(numberOf(finding, 'payloadAllowedKg'), 'kg'), of: 'balance.payloadAllowedKg' },
    longestArm(of, finding),
  ],
  'support-overloaded': (_, finding) => [
    { text: withUnit(numberOf(finding, 'loadKg'), 'kg'), of: 'balance.loadKg' },
  ],
  'tips-over': (of, finding) => [
    { text: withUnit(numberOf(finding, 'farthestMm'), 'mm'), of: 'balance.farthestMm' },
    { text: withUnit(numberOf(finding, 'safeMm'), 'mm'), of: 'balance.safeMm' },
    { text: withUnit(numberOf(finding, 'marginMm'), 'mm'), of: 'balance.marginMm' },
    { text: `${figure(numberOf(finding, 'leanDeg'))}°`, of: 'balance.leanDeg' },
    firstFrame(finding, 'first frame at which too little is in hand'),
    moreMass(of, finding),
  ],
};
