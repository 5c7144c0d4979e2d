import { memo } from 'react';
import type { ChartModel, Mark } from './chart.ts';
import { PlotFrame } from './PlotFrame.tsx';
import type { PlacedTick, RunView } from './runView.ts';
import { linear } from './scale.ts';

interface Props {
  chart: ChartModel;
  view: RunView;
  /** Width of the column of figures to the left of the plot. */
  gutterPx: number;
  clock: readonly PlacedTick[];
}

/** One chart of the run without its cursor: recharts draws the frame, the lines are our own paths over it. */
export const RunPlot = memo(function RunPlot({ chart, view, gutterPx, clock }: Props) {
  const { heightPx, domain, ticks, bands } = chart;
  return (
    <>
      {/* The frame is only looked at: recharts listens for focus, which would make each layer a stop for Tab. */}
      <div inert>
        <PlotFrame {...{ heightPx, domain, ticks, bands, gutterPx }} widthPx={view.widthPx} />
      </div>
      <svg className="run-lines" width={gutterPx + view.widthPx} height={heightPx} aria-hidden="true">
        <g transform={`translate(${gutterPx} 0)`}>
          <path d={clock.map(({ x }) => `M${x} 0V${heightPx}`).join('')} stroke="var(--hair)" />
          <Levels chart={chart} widthPx={view.widthPx} />
          <Lines chart={chart} view={view} />
        </g>
      </svg>
    </>
  );
});

/** Levels that mean something, over the whole run or a part of it. */
function Levels({ chart, widthPx }: { chart: ChartModel; widthPx: number }) {
  const y = linear(chart.domain, [chart.heightPx, 0]);
  return chart.levels.map((level) => (
    <path
      key={`${level.value} ${level.fromX}`}
      d={`M${level.fromX ?? 0} ${y(level.value)}H${level.toX ?? widthPx}`}
      stroke={level.kind === 'exceeded' ? 'var(--stop)' : 'var(--edge)'}
      strokeDasharray={level.kind === 'zero' ? undefined : '2 3'}
    />
  ));
}

/** Start and end of the run, lines, marks and names. */
function Lines({ chart, view }: { chart: ChartModel; view: RunView }) {
  const { elapsedS, widthPx } = view;
  const ends = [Number(elapsedS[0]), Number(elapsedS[elapsedS.length - 1])].map(view.x);
  return (
    <>
      <path d={ends.map((x) => `M${x} 0V${chart.heightPx}`).join('')} stroke="var(--ink)" />
      {chart.traces.map((trace) => (
        <g key={trace.name} fill="none">
          {trace.area !== '' && <path d={trace.area} fill="var(--f-green)" />}
          <path
            d={trace.path}
            stroke={`var(--s-${trace.tone})`}
            strokeWidth="2"
            strokeDasharray={trace.dash}
          />
        </g>
      ))}
      {chart.marks.map((mark) => (
        <MarkDrawn key={mark.x} mark={mark} heightPx={chart.heightPx} />
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

const MARK_COLOURS = { change: 'var(--warn)', end: 'var(--stop)', value: 'var(--ink)' } as const;

function MarkDrawn({ mark, heightPx }: { mark: Mark; heightPx: number }) {
  const colour = MARK_COLOURS[mark.kind];
  return (
    <>
      {mark.y === null ? (
        <>
          <path d={`M${mark.x} 0V${heightPx}`} stroke={colour} strokeDasharray="3 3" />
          <path d={`M${mark.x - 6} 0h12l-6 10z`} fill={colour} />
        </>
      ) : (
        <circle cx={mark.x} cy={mark.y} r="3.5" fill={colour} stroke="var(--surface)" strokeWidth="1.5" />
      )}
      <text x={mark.labelX} y={mark.labelY} textAnchor="middle" className="chart-name">
        {mark.label}
      </text>
    </>
  );
}
