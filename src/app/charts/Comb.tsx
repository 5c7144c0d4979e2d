import { combTicks } from './combTicks.ts';
import { useWidth } from './useWidth.ts';
import './charts.css';

/** Teeth under the pacing strip, closing up from the event to the clip. Decoration: it carries no figure. */
export function Comb({ frames }: { frames: number }) {
  const [ref, width] = useWidth<HTMLDivElement>();
  const path = combTicks(width, frames)
    .map((x) => `M${Math.round(x * 10) / 10 + 0.5} 0v8`)
    .join('');
  return (
    <div ref={ref} className="chart-comb" aria-hidden="true">
      <svg width={width} height="8" aria-hidden="true">
        <path d={path} stroke="var(--edge)" />
      </svg>
    </div>
  );
}
