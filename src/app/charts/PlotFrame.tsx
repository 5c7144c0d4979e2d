import { memo, useId } from 'react';
import { CartesianAxis, Surface } from 'recharts';
import type { Band, ChartModel } from './chart.ts';
import { Hatch } from './Hatch.tsx';
import { linear } from './scale.ts';
import { colourOf } from './trace.ts';

/** All that the frame of a chart shows: its axis, its grid and its hatched areas, but nothing along the run. */
export interface FrameProps extends Pick<ChartModel, 'heightPx' | 'domain' | 'ticks' | 'bands'> {
  widthPx: number;
  /** Width of the column of figures to the left of the plot. */
  gutterPx: number;
  /** Rules at the figures of the axis. */
  grid: boolean;
}

const TICK = { fill: 'var(--ink2)' };

/**
 * Figures, grid and areas of a chart.
 *
 * The axis is recharts' own, without the rest of a recharts chart: with its store and its scales that weighs three
 * times as much. It is the slowest part of a chart to draw, so the frame is told nothing of the clock, and is drawn
 * again only if what it is told has changed in value, which few edits do.
 */
export const PlotFrame = memo(
  function PlotFrame(props: FrameProps) {
    const { heightPx, widthPx, gutterPx, grid, domain, ticks, bands } = props;
    const id = useId();
    const y = linear(domain, [heightPx, 0]);
    const across = (value: number) => `M${gutterPx} ${y(value)}h${widthPx}`;
    return (
      <Surface width={gutterPx + widthPx} height={heightPx}>
        <defs>
          <Hatch id={`${id}reserve`} kind="left" />
          <Hatch id={`${id}guard`} kind="guard" />
        </defs>
        {grid && <path d={ticks.map(({ value }) => across(value)).join('')} stroke="var(--hair)" />}
        {bands.map((band) => (
          <rect
            key={`${band.from} ${band.to}`}
            x={gutterPx}
            y={y(band.to)}
            width={widthPx}
            height={y(band.from) - y(band.to)}
            fill={`url(#${id}${band.kind})`}
            fillOpacity={0.55}
          />
        ))}
        {bands.map((band) => (
          <path key={`${band.from} ${band.to} edge`} d={across(edgeOf(band))} {...edgeStyle(band)} />
        ))}
        <CartesianAxis
          orientation="left"
          width={gutterPx}
          height={heightPx}
          ticks={ticks.map(({ value }, index) => ({ value, coordinate: y(value), index }))}
          tickFormatter={(_, index) => ticks[index]?.label ?? ''}
          interval={0}
          axisLine={false}
          tickLine={false}
          tickMargin={6}
          tick={TICK}
        />
      </Surface>
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
