import type { LightBand } from '../../engine/sky/bands.ts';
import { BAND_LOOKS, type SkyBand } from './skyBand.ts';
import type { SkyDrawing } from './skyLabels.ts';

/** All stretches of one light as one shape: a long run has hundreds, which would come and go with every edit. */
function shapesOf({ bands }: SkyBand, gutterPx: number, heightPx: number): [LightBand, string][] {
  const shapes = new Map<LightBand, string>();
  for (const { band, x, width } of bands) {
    const stretch = `M${gutterPx + x} 0h${width}v${heightPx}h${-width}z`;
    shapes.set(band, (shapes.get(band) ?? '') + stretch);
  }
  return [...shapes];
}

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
      {shapesOf(sky, gutterPx, heightPx).map(([band, shape]) => (
        <path key={band} d={shape} fill={BAND_LOOKS[band].fill} />
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
      {drawing.dots.map(({ x, y }, n) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: what moves with an edit is not made anew
        <circle key={n} cx={x} cy={y} r="3.5" fill="var(--curve)" stroke="var(--halo)" strokeWidth="1.5" />
      ))}
      {drawing.texts.map(({ x, y, lines, strong, fill }, n) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: what moves with an edit is not made anew
        <text key={n} x={x} y={y} className={strong ? 'sky-event' : 'sky-name'} style={{ fill }}>
          {lines.map((line, below) => (
            <tspan key={line} x={x} dy={below === 0 ? 0 : 15}>
              {line}
            </tspan>
          ))}
        </text>
      ))}
    </>
  );
}
