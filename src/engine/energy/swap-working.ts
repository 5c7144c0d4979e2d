/** How often packs are swapped, and when: from what each gives until it is taken out. */
import type { Source } from '../plan/schema.ts';
import type { SourceSummary } from '../schedule-types.ts';
import {
  DEFINITION,
  type Draft,
  none,
  PRACTICE,
  sameAs,
  term,
  type Worked,
  type Workings,
  worth,
} from '../working/make.ts';
import { MOST_SWAPS } from '../working/names.ts';
import { fullWh } from './battery.ts';
import { drawnOver, ofSource } from './drawn-working.ts';

/** Packs, and frames of swaps, that are named one by one. */
const MOST_NAMED = 12;
const HAIR_WH = 1e-9;

/** A source with its packs that were taken out. */
interface Swapped {
  of: Worked;
  source: Source;
  summary: SourceSummary;
  /** What is in the pack when each shutter opens, Wh. */
  leftWh: Float64Array;
}

/** Index of the first frame of a pack, counted from 0. */
const begins = ({ summary }: Swapped, pack: number): number =>
  pack === 0 ? 0 : (summary.swapFrames[pack - 1] as number) - 1;

/** What is left above the reserve in a pack as it is taken out, Wh. */
function overWh(swapped: Swapped, pack: number): number {
  const { of, source, summary, leftWh } = swapped;
  const next = begins(swapped, pack + 1);
  const full = fullWh(source, of.plan.power.temperatureC);
  const lastWh = worth(drawnOver(of, source, { from: next - 1, to: next }));
  const over = (leftWh[next - 1] as number) - lastWh - (full - (summary.usableWh ?? 0));
  // Sums of many frames carry a rounding.
  return Math.abs(over) < HAIR_WH ? 0 : over;
}

/** What is left above the reserve in all packs that are taken out: too little for another frame. */
function leftOver(swapped: Swapped): Draft {
  const { source, summary } = swapped;
  const over = summary.swapFrames.map((_, pack) => overWh(swapped, pack));
  const named = over.slice(0, MOST_NAMED);
  const others = over.slice(MOST_NAMED).reduce((sum, wh) => sum + wh, 0);
  const terms = [
    ...named.map((wh, pack) => term(`pack${pack + 1}Wh`, `in pack ${pack + 1}`, wh, 'Wh')),
    ...(over.length > MOST_NAMED ? [term('othersWh', 'in the others', others, 'Wh')] : []),
  ];
  return {
    title: `${source.name}: left in packs that are taken out`,
    unit: 'Wh',
    expression: terms.map(({ symbol }) => symbol).join(' + '),
    terms,
    remarks: ['Above the reserve: too little for another frame.'],
    source: DEFINITION,
  };
}

/** How often a pack is swapped: as often as a whole pack has been given, or left because no frame fits. */
function swaps(swapped: Swapped): Draft {
  const { of, source, summary, leftWh } = swapped;
  const { name, swapFrames, usableWh } = summary;
  const title = `${name}: swaps`;
  const last = swapFrames.at(-1);
  if (last === undefined) return none(title, 'swaps', 'The first pack lasts, or there is no other.');
  const remarks = [
    'A pack is swapped before the frame that it would not last through.',
    `Before frame ${swapFrames.slice(0, MOST_NAMED).join(', ')}${swapFrames.length > MOST_NAMED ? ' and so on' : ''}.`,
  ];
  if (!usableWh)
    return sameAs(title, 'packs that give nothing', swapFrames.length, 'swaps', null, { remarks });
  const usedWh = fullWh(source, of.plan.power.temperatureC) - (leftWh[0] as number);
  const used = usedWh > 0;
  return {
    title,
    value: swapFrames.length,
    unit: 'swaps',
    expression: `round((${used ? 'usedWh + ' : ''}drawnWh + leftWh) / usableWh)`,
    terms: [
      ...(used ? [term('usedWh', 'given before the first frame', usedWh, 'Wh')] : []),
      term(
        'drawnWh',
        'drawn until the last swap',
        worth(drawnOver(of, source, { from: 0, to: last - 1 })),
        'Wh',
        ofSource(name, 'drawnToSwapWh'),
      ),
      term(
        'leftWh',
        'left in packs that are taken out',
        worth(leftOver(swapped)),
        'Wh',
        ofSource(name, 'leftOverWh'),
      ),
      term('usableWh', 'usable, one pack', usableWh, 'Wh', ofSource(name, 'usableWh')),
    ],
    remarks,
    source: PRACTICE,
  };
}

/** The frame before which a pack is swapped. @param n - which swap, counted from 0 */
function swapFrame(swapped: Swapped, n: number): Draft {
  const { of, source, summary } = swapped;
  const [from, to] = [begins(swapped, n), begins(swapped, n + 1)];
  const wh = (until: number) => worth(drawnOver(of, source, { from, to: until })).toFixed(2);
  return {
    title: `${summary.name}: swap ${n + 1}, before frame`,
    unit: '',
    expression: 'firstFrame + lastsFrames',
    terms: [
      term('firstFrame', 'first frame on the pack before', from + 1, ''),
      term('lastsFrames', 'frames that it lasts for', to - from, 'frames'),
    ],
    frame: to + 1,
    remarks: [
      `Over those it gives ${wh(to)} Wh; with the next one it would be ${wh(to + 1)} Wh, of ${(summary.usableWh ?? 0).toFixed(2)} Wh usable.`,
    ],
    source: PRACTICE,
  };
}

/** Workings of the swaps of a source. @param i - its place in the plan */
export function swapWorkings(of: Worked, source: Source, summary: SourceSummary, i: number): Workings {
  const leftWh = of.made.columns.sources[i]?.leftWh;
  if (source.kind === 'mains' || !leftWh) return {};
  const swapped = { of, source, summary, leftWh };
  const { swapFrames } = summary;
  const last = swapFrames.at(-1);
  const name = (what: string) => ofSource(source.name, what);
  return {
    [name('swaps')]: () => swaps(swapped),
    ...(last !== undefined && {
      [name('drawnToSwapWh')]: () => ({
        ...drawnOver(of, source, { from: 0, to: last - 1 }),
        title: `${source.name}: drawn until the last swap`,
      }),
      [name('leftOverWh')]: () => leftOver(swapped),
    }),
    ...Object.fromEntries(
      swapFrames.slice(0, MOST_SWAPS).map((_, n) => [name(`swap.${n + 1}`), () => swapFrame(swapped, n)]),
    ),
  };
}
