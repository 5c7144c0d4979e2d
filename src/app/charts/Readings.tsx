import { Fragment } from 'react';
import type { Reading } from './chart.ts';

/** What the charts read under the cursor; the swatch is the legend. */
export function Readings({ readings }: { readings: readonly Reading[] }) {
  return (
    <dl className="chart-readings">
      {readings.map((reading, n) => (
        // Two readings can have one name: steps of several axes.
        // biome-ignore lint/suspicious/noArrayIndexKey: the place in the list is what tells them apart
        <Fragment key={n}>
          <dt>
            <svg width="16" height="10" aria-hidden="true">
              {reading.style && (
                <path
                  d="M0 5h16"
                  stroke={`var(--s-${reading.style.tone})`}
                  strokeWidth="2.4"
                  strokeDasharray={reading.style.dash}
                />
              )}
            </svg>
            <span>{reading.name}</span>
          </dt>
          <dd>
            <span className="chart-figure">{reading.value}</span> <small>{reading.unit}</small>
          </dd>
        </Fragment>
      ))}
    </dl>
  );
}
