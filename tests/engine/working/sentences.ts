/** What numbers of the sentences of findings may be, besides figures that were worked out. */
import type { Finding, FindingId } from '../../../src/engine/findings/types.ts';
import { bytes, counted, figure, percent, seconds, withUnit } from '../../../src/engine/findings/words.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { numberOf, wordOf } from '../../../src/engine/working/said.ts';
import { unitText } from '../../../src/engine/working/text.ts';
import type { Working } from '../../../src/engine/working/working.ts';

/** Kinds of findings whose sentence may state nothing that was worked out. */
export const SAYS_NO_FIGURE: readonly FindingId[] = [
  'no-start-event',
  'no-window',
  'ramp-step-idle',
  'keyframe-order',
  'out-of-balance',
  'interval-not-settable',
];

/** The ways in which sentences write a number. */
function writings(value: number, unit: string): string[] {
  const plural = unitText(unit, 2);
  return [
    withUnit(value, unitText(unit, value)),
    withUnit(value, plural),
    figure(value),
    percent(value),
    seconds(value),
    bytes(value),
    `frame ${value}`,
    `exposure ${value}`,
    `Exposure ${value}`,
    `${value} ${plural}`,
    counted(value, plural.replace(/s$/, '')),
    counted(value, 'time'),
    value === 1 ? 'once' : `${value} times`,
    `${value} needed`,
    `${value} more`,
    `${value} such changes`,
    `1/${Number((1 / value).toPrecision(4))}\u00A0s`,
  ].map((text) => text.replace('\u00A0°', '°'));
}

/** How a working's value may stand in a sentence; of one that is known to seven digits, also its neighbours. */
export const printed = ({ value, unit, label }: Working): string[] => [
  ...(label === null
    ? []
    : [
        label,
        label.slice(11, 19),
        label.slice(11, 16),
        label.slice(0, 10),
        label.slice(0, 16).replace('T', ' '),
        label.slice(0, 19).replace('T', ' '),
        label.slice(19),
      ]),
  ...(unit === 'min' ? [seconds(value * 60)] : []),
  ...[1, 1 - 1e-6, 1 + 1e-6].flatMap((share) => writings(share === 1 ? value : value * share, unit)),
];

const MARKS =
  /1\/[\d.]+|f\/[\d.]+|ISO\u00A0[\d.]+( to \d+)?|\d+(\.\d+)?\u00A0s(?=,|:| to)|shutter [\d./]+ to [\d./]+/g;

/** Settings as they are marked on the camera, and the steps of the ramp. */
const marks = ({ message }: Finding): string[] => [
  ...(message.match(MARKS) ?? []),
  ...(message.match(/^Step \d+ of the ramp/) ?? []),
];

/** Numbers that were typed, as their sentence writes them; and limits that are facts of the trade. */
const TYPED: Partial<Record<FindingId, (plan: Plan, finding: Finding) => string[]>> = {
  'interval-not-settable': ({ trigger: { stepS, minS, maxS } }) => [stepS, minS, maxS].map(seconds),
  'no-clip': ({ clip }) => [`${clip.handlesFrames} at each end`],
  'guard-used': ({ cycle }) => [seconds(cycle.guardS)],
  'shutter-marked-exact': (_, { message }) => message.match(/marked \S+/g) ?? [],
  'light-out-of-range': (_, finding) => marks(finding),
  'shutter-beyond-cycle': ({ exposure }, finding) => [
    ...marks(finding),
    seconds(numberOf(finding, 'wantedS')),
    `${figure(exposure.shutterAngleMaxDeg ?? 0)}°`,
  ],
  'ramp-step-idle': (_, finding) => [...marks(finding), ...(finding.message.match(/\d[\d.]*\u00A0s/g) ?? [])],
  'change-does-not-fit': ({ exposure }, finding) => [...marks(finding), seconds(exposure.ramp.changeS)],
  'blur-share': ({ exposure }) => [`${figure(exposure.shutterAngleMaxDeg ?? 0)}°`],
  ripple: ({ lamps }, { message }) => [
    `${lamps.mainsHz}\u00A0Hz`,
    percent(lamps.limitShare),
    ...(message.match(/at (\d\S*),/) ?? []),
    ...(message.match(/(?<=: |and )\d\S* (?=\()/g) ?? []),
  ],
  'keyframe-order': (_, { message }) => message.match(/[Kk]eyframe \d+/g) ?? [],
  'backlash-taken-up': (plan, finding) => lost(plan, finding),
  reversal: (plan, finding) => lost(plan, finding),
  travel: ({ rig }, finding) =>
    rig.axes
      .filter(({ name }) => name === wordOf(finding, 'axis'))
      .flatMap(({ travelMin, travelMax, unit }) => [
        `${withUnit(travelMin, unit)} to ${withUnit(travelMax, unit)}`,
      ]),
  speed: ({ rig }) => rig.axes.map(({ maxSpeed, unit }) => `can do ${withUnit(maxSpeed, `${unit}/s`)}`),
  acceleration: ({ rig }) =>
    rig.axes.flatMap(({ maxAccel, maxJerk, unit }) => [
      `can do ${withUnit(maxAccel, `${unit}/s²`)}`,
      `can do ${withUnit(maxJerk, `${unit}/s³`)}`,
    ]),
  'not-settled': ({ ringing }) => [
    seconds(ringing.measuredSettleS ?? 0),
    withUnit(ringing.tolerancePx, 'px'),
  ],
  'motion-blur': ({ subject }) => [withUnit(subject.blurMaxPx, 'px')],
  'panning-fast': ({ subject }) => [seconds(subject.crossingMinS)],
  'out-of-balance': ({ balance }) => [
    withUnit(balance.counterweightMaxMm, 'mm'),
    withUnit(balance.counterweightMm, 'mm'),
  ],
  // A stepper without feedback should have a half in hand (Parker, EIPKB1 “Torque Margin”).
  'motor-cannot-hold': ({ balance, rig }) => [
    'should have 50\u00A0%',
    ...rig.axes.map(({ torqueNm }) => withUnit(torqueNm ?? 0, 'N m')),
    withUnit(balance.payloadKg, 'kg'),
  ],
  'arm-overloaded': ({ balance, rig }) => [
    withUnit(balance.payloadKg, 'kg'),
    withUnit(rig.arm.lengthMm, 'mm'),
    `${withUnit(balance.ratedKg ?? 0, 'kg')} at ${withUnit(balance.ratedMm, 'mm')}`,
  ],
  'support-overloaded': ({ balance }) => [`carries ${withUnit(balance.supportRatedKg ?? 0, 'kg')}`],
  'source-short': ({ power }) =>
    power.sources.flatMap(({ count, reserveShare }) => [
      `${count} brought`,
      `reserve of ${percent(reserveShare)}`,
    ]),
  'swap-does-not-fit': ({ power }) => power.sources.map(({ swapS }) => seconds(swapS)),
  // Lithium batteries in baggage: 100 Wh, and 160 Wh with the carrier's approval (ICAO Doc 9284, part 8).
  'flight-limit': () => ['100\u00A0Wh', '160\u00A0Wh'],
  'card-full': ({ storage }) => [`All ${storage.cards.length} cards`],
  'card-change-does-not-fit': ({ storage }) => [seconds(storage.cardChangeS)],
  'no-start-event': ({ start }) => [start.date],
  'outside-window': () => ['within 31\u00A0days'],
  'star-trails': ({ view }) => [`${withUnit(view.starTrailMaxPx, 'px')} are allowed`],
  'clock-skipped': ({ start }) => [start.time, start.date],
  'clock-repeated': ({ start }) => [start.time, start.date],
  'start-past': (_, { message }) => message.match(/\d{4}-\d\d-\d\d/g) ?? [],
};

function lost({ rig }: Plan, finding: Finding): string[] {
  const axis = rig.axes.find(({ name }) => name === wordOf(finding, 'axis'));
  return axis
    ? [
        withUnit(axis.backlash, axis.unit),
        ...(axis.overrun === null ? [] : [withUnit(axis.overrun, axis.unit)]),
      ]
    : [];
}

/**
 * A sentence without what was typed: numbers as the plan has them, the longest first, then the name that it is about.
 * @param sentence - without the figures that were worked out
 */
export function withoutTyped(plan: Plan, finding: Finding, sentence: string): string {
  const typed = [...(TYPED[finding.id]?.(plan, finding) ?? [])].sort((a, b) => b.length - a.length);
  const rest = typed.reduce((text, each) => text.replaceAll(alone(each), '#'), sentence);
  return [...plan.rig.axes, ...plan.power.sources].reduce((text, { name }) => text.replace(name, '#'), rest);
}

/** A text where it is not a part of a longer number. */
const alone = (text: string): RegExp =>
  new RegExp(`(?<![\\d.,:/])${text.replace(/[$()*+./?[\\\]^{|}]/g, '\\$&')}(?!\\d|[.,:]\\d)`, 'g');
