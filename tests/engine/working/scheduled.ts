/** Figures of a schedule by the names of their workings: what each working has to come to. */

import { headroom } from '../../../src/engine/findings/order.ts';
import type { Margin } from '../../../src/engine/findings/types.ts';
import type { Schedule } from '../../../src/engine/schedule-types.ts';

/** A figure as the schedule has it. */
export interface Scheduled {
  value: number;
  /** Kept in single precision, or worked out from what is: seven digits. */
  single: boolean;
}

/** Seconds since local midnight of an ISO time. */
function localS(iso: string): number {
  const midnight = Date.parse(`${iso.slice(0, 10)}T00:00:00${iso.slice(-6)}`);
  return (Date.parse(iso) - midnight) / 1000;
}

type Entry = [name: string, value: number | null | undefined];

const totals = ({ totals: all }: Schedule): Entry[] =>
  Object.entries(all).map(([name, value]) => [
    `totals.${name}`,
    typeof value === 'string' ? localS(value) : value,
  ]);

const sources = (made: Schedule): Entry[] =>
  made.sources.flatMap(({ name, kind, ratedWh, usableWh, drawnWh, meanW, needed, swapFrames }): Entry[] => [
    [`sources.${name}.swaps`, kind === 'mains' ? null : swapFrames.length],
    ...swapFrames.slice(0, 3).map((frame, n): Entry => [`sources.${name}.swap.${n + 1}`, frame]),
    [`sources.${name}.ratedWh`, ratedWh],
    [`sources.${name}.usableWh`, usableWh],
    [`sources.${name}.drawnWh`, drawnWh],
    [`sources.${name}.meanW`, meanW],
    [`sources.${name}.needed`, needed],
  ]);

const cards = (made: Schedule): Entry[] =>
  made.cards.flatMap(({ name, usableBytes, usedBytes }): Entry[] => [
    [`cards.${name}.usableBytes`, usableBytes],
    [`cards.${name}.usedBytes`, usedBytes],
  ]);

/** The number in what a margin says of when it is tightest, or of what it has room for. */
function whenOf({ id, when, frame }: Margin): Entry[] {
  const said = Number(/(?:frame |room for )([\d,]+)/.exec(when)?.[1]?.replaceAll(',', ''));
  if (id.startsWith('source:')) return [[`margins.${id}.lastFrame`, said]];
  if (id === 'cards') return [[`margins.${id}.room`, said]];
  return id.startsWith('travel:') ? [] : [[`margins.${id}.frame`, Number.isNaN(said) ? frame : said]];
}

const margins = (made: Schedule, single: boolean): Entry[] =>
  made.margins
    .filter(({ id }) => ['blur', 'crossing'].includes(id) === single)
    .flatMap((margin): Entry[] => [
      [`margins.${margin.id}.used`, margin.used],
      [`margins.${margin.id}.available`, margin.available],
      [`margins.${margin.id}.left`, margin.left],
      [`margins.${margin.id}.headroom`, margin.available === 0 ? null : headroom(margin)],
      [`margins.${margin.id}.share`, margin.available === 0 ? null : margin.used / margin.available],
      ...whenOf(margin),
    ]);

function rig({ rig: { path, ringing, aim, balance } }: Schedule): Entry[] {
  const arm = balance?.arm;
  return [
    ['path.riseMm', path?.riseMm],
    ['path.reachMm', path?.reachMm],
    ['path.lengthMm', path?.lengthMm],
    ['path.deviationMm', path?.deviationMm],
    ['path.clearanceMm', path?.clearanceMm],
    ['path.swingDeg', path && path.swingDeg > 0 ? path.swingDeg : null],
    ['path.sagittaMm', path && path.swingDeg > 0 ? path.sagittaMm : null],
    ['ringing.longestSettleS', ringing?.longestSettleS],
    ['ringing.savesS', ringing?.quiet?.savesS],
    ['aim.worstDeg', aim?.worstFrame ? aim.worstDeg : null],
    ['balance.counterweightKg', arm?.counterweightKg],
    ['balance.counterweightMm', arm?.counterweightMm],
    ['balance.balancedMm', arm?.balancedMm],
    ['balance.aheadNm', arm?.aheadNm],
    ['balance.residualNm', arm?.residualNm],
    ['balance.worstNm', arm?.worstNm],
    ['balance.motor.ratio', arm?.motor.ratio],
    ['balance.motor.neededNm', arm?.motor.neededNm],
    ['balance.motor.marginShare', arm?.motor.marginShare],
    ['balance.cameraOffNm', arm?.cameraOff.armNm],
    ['balance.weightOffNm', arm?.weightOff.armNm],
    ['balance.payloadAllowedKg', arm?.payloadAllowedKg],
    ['balance.loadKg', balance?.support.loadKg],
    ['balance.totalKg', balance?.tip.totalKg],
    ['balance.farthestMm', balance?.tip.farthestMm],
    ['balance.safeMm', balance?.tip.safeMm],
    ['balance.marginMm', balance?.tip.marginMm],
    ['balance.leanDeg', balance?.tip.leanDeg],
  ];
}

const finite = (seconds: number | undefined): number | null =>
  seconds !== undefined && Number.isFinite(seconds) ? seconds : null;

const ceilings = ({ exposure }: Schedule): Entry[] => [
  ['exposure.ceilingS', finite(exposure?.ceiling.ceilingS)],
  ['exposure.cycleCeilingS', finite(exposure?.ceiling.cycleS)],
  ['exposure.angleCeilingS', finite(exposure?.ceiling.angleS)],
];

function singles({ rig: { image, aim, ringing } }: Schedule): Entry[] {
  return [
    ['image.subjectPx', image?.subject.px],
    ['image.backgroundPx', image?.background.px],
    ['image.blurPx', image?.blur?.px],
    ['image.crossingS', image?.crossing?.shortestS],
    ['aim.worstPx', aim?.worstFrame ? aim.worstPx : null],
    ['ringing.worstPx', ringing?.worstFrame ? ringing.worstPx : null],
  ];
}

const DOUBLES = [
  'exposureS',
  'holdS',
  'cameraS',
  'rigS',
  'spareS',
  'moveS',
  'settleS',
  'intervalS',
  'elapsedS',
  'bufferBytes',
] as const;
const SINGLES = ['ringPx', 'evScene', 'evError', 'subjectPx', 'backgroundPx', 'aimMissPx'] as const;
const SKY = ['sunAltitudeDeg', 'sunAzimuthDeg', 'moonAltitudeDeg'] as const;

/** Figures of one frame, counted from 1. */
export function scheduledAt(made: Schedule, frame: number): Map<string, Scheduled> {
  const { columns } = made;
  const k = frame - 1;
  const name = (what: string) => `frame.${frame}.${what}`;
  const doubles: Entry[] = [
    ...DOUBLES.map((what): Entry => [name(what), columns[what][k]]),
    ...columns.axes.flatMap((axis): Entry[] => [
      [name(`axes.${axis.name}.moveS`), axis.moveS[k]],
      [name(`axes.${axis.name}.position`), (axis.steps[k] ?? 0) / axis.stepsPerUnit],
    ]),
    ...SKY.map((what): Entry => [name(what), columns.sky?.[what][k]]),
  ];
  const single = SINGLES.map((what): Entry => [name(what), columns[what]?.[k]]);
  return mapOf(doubles, single);
}

function mapOf(doubles: readonly Entry[], single: readonly Entry[]): Map<string, Scheduled> {
  const all = new Map<string, Scheduled>();
  const add = (entries: readonly Entry[], isSingle: boolean) => {
    for (const [name, value] of entries)
      if (value !== null && value !== undefined) all.set(name, { value, single: isSingle });
  };
  add(doubles, false);
  add(single, true);
  return all;
}

/** Figures of a whole run. */
export const scheduled = (made: Schedule): Map<string, Scheduled> =>
  mapOf(
    [
      ...totals(made),
      ...sources(made),
      ...cards(made),
      ...margins(made, false),
      ...rig(made),
      ...ceilings(made),
    ],
    [...singles(made), ...margins(made, true)],
  );
