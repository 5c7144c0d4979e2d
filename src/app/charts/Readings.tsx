import { How } from '../working/How.tsx';
import type { Reading } from './chart.ts';
import { colourOf } from './trace.ts';

/** Lines that can be chosen by their names. */
export interface LineChoice {
  names: readonly string[];
  chosen: string | null;
  onChoose: (name: string) => void;
}

interface Props {
  readings: readonly Reading[];
  choice?: LineChoice | undefined;
}

/** What the charts read under the cursor; the swatch is the legend. */
export function Readings({ readings, choice }: Props) {
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
            <ReadingName reading={reading} choice={choice} />
          </dt>
          <dd>
            <ReadingValue reading={reading} /> <small>{reading.unit}</small>
          </dd>
        </div>
      ))}
    </dl>
  );
}

function ReadingValue({ reading: { name, value, unit, of } }: { reading: Reading }) {
  const figure = <span className="chart-figure">{value}</span>;
  if (of === undefined) return figure;
  return (
    <How of={of} what={`${value} ${unit}, ${name}`}>
      {figure}
    </How>
  );
}

/** The name of a line; where there is a choice, a button that takes it. */
function ReadingName({ reading: { name, style }, choice }: { reading: Reading; choice: Props['choice'] }) {
  if (!style || !choice?.names.includes(name)) return <span>{name}</span>;
  return (
    <button
      type="button"
      className="reading-choice"
      aria-pressed={name === choice.chosen}
      aria-label={`${name}: its keyframes`}
      onClick={() => choice.onChoose(name)}
    >
      {name}
    </button>
  );
}
