/** The strip in one line, while the strip itself is scrolled out of sight. */
import { type RefObject, useEffect, useState } from 'react';
import { SEVERITIES } from '../../engine/findings/types.ts';
import { clockOf } from '../format/clock.ts';
import { durationText } from '../format/durations.ts';
import { plural } from '../format/numbers.ts';
import { StandingIcon } from '../icons.tsx';
import { useSchedule } from '../store/plan.ts';

function useOutOfSight(target: RefObject<HTMLElement | null>): boolean {
  const [out, setOut] = useState(false);
  useEffect(() => {
    if (!target.current) return;
    const observer = new IntersectionObserver(([entry]) => {
      if (entry) setOut(!entry.isIntersecting && entry.boundingClientRect.bottom < 0);
    });
    observer.observe(target.current);
    return () => observer.disconnect();
  }, [target]);
  return out;
}

export function MiniStrip({ strip }: { strip: RefObject<HTMLElement | null> }) {
  const { totals, counts } = useSchedule();
  const out = useOutOfSight(strip);
  if (!out) return null;
  const worst = SEVERITIES.find((severity) => counts[severity] > 0);
  const figures = [
    durationText(totals.intervalS, 3),
    plural(totals.frames, 'frame'),
    durationText(totals.clipLengthS, 2),
    `${clockOf(totals.firstFrameAt)} to ${clockOf(totals.lastFrameAt)}`,
  ];
  return (
    <aside className="mini" aria-label="Pacing in short">
      <button type="button" onClick={() => strip.current?.scrollIntoView({ block: 'end' })}>
        {figures.map((figure) => (
          <span key={figure}>{figure}</span>
        ))}
        <span className={`sev ${worst ?? 'fine'}`}>
          <StandingIcon standing={worst ?? 'fine'} size={14} />
          {worst ? plural(counts[worst], worst) : 'Fine'}
        </span>
      </button>
    </aside>
  );
}
