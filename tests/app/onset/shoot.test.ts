/** The harbour demo on set: 386 frames at 14 s from 20:32:35 to 22:02:25, a swap before frame 311. */
import { describe, expect, test } from 'vitest';
import { stepsAfter } from '../../../src/app/onset/After.tsx';
import { stepsBefore } from '../../../src/app/onset/Before.tsx';
import { dueNow, nextOf } from '../../../src/app/onset/Moments.tsx';
import {
  acknowledged,
  givenAt,
  goneOn,
  isUnderWay,
  newShoot,
  nowOf,
  overMs,
  paused,
  plannedStretch,
  type Shoot,
  started,
  stoppedAfter,
} from '../../../src/app/onset/shoot.ts';
import { consequences, countdown, keepTitle, lateText, stateSentence } from '../../../src/app/onset/words.ts';
import { plainText } from '../../../src/app/working/sentence.ts';
import { optionsOf } from '../../../src/engine/onset/outcome.ts';
import { beforeFirst, momentsOf } from '../../../src/engine/onset/todo.ts';
import { plain } from '../../browser/parts.ts';
import { harbour } from '../../engine/onset/demo.ts';

const PLAN = harbour();
const START = plannedStretch(PLAN).startMs;
const run = started(newShoot(PLAN), START);
/** Instant of the opening of a frame, on time. */
const opens = (frame: number) => START + (frame - 1) * 14_000;

const moments = (shoot: Shoot) => momentsOf(shoot.stretches);
const swapOf = (shoot: Shoot) => moments(shoot).find(({ kind }) => kind === 'swap');

describe('where a run stands', () => {
  test('before, under way, over', () => {
    expect(nowOf(newShoot(PLAN), START - 60_000)).toMatchObject({ phase: 'before', begun: 0, frames: 386 });
    expect(nowOf(newShoot(PLAN), START + 60_000)).toMatchObject({ phase: 'before', begun: 0 });
    expect(nowOf(run, opens(128))).toMatchObject({ phase: 'running', begun: 128 });
    expect(nowOf(run, opens(128) - 1)).toMatchObject({ begun: 127 });
    expect(nowOf(run, overMs(run) - 1).phase).toBe('running');
    expect(nowOf(run, overMs(run)).phase).toBe('after');
    expect(isUnderWay(run, overMs(run) - 1)).toBe(true);
    expect(isUnderWay(run, overMs(run))).toBe(false);
    expect(isUnderWay(newShoot(PLAN), START)).toBe(false);
  });

  test('in a pause the frames stand still, and so do the countdowns', () => {
    const shoot = paused(run, opens(200) + 5000);
    for (const later of [0, 1e5, 1e9])
      expect(nowOf(shoot, opens(200) + 5000 + later)).toMatchObject({ phase: 'paused', begun: 200 });
  });
});

describe('going on', () => {
  test('started late: the shift is in force at once, the end can be kept afterwards', () => {
    const slip = { kind: 'late' as const, startMs: START + 300_000 };
    const later = goneOn(newShoot(PLAN), slip, 'clipAndInterval', START + 301_000);
    expect(later?.stretches).toHaveLength(1);
    expect(later?.stretches[0]?.startMs).toBe(START + 300_000);
    const now = START + 300_000 + 40_000;
    const fewer = goneOn(run, slip, 'endAndInterval', now);
    expect(fewer?.stretches).toHaveLength(2);
    // 364 frames in all, as if it had been decided before the first: nothing is lost by deciding now.
    expect(fewer && nowOf(fewer, now).frames).toBe(364);
    // The change counts from the frame after the next: 3 are shot, the 4th comes in 2 s.
    expect(fewer?.stretches[1]?.framesBefore).toBe(4);
    expect(fewer && nowOf(fewer, now).phase).toBe('running');
  });

  test('until the rest begins, the stretch before goes on counting', () => {
    const slip = { kind: 'late' as const, startMs: START + 300_000 };
    const now = START + 300_000 + 40_000;
    const fewer = goneOn(run, slip, 'endAndInterval', now);
    if (!fewer) throw new Error('cannot be had');
    expect(nowOf(fewer, now)).toMatchObject({ begun: 3 });
    expect(nowOf(fewer, now).instant.toNextS).toBeCloseTo(2, 6);
    expect(nowOf(fewer, now + 2000)).toMatchObject({ begun: 4 });
    expect(nowOf(fewer, now + 16_000)).toMatchObject({ begun: 5 });
  });

  test('paused and resumed: the frame fires when the button is pressed', () => {
    const atMs = opens(200) + 5000;
    const on = goneOn(paused(run, atMs), { kind: 'paused' }, 'clipAndInterval', atMs + 240_000);
    expect(on?.stretches[1]).toMatchObject({ framesBefore: 200, startMs: atMs + 240_000 });
    expect(on && nowOf(on, atMs + 240_000)).toMatchObject({ phase: 'running', begun: 201, frames: 386 });
  });

  test('lost frames that are only noted leave the run as it is', () => {
    const slip = { kind: 'lost' as const, frames: 3 };
    const noted = goneOn(run, slip, 'endAndInterval', opens(100));
    expect(noted).toMatchObject({ lost: 3, stretches: run.stretches });
    const made = goneOn(run, slip, 'clipAndInterval', opens(100));
    expect(made && nowOf(made, opens(100)).frames).toBe(389);
  });

  test('what a hand has to do before a run is resumed is said before it is', () => {
    const atMs = opens(200) + 5000;
    const optionAfter = (waitedMs: number, from: Shoot = run) => {
      const [first] = optionsOf(givenAt(paused(from, atMs), { kind: 'paused' }, atMs + waitedMs));
      return first && 'stretch' in first ? beforeFirst(first.stretch) : null;
    };
    expect(optionAfter(60_000)).toEqual([]);
    // The pack that was to be changed before frame 311, 25 min later, has run down in the meantime.
    expect(optionAfter(10_800_000)).toEqual(['Camera pack: swap to pack 2']);
    const { ramp } = PLAN.exposure;
    const steps = ramp.steps.map((step) => ({ ...step, by: 'hand' as const }));
    const byHand = { ...PLAN, exposure: { ...PLAN.exposure, ramp: { ...ramp, steps } } };
    expect(optionAfter(60_000, started(newShoot(byHand), START))?.map(plain)).toEqual([
      expect.stringMatching(/^Set [\d.]+ s, f\/4, ISO \d+$/),
    ]);
  });

  test('what is said in a pause does not end it', () => {
    const atMs = opens(200) + 5000;
    const pause = paused(run, atMs);
    // Three hours on, on the clock all frames would be over.
    const later = atMs + 10_800_000;
    const noted = goneOn(pause, { kind: 'lost', frames: 3 }, 'endAndInterval', later);
    expect(noted && nowOf(noted, later)).toMatchObject({ phase: 'paused', begun: 200 });
    expect(noted?.lost).toBe(3);
    const cut = stoppedAfter(pause, 250);
    expect(nowOf(cut, later)).toMatchObject({ phase: 'paused', begun: 200, frames: 250 });
    const on = goneOn(cut, { kind: 'paused' }, 'clipAndInterval', later);
    expect(on && nowOf(on, later)).toMatchObject({ phase: 'running', begun: 201, frames: 250 });
    // Nothing more is to come: it is over.
    expect(nowOf(stoppedAfter(pause, 200), later)).toMatchObject({ phase: 'after', begun: 200, frames: 200 });
  });

  test('frames lost at the very end are made up for after it: until then the rig is still', () => {
    const now = opens(386) + 9000;
    const made = goneOn(run, { kind: 'lost', frames: 2 }, 'clipAndInterval', now);
    if (!made) throw new Error('cannot be had');
    const { phase, frames, instant } = nowOf(made, opens(386) + 13_000);
    expect([phase, frames, instant.doing, instant.toNextS]).toEqual(['running', 388, 'spare', 1]);
    expect(nowOf(made, opens(387))).toMatchObject({ begun: 387 });
  });

  test('stopped early the run is over with that frame', () => {
    const cut = stoppedAfter(run, 128);
    expect(nowOf(cut, opens(128) + 1000)).toMatchObject({ phase: 'running', frames: 128 });
    expect(nowOf(cut, opens(130))).toMatchObject({ phase: 'after', begun: 128 });
  });

  test('every option says what it comes to, or why it cannot be had', () => {
    const slip = { kind: 'late' as const, startMs: START + 300_000 };
    const options = optionsOf(givenAt(newShoot(PLAN), slip, START + 300_000));
    expect(options.map(({ keep }) => keepTitle(keep, 'late'))).toEqual([
      'Keep clip and interval: end later',
      'Keep end and interval: fewer frames',
      'Keep end and clip: shorter interval',
    ]);
    const [, fewer, shorter] = options;
    if (!fewer || 'why' in fewer || !shorter || 'why' in shorter) throw new Error('cannot be had');
    const said = consequences(fewer, PLAN.place).map(([name, text]) => `${name} ${plain(text)}`);
    // 363 intervals of 14 s from 20:37:35 end 8 s before 22:02:25.
    expect(said).toEqual([
      'Frames 364 (-22)',
      'Clip 14.56 s (-0.88 s)',
      'End 22:02:17 (-8 s)',
      'Trigger 14 s, as it is',
    ]);
    expect(plain(consequences(shorter, PLAN.place)[3]?.[1] ?? '')).toBe('set to 13 s (was 14 s)');
  });
});

describe('what is to be done', () => {
  test('a swap is announced one interval early, is due in the one before its frame, and then overdue', () => {
    const swap = swapOf(run);
    expect(swap).toMatchObject({ frame: 311, atMs: opens(311), openMs: opens(310), announceMs: opens(309) });
    const standing = (nowMs: number) =>
      nextOf(moments(run), run, nowMs).find(({ moment }) => moment.kind === 'swap')?.standing;
    expect(standing(opens(309) - 1)).toBe('later');
    expect(standing(opens(309))).toBe('soon');
    expect(standing(opens(310))).toBe('due');
    expect(standing(opens(311) - 1)).toBe('due');
    expect(standing(opens(311))).toBe('overdue');
    expect(dueNow(nextOf(moments(run), run, opens(309) - 1))).toBeNull();
    expect(dueNow(nextOf(moments(run), run, opens(400)))?.kind).toBe('swap');
    const done = acknowledged(run, swap?.key ?? '');
    expect(nextOf(moments(done), done, opens(312)).map(({ moment }) => moment.kind)).not.toContain('swap');
  });

  test('an earlier frame of a later stretch takes its swaps along', () => {
    const atMs = opens(200) + 5000;
    const on = goneOn(paused(run, atMs), { kind: 'paused' }, 'clipAndInterval', atMs + 240_000);
    if (!on) throw new Error('cannot be had');
    // The camera idles at 4.6 W for four minutes: 0.3 Wh of 6.1, some frames' worth: the swap comes sooner.
    const frame = swapOf(on)?.frame ?? 0;
    expect(frame).toBeLessThan(311);
    expect(frame).toBeGreaterThan(290);
    expect(moments(on).filter(({ kind }) => kind === 'lastFrame')).toHaveLength(1);
    expect(moments(on).at(-1)).toMatchObject({ kind: 'lastFrame', frame: 386 });
  });

  test('a change of the exposure by hand is one, by the camera it is not', () => {
    const ramp = PLAN.exposure.ramp;
    const steps = ramp.steps.map((step) => ({ ...step, by: 'hand' as const, step: 'full' as const }));
    const byHand = { ...PLAN, exposure: { ...PLAN.exposure, ramp: { ...ramp, steps } } };
    const count = (plan: typeof PLAN) =>
      momentsOf([plannedStretch(plan)]).filter(({ kind, byHand: hand }) => kind === 'exposureChange' && hand)
        .length;
    expect(count(PLAN)).toBe(0);
    expect(count(byHand)).toBeGreaterThan(5);
  });

  test('the day before the first frame, and what is left after the last', () => {
    const steps = stepsBefore(PLAN, START);
    expect(steps.map(({ name }) => name)).toEqual([
      'Set-up',
      'Balance and home',
      'Rehearsal',
      'Test frames',
      'Time in hand',
    ]);
    expect(steps.at(-1)?.toMs).toBe(START);
    expect((START - (steps[0]?.fromMs ?? 0)) / 60_000).toBe(20 + 10 + 10 + 5 + 15);
    expect(stepsAfter(run, 52e6, 386).map(plainText).join(' ')).toMatch(
      /Stop the trigger.*weights off before the camera.*2.copies of 20\.1.GB/,
    );
  });
});

test.each([
  [5.2, '6'],
  [6, '6'],
  [0, '0'],
  [59.01, '1:00'],
  [174, '2:54'],
  [3604, '1:00:04'],
  [273_600, '3 d 4 h'],
])('%s s to go are shown as %s', (seconds, text) => {
  expect(plain(countdown(seconds))).toBe(text);
});

test('words', () => {
  expect(stateSentence('spare', 'moveShootMove').join(' ')).toBe(
    'Spare time. Rig still, camera free to touch.',
  );
  expect(stateSentence('spare', 'continuous').join(' ')).toMatch(/moves all the time: hands off/);
  expect(plain(lateText(310))).toBe('5 min 10 s late');
  expect(plain(lateText(-2.2))).toBe('2 s early');
  expect(lateText(0.3)).toBe('on time');
});
