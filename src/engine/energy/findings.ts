/** What the energy says: are there enough packs, and is there time to swap them. */
import type { Margin } from '../findings/types.ts';
import { counted, percent, seconds, withUnit } from '../findings/words.ts';
import { type Draft, type Judge, lostBefore, type Run } from '../run.ts';
import { fullWh } from './battery.ts';
import type { SourceRun } from './energy.ts';

function short({ source, summary }: SourceRun): Draft[] {
  if (summary.shortAtFrame === null) return [];
  const { needed, shortAtFrame } = summary;
  const tooSmall = (summary.usableWh ?? 0) * needed < summary.drawnWh / 2;
  const need = tooSmall
    ? 'one pack does not last for one frame'
    : `${needed} needed, ${source.count} brought`;
  return [
    {
      id: 'source-short',
      severity: 'stop',
      subject: 'power',
      message: `${source.name}: ${need}. The last is down to its reserve of ${percent(source.reserveShare)} before frame ${shortAtFrame}.`,
      frame: shortAtFrame,
      values: {
        source: source.name,
        needed,
        brought: source.count,
        drawnWh: summary.drawnWh,
        usableWh: summary.usableWh ?? 0,
      },
    },
  ];
}

function swaps(run: Run, { source, summary }: SourceRun): Draft[] {
  const lost = summary.swapFrames.map((frame) => lostBefore(run, frame, source.swapS));
  const worst = Math.max(0, ...lost);
  const at = lost.findIndex((frames) => frames > 0);
  const frame = summary.swapFrames[at];
  if (frame === undefined) return [];
  const many = summary.swapFrames.length > 1 ? `, ${counted(summary.swapFrames.length, 'swap')} in all` : '';
  return [
    {
      id: 'swap-does-not-fit',
      severity: 'warning',
      subject: 'power',
      message: `${source.name} is swapped before frame ${frame}${many}. A swap takes ${seconds(source.swapS)} and loses ${counted(worst, 'frame')}.`,
      frame,
      values: {
        source: source.name,
        swapS: source.swapS,
        lostFrames: worst,
        swaps: summary.swapFrames.length,
      },
    },
  ];
}

function flight({ source, summary }: SourceRun): Draft[] {
  if (summary.flight === null || summary.flight === 'cabin') return [];
  const rated = withUnit(summary.ratedWh ?? 0, 'Wh');
  const rule =
    summary.flight === 'ask the carrier'
      ? 'above 100\u00A0Wh passenger aircraft take it only if the carrier agrees'
      : 'above 160\u00A0Wh passenger aircraft do not take it as baggage';
  return [
    {
      id: 'flight-limit',
      severity: 'note',
      subject: 'power',
      message: `${source.name} is rated ${rated} each: ${rule}. If you fly, ask for the present rules.`,
      frame: null,
      values: { source: source.name, ratedWh: summary.ratedWh ?? 0 },
    },
  ];
}

function margins(run: Run): Margin[] {
  return run.sources.flatMap(({ source, summary }): Margin[] => {
    if (source.kind === 'mains' || summary.drawnWh === 0) return [];
    const available = fullWh(source, run.plan.power.temperatureC) * source.count;
    const reserve = available * source.reserveShare;
    const perFrame = summary.drawnWh / run.pace.frames;
    const lastFrame = Math.floor((available - reserve) / perFrame);
    return [
      {
        id: `source:${source.name}`,
        subject: 'power',
        label: source.name,
        used: summary.drawnWh,
        available,
        unit: 'Wh',
        reserve,
        left: available - summary.drawnWh,
        frame: run.pace.frames,
        when: `${counted(source.count, 'pack')}, down to the reserve about frame ${lastFrame}`,
      },
    ];
  });
}

export const judgeEnergy: Judge = (run) => ({
  findings: run.sources.flatMap((item) => [...short(item), ...swaps(run, item), ...flight(item)]),
  margins: margins(run),
});
