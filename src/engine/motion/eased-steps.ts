/**
 * Positions along one stretch of a track, in whole microsteps.
 *
 * To ask an ease at every frame of a long run takes several times as long as to write down what it says. Between two
 * places where it bends an ease is a cubic, or so smooth that cubics through a few of its points do for all frames but
 * a handful: how far a cubic is off is measured where it is farthest off, and only where eight times as much makes no
 * other step does it decide. Elsewhere the ease does: at every frame the whole step is that of the ease.
 */
import type { Ease } from '../plan/schema.ts';
import { inBlocks } from './blocks.ts';
import { easeFunction } from './ease.ts';

/** From one keyframe to the next. */
export interface Stretch {
  /** First index, and the one after the last. */
  begin: number;
  end: number;
  /** Index (whole or half) at which the track ends: share of the run = index / lastIndex. */
  lastIndex: number;
  /** Share of the run at the keyframe, and to the next. */
  fromShare: number;
  span: number;
  /** Position at the keyframe and from there to the next, in the axis's unit. */
  position: number;
  travel: number;
  /** Microsteps a unit. */
  perUnit: number;
}

/** Where the ease has the axis at an index: microsteps, not yet whole. */
type Exactly = (k: number) => number;

/** Fills the steps of one stretch. */
export function fillEased(steps: Int32Array, ease: Ease, stretch: Stretch): void {
  const { begin, end, lastIndex, fromShare, span, position, travel, perUnit } = stretch;
  const shareAt = easeFunction(ease);
  const exactly = (k: number) => (position + travel * shareAt((k / lastIndex - fromShare) / span)) * perUnit;
  if (ease.kind === 'hold') {
    // It goes to the next keyframe in the one move that ends there.
    steps.fill(Math.round(position * perUnit), begin, end);
    if (begin < end) steps[end - 1] = Math.round(exactly(end - 1));
    return;
  }
  const cubics = isCubic(ease) ? 1 : CUBICS;
  let from = begin;
  for (const share of [...bendsOf(ease), 1]) {
    const bend = share === 1 ? end : Math.ceil((fromShare + share * span) * lastIndex);
    const to = Math.min(Math.max(from, bend), end);
    fillSmooth(steps, from, to, cubics, exactly);
    from = to;
  }
}

// Of `smoother` a cubic over so small a part of the time is off by 4e-10 of the travel.
const CUBICS = 150;

/** Whether an ease is a cubic of the time wherever it does not bend. */
const isCubic = ({ kind }: Ease): boolean => kind !== 'smoother' && kind !== 'cubicBezier';

/** Shares of the time at which an ease goes over from one curve into another, in order. */
const bendsOf = (ease: Ease): number[] =>
  ease.kind === 'ramped' ? [ease.headShare, 1 - ease.tailShare] : [];

// With fewer frames from one point of a cubic to the next the ease is asked as often as not.
const LEAST_APART = 4;

/** Fills frames between which the ease does not bend, with at least so many cubics. */
function fillSmooth(steps: Int32Array, from: number, to: number, cubics: number, exactly: Exactly): void {
  const most = evenThird((to - from) / cubics);
  let k = from;
  for (let apart = most; apart >= LEAST_APART; apart = Math.min(most, evenThird(to - k))) {
    fillCubic(steps, k, apart, exactly);
    k += 3 * apart;
  }
  fillExactly(steps, k, to, exactly);
}

/** A third of so many frames; even, so that there is a frame half-way. */
const evenThird = (frames: number): number => 2 * Math.floor((frames - 1) / 6);

function fillExactly(steps: Int32Array, from: number, to: number, exactly: Exactly): void {
  for (let k = from; k < to; k += 1) steps[k] = Math.round(exactly(k));
}

// Sums of doubles say nothing about what is nearer than this to a half step: of a step, and of the positions in steps.
const NEAR = 1e-6;
const NEAR_SHARE = 4e-14;

// A cubic that is farther off, in steps, is not used.
const POOR = 1e-3;

/** Fills three times `apart` frames by the cubic through those at 0, 1, 2 and 3 times `apart`. */
function fillCubic(steps: Int32Array, from: number, apart: number, exactly: Exactly): void {
  const at = (i: number) => exactly(from + i);
  const [p0, p1, p2, p3] = [at(0), at(apart), at(2 * apart), at(3 * apart)];
  const d2 = p2 - 2 * p1 + p0;
  const d3 = p3 - 3 * p2 + 3 * p1 - p0;
  const c1 = (p1 - p0 - d2 / 2 + d3 / 3) / apart;
  const c2 = (d2 - d3) / (2 * apart * apart);
  const c3 = d3 / (6 * apart * apart * apart);
  const offAt = (i: number) => Math.abs(((c3 * i + c2) * i + c1) * i + p0 - at(i));
  const off = 8 * Math.max(offAt(apart / 2), offAt((5 * apart) / 2));
  const near = off + NEAR + NEAR_SHARE * (Math.abs(p0) + Math.abs(p1) + Math.abs(p2) + Math.abs(p3));
  if (!(near < POOR)) fillExactly(steps, from, from + 3 * apart, exactly);
  else
    inBlocks(3 * apart, (begin, end) => {
      roundCubic(steps, from, begin, end, p0 + 0.5, c1, c2, c3, near, exactly);
    });
}

/**
 * Rounds a cubic to whole steps.
 * @param from - index that it counts from
 * @param begin - first index to be filled, counted from there, and the one after the last
 * @param c0 - its value there and half a step
 * @param near - so near to a half step the ease decides
 */
function roundCubic(
  steps: Int32Array,
  from: number,
  begin: number,
  end: number,
  c0: number,
  c1: number,
  c2: number,
  c3: number,
  near: number,
  exactly: Exactly,
): void {
  const clear = 0.5 - near;
  for (let i = begin; i < end; i += 1) {
    const above = ((c3 * i + c2) * i + c1) * i + c0;
    const step = Math.floor(above);
    steps[from + i] = Math.abs(above - step - 0.5) < clear ? step : Math.round(exactly(from + i));
  }
}
