import { memo } from 'react';
import type { PlacedTick } from './runView.ts';

interface Props {
  gutterPx: number;
  widthPx: number;
  clock: readonly PlacedTick[];
  frames: readonly PlacedTick[];
}

/** Local clock and frame numbers below all charts of the run. */
export const TimeAxis = memo(function TimeAxis({ gutterPx, widthPx, clock, frames }: Props) {
  return (
    <svg className="run-axis" width={gutterPx + widthPx} height="48" aria-hidden="true">
      <path d={`M${gutterPx} .5h${widthPx}`} stroke="var(--edge)" />
      {gutterPx > 60 && (
        <>
          <text x={gutterPx - 8} y="18" textAnchor="end">
            Clock
          </text>
          <text x={gutterPx - 8} y="42" textAnchor="end">
            Frame
          </text>
        </>
      )}
      <g transform={`translate(${gutterPx} 0)`}>
        {clock.map((tick, n) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: what moves with an edit is not made anew
          <g key={n} transform={`translate(${tick.x} 0)`}>
            <path d="M0 0v5" stroke="var(--edge)" />
            <text x={tick.labelX - tick.x} y="18" textAnchor="middle" className="chart-figure chart-ink">
              {tick.label}
            </text>
          </g>
        ))}
        {frames.map((tick, n) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: what moves with an edit is not made anew
          <g key={n} transform={`translate(${tick.x} 0)`}>
            <path d="M0 25v4" stroke="var(--edge)" />
            <text x={tick.labelX - tick.x} y="42" textAnchor="middle" className="chart-figure">
              {tick.label}
            </text>
          </g>
        ))}
      </g>
    </svg>
  );
});
