import { memo, useId } from 'react';
import { CartesianGrid, LineChart, ReferenceArea, ReferenceLine, XAxis, YAxis } from 'recharts';
import type { Band, ChartModel } from './chart.ts';
import { Hatch } from './Hatch.tsx';
import { colourOf } from './trace.ts';

/** All that recharts is told of a chart: its axis, its grid and its hatched areas, but nothing along the run. */
export interface FrameProps extends Pick<ChartModel, 'heightPx' | 'domain' | 'ticks' | 'bands'> {
  widthPx: number;
  /** Width of the column of figures to the left of the plot. */
  gutterPx: number;
  /** Rules at the figures of the axis. */
  grid: boolean;
}

const NO_DATA: never[] = [];
const NO_MARGIN = { top: 0, right: 0, bottom: 0, left: 0 };
const TICK = { fill: 'var(--ink2)' };

/**
 * Figures, grid and areas of a chart, drawn by recharts.
 *
 * It is by far the slowest part of a chart to draw, so it is told nothing of the clock, and is drawn again only if
 * what it is told has changed in value, which few edits do.
 */
export const PlotFrame = memo(
  function PlotFrame(props: FrameProps) {
    const { heightPx, widthPx, gutterPx, grid, domain, ticks, bands } = props;
    const id = useId();
    const labels = new Map(ticks.map((tick) => [tick.value, tick.label]));
    return (
      <LineChart
        width={gutterPx + widthPx}
        height={heightPx}
        data={NO_DATA}
        margin={NO_MARGIN}
        accessibilityLayer={false}
      >
        <defs>
          <Hatch id={`${id}reserve`} kind="left" />
          <Hatch id={`${id}guard`} kind="guard" />
        </defs>
        <XAxis type="number" dataKey="x" domain={[0, widthPx]} hide allowDataOverflow />
        <YAxis
          type="number"
          width={gutterPx}
          domain={[...domain]}
          ticks={ticks.map((tick) => tick.value)}
          tickFormatter={(value: number) => labels.get(value) ?? ''}
          interval={0}
          axisLine={false}
          tickLine={false}
          tickMargin={6}
          tick={TICK}
          allowDataOverflow
        />
        {grid && <CartesianGrid stroke="var(--hair)" vertical={false} syncWithTicks />}
        {bands.map((band) => (
          <ReferenceArea
            key={`${band.from} ${band.to}`}
            y1={band.from}
            y2={band.to}
            fill={`url(#${id}${band.kind})`}
            fillOpacity={0.55}
            strokeOpacity={0}
          />
        ))}
        {bands.map((band) => (
          <ReferenceLine key={`${band.from} ${band.to} edge`} y={edgeOf(band)} {...edgeStyle(band)} />
        ))}
      </LineChart>
    );
  },
  (before, after) => JSON.stringify(before) === JSON.stringify(after),
);

/** The side of a band towards what is free. */
const edgeOf = (band: Band) => (band.kind === 'reserve' ? band.to : band.from);

/** The end of a reserve that one source alone keeps has that source's line style. */
const edgeStyle = ({ style }: Band) =>
  style === null
    ? { stroke: 'var(--edge)' }
    : { stroke: colourOf(style.tone), strokeDasharray: style.dash, strokeWidth: 1 };
