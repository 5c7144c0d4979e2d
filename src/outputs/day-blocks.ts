/** The day of a shoot: what has to be done before the first frame, backwards from it, and after the last. */
import type { Plan } from '../engine/plan/schema.ts';
import type { Schedule } from '../engine/schedule-types.ts';
import type { Sheet } from '../engine/sheet/types.ts';

/** Stretches of the day, in their order. */
export type BlockKind =
  | 'travel'
  | 'setUp'
  | 'balance'
  | 'rehearsal'
  | 'testFrames'
  | 'inHand'
  | 'run'
  | 'work'
  | 'packUp'
  | 'home';

/** One stretch. It has a length. */
export interface DayBlock {
  kind: BlockKind;
  /** Milliseconds of the epoch. */
  fromMs: number;
  toMs: number;
}

const MINUTE_MS = 60_000;

/** What each is called, on paper and in a calendar. */
export const BLOCK_WORDS: Readonly<Record<BlockKind, string>> = {
  travel: 'Way there',
  setUp: 'Set-up',
  balance: 'Balance and home',
  rehearsal: 'Rehearsal',
  testFrames: 'Test frames',
  inHand: 'Time in hand',
  run: 'Run',
  work: 'Work',
  packUp: 'Pack up',
  home: 'Way back',
};

type Step = readonly [kind: BlockKind, minutes: number];

const before = ({ day }: Plan): Step[] => [
  ['travel', day.travelMin],
  ['setUp', day.setUpMin],
  ['balance', day.balanceMin],
  ['rehearsal', day.rehearsalMin],
  ['testFrames', day.testFramesMin],
  ['inHand', day.inHandMin],
];

const after = ({ day }: Plan): Step[] => [
  ['packUp', day.packUpMin],
  ['home', day.travelMin],
];

function following(fromMs: number, steps: readonly Step[]): DayBlock[] {
  let atMs = fromMs;
  return steps.flatMap(([kind, minutes]) => {
    const block = { kind, fromMs: atMs, toMs: atMs + minutes * MINUTE_MS };
    atMs = block.toMs;
    return minutes > 0 ? [block] : [];
  });
}

const minutesOf = (steps: readonly Step[]): number => steps.reduce((sum, [, minutes]) => sum + minutes, 0);

/** From the first shutter opening until the camera is done with the last frame; a second at least. */
function runOf({ startMs, columns }: Schedule): DayBlock {
  const lastS = columns.elapsedS.at(-1) ?? 0;
  const lengthS = Math.max(1, lastS + (columns.cameraS.at(-1) ?? 0));
  return { kind: 'run', fromMs: startMs, toMs: startMs + lengthS * 1000 };
}

/** The blocks before a first frame, the last one ending with it. */
export function blocksBefore(plan: Plan, startMs: number): DayBlock[] {
  const steps = before(plan);
  return following(startMs - minutesOf(steps) * MINUTE_MS, steps);
}

/**
 * The blocks of a time-lapse, one after another without a gap; a step that takes no time is left out. They are
 * instants, so that a change of the clocks between them is no matter.
 */
export function dayBlocks(plan: Plan, made: Schedule): DayBlock[] {
  const run = runOf(made);
  return [...blocksBefore(plan, run.fromMs), run, ...following(run.toMs, after(plan))];
}

/** The working days of a stop-motion sheet, breaks within them. Setting up is part of the sheet. */
export const workBlocks = ({ days }: Sheet): DayBlock[] =>
  days.flatMap(({ fromMs, toMs }): DayBlock[] => (toMs > fromMs ? [{ kind: 'work', fromMs, toMs }] : []));
