import { textWidth } from './names.ts';
import { EDGE_PX } from './runView.ts';
import type { SkyBand } from './skyBand.ts';

interface Props {
  windows: SkyBand['windows'];
  gutterPx: number;
  widthPx: number;
  heightPx: number;
  /** Where the flag of the cursor stands, which hides what is behind it. */
  cursorX: number;
}

const MIDDLE_PX = 16;
const INSET_PX = 24;
/** Half the flag. */
const FLAG_PX = 76;
const NO_WINDOW = 'No window during the run';

/** The windows as dimension lines above the charts, behind the flag of the cursor. */
export function WindowLine({ windows, gutterPx, widthPx, heightPx, cursorX }: Props) {
  if (windows === null) return null;
  const spans = windows.map(({ fromX, toX }) => `M${fromX} 12v8M${toX} 12v8M${fromX} ${MIDDLE_PX}H${toX}`);
  const whole = { fromX: EDGE_PX - INSET_PX, toX: widthPx - EDGE_PX + INSET_PX, words: NO_WINDOW };
  const labelled = windows.length === 0 ? [whole] : windows;
  return (
    <svg
      className="run-changes"
      width={gutterPx + widthPx}
      height={heightPx}
      role="img"
      aria-label={labelled.map(({ words }) => words).join('. ')}
    >
      <g transform={`translate(${gutterPx} 0)`}>
        <path d={spans.join('')} stroke="var(--edge)" />
        {labelled.map((span) => (
          <Label key={span.fromX} span={span} cursorX={cursorX} />
        ))}
      </g>
    </svg>
  );
}

/** At the beginning of a window, or at its end where the flag would hide it; nowhere if it would hide both. */
function Label({
  span: { fromX, toX, words },
  cursorX,
}: {
  span: { fromX: number; toX: number; words: string };
  cursorX: number;
}) {
  const width = textWidth(words);
  const [first, last] = [fromX + INSET_PX, toX - INSET_PX - width];
  if (last < first) return null;
  const x = [first, last].find((left) => cursorX <= left - FLAG_PX || cursorX >= left + width + FLAG_PX);
  if (x === undefined) return null;
  return (
    <text x={x} y={MIDDLE_PX + 4} className="chart-name chart-window">
      {words}
    </text>
  );
}
