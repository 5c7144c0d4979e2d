/** A double click on one of the lines of a drawing. */
import { type RefObject, useEffect, useRef } from 'react';
import { linear } from '../charts/scale.ts';
import type { Trace } from '../charts/trace.ts';

/** So near to a line is on it. */
const NEAR_PX = 14;

/** Height of a line at a place; NaN where it does not pass. */
function heightAt({ xs, ys }: Pick<Trace, 'xs' | 'ys'>, x: number): number {
  const after = xs.findIndex((one) => one >= x);
  if (after === -1 || (after === 0 && xs[0] !== x)) return Number.NaN;
  const before = Math.max(0, after - 1);
  const ends = (of: readonly number[]) => [Number(of[before]), Number(of[after])] as const;
  return linear(ends(xs), ends(ys))(x);
}

/** Name of the line under a point, `first` before others; null if there is none. */
export function lineAt(traces: readonly Trace[], x: number, y: number, first: string): string | null {
  const under = traces.filter((trace) => Math.abs(heightAt(trace, x) - y) <= NEAR_PX).map(({ name }) => name);
  return under.find((name) => name === first) ?? under[0] ?? null;
}

/**
 * Listens for double clicks on the lines of a drawing. They come to the panel: it takes hold of the pointer, to move
 * the cursor.
 * @param first - name of the line that goes before others
 * @param on - is told the place in the drawing and the line's name
 */
export function useDoubleClick(
  layer: RefObject<HTMLElement | null>,
  traces: readonly Trace[],
  first: string,
  on: (px: number, name: string) => void,
): void {
  const latest = useRef({ traces, first, on });
  useEffect(() => {
    latest.current = { traces, first, on };
  });
  useEffect(() => {
    const panel = layer.current?.closest<HTMLElement>('.run-charts');
    const listen = (event: MouseEvent) => {
      const box = layer.current?.getBoundingClientRect();
      // On a handle it is none: a handle takes hold of the pointer for its layer.
      if (!box || layer.current?.contains(event.target as Node)) return;
      const [x, y] = [event.clientX - box.left, event.clientY - box.top];
      if (x < 0 || y < 0 || x > box.width || y > box.height) return;
      const now = latest.current;
      const name = lineAt(now.traces, x, y, now.first);
      if (name !== null) now.on(x, name);
    };
    panel?.addEventListener('dblclick', listen);
    return () => panel?.removeEventListener('dblclick', listen);
  }, [layer]);
}
