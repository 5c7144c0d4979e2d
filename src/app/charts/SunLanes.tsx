import { textWidth } from './names.ts';
import { LANE_PX, type LaneStretch, type SunLane } from './sunLanes.ts';

const TICK_PX = 4;
const GAP_PX = 6;

/** Dimension lines of the sun at the foot of the sky, on a plain ground: the light behind has every colour. */
export function SunLanes({ lanes, widthPx }: { lanes: readonly SunLane[]; widthPx: number }) {
  return lanes.map(({ name, y, stretches }) => (
    <g key={name}>
      <rect y={y - LANE_PX / 2} width={widthPx} height={LANE_PX} fill="var(--surface)" />
      <path d={`M0 ${y - LANE_PX / 2}H${widthPx}`} stroke="var(--hair)" />
      <path d={stretches.map((stretch) => dimension(stretch, y)).join('')} stroke="var(--edge)" />
      {stretches
        .filter(({ label }) => label !== '')
        .map(({ label, labelX }, n) => (
          <text
            // biome-ignore lint/suspicious/noArrayIndexKey: what moves with an edit is not made anew
            key={n}
            x={labelX + textWidth(label) / 2}
            y={y + TICK_PX}
            textAnchor="middle"
            className="chart-name"
          >
            {label}
          </text>
        ))}
    </g>
  ));
}

/** From tick to tick, with a gap for words that stand in it. */
function dimension({ fromX, toX, label, labelX }: LaneStretch, y: number): string {
  const tick = (x: number) => `M${x} ${y - TICK_PX}v${2 * TICK_PX}`;
  const within = label !== '' && labelX > fromX && labelX < toX;
  const gap = within ? `H${labelX - GAP_PX}M${labelX + textWidth(label) + GAP_PX} ${y}` : '';
  return `${tick(fromX)}${tick(toX)}M${fromX} ${y}${gap}H${toX}`;
}
