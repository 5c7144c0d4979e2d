import { memo, useId } from 'react';
import { CartesianGrid, LineChart, ReferenceArea, ReferenceLine, XAxis, YAxis } from 'recharts';
import type { Band, ChartModel } from './chart.ts';
import { Hatch } from './Hatch.tsx';

/** All that recharts is told of a chart: its axis, its grid and its hatched areas, but none of its lines. */
export interface FrameProps extends Pick<ChartModel, 'heightPx' | 'domain' | 'ticks' | 'bands' | 'levels'> {
  widthPx: number;
  /** Width of the column of figures to the left of the plot. */
  gutterPx: number;
  /** Places of the upright grid lines, pixels. */
  uprightPx: readonly number[];
}

const NO_DATA: never[] = [];
const NO_MARGIN = { top: 0, right: 0, bottom: 0, left: 0 };
const TICK = { fill: 'var(--ink2)' };

/**
 * Figures, grid and areas of a chart, drawn by recharts.
 *
 * It is by far the slowest part of a chart to draw, so it is drawn again only if what it is told has changed in
 * value, which few edits do.
 */
export const PlotFrame = memo(
  function PlotFrame(props: FrameProps) {
    const { heightPx, widthPx, gutterPx, domain, ticks, bands, levels, uprightPx } = props;
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
        <XAxis
          type="number"
          dataKey="x"
          domain={[0, widthPx]}
          ticks={[...uprightPx]}
          hide
          allowDataOverflow
        />
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
        <CartesianGrid stroke="var(--hair)" syncWithTicks />
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
        {levels.map((level) => (
          <ReferenceLine
            key={`${level.value} ${level.fromX}`}
            segment={[
              { x: level.fromX ?? 0, y: level.value },
              { x: level.toX ?? widthPx, y: level.value },
            ]}
            stroke={level.kind === 'exceeded' ? 'var(--stop)' : 'var(--edge)'}
            {...(level.kind === 'zero' ? {} : { strokeDasharray: '2 3' })}
          />
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
    : { stroke: `var(--s-${style.tone})`, strokeDasharray: style.dash, strokeWidth: 1 };
