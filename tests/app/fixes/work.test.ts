import { describe, expect, test } from 'vitest';
import { type Ask, answering, type Found, type News, piecesOf } from '../../../src/app/fixes/work.ts';
import { keyOf } from '../../../src/engine/findings/types.ts';
import { setAt } from '../../../src/engine/plan/paths.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { testPlan } from '../plan.ts';

const plan = testPlan();
const ask = (id: number, wanted: Ask['wanted'] = 'ways'): Ask => ({ id, wanted, plan, nowMs: 0 });

/** Answers with pieces of the test's own; `next()` lets the worker go on after a piece. */
function answers(pieces: (ask: Ask) => Generator<Found>) {
  const said: News[] = [];
  let next = () => {};
  const pause = () =>
    new Promise<void>((resume) => {
      next = resume;
    });
  const answer = answering((news) => said.push(news), pause, pieces);
  return { said, answer, next: () => next() };
}

function* three({ id, wanted }: Ask): Generator<Found> {
  for (let n = 1; n <= 3; n += 1) yield { remedy: { key: `${id} ${wanted} ${n}`, fixes: [], whyNone: '' } };
}

const keys = (said: readonly News[]) =>
  said.flatMap((news) => ('remedy' in news ? [news.remedy.key] : 'rested' in news ? ['rested'] : []));

const settle = () => new Promise((resume) => setTimeout(resume));

describe('answering', () => {
  test('gives the pieces one at a time, and then says that there are no more', async () => {
    const { said, answer, next } = answers(three);
    const done = answer(ask(1));
    expect(keys(said)).toEqual(['1 ways 1']);
    for (let n = 0; n < 3; n += 1) {
      next();
      await settle();
    }
    await done;
    expect(keys(said)).toEqual(['1 ways 1', '1 ways 2', '1 ways 3', 'rested']);
  });

  test('gives an old plan up between two pieces, and what waits about it', async () => {
    const { said, answer, next } = answers(three);
    void answer(ask(1));
    void answer(ask(1, 'ladder'));
    void answer(ask(2));
    for (let n = 0; n < 5; n += 1) {
      next();
      await settle();
    }
    expect(keys(said)).toEqual(['1 ways 1', '2 ways 1', '2 ways 2', '2 ways 3', 'rested']);
  });

  test('answers a second question about the same plan after the first', async () => {
    const { said, answer, next } = answers(three);
    void answer(ask(1));
    void answer(ask(1, 'ladder'));
    for (let n = 0; n < 7; n += 1) {
      next();
      await settle();
    }
    expect(keys(said)).toEqual([
      '1 ways 1',
      '1 ways 2',
      '1 ways 3',
      '1 ladder 1',
      '1 ladder 2',
      '1 ladder 3',
      'rested',
    ]);
  });

  test('says so if it cannot be worked out, and goes on with the next', async () => {
    const { said, answer } = answers(({ id }) => {
      throw new Error(`no ${id}`);
    });
    await answer(ask(1));
    await answer(ask(2));
    expect(said.filter((news) => 'failed' in news)).toEqual([
      { id: 1, failed: 'Error: no 1' },
      { id: 2, failed: 'Error: no 2' },
    ]);
  });
});

describe('pieces', () => {
  test('one remedy a finding in their order, and the slip at the end', () => {
    const short = setAt(plan, 'pacing.intervalS', 3);
    const found = [...piecesOf({ wanted: 'ways', plan: short, nowMs: 0 })];
    const keysOfFindings = schedule(short, { nowMs: 0 }).findings.map(keyOf);
    expect(keysOfFindings.length).toBeGreaterThan(0);
    expect(found.flatMap((piece) => ('remedy' in piece ? [piece.remedy.key] : []))).toEqual(keysOfFindings);
    expect(found.at(-1)).toHaveProperty('slip');
  });

  test('the ladder in one, with the present setting in it', () => {
    const [piece, ...more] = [...piecesOf({ wanted: 'ladder', plan, nowMs: 0 })];
    expect(more).toEqual([]);
    if (!piece || !('ladder' in piece)) throw new Error('no ladder');
    expect(piece.ladder.filter(({ present }) => present).map(({ dialS }) => dialS)).toEqual([12]);
  });
});
