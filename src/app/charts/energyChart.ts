/** What is left in the pack in use of every source, down to its reserve and up again at every swap. */
import { fullWh } from '../../engine/energy/battery.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import type { Schedule, SourceColumns, SourceSummary } from '../../engine/schedule-types.ts';
import { ofFrame } from '../../engine/working/names.ts';
import {
  type Band,
  breaksAt,
  type ChartModel,
  dotsOf,
  frameCount,
  heightFor,
  paddedDomain,
  type Reading,
  xOfFrame,
  yScale,
} from './chart.ts';
import { fixed } from './format.ts';
import { type Moment, markBoxes, placeMarks } from './marks.ts';
import { placeNames } from './names.ts';
import type { RunView } from './runView.ts';
import { type LineStyle, lineStyle, type Series, type Tone, traceOf, valueAt } from './trace.ts';

const USUAL_HEIGHT_PX = 112;
const TONES: readonly Tone[] = ['blue', 'purple', 'amber', 'green', 'verm'];

interface DrawnSource {
  series: Series;
  summary: SourceSummary;
  reserveShare: number;
}

/** The chart of the sources; null if the plan has none. */
export function energyChart(view: RunView, plan: Plan): ChartModel | null {
  const { schedule, widthPx } = view;
  const sources = schedule.columns.sources.map((columns, n) => drawnSource(columns, schedule, plan, n));
  if (sources.length === 0) return null;
  const packs = sources.filter((source) => source.summary.kind === 'battery');
  const series = packs.map((pack) => pack.series);
  const heightPx =
    packs.length > 0 ? heightFor(USUAL_HEIGHT_PX, sources.length + 1) : heightFor(0, sources.length);
  const y = yScale([0, 100], heightPx);
  const traces = series.map((one) => traceOf(view, one, y, heightPx));
  const marks = placeMarks(swapMoments(packs, view), { traces, widthPx, heightPx: heightPx - 16 });
  const bands = reserves(packs);
  return {
    id: 'energy',
    title: 'Energy',
    unit: '% left',
    heightPx,
    domain: paddedDomain([0, 100], heightPx),
    ticks: packs.length > 0 ? percentTicks(bands) : [],
    traces,
    names: placeNames(traces, markBoxes(marks), { widthPx, heightPx: heightPx - 14 }),
    bands,
    levels: [],
    marks,
    summary: sources.map((source) => sourceInWords(source, frameCount(schedule))).join(' '),
    note: packs.length === 0 ? 'Mains only: nothing runs down.' : null,
    read: (index) => [...sources.map((source) => readSource(source, index)), ...nextSwap(packs, index)],
    dots: (index) => dotsOf(series, y, index),
    table: packs.map((pack) => ({
      heading: `${pack.series.name}, % left`,
      cell: (index) => fixed(valueAt(pack.series, index), 0),
      of: (index) => ofFrame(index, leftOf(pack.summary)),
    })),
  };
}

function drawnSource(columns: SourceColumns, schedule: Schedule, plan: Plan, n: number): DrawnSource {
  const source = plan.power.sources[n];
  const summary = schedule.sources[n];
  if (!source || !summary) throw new Error(`Source ${columns.name} is not in the plan.`);
  const series: Series = {
    name: columns.name,
    values: columns.leftWh,
    // A pack that gives nothing in the cold is empty, not nothing of nothing.
    factor: 100 / (fullWh(source, plan.power.temperatureC) || Number.POSITIVE_INFINITY),
    breaks: breaksAt(summary.swapFrames),
    filled: false,
    ...lineStyle(n, TONES),
  };
  return { series, summary, reserveShare: source.reserveShare };
}

/** One hatched band for every reserve that differs. */
function reserves(packs: readonly DrawnSource[]): Band[] {
  const shares = [...new Set(packs.map((pack) => pack.reserveShare))].filter((share) => share > 0);
  return shares.map((share) => {
    const own = packs.filter((pack) => pack.reserveShare === share);
    return { from: 0, to: share * 100, kind: 'reserve', style: onlyStyle(own) };
  });
}

/** The line style of a single pack; null for several. */
function onlyStyle([first, ...others]: readonly DrawnSource[]): LineStyle | null {
  return first && others.length === 0 ? { tone: first.series.tone, dash: first.series.dash } : null;
}

function percentTicks(bands: readonly Band[]) {
  const lowest = Math.max(0, ...bands.map((band) => band.to));
  const values = [100, 50, ...bands.map((band) => band.to), ...(lowest < 1 ? [0] : [])];
  const apart = values.filter((value, i) =>
    values.slice(0, i).every((before) => Math.abs(before - value) >= 12),
  );
  return apart.map((value) => ({ value, label: fixed(value, 0) }));
}

function swapMoments(packs: readonly DrawnSource[], view: RunView): Moment[] {
  const moments = packs.flatMap(({ summary }) => [
    ...summary.swapFrames.map(
      (frame): Moment => ({
        kind: 'change',
        x: xOfFrame(view, frame),
        label: `Swap ${summary.name}, frame ${frame}`,
        short: `Swap at ${frame}`,
      }),
    ),
    ...emptyMoment(summary, view),
  ]);
  return moments.sort((a, b) => a.x - b.x);
}

function emptyMoment({ name, shortAtFrame }: SourceSummary, view: RunView): Moment[] {
  if (shortAtFrame === null) return [];
  return [{ kind: 'end', x: xOfFrame(view, shortAtFrame), label: `${name} runs out, frame ${shortAtFrame}` }];
}

/** Name of the working of what is left, without the frame. */
const leftOf = ({ name }: SourceSummary): string => `sources.${name}.leftPercent`;

function readSource({ series, summary }: DrawnSource, index: number): Reading {
  return summary.kind === 'mains'
    ? { style: null, name: series.name, value: 'mains', unit: '' }
    : {
        style: series,
        name: series.name,
        value: fixed(valueAt(series, index), 0),
        unit: '%',
        of: ofFrame(index, leftOf(summary)),
      };
}

function nextSwap(packs: readonly DrawnSource[], index: number): Reading[] {
  const coming = packs.flatMap((pack) => pack.summary.swapFrames).filter((frame) => frame > index + 1);
  if (coming.length === 0) return [];
  const value = String(Math.min(...coming) - index - 1);
  return [{ style: null, name: 'Swap in', value, unit: 'fr', of: ofFrame(index, 'toSwap') }];
}

function sourceInWords({ series, summary }: DrawnSource, frames: number): string {
  if (summary.kind === 'mains') return `${series.name} is mains.`;
  const end = `${series.name} ends at ${fixed(valueAt(series, frames - 1), 0)} % of the pack in use`;
  const swaps = summary.swapFrames;
  const after = swaps.length === 0 ? ', without a swap.' : `, swapped at frame ${listed(swaps)}.`;
  const short = summary.shortAtFrame === null ? '' : ` It runs out at frame ${summary.shortAtFrame}.`;
  return end + after + short;
}

/** At most five frames by number. */
function listed(frames: readonly number[]): string {
  const shown = frames.slice(0, 5).join(', ');
  return frames.length > 5 ? `${shown} and ${frames.length - 5} more` : shown;
}
