/** What keys do on the handle of a keyframe. */
import type { KeyboardEvent } from 'react';
import { act } from '../sections/act.ts';
import {
  type Added,
  addKeyframeAfter,
  indexOf,
  keyframesOf,
  moveKeyframe,
  removeKeyframe,
} from '../store/keyframes.ts';
import { cancelGesture, change, currentPlan } from '../store/plan.ts';
import { type Handle, nudgedTo } from './handles.ts';
import type { Draggable } from './useHandleDrag.ts';

/** Name of the gesture that nudging makes. */
export const nudgeOf = (trackIndex: number, k: number): string => `nudges of keyframe ${trackIndex} ${k}`;

interface Reactions {
  added: (made: Added | null) => void;
  focusOn: (k: number) => void;
}

/** Does what a key means on a handle. @returns whether it means anything */
export function onHandleKey(
  event: KeyboardEvent,
  { k }: Handle,
  { trackIndex, plot, span }: Draggable,
  { added, focusOn }: Reactions,
): boolean {
  const plan = currentPlan();
  const keyframes = keyframesOf(plan, trackIndex);
  const keyframe = keyframes[k];
  if (!keyframe || event.ctrlKey || event.metaKey) return false;
  const gesture = nudgeOf(trackIndex, k);
  const to = nudgedTo({ index: indexOf(keyframe, span), position: keyframe.position }, event, plot);
  if (to) change(moveKeyframe(plan, trackIndex, k, to, span), gesture);
  else if (event.key === 'Enter') added(addKeyframeAfter(plan, trackIndex, k, span));
  else if (event.key === 'Escape') cancelGesture(gesture);
  else if (event.key === 'Delete' || event.key === 'Backspace') {
    if (keyframes.length === 1) return true;
    act((present) => removeKeyframe(present, trackIndex, k));
    focusOn(Math.min(k, keyframes.length - 2));
  } else return false;
  return true;
}
