import type { Schedule } from '../../engine/schedule-types.ts';
import { clockChanges } from './cursor.ts';
import type { RunView } from './runView.ts';

/** Height of the strip with the flag. */
export const TRACK_PX = 38;
/** Height of the line below it, where the clocks change. */
export const CHANGES_PX = 18;

/** Where the clocks change: a mark above the charts. */
export function ClockChanges({
  schedule,
  view,
  gutterPx,
}: {
  schedule: Schedule;
  view: RunView;
  gutterPx: number;
}) {
  const changes = clockChanges(schedule);
  if (changes.length === 0) return null;
  return (
    <svg
      className="run-changes"
      width={gutterPx + view.widthPx}
      height={TRACK_PX + CHANGES_PX}
      role="img"
      aria-label={changes.map((change) => change.words).join('. ')}
    >
      {changes.map(({ elapsedS, words }) => {
        const x = gutterPx + view.x(elapsedS);
        const before = view.x(elapsedS) > view.widthPx / 2;
        return (
          <g key={elapsedS}>
            <path
              d={`M${x} ${TRACK_PX}V${TRACK_PX + CHANGES_PX}`}
              stroke="var(--ink)"
              strokeDasharray="3 3"
            />
            <text
              x={x + (before ? -6 : 6)}
              y={TRACK_PX + 12}
              textAnchor={before ? 'end' : 'start'}
              className="chart-name"
            >
              {words}
            </text>
          </g>
        );
      })}
    </svg>
  );
}
