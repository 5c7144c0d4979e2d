/** Drags keyframes with a pointer: one step to undo, taken back by Escape. */
import { type PointerEvent, type RefObject, useEffect, useRef, useState } from 'react';
import type { Plan } from '../../engine/plan/schema.ts';
import { indexOf, keyframesOf, moveKeyframe, type Span } from '../store/keyframes.ts';
import { cancelGesture, change, currentPlan, endGesture } from '../store/plan.ts';
import { type Handle, nearestHandle, type Plot, type Pull, pulledTo } from './handles.ts';
import { type HeldScale, holdScale } from './shown.ts';

/** What can be dragged, and in which drawing. */
export interface Draggable {
  trackIndex: number;
  handles: readonly Handle[];
  plot: Plot;
  span: Span;
  /** The scale to be held meanwhile. */
  scale: HeldScale;
}

/** A drag under way, with all as it was at its begin: a scale that follows the drag would run away from it. */
interface Drag extends Draggable {
  k: number;
  name: string;
  /** Where the pointer went down, from the corner of the drawing: the page may move under it. */
  x: number;
  y: number;
  begin: Plan;
  /** The plan that the drag has made. */
  made: Plan;
  pull: Pull;
  /** The next screen refresh, if something is left to be done then; 0 if not. */
  waiting: number;
}

let drags = 0;

/** Puts the keyframe where the pointer is, unless something else has changed the plan. */
function follow(drag: Drag): void {
  drag.waiting = 0;
  const { begin, made, trackIndex, k, pull, plot, span, name } = drag;
  const keyframe = keyframesOf(begin, trackIndex)[k];
  if (!keyframe || currentPlan() !== made) return;
  const from = { index: indexOf(keyframe, span), position: keyframe.position };
  const to = pulledTo(from, pull, plot, span);
  const next = moveKeyframe(begin, trackIndex, k, to, span);
  const [was, will] = [made, next].map((plan) => keyframesOf(plan, trackIndex)[k]);
  if (JSON.stringify(was) === JSON.stringify(will)) return;
  if (change(next, name).length === 0) drag.made = next;
}

/** @returns handlers for the layer of the handles, and the keyframe that is being dragged */
export function useHandleDrag(layer: RefObject<HTMLElement | null>, draggable: Draggable) {
  const drag = useRef<Drag | null>(null);
  const [dragged, setDragged] = useState<number | null>(null);

  const end = (taken: boolean) => {
    const held = drag.current;
    if (!held) return;
    cancelAnimationFrame(held.waiting);
    if (taken && held.waiting !== 0) follow(held);
    drag.current = null;
    if (!taken) cancelGesture(held.name);
    endGesture();
    holdScale(null);
    setDragged(null);
  };
  useEscape(dragged !== null, () => end(false));

  const onPointerDown = (event: PointerEvent<HTMLElement>) => {
    const box = layer.current?.getBoundingClientRect();
    if (event.button !== 0 || !box || drag.current) return;
    const [x, y] = [event.clientX - box.left, event.clientY - box.top];
    const handle = nearestHandle(draggable.handles, x, y);
    if (!handle) return;
    // Neither is text selected nor does the page scroll.
    event.preventDefault();
    event.currentTarget.setPointerCapture(event.pointerId);
    layer.current?.querySelector<HTMLElement>(`[data-k="${handle.k}"]`)?.focus({ preventScroll: true });
    endGesture();
    drags += 1;
    const begin = currentPlan();
    const pull = { dx: 0, dy: 0, shiftKey: false, altKey: false };
    const name = `drag of a keyframe ${drags}`;
    drag.current = { ...draggable, k: handle.k, name, x, y, begin, made: begin, pull, waiting: 0 };
    holdScale(draggable.scale);
    setDragged(handle.k);
  };
  const onPointerMove = ({ clientX, clientY, shiftKey, altKey }: PointerEvent) => {
    const held = drag.current;
    const box = layer.current?.getBoundingClientRect();
    if (!held || !box) return;
    held.pull = { dx: clientX - box.left - held.x, dy: clientY - box.top - held.y, shiftKey, altKey };
    held.waiting ||= requestAnimationFrame(() => follow(held));
  };
  const handlers = {
    onPointerDown,
    onPointerMove,
    onPointerUp: () => end(true),
    onPointerCancel: () => end(false),
  };
  return { dragged, handlers };
}

/** Escape, wherever the focus is, before anything else hears it. */
function useEscape(on: boolean, then: () => void): void {
  const latest = useRef(then);
  useEffect(() => {
    latest.current = then;
  });
  useEffect(() => {
    if (!on) return;
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return;
      event.preventDefault();
      event.stopPropagation();
      latest.current();
    };
    addEventListener('keydown', onKeyDown, true);
    return () => removeEventListener('keydown', onKeyDown, true);
  }, [on]);
}
