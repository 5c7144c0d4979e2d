import type { OffsetSpan } from '../../engine/schedule-types.ts';
import type { Span } from '../../engine/sky/spans.ts';
import type { DayOfYear } from '../../engine/sky/year.ts';
import { BAND_LOOKS } from '../charts/skyBand.ts';
import { stretchesOf } from './calendar.ts';
import { lengthS } from './words.ts';

const STRIP_HOURS = [0, 6, 12, 18, 24];

export function DayStrip({
  light,
  offsets,
  runS,
}: {
  light: DayOfYear;
  offsets: readonly OffsetSpan[];
  runS: number | null;
}) {
  const place = ({ fromH, toH }: { fromH: number; toH: number }) => ({
    x: `${(fromH / 24) * 100}%`,
    width: `${((toH - fromH) / 24) * 100}%`,
  });
  const placed = (span: Span) => stretchesOf(span, light, offsets);
  return (
    <div className="day-strip">
      <svg width="100%" height="40" aria-hidden="true">
        {light.bands.flatMap((span) =>
          placed(span).map((stretch) => (
            <rect
              key={stretch.fromH}
              {...place(stretch)}
              height="40"
              fill={BAND_LOOKS[span.band].fill}
              shapeRendering="crispEdges"
            />
          )),
        )}
        {runS !== null &&
          light.windows.flatMap((span) =>
            placed(span).map((stretch) => (
              <g key={stretch.fromH} className={lengthS(span) >= runS ? 'holds' : 'short'}>
                <rect {...place(stretch)} y="10" height="20" />
                <rect {...place(stretch)} y="10" height="20" />
              </g>
            )),
          )}
      </svg>
      <div className="m" aria-hidden="true">
        {STRIP_HOURS.map((hour) => (
          <span key={hour}>{String(hour).padStart(2, '0')}</span>
        ))}
      </div>
    </div>
  );
}
