/** What the colours of the carpet mean, those that are on it. */
import type { LightBand } from '../../engine/sky/bands.ts';
import type { DayOfYear } from '../../engine/sky/year.ts';
import { BAND_LOOKS, BAND_NAMES } from '../charts/skyBand.ts';

const Ink = ({ kind }: { kind: 'fits' | 'short' }) => (
  <svg width="16" height="16" aria-hidden="true">
    <rect width="16" height="16" fill="var(--b-civil)" />
    {[0, 2, 4, 6, 8, 10, 12, 14].map((y) =>
      kind === 'fits' ? (
        <rect key={y} y={y} width="16" height="1" fill="var(--mark)" />
      ) : (
        <path key={y} d={`M2 ${y}h1.5v1h-1.5zM12.5 ${y}h1.5v1h-1.5z`} fill="var(--mark)" />
      ),
    )}
  </svg>
);

export function Legend({ days, asksWindow, asksMoon }: LegendProps) {
  const seen = new Set(days.flatMap(({ bands }) => bands.map(({ band }) => band)));
  return (
    <ul className="legend plain">
      {(Object.keys(BAND_NAMES) as LightBand[])
        .filter((band) => seen.has(band))
        .map((band) => (
          <li key={band}>
            <svg width="16" height="16" aria-hidden="true">
              <rect x=".5" y=".5" width="15" height="15" fill={BAND_LOOKS[band].fill} stroke="var(--edge)" />
            </svg>
            {BAND_NAMES[band][0]}
          </li>
        ))}
      {asksWindow && (
        <>
          <li className="apart">
            <Ink kind="fits" /> Window fits
          </li>
          <li>
            <Ink kind="short" /> Too short
          </li>
          <li>{asksMoon ? 'No ink: no window, or a bright moon' : 'No ink: no window'}</li>
        </>
      )}
    </ul>
  );
}

interface LegendProps {
  days: readonly DayOfYear[];
  asksWindow: boolean;
  asksMoon: boolean;
}
