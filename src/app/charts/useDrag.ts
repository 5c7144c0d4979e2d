import { type PointerEvent, useRef } from 'react';
import { frameAtPx, type RunView } from './runView.ts';

type ElementRef = { readonly current: HTMLElement | null };

/** A finger that has gone no farther than this has tapped. */
const TAP_PX = 8;

/** A pointer that is down: where it went down, and whether it moves the cursor yet. */
interface Press {
  x: number;
  y: number;
  moves: boolean;
}

/**
 * Moves the cursor while a pointer is down on a drawing.
 *
 * A mouse moves it at once. A finger moves it when it goes sideways or taps: going up or down it scrolls the page.
 * @param track spans all drawings; its left edge is that of their columns of figures
 * @param flag takes the focus, so that keys go on from there
 */
export function useDrag(
  view: RunView,
  gutterPx: number,
  track: ElementRef,
  flag: ElementRef,
  onCursor: (index: number) => void,
) {
  const press = useRef<Press | null>(null);
  const moveTo = (event: PointerEvent) => {
    const left = track.current?.getBoundingClientRect().left ?? 0;
    onCursor(frameAtPx(view, event.clientX - left - gutterPx));
  };
  return {
    onPointerDown: (event: PointerEvent<HTMLElement>) => {
      if (event.button !== 0 || !(event.target as Element).closest('.run-drawing')) return;
      const moves = event.pointerType !== 'touch';
      press.current = { x: event.clientX, y: event.clientY, moves };
      event.currentTarget.setPointerCapture(event.pointerId);
      // No text is selected and the page stays where it is.
      event.preventDefault();
      flag.current?.focus({ preventScroll: true });
      if (moves) moveTo(event);
    },
    onPointerMove: (event: PointerEvent<HTMLElement>) => {
      const held = press.current;
      if (!held) return;
      const aside = Math.abs(event.clientX - held.x);
      held.moves ||= aside > TAP_PX && aside > Math.abs(event.clientY - held.y);
      if (held.moves) moveTo(event);
    },
    onPointerUp: (event: PointerEvent<HTMLElement>) => {
      const held = press.current;
      press.current = null;
      if (!held) return;
      const gone = Math.hypot(event.clientX - held.x, event.clientY - held.y);
      if (held.moves || gone <= TAP_PX) moveTo(event);
    },
    onPointerCancel: () => {
      press.current = null;
    },
  };
}
