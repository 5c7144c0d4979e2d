import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { createAsking, type Hand, PATIENCE_MS } from '../../../src/app/fixes/asking.ts';
import type { Ask, News } from '../../../src/app/fixes/work.ts';
import { setAt } from '../../../src/engine/plan/paths.ts';
import { testPlan } from '../plan.ts';

interface FakeHand extends Hand {
  asked: Ask[];
  ended: boolean;
  say: (news: News) => void;
}

function fake(): FakeHand {
  const hand: FakeHand = {
    asked: [],
    ended: false,
    onmessage: null,
    onerror: null,
    postMessage: (ask) => hand.asked.push(ask),
    terminate: () => {
      hand.ended = true;
    },
    say: (data) => hand.onmessage?.({ data } as MessageEvent<News>),
  };
  return hand;
}

const first = testPlan();
const second = setAt(first, 'cycle.guardS', 1.5);
const third = setAt(first, 'cycle.guardS', 2.5);

function set() {
  const hands: FakeHand[] = [];
  const taken: unknown[] = [];
  const failed = vi.fn();
  const asking = createAsking(
    () => {
      const hand = fake();
      hands.push(hand);
      return hand;
    },
    (plan, news) => taken.push([plan, news]),
    failed,
    () => 5,
  );
  return { hands, taken, failed, asking };
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe('asking', () => {
  test('begins one worker and hands on what it says of the newest plan', () => {
    const { hands, taken, asking } = set();
    asking.ask(first, 'ways');
    asking.ask(first, 'ladder');
    asking.ask(second, 'ways');
    expect(hands).toHaveLength(1);
    expect(hands[0]?.asked.map(({ id, wanted, nowMs }) => [id, wanted, nowMs])).toEqual([
      [1, 'ways', 5],
      [1, 'ladder', 5],
      [2, 'ways', 5],
    ]);
    hands[0]?.say({ id: 1, rested: true });
    expect(taken).toEqual([]);
    hands[0]?.say({ id: 2, begun: true });
    expect(taken).toEqual([[second, { id: 2, begun: true }]]);
  });

  test('ends a worker that does not come back, and asks another all that was asked of the newest plan', () => {
    const { hands, asking } = set();
    asking.ask(first, 'ways');
    hands[0]?.say({ id: 1, begun: true });
    asking.ask(second, 'ways');
    vi.advanceTimersByTime(PATIENCE_MS / 2);
    asking.ask(third, 'ladder');
    asking.ask(third, 'ways');
    vi.advanceTimersByTime(PATIENCE_MS / 2 + 1);
    expect(hands[0]?.ended).toBe(true);
    expect(hands[1]?.asked.map(({ plan, wanted }) => [plan === third, wanted])).toEqual([
      [true, 'ladder'],
      [true, 'ways'],
    ]);
  });

  test('leaves one alone that comes back in time, or that is still being fetched', () => {
    const { hands, asking } = set();
    asking.ask(first, 'ways');
    asking.ask(second, 'ways');
    vi.advanceTimersByTime(PATIENCE_MS * 3);
    expect(hands).toHaveLength(1);
    hands[0]?.say({ id: 2, begun: true });
    asking.ask(third, 'ways');
    hands[0]?.say({ id: 3, begun: true });
    vi.advanceTimersByTime(PATIENCE_MS * 3);
    expect(hands).toHaveLength(1);
    expect(hands[0]?.ended).toBe(false);
  });

  test('says so where no worker can be had, and tries again with the next plan', () => {
    const { hands, failed, asking } = set();
    asking.ask(first, 'ways');
    hands[0]?.onerror?.(null as never);
    expect(failed).toHaveBeenCalledTimes(1);
    asking.ask(second, 'ways');
    expect(hands).toHaveLength(2);
    const refusing = createAsking(
      () => {
        throw new Error('no workers here');
      },
      () => {},
      failed,
    );
    refusing.ask(first, 'ways');
    expect(failed).toHaveBeenCalledTimes(2);
  });
});
