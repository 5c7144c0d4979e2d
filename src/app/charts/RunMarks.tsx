import { useId } from 'react';
import { type ChartModel, type Mark, STRETCH_FOOT_PX } from './chart.ts';
import { Hatch } from './Hatch.tsx';

/** Frames that something is wrong with: hatched, with words where there is room. */
export function Stretches({ chart }: { chart: ChartModel }) {
  const id = useId();
  const stretches = chart.stretches ?? [];
  if (stretches.length === 0) return null;
  return (
    <>
      <defs>
        <Hatch id={id} kind="stop" bare />
      </defs>
      {stretches.map(({ fromX, toX, label }, n) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: what moves with an edit is not made anew
        <g key={n}>
          <rect
            x={fromX}
            width={toX - fromX}
            height={chart.heightPx}
            fill={`url(#${id})`}
            fillOpacity="0.45"
          />
          <text
            x={(fromX + toX) / 2}
            y={chart.heightPx - STRETCH_FOOT_PX}
            textAnchor="middle"
            className="chart-name chart-short"
          >
            {label}
          </text>
        </g>
      ))}
    </>
  );
}

/** Changes of settings along the top: teeth for the camera's own, wedges for those by hand. */
export function Teeth({ chart: { teeth = [], wedges = [] } }: { chart: ChartModel }) {
  return (
    <>
      <path d={teeth.map((x) => `M${x} 2v7`).join('')} stroke="var(--s-blue)" strokeWidth="1.4" />
      <path d={wedges.map((x) => `M${x - 4} 0h8l-4 8z`).join('')} fill="var(--warn)" />
    </>
  );
}

const MARK_COLOURS = { change: 'var(--warn)', end: 'var(--stop)', value: 'var(--ink)' } as const;

/** A mark with its rule or its dot, and its label. */
export function MarkDrawn({ mark, heightPx }: { mark: Mark; heightPx: number }) {
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
