/** The same plan at the settings of the trigger around the present one. */
import { rungWords } from '../exposure/ramp-words.ts';
import type { Finding } from '../findings/types.ts';
import { settingsUpTo } from '../pacing/pacing.ts';
import { type Change, changesBetween } from '../plan/changes.ts';
import { readPlan } from '../plan/parse.ts';
import { editAll } from '../plan/paths.ts';
import type { Plan } from '../plan/schema.ts';
import { Room } from '../room.ts';
import { schedule } from '../schedule.ts';
import type { Schedule } from '../schedule-types.ts';

/** The plan at one setting of the trigger. */
export interface LadderRow {
  dialS: number;
  intervalS: number;
  /** Whether it is the plan as it stands. */
  present: boolean;
  /** What takes it; none at the present one. */
  changes: Change[];
  frames: number;
  clipLengthS: number;
  /** ISO 8601 with the local offset. */
  lastFrameAt: string;
  tightestSpareS: number;
  /** Settings of the first frame and the last: `1/60, f/8, ISO 100`; null if the light is not planned. */
  exposureFirst: string | null;
  exposureLast: string | null;
  swaps: number;
  /** How many cards it takes. */
  cards: number;
  /** null if the plan says nothing. */
  worst: Finding | null;
  counts: Schedule['counts'];
}

/** How many settings are shown on each side of the present one. */
const EACH = 6;

/** A dial finer than this share of the present setting is passed over in rounder strides. */
const FINEST = 0.04;

/** Settings from one row to the next: 1, 2, 5, 10, ... so that the rows differ by something worth seeing. */
function strideOf(settings: number): number {
  const wanted = Math.max(1, settings * FINEST);
  const ten = 10 ** Math.floor(Math.log10(wanted));
  return [1, 2, 5, 10].map((n) => n * ten).find((stride) => stride >= wanted) ?? 10 * ten;
}

/** Settings of the trigger around a time on its dial, without that time itself; s, rising. */
function settingsAround(plan: Plan, dialS: number, each: number): number[] {
  const { maxS, stepS } = plan.trigger;
  const { count, at } = settingsUpTo(plan, maxS);
  const under = settingsUpTo(plan, Math.max(0, dialS)).count;
  // Whole strides of settings from zero on: 8, 10, 12 s, not 7, 9, 11.
  const stride = strideOf(dialS / stepS);
  const offset = count === 0 ? 0 : Math.round(at(0) / stepS);
  const pick = (from: number, by: 1 | -1): number[] => {
    const nearest = by * Math.ceil((by * (from + offset)) / stride) * stride - offset;
    return Array.from({ length: each + 1 }, (_, n) => nearest + by * n * stride)
      .filter((n) => n >= 0 && n < count)
      .map(at)
      .filter((setting) => setting !== dialS)
      .slice(0, each);
  };
  return [...pick(under - 1, -1).reverse(), ...pick(under, 1)];
}

/**
 * The plan with another setting of the trigger. An interval that was worked out is typed from then on, and the clip is
 * worked out: the event is held. What else is worked out still is.
 */
function withDial(plan: Plan, dialS: number, spanS: number): Plan {
  const { workedOut } = plan.pacing;
  return editAll(plan, [
    ['pacing.intervalS', Number((dialS + spanS).toPrecision(12))],
    ['pacing.workedOut', workedOut === 'interval' ? 'clip' : workedOut],
  ]);
}

function rowOf(made: Schedule, changes: Change[]): LadderRow {
  const { totals, columns, exposure, sources, cards, findings, counts } = made;
  const words = (k: number): string | null => {
    const rung = exposure?.rungs[columns.rung?.[k] ?? 0];
    return rung ? rungWords(rung) : null;
  };
  return {
    dialS: totals.dialS,
    intervalS: totals.intervalS,
    present: changes.length === 0,
    changes,
    frames: totals.frames,
    clipLengthS: totals.clipLengthS,
    lastFrameAt: totals.lastFrameAt,
    tightestSpareS: totals.tightestSpareS,
    exposureFirst: words(0),
    exposureLast: words(totals.frames - 1),
    swaps: sources.reduce((sum, { swapFrames }) => sum + swapFrames.length, 0),
    cards: cards.filter(({ firstFrame }) => firstFrame !== null).length,
    worst: findings[0] ?? null,
    counts,
  };
}

/** Seconds that the trigger does not count: from a frame's first opening to its last closing, if it counts the gap. */
const spanOf = (plan: Plan, { totals }: Schedule): number =>
  plan.trigger.counts === 'endToStart' ? totals.intervalS - totals.dialS : 0;

/** The plan with that setting; null if no plan file could hold it. */
function changedTo(plan: Plan, made: Schedule, dialS: number): Plan | null {
  const changed = withDial(plan, dialS, spanOf(plan, made));
  return readPlan(changed).ok ? changed : null;
}

/**
 * The plan at another setting of its trigger, as its row of the ladder has it.
 * @param made - schedule of the plan
 * @param dialS - what the trigger shows, seconds
 * @returns the plan itself at its present setting; null where the trigger has no such setting, or no plan file could
 *   hold it
 */
export function planAtSetting(plan: Plan, made: Schedule, dialS: number): Plan | null {
  const near = (setting: number) => Math.abs(setting - dialS) <= 1e-9 * Math.abs(dialS);
  if (near(made.totals.dialS)) return plan;
  const { count, at } = settingsUpTo(plan, dialS * (1 + 1e-9));
  if (count === 0 || dialS > plan.trigger.maxS * (1 + 1e-9) || !near(at(count - 1))) return null;
  return changedTo(plan, made, at(count - 1));
}

/**
 * The plan at the settings of its trigger around the present one, rising; the present one is among them. Settings that
 * no plan file could hold are left out.
 * @param made - schedule of the plan; its columns must stay as they are meanwhile
 * @param given - `each`: how many settings on each side
 */
export function intervalLadder(
  plan: Plan,
  made: Schedule,
  { each = EACH }: { each?: number } = {},
): LadderRow[] {
  const room = new Room();
  const { dialS } = made.totals;
  const rowAt = (setting: number): LadderRow[] => {
    const changed = changedTo(plan, made, setting);
    return changed === null
      ? []
      : [rowOf(schedule(changed, { room, before: made }), changesBetween(plan, changed))];
  };
  const around = settingsAround(plan, dialS, each);
  return [
    ...around.filter((setting) => setting < dialS).flatMap(rowAt),
    rowOf(made, []),
    ...around.filter((setting) => setting > dialS).flatMap(rowAt),
  ];
}
