/** Eases as they are first offered, and as small drawings. */
import { easeFunction } from '../../engine/motion/ease.ts';
import type { Ease } from '../../engine/plan/schema.ts';
import { wordText } from '../fields/words.ts';

const EASES: Readonly<Record<Ease['kind'], Ease>> = {
  hold: { kind: 'hold' },
  linear: { kind: 'linear' },
  smooth: { kind: 'smooth' },
  smoother: { kind: 'smoother' },
  cubicBezier: { kind: 'cubicBezier', x1: 0.42, y1: 0, x2: 0.58, y2: 1 },
  ramped: { kind: 'ramped', headShare: 0.2, tailShare: 0.2 },
};

export const easeOfKind = (kind: string): Ease => EASES[kind as Ease['kind']];

export const EASE_OPTIONS = Object.keys(EASES).map((kind) => ({ value: kind, text: wordText(kind) }));

/** The own figures of an ease, by the names of their fields. */
export const EASE_FIGURES: Readonly<Partial<Record<Ease['kind'], readonly string[]>>> = {
  cubicBezier: ['x1', 'y1', 'x2', 'y2'],
  ramped: ['headShare', 'tailShare'],
};

const POINTS = 16;

/** An ease as a path in a box of that size, what overshoots included. */
export function easePath(ease: Ease, widthPx: number, heightPx: number): string {
  const at = easeFunction(ease);
  if (ease.kind === 'hold') return `M0 ${heightPx}H${widthPx}V0`;
  const shares = Array.from({ length: POINTS + 1 }, (_, i) => at(i / POINTS));
  const [low, high] = [Math.min(0, ...shares), Math.max(1, ...shares)];
  const y = (share: number) => (heightPx * (high - share)) / (high - low);
  return shares
    .map((share, i) => `${i === 0 ? 'M' : 'L'}${(widthPx * i) / POINTS} ${y(share).toFixed(1)}`)
    .join('');
}
