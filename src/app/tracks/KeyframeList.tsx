/** The keyframes of a track. A long one scrolls by itself, and only rows in sight are on the page. */
import { useEffect, useRef, useState } from 'react';
import type { Axis, Track } from '../../engine/plan/schema.ts';
import { KeyframeRow } from './KeyframeRow.tsx';

/** Rows that come and go together. */
const AT_ONCE = 20;

interface Props {
  track: Track;
  trackIndex: number;
  unit: Axis['unit'];
}

export function KeyframeList({ track, trackIndex, unit }: Props) {
  const { keyframes, axis } = track;
  const scroller = useRef<HTMLDivElement>(null);
  const starts = Array.from({ length: Math.ceil(keyframes.length / AT_ONCE) }, (_, n) => n * AT_ONCE);
  const rows = (from: number) =>
    keyframes.slice(from, from + AT_ONCE).map((keyframe, i) => (
      <KeyframeRow
        // biome-ignore lint/suspicious/noArrayIndexKey: keyframes have no identity but their place
        key={from + i}
        {...{ keyframe, trackIndex, unit, axis }}
        k={from + i}
        last={from + i === keyframes.length - 1}
        only={keyframes.length === 1}
      />
    ));
  if (starts.length === 1) return <ol className="keys plain">{rows(0)}</ol>;
  return (
    <div ref={scroller} className="keys-long">
      {starts.map((from) => (
        <Stretch key={from} scroller={scroller} rows={Math.min(AT_ONCE, keyframes.length - from)} from={from}>
          {() => rows(from)}
        </Stretch>
      ))}
    </div>
  );
}

/** Before a stretch was seen: two lines of fields and their gaps. */
const USUAL_ROW_PX = 84;

interface StretchProps {
  scroller: { readonly current: HTMLElement | null };
  from: number;
  rows: number;
  children: () => React.ReactNode;
}

/** Rows while they are in sight, else as much room as they took last. */
function Stretch({ scroller, from, rows, children }: StretchProps) {
  const list = useRef<HTMLOListElement>(null);
  const [near, setNear] = useState(from === 0);
  const heightPx = useRef(rows * USUAL_ROW_PX);
  useEffect(() => {
    const element = list.current;
    if (!element) return;
    const observer = new IntersectionObserver(
      (entries) => {
        const entry = entries.at(-1);
        if (!entry) return;
        // What is being typed stays on the page wherever it is scrolled to.
        const keep = entry.isIntersecting || element.contains(document.activeElement);
        if (!keep) heightPx.current = element.offsetHeight;
        setNear(keep);
      },
      { root: scroller.current, rootMargin: '600px 0px' },
    );
    observer.observe(element);
    return () => observer.disconnect();
  }, [scroller]);
  return (
    <ol
      ref={list}
      className="keys plain"
      start={from + 1}
      style={near ? undefined : { height: heightPx.current }}
    >
      {near && children()}
    </ol>
  );
}
