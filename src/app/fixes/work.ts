/** Ways out, slip and ladder of a plan, worked out piece by piece, so that a newer plan can come in between. */
import type { Margin } from '../../engine/findings/types.ts';
import { intervalLadder, type LadderRow } from '../../engine/fixes/interval-ladder.ts';
import { remediesOf } from '../../engine/fixes/remedies.ts';
import { slipMargin, slipOf } from '../../engine/fixes/slip.ts';
import type { Remedy } from '../../engine/fixes/types.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { schedule } from '../../engine/schedule.ts';

/** What can be asked about a plan. */
export type Wanted = 'ways' | 'ladder';

/** A question; questions with one id are about one plan. */
export interface Ask {
  id: number;
  wanted: Wanted;
  plan: Plan;
  /** The present, milliseconds of the epoch. */
  nowMs: number;
}

/** A piece of an answer. */
export type Found =
  | { remedy: Remedy }
  /** How late the run can begin; null where nothing depends on the clock. */
  | { slip: Margin | null }
  | { ladder: LadderRow[] }
  /** It could not be worked out. */
  | { failed: string };

/** What the worker says: a piece, or that it has begun, or that it has nothing left to do about a plan. */
export type News = (Found | { begun: true } | { rested: true }) & { id: number };

/** The pieces of an answer, as they come. */
export function* piecesOf({ wanted, plan, nowMs }: Omit<Ask, 'id'>): Generator<Found> {
  const made = schedule(plan, { nowMs });
  if (wanted === 'ladder') {
    yield { ladder: intervalLadder(plan, made) };
    return;
  }
  for (const remedy of remediesOf(plan, made, { nowMs })) yield { remedy };
  yield { slip: slipMargin(plan, made, slipOf(plan, made, { nowMs })) };
}

/**
 * Answers questions in turn; one about a newer plan ends all about the plan before.
 * @param post - takes each piece as it is found
 * @param pause - lets the next question come in
 * @param pieces - finds them
 */
export function answering(
  post: (news: News) => void,
  pause: () => Promise<void>,
  pieces: (ask: Ask) => Generator<Found> = piecesOf,
) {
  let waiting: Ask[] = [];
  let latest = Number.NaN;
  let busy = false;

  async function answer(ask: Ask): Promise<void> {
    const { id } = ask;
    post({ id, begun: true });
    try {
      for (const piece of pieces(ask)) {
        post({ id, ...piece });
        await pause();
        if (latest !== id) return;
      }
    } catch (error) {
      post({ id, failed: String(error) });
    }
  }

  return async (ask: Ask): Promise<void> => {
    if (ask.id !== latest) waiting = [];
    latest = ask.id;
    waiting.push(ask);
    if (busy) return;
    busy = true;
    for (let next = waiting.shift(); next; next = waiting.shift()) {
      await answer(next);
      if (waiting.length === 0) post({ id: next.id, rested: true });
    }
    busy = false;
  };
}
