/** Handles of a track's keyframes in a drawing: where they are, what they are called, and where they are dragged to. */
import type { Keyframe, Track } from '../../engine/plan/schema.ts';
import { digitsFor } from '../charts/format.ts';
import { niceStep } from '../charts/scale.ts';
import { numberText, withUnit } from '../format/numbers.ts';
import { elapsedAt, indexAt, indexOf, type Span } from '../store/keyframes.ts';

/** The drawing that the handles stand in. */
export interface Plot {
  /** Pixels of a moment, seconds from the first shutter opening, and back. */
  x(elapsedS: number): number;
  momentAt(px: number): number;
  /** Pixels of a position. */
  y(position: number): number;
  /** Positions that one pixel stands for. */
  unitsPerPx: number;
  unit: 'mm' | 'deg';
}

/** One keyframe in the drawing. */
export interface Handle {
  /** Place in the track, counted from 0. */
  k: number;
  x: number;
  y: number;
  /** `frame 193, 310 mm`. */
  figures: string;
  /** `Boom, keyframe 2 of 3: frame 193, 310 mm`. */
  label: string;
}

/** As many as can still be told apart, and passed by with Tab. */
const MOST = 40;

/** In a long track, handles are at least so far from each other. */
const APART_PX = 16;

/** A pointer that has gone no farther than this has not dragged. */
const STILL_PX = 3;

/** Pixels that a step of the position should at least be. */
const STEP_PX = 1.5;

/** A round step of the position that is about as fine as one can point. */
export const snapStep = ({ unitsPerPx }: Pick<Plot, 'unitsPerPx'>): number => niceStep(unitsPerPx * STEP_PX);

/** The nearest multiple of a step, free of binary dust. */
export const snapped = (value: number, step: number): number =>
  Number((Math.round(value / step) * step).toPrecision(12));

/**
 * The handles of a track: of all keyframes within the run, or of a long track the ones around a frame.
 * @param around - index of that frame
 */
export function handlesOf(track: Track, span: Span, plot: Plot, around: number): Handle[] {
  const { axis, keyframes } = track;
  const places = keyframes.map((one) => indexOf(one, span));
  const handleOf = (k: number): Handle => {
    const [keyframe, index] = [keyframes[k] as Keyframe, places[k] as number];
    const figures = figuresOf(keyframe, index, plot);
    const label = `${axis}, keyframe ${k + 1} of ${places.length}: ${figures}`;
    return { k, x: plot.x(elapsedAt(span, index)), y: plot.y(keyframe.position), figures, label };
  };
  const within = places.flatMap((place, k) => (place > span.lastIndex ? [] : [k]));
  if (within.length <= MOST) return within.map(handleOf);
  const after = within.find((k) => (places[k] as number) >= around) ?? (within.at(-1) as number);
  const ahead = apart(within.filter((k) => k >= after).map(handleOf));
  const behind = apart(
    within
      .filter((k) => k <= after)
      .toReversed()
      .map(handleOf),
  );
  return [...behind.slice(1).toReversed(), ...ahead];
}

/** The first of some handles, and those after it that are far enough from each other. */
function apart(handles: readonly Handle[]): Handle[] {
  const kept: Handle[] = [];
  for (const handle of handles) {
    const before = kept.at(-1);
    if (!before || Math.hypot(handle.x - before.x, handle.y - before.y) >= APART_PX) kept.push(handle);
    if (kept.length > MOST / 2) break;
  }
  return kept;
}

function figuresOf({ position }: Keyframe, index: number, { unit, unitsPerPx }: Plot): string {
  const size = numberText(position, Math.max(1, digitsFor(unitsPerPx)) + 1);
  return `frame ${numberText(index + 1, 1)}, ${withUnit(size, unit === 'deg' ? '°' : 'mm')}`;
}

/** How far a pointer has gone, and the keys that are held with it. */
export interface Pull {
  dx: number;
  dy: number;
  shiftKey: boolean;
  altKey: boolean;
}

/**
 * Where a keyframe goes that is pulled: with Shift in one direction only, with Alt by a tenth of the step.
 * @param index - where it was when the pull began
 * @param position - likewise
 * @returns what changes from there
 */
export function pulledTo(
  { index, position }: { index: number; position: number },
  { dx, dy, shiftKey, altKey }: Pull,
  plot: Plot,
  span: Span,
): { index?: number; position?: number } {
  const aside = Math.abs(dx) > Math.abs(dy);
  const inTime = Math.abs(dx) > STILL_PX && (!shiftKey || aside);
  const inPlace = Math.abs(dy) > STILL_PX && (!shiftKey || !aside);
  const step = snapStep(plot) / (altKey ? 10 : 1);
  const moment = () => plot.momentAt(plot.x(elapsedAt(span, index)) + dx);
  return {
    ...(inTime && { index: indexAt(span, moment()) }),
    ...(inPlace && { position: snapped(position - dy * plot.unitsPerPx, step) }),
  };
}

/** A key press on a handle. */
export interface HandleKey {
  key: string;
  shiftKey: boolean;
  altKey: boolean;
}

/** Where an arrow key takes a keyframe: one frame or step, with Shift ten, with Alt a tenth of a step. */
export function nudgedTo(
  { index, position }: { index: number; position: number },
  { key, shiftKey, altKey }: HandleKey,
  plot: Plot,
): { index?: number; position?: number } | null {
  const count = shiftKey ? 10 : 1;
  const step = snapStep(plot) / (altKey ? 10 : 1);
  if (key === 'ArrowLeft') return { index: Math.round(index) - count };
  if (key === 'ArrowRight') return { index: Math.round(index) + count };
  if (key === 'ArrowUp') return { position: snapped(position + count * step, step) };
  return key === 'ArrowDown' ? { position: snapped(position - count * step, step) } : null;
}

/** The handle nearest to a point of the drawing. */
export const nearestHandle = (handles: readonly Handle[], x: number, y: number): Handle | null =>
  handles.reduce<Handle | null>(
    (best, one) =>
      best && Math.hypot(best.x - x, best.y - y) <= Math.hypot(one.x - x, one.y - y) ? best : one,
    null,
  );
