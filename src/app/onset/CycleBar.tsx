/** The cycle of the frame under way, with the present on it. */
import { useId } from 'react';
import type { CyclePart } from '../../engine/onset/state.ts';
import { durationText } from '../format/durations.ts';

const NAMES: Readonly<Record<CyclePart['doing'], string>> = {
  exposing: 'Expose',
  moving: 'Move',
  settling: 'Settle',
  writing: 'Write',
  spare: 'Spare',
  ready: '',
};

const WIDTH = 1000;
const HEIGHT = 44;

/** Narrower parts have no room for their name. */
const NAMED_SHARE = 0.09;

export function CycleBar({ parts, intoS }: { parts: readonly CyclePart[]; intoS: number }) {
  const id = useId();
  const lengthS = parts.at(-1)?.toS ?? 0;
  if (lengthS <= 0) return null;
  const x = (s: number) => (Math.min(lengthS, Math.max(0, s)) / lengthS) * WIDTH;
  const words = parts
    .filter(({ doing }) => doing !== 'ready')
    .map(({ doing, fromS, toS }) => `${NAMES[doing]} ${durationText(toS - fromS, 1)}`);
  return (
    <figure className="on-cycle">
      <svg
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        preserveAspectRatio="none"
        role="img"
        aria-label={`Cycle of this frame: ${words.join(', ')}, of ${durationText(lengthS)}`}
      >
        <defs>
          <pattern id={`${id}m`} width="14" height="14" patternUnits="userSpaceOnUse">
            <path className="hatch" d="M-3 3 3-3M0 14 14 0M11 17 17 11" />
          </pattern>
          <pattern id={`${id}s`} width="10" height="10" patternUnits="userSpaceOnUse">
            <rect className="dot" x="3" y="3" width="3" height="3" />
          </pattern>
        </defs>
        {parts.map(({ doing, fromS, toS }) => (
          <g key={doing}>
            <rect className={`part ${doing}`} x={x(fromS)} width={x(toS) - x(fromS)} y="0" height={HEIGHT} />
            {(doing === 'moving' || doing === 'settling') && (
              <rect
                x={x(fromS)}
                width={x(toS) - x(fromS)}
                y="0"
                height={HEIGHT}
                fill={`url(#${id}${doing === 'moving' ? 'm' : 's'})`}
              />
            )}
          </g>
        ))}
        <rect className="frame" x="0" y="0" width={WIDTH} height={HEIGHT} />
        <rect className="hand" x={Math.min(WIDTH - 6, x(intoS))} y="0" width="6" height={HEIGHT} />
      </svg>
      <figcaption aria-hidden="true">
        {parts.map(({ doing, fromS, toS }) => (
          <span key={doing} style={{ flexGrow: toS - fromS }}>
            {(toS - fromS) / lengthS >= NAMED_SHARE && NAMES[doing]}
          </span>
        ))}
      </figcaption>
    </figure>
  );
}
