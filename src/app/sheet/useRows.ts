/** A scrolled list of which only the rows in sight are drawn. */
import { type RefCallback, useCallback, useLayoutEffect, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import { type Drawn, drawnAt, type Ladder, scaleOf, scrollFor } from './ladder.ts';

/** What is seen: how far it is scrolled, and the height of the rows' share of it. */
interface Seen {
  scrollPx: number;
  viewPx: number;
}

export interface ScrolledRows {
  /** Of the element that scrolls; a heading that stays on top is its first child. */
  ref: RefCallback<HTMLElement>;
  drawn: Drawn;
  /** Height of what is scrolled. */
  heightPx: number;
  /** Brings a row into sight. */
  show: (row: number, place?: 'near' | 'middle') => void;
  /** Rows that are seen at once. */
  pageRows: (rowPx: number) => number;
}

const same = (a: Drawn, b: Drawn): boolean =>
  a.first === b.first && a.end === b.end && a.shiftPx === b.shiftPx;

/** @param headPx - height of the heading that stays on top */
export function useRows(ladder: Ladder, headPx: number): ScrolledRows {
  const [seen, setSeen] = useState<Seen>({ scrollPx: 0, viewPx: 600 });
  const element = useRef<HTMLElement | null>(null);
  const latest = useRef({ ladder, seen });
  useLayoutEffect(() => {
    latest.current = { ladder, seen };
  });
  const look = useCallback(() => {
    const scroller = element.current;
    if (!scroller) return;
    const now = { scrollPx: scroller.scrollTop, viewPx: Math.max(0, scroller.clientHeight - headPx) };
    const before = latest.current;
    const drawn = (of: Seen) => drawnAt(before.ladder, of.scrollPx, of.viewPx);
    if (now.viewPx !== before.seen.viewPx || !same(drawn(now), drawn(before.seen))) setSeen(now);
  }, [headPx]);
  const ref = useCallback(
    (scroller: HTMLElement | null) => {
      element.current = scroller;
      if (!scroller) return;
      look();
      // Drawn before the browser paints what it has scrolled to: no row is ever missing.
      const scrolled = () => flushSync(look);
      scroller.addEventListener('scroll', scrolled, { passive: true });
      const observer = new ResizeObserver(look);
      observer.observe(scroller);
      return () => {
        scroller.removeEventListener('scroll', scrolled);
        observer.disconnect();
        element.current = null;
      };
    },
    [look],
  );
  const show = useCallback(
    (row: number, place: 'near' | 'middle' = 'near') => {
      const scroller = element.current;
      if (!scroller) return;
      const viewPx = scroller.clientHeight - headPx;
      scroller.scrollTop = scrollFor(latest.current.ladder, row, scroller.scrollTop, viewPx, place);
    },
    [headPx],
  );
  return {
    ref,
    drawn: drawnAt(ladder, Math.min(seen.scrollPx, Math.max(0, ladder.totalPx - seen.viewPx)), seen.viewPx),
    heightPx: scaleOf(ladder, seen.viewPx).heightPx,
    show,
    pageRows: (rowPx) => Math.max(1, Math.floor(seen.viewPx / rowPx) - 1),
  };
}
