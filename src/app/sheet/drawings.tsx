/** Small drawings in the rows: holds as blocks, an axis running down the page. */
import type { ReactNode } from 'react';
import { colourOf, lineStyle } from '../charts/trace.ts';
import { rangeOf, type TracedAxis } from './cells.ts';

const MOST_BLOCKS = 4;

/** One block a frame held, as far as there is room. */
export const Hold = ({ frames }: { frames: number }) => (
  <>
    <span className="blocks" aria-hidden="true">
      {frames <= MOST_BLOCKS ? (
        Array.from({ length: frames }, (_, n) => n).map((n) => <i key={n} />)
      ) : (
        <i className="long" />
      )}
    </span>
    <span className="u">{frames}</span>
  </>
);

const WIDTH_PX = 66;
const PAD_PX = 6;

/** Place across the traced column of a position in steps. */
function xOf(axis: TracedAxis, steps: number): number {
  const { low, high } = rangeOf(axis);
  const share = high > low ? (steps - low) / (high - low) : 0;
  return Math.round((PAD_PX + share * (WIDTH_PX - 2 * PAD_PX)) * 10) / 10;
}

interface TraceProps {
  axis: TracedAxis;
  /** Index of the axis, for its colour. */
  n: number;
  /** Exposure; the line comes from the one before and goes to the one after. */
  i: number;
  heightPx: number;
  next: boolean;
  /** Within its shot. */
  isFirst: boolean;
  isLast: boolean;
}

const middle = (a: number, b: number): number => Math.round((a + b) * 5) / 10;

/** An axis's line through one row. */
export function Trace({ axis, n, i, heightPx, next, isFirst, isLast }: TraceProps) {
  const at = (index: number) => xOf(axis, axis.steps[index] ?? axis.steps[i] ?? 0);
  const x = at(i);
  const [from, to] = [isFirst ? x : middle(at(i - 1), x), isLast ? x : middle(x, at(i + 1))];
  const y = heightPx / 2;
  const { tone } = lineStyle(n);
  const path = `${isFirst ? `M${x} ${y}` : `M${from} 0L${x} ${y}`}${isLast ? '' : `L${to} ${heightPx}`}`;
  return (
    <TraceBox heightPx={heightPx}>
      <path d={path} stroke={colourOf(tone)} strokeWidth="1.6" fill="none" />
      {next ? (
        <circle cx={x} cy={y} r="4" fill="var(--surface)" stroke={colourOf(tone)} strokeWidth="1.8" />
      ) : (
        <circle cx={x} cy={y} r="2.2" fill={colourOf(tone)} />
      )}
    </TraceBox>
  );
}

/** The line through a pause, dashed. */
export function TraceOver({
  axis,
  n,
  after,
  heightPx,
}: {
  axis: TracedAxis;
  n: number;
  after: number;
  heightPx: number;
}) {
  const here = axis.steps[after] ?? 0;
  const x = middle(xOf(axis, here), xOf(axis, axis.steps[after + 1] ?? here));
  return (
    <TraceBox heightPx={heightPx}>
      <path
        d={`M${x} 0V${heightPx}`}
        stroke={colourOf(lineStyle(n).tone)}
        strokeWidth="1.6"
        strokeDasharray="2 3"
        fill="none"
      />
    </TraceBox>
  );
}

const TraceBox = ({ heightPx, children }: { heightPx: number; children: ReactNode }) => (
  <svg className="trace" width={WIDTH_PX} height={heightPx} aria-hidden="true">
    <path d={`M.5 0V${heightPx}M${WIDTH_PX - 0.5} 0V${heightPx}`} stroke="var(--hair)" />
    {children}
  </svg>
);

/** From which side the axis arrives; nothing where it stays. */
export function Arrives({ from }: { from: number }) {
  if (from === 0) return <span className="arrives to-right" />;
  const up = from > 0;
  const words = `arrives going ${up ? 'up' : 'down'} its scale`;
  return (
    <span className="arrives to-right" title={words}>
      <svg viewBox="0 0 8 10" width="6" height="8" aria-hidden="true">
        <path d={up ? 'M1 0l6 5-6 5z' : 'M7 0L1 5l6 5z'} fill="currentColor" />
      </svg>
      <span className="vh">, {words}</span>
    </span>
  );
}
