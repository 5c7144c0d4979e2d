import { memo } from 'react';
import type { ChartModel } from './chart.ts';
import { PlotFrame } from './PlotFrame.tsx';
import { MarkDrawn, Stretches, Teeth } from './RunMarks.tsx';
import type { PlacedTick, RunView } from './runView.ts';
import { SkyGround, SkyWords } from './SkyGround.tsx';
import { SunLanes } from './SunLanes.tsx';
import { linear } from './scale.ts';
import type { SkyBand } from './skyBand.ts';
import { colourOf, type Trace } from './trace.ts';

interface Props {
  chart: ChartModel;
  view: RunView;
  /** Width of the column of figures to the left of the plot. */
  gutterPx: number;
  clock: readonly PlacedTick[];
  /** The light of the run; null without a place. */
  sky: SkyBand | null;
}

/** One chart of the run without its cursor: recharts draws the axis, the lines are our own paths over its frame. */
export const RunPlot = memo(function RunPlot({ chart, view, gutterPx, clock, sky }: Props) {
  const { heightPx, domain, ticks, bands, overSky } = chart;
  return (
    <>
      {sky && <SkyGround {...{ sky, gutterPx, heightPx }} full={overSky !== undefined} />}
      {/* The frame is only looked at. */}
      <div inert>
        <PlotFrame
          {...{ heightPx, domain, ticks, bands, gutterPx }}
          grid={overSky === undefined}
          widthPx={view.widthPx}
        />
      </div>
      <svg className="run-lines" width={gutterPx + view.widthPx} height={heightPx} aria-hidden="true">
        <g transform={`translate(${gutterPx} 0)`}>
          {!overSky && <path d={clock.map(({ x }) => `M${x} 0V${heightPx}`).join('')} stroke="var(--hair)" />}
          <Stretches chart={chart} />
          <Levels chart={chart} widthPx={view.widthPx} />
          <Lines chart={chart} view={view} />
        </g>
      </svg>
    </>
  );
});

const LEVEL_LOOKS = {
  limit: { stroke: 'var(--edge)', strokeDasharray: '2 3' },
  exceeded: { stroke: 'var(--stop)', strokeDasharray: '2 3' },
  zero: { stroke: 'var(--edge)' },
  horizon: { stroke: 'var(--curve)', strokeOpacity: 0.7 },
  twilight: { stroke: 'var(--curve)', strokeOpacity: 0.5, strokeDasharray: '2 4' },
} as const;

/** Levels that mean something, over the whole run or a part of it. */
function Levels({ chart, widthPx }: { chart: ChartModel; widthPx: number }) {
  const y = linear(chart.domain, [chart.heightPx, 0]);
  return chart.levels.map((level, n) => (
    <path
      // biome-ignore lint/suspicious/noArrayIndexKey: what moves with an edit is not made anew
      key={n}
      d={`M${level.fromX ?? 0} ${y(level.value)}H${level.toX ?? widthPx}`}
      {...LEVEL_LOOKS[level.kind]}
    />
  ));
}

/** Start and end of the run, lines, marks and names. */
function Lines({ chart, view }: { chart: ChartModel; view: RunView }) {
  const { elapsedS, widthPx } = view;
  const ends = [Number(elapsedS[0]), Number(elapsedS[elapsedS.length - 1])].map(view.x);
  return (
    <>
      {chart.lanes && <SunLanes lanes={chart.lanes} widthPx={widthPx} />}
      <path d={ends.map((x) => `M${x} 0V${chart.heightPx}`).join('')} stroke="var(--ink)" />
      {chart.traces.map((trace) => (
        <Line key={trace.name} trace={trace} />
      ))}
      {chart.overSky && <SkyWords drawing={chart.overSky} heightPx={chart.heightPx} />}
      <Teeth chart={chart} />
      {chart.marks.map((mark, n) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: what moves with an edit is not made anew
        <MarkDrawn key={n} mark={mark} heightPx={chart.heightPx} />
      ))}
      {chart.names.map((name) => (
        <text key={name.text} x={name.x} y={name.y} textAnchor="middle" className="chart-name">
          {name.text}
        </text>
      ))}
      {chart.note && (
        <text x={widthPx / 2} y={chart.heightPx / 2} textAnchor="middle" className="chart-name">
          {chart.note}
        </text>
      )}
    </>
  );
}

function Line({ trace }: { trace: Trace }) {
  return (
    <g fill="none">
      {trace.area !== '' && <path d={trace.area} fill="var(--f-green)" />}
      {trace.tone === 'curve' && (
        <path d={trace.path} stroke="var(--halo)" strokeWidth="5" strokeOpacity="0.7" />
      )}
      <path d={trace.path} stroke={colourOf(trace.tone)} strokeWidth="2" strokeDasharray={trace.dash} />
    </g>
  );
}
