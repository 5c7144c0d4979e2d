import { beforeEach, describe, expect, test } from 'vitest';
import { type FixState, fixStore, withNews } from '../../../src/app/fixes/fixStore.ts';
import { changedClock, changedFigures } from '../../../src/app/fixes/previewed.ts';
import { slipRow } from '../../../src/app/fixes/SlipRow.tsx';
import { doneText, spareText, takeBack, takeChanges } from '../../../src/app/fixes/taking.ts';
import type { News } from '../../../src/app/fixes/work.ts';
import { draftAt, setDraft } from '../../../src/app/store/drafts.ts';
import { currentPlan, planStore, startWith } from '../../../src/app/store/plan.ts';
import { scheduleOf } from '../../../src/app/store/schedules.ts';
import { plainText } from '../../../src/app/working/sentence.ts';
import type { Fix, Remedy } from '../../../src/engine/fixes/types.ts';
import { changesBetween } from '../../../src/engine/plan/changes.ts';
import { editAll, setAt } from '../../../src/engine/plan/paths.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { testPlan } from '../plan.ts';

const plain = (text: string | undefined) => text?.replaceAll('\u00a0', ' ');
const steps = () => planStore.temporal.getState().pastStates.length;

beforeEach(() => {
  startWith(testPlan());
  fixStore.setState({ taken: null, preview: null, remedies: new Map(), rested: null, failed: null });
});

describe('what is known', () => {
  const remedy = (key: string): Remedy => ({ key, fixes: [] as Fix[], whyNone: null });
  /** What is known once all the news of a plan has come. */
  function told(state: FixState, plan: Plan, ...news: News[]): FixState {
    const known = { ...state };
    for (const one of news) Object.assign(known, withNews(known, plan, one));
    return known;
  }

  test('stays until something newer takes its place, and goes when there is no more to come', () => {
    const [old, now] = [testPlan(), testPlan()];
    const before = told(
      fixStore.getInitialState(),
      old,
      { id: 1, remedy: remedy('a') },
      { id: 1, remedy: remedy('b') },
      { id: 1, rested: true },
    );
    expect([...before.remedies.keys()]).toEqual(['a', 'b']);
    const half = told(before, now, { id: 2, begun: true }, { id: 2, remedy: remedy('b') });
    expect([...half.remedies].map(([key, { plan }]) => [key, plan === now])).toEqual([
      ['a', false],
      ['b', true],
    ]);
    expect([...told(half, now, { id: 2, rested: true }).remedies.keys()]).toEqual(['b']);
  });

  test('a failure is over when a worker begins again', () => {
    const failed = told(fixStore.getInitialState(), testPlan(), { id: 1, failed: 'Error' });
    expect(failed.failed).toBe('Error');
    expect(told(failed, testPlan(), { id: 2, begun: true }).failed).toBeNull();
  });
});

describe('a change is taken', () => {
  const wider = (plan: Plan) => changesBetween(plan, setAt(plan, 'pacing.intervalS', 16));

  test('as one step, and taking it back gives the very plan there was', () => {
    const before = currentPlan();
    expect(takeChanges(before, wider(before), 'Interval to 16 s', 0)).toBe(true);
    expect(currentPlan().pacing.intervalS).toBe(16);
    expect(steps()).toBe(1);
    expect(plain(fixStore.getState().taken?.text)).toMatch(
      /^Interval is now 16 s: \d+ frames, .* clip, .* spare\.$/,
    );
    takeBack();
    expect(currentPlan()).toBe(before);
    expect(steps()).toBe(0);
  });

  test('not if the plan is another by now', () => {
    const before = currentPlan();
    const other = setAt(before, 'exposure.iso', 400);
    planStore.setState({ plan: other });
    expect(takeChanges(before, wider(before), 'Interval to 16 s', 0)).toBe(false);
    expect(currentPlan()).toBe(other);
  });

  test('not if the plan would not hold together', () => {
    const before = currentPlan();
    const wrong = changesBetween(before, setAt(before, 'rig.axes.0.source', 'No such pack'));
    expect(takeChanges(before, wrong, 'Feed it from nowhere', 0)).toBe(false);
    expect(currentPlan()).toBe(before);
    expect(fixStore.getState().taken).toBeNull();
  });

  test('and what was typed in its field is forgotten', () => {
    setDraft('pacing.intervalS', { text: 'soon', error: 'Not a length of time' });
    takeChanges(currentPlan(), wider(currentPlan()), 'Interval to 16 s', 0);
    expect(draftAt('pacing.intervalS')).toBeUndefined();
  });

  test('a later change is not taken back with it', () => {
    takeChanges(currentPlan(), wider(currentPlan()), 'Interval to 16 s', 0);
    const later = setAt(currentPlan(), 'exposure.iso', 400);
    planStore.setState({ plan: later });
    takeBack();
    expect(currentPlan()).toBe(later);
  });
});

test('what was done is said in the words of the button', () => {
  expect(doneText('Interval to 16 s')).toBe('Interval is now 16 s');
  expect(doneText('Event to 2:13:00, clip to 11 s')).toBe('Event is now 2:13:00, clip is now 11 s');
  expect(doneText('Shutter angle up to 90°')).toBe('Shutter angle is now 90°');
  expect(doneText('Quiet moves')).toBe('Quiet moves');
  expect(doneText('Quiet moves, interval to 9 s')).toBe('Quiet moves, interval to 9 s');
});

test('the spare is what is over, what of the guard is used, or what is missing', () => {
  const totals = (tightestSpareS: number) => ({ ...schedule(testPlan()).totals, tightestSpareS });
  expect(plain(spareText(totals(1.25), 1))).toBe('1.25 s spare');
  expect(plain(spareText(totals(-0.5), 1))).toBe('0.5 s into the guard');
  expect(plain(spareText(totals(-3), 1))).toBe('2 s too short');
});

describe('what a change would do to the strip', () => {
  const before = { plan: testPlan(), schedule: scheduleOf(testPlan()) };
  const with_ = (...edits: Parameters<typeof editAll>[1]) => {
    const plan = editAll(testPlan(), edits);
    return { plan, schedule: schedule(plan) };
  };

  test('only the figures that change, with both values', () => {
    const changed = changedFigures(before, with_(['pacing.intervalS', 24]));
    expect(changed.map(({ id, was, now }) => [id, plain(was), plain(now)])).toEqual([
      ['pacing.intervalS', '12 s', '24 s'],
      ['pacing.clipLengthS', '12.04 s', '6.04 s'],
      ['pacing.frames', '301', '151'],
    ]);
    expect(changedFigures(before, with_(['exposure.iso', 800]))).toEqual([]);
  });

  test('the clock, with the date if that changes', () => {
    expect(changedClock(before, with_(['exposure.iso', 800]))).toBeNull();
    expect(changedClock(before, with_(['start.time', '13:00:00']))?.now).toBe('13:00:00 to 14:00:00');
    expect(plain(changedClock(before, with_(['start.date', '2026-06-22']))?.now)).toBe(
      'Mon 22 Jun 2026 12:00:00 to 13:00:00',
    );
  });
});

test('the slip is read in hours and minutes, with the first sentence of what fails then', () => {
  const margin = {
    id: 'start',
    subject: 'place',
    label: 'Start may slip by',
    used: 86_400 - 4000,
    available: 86_400,
    unit: 's',
    reserve: 0,
    left: 4000,
    frame: 3,
    when: 'then: 4 frames are too dark. The ramp ends at 6.5 s.',
  } as const;
  const row = slipRow(margin, true);
  expect(plain(row.left)).toBe('1 h 6 min');
  expect(plainText(row.when)).toBe('then: 4 frames are too dark');
  expect(plain(slipRow({ ...margin, left: 139 }, true).left)).toBe('2 min 19 s');
  expect(slipRow(margin, false).left).toBe('…');
});
