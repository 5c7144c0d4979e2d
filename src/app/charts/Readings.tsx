import type { Reading } from './chart.ts';
import { colourOf } from './trace.ts';

/** What the charts read under the cursor; the swatch is the legend. */
export function Readings({ readings }: { readings: readonly Reading[] }) {
  return (
    <dl className="chart-readings">
      {readings.map((reading, n) => (
        // Two readings can have one name: steps of several axes.
        // biome-ignore lint/suspicious/noArrayIndexKey: the place in the list is what tells them apart
        <div key={n}>
          <dt>
            {reading.style && (
              <svg width="16" height="10" aria-hidden="true">
                <path
                  d="M0 5h16"
                  stroke={colourOf(reading.style.tone)}
                  strokeWidth="2.4"
                  strokeDasharray={reading.style.dash}
                />
              </svg>
            )}
            <span>{reading.name}</span>
          </dt>
          <dd>
            <span className="chart-figure">{reading.value}</span> <small>{reading.unit}</small>
          </dd>
        </div>
      ))}
    </dl>
  );
}
