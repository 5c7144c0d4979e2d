import { BAND_LOOKS, type SkyBand } from './skyBand.ts';
import type { SkyDrawing } from './skyLabels.ts';

/** The light behind a chart: a tint, or at full strength. */
export function SkyGround({
  sky,
  gutterPx,
  heightPx,
  full,
}: {
  sky: SkyBand;
  gutterPx: number;
  heightPx: number;
  full: boolean;
}) {
  const last = sky.bands.at(-1);
  if (!last) return null;
  return (
    <svg
      className={full ? 'run-sky' : 'run-sky run-wash'}
      width={gutterPx + last.x + last.width}
      height={heightPx}
      aria-hidden="true"
    >
      {sky.bands.map(({ band, x, width }) => (
        <rect key={x} x={gutterPx + x} width={width} height={heightPx} fill={BAND_LOOKS[band].fill} />
      ))}
    </svg>
  );
}

/** What sun and moon do, over the curves: rules, dots and words. */
export function SkyWords({ drawing, heightPx }: { drawing: SkyDrawing; heightPx: number }) {
  return (
    <>
      <path
        d={drawing.rules.map((x) => `M${x} 0V${heightPx}`).join('')}
        stroke="var(--surface)"
        strokeWidth="1.5"
      />
      {drawing.dots.map(({ x, y }) => (
        <circle key={x} cx={x} cy={y} r="3.5" fill="var(--curve)" stroke="var(--halo)" strokeWidth="1.5" />
      ))}
      {drawing.texts.map(({ x, y, lines, strong, fill }) => (
        <text key={`${x} ${y}`} x={x} y={y} className={strong ? 'sky-event' : 'sky-name'} style={{ fill }}>
          {lines.map((line, n) => (
            <tspan key={line} x={x} dy={n === 0 ? 0 : 15}>
              {line}
            </tspan>
          ))}
        </text>
      ))}
    </>
  );
}
