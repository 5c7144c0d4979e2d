/**
 * Asks a worker about the newest plan.
 *
 * The worker looks for newer questions between two findings. One that does not come back is ended and begun again.
 */
import type { Plan } from '../../engine/plan/schema.ts';
import type { Ask, News, Wanted } from './work.ts';

/** As much of a worker as is needed here. */
export interface Hand {
  postMessage: (ask: Ask) => void;
  terminate: () => void;
  onmessage: ((event: MessageEvent<News>) => void) | null;
  onerror: ((event: never) => void) | null;
}

/** A question without what nothing depends on, and what may be long: each is copied for the worker. */
const lean = (ask: Ask): Ask =>
  ask.plan.sheet.ticks.length === 0
    ? ask
    : { ...ask, plan: { ...ask.plan, sheet: { ...ask.plan.sheet, ticks: [] } } };

/** How long a worker may go on with an old plan, ms. */
export const PATIENCE_MS = 600;

interface Asking {
  /** Asks about a plan; about another plan than before it gives the earlier questions up. */
  ask: (plan: Plan, wanted: Wanted) => void;
  /** Gives all questions up. */
  stop: () => void;
}

/**
 * @param begin - begins a worker
 * @param take - what comes back about the plan asked about last
 * @param fail - no worker can be had
 */
export function createAsking(
  begin: () => Hand,
  take: (plan: Plan, news: News) => void,
  fail: () => void,
  now: () => number = Date.now,
): Asking {
  let hand: Hand | null = null;
  /** Whether the worker has ever said anything: until then it is still being fetched. */
  let spoke = false;
  let asks: Ask[] = [];
  let patience: ReturnType<typeof setTimeout> | null = null;

  const end = () => {
    hand?.terminate();
    hand = null;
    spoke = false;
  };
  const calm = () => {
    if (patience !== null) clearTimeout(patience);
    patience = null;
  };
  const impatient = () => {
    patience = null;
    end();
    send(asks);
  };
  const hear = ({ data }: MessageEvent<News>) => {
    spoke = true;
    const [newest] = asks;
    if (newest?.id !== data.id) return;
    calm();
    take(newest.plan, data);
  };
  const begun = (): Hand => {
    const started = begin();
    started.onmessage = hear;
    started.onerror = () => {
      calm();
      end();
      fail();
    };
    return started;
  };
  const send = (questions: readonly Ask[]) => {
    try {
      hand ??= begun();
      for (const question of questions) hand.postMessage(lean(question));
    } catch {
      fail();
    }
  };
  return {
    ask(plan, wanted) {
      const [before] = asks;
      const id = before === undefined ? 1 : before.plan === plan ? before.id : before.id + 1;
      const question: Ask = { id, wanted, plan, nowMs: now() };
      asks = before?.plan === plan ? [...asks, question] : [question];
      if (spoke && before && before.plan !== plan) patience ??= setTimeout(impatient, PATIENCE_MS);
      send([question]);
    },
    stop() {
      calm();
      end();
    },
  };
}
