/** What the lamps' ripple leaves at the shutter times of a plan, and which times near them cancel it. */
import { bracketS } from '../../engine/exposure/shutter.ts';
import {
  mainsHzOf,
  nearestFlickerFree,
  rippleLeftShare,
  worstChangeShare,
} from '../../engine/light/lamps.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { shutterText } from '../format/exposure.ts';
import { NBSP, numberText, withUnit } from '../format/numbers.ts';

/** A shutter time in use: its mark, and how long it is open. */
export interface UsedShutter {
  shutterS: number;
  openS: number;
  /** One that it is used at, counted from 1. */
  frame: number;
}

/** What a shutter time leaves, in words. */
export interface LampRow {
  shutter: string;
  /** One that it is used at, counted from 1: its figures are the row's. */
  frame: number;
  /** `± 12 %`, of the worst exposure of a bracket. */
  left: string;
  /** Largest change from frame to frame. */
  change: string;
  /** Whether that is more than the plan allows. */
  over: boolean;
  /** Shutter times near it that keep within what is allowed: the longer one first. */
  better: string;
}

/** Rows that a table begins with: a ramp uses dozens of shutter times. */
export const MOST_ROWS = 6;

const percent = (share: number): string => withUnit(numberText(share * 100, share < 0.1 ? 1 : 0), '%');

/** Each shutter time once, as a ramp takes them. */
const distinct = (used: readonly UsedShutter[]): UsedShutter[] => [
  ...new Map(used.map((one) => [one.shutterS, one])).values(),
];

function rowOf(
  plan: Plan,
  mainsHz: number,
  { shutterS, openS, frame }: UsedShutter,
): LampRow & { changes: number } {
  const lefts = bracketS(plan, openS).map((s) => rippleLeftShare(plan.lamps.depthShare, mainsHz, s));
  const left = Math.max(...lefts);
  const changes = worstChangeShare(left);
  const over = changes > plan.lamps.limitShare + 1e-9;
  const near = nearestFlickerFree(plan, shutterS).map(({ shutterS: marked }) => shutterText(marked));
  return {
    shutter: shutterText(shutterS),
    frame,
    left: `±${NBSP}${percent(left)}`,
    change: percent(changes),
    over,
    better: over ? near.join(', ') || 'none' : 'within the limit',
    changes,
  };
}

/**
 * A row for each shutter time in use, the worst first.
 * @returns none without lamps on the mains
 */
export function lampRows(plan: Plan, used: readonly UsedShutter[]): LampRow[] {
  const mainsHz = mainsHzOf(plan);
  if (mainsHz === null) return [];
  return distinct(used)
    .map((one) => rowOf(plan, mainsHz, one))
    .sort((a, b) => b.changes - a.changes)
    .map(({ changes, ...row }) => row);
}

/** What the rows that are left out have in common. */
export function restText(rows: readonly LampRow[]): string {
  const rest = rows.slice(MOST_ROWS);
  const over = rest.filter((row) => row.over).length;
  const least = rest[0]?.change ?? '';
  return over === 0
    ? `${rest.length} more shutter times change by ${least} or less and keep within what you allow.`
    : `${rest.length} more shutter times change by ${least} or less, ${over} of them by more than you allow.`;
}
