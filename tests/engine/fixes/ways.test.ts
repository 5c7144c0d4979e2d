/** The ways out of every finding: that they are there, lead to plans, and, tried, lead out. */
import { describe, expect, test, vi } from 'vitest';
import { type Finding, type FindingId, keyOf } from '../../../src/engine/findings/types.ts';
import { remediesOf } from '../../../src/engine/fixes/remedies.ts';
import { judgeOf, searchWay } from '../../../src/engine/fixes/search.ts';
import { Trials } from '../../../src/engine/fixes/trial.ts';
import type { Way } from '../../../src/engine/fixes/types.ts';
import { NOTHING_TO_DO, WAYS } from '../../../src/engine/fixes/ways.ts';
import { paceOf } from '../../../src/engine/pacing/pacing.ts';
import { parsePlan, serialisePlan } from '../../../src/engine/plan/parse.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import type { Schedule } from '../../../src/engine/schedule-types.ts';
import { PATIENCE_MS } from '../../property/settings.ts';
import { BROKEN, type Broken, harbour } from './broken-plans.ts';

vi.setConfig({ testTimeout: PATIENCE_MS });

interface Shown extends Broken {
  made: Schedule;
  finding: Finding;
  ways: Way[];
}

function shown(broken: Broken): Shown {
  const { id, plan, nowMs } = broken;
  const made = schedule(plan, nowMs === undefined ? {} : { nowMs });
  const finding = made.findings.find((one) => one.id === id);
  if (!finding) throw new Error(`no ${id} among ${made.findings.map(keyOf).join(', ')}`);
  return { ...broken, made, finding, ways: WAYS[id](finding, plan, made) };
}

/** Values of a way to look at: the first ones, those about its guess, its last, and some between. */
function stepsToSee({ steps, first }: Way): number[] {
  const some = [1, 2, 3, first - 2, first - 1, first, first + 1, first + 2, steps - 1, steps];
  const between = Array.from({ length: 7 }, (_, i) => Math.round(1 + (i / 6) ** 3 * (steps - 1)));
  return [...new Set([...some, ...between])].filter((step) => step >= 1 && step <= steps);
}

const CASES = BROKEN.map((broken) => [broken.id, broken.what, broken] as const);

test('there is a plan for every kind of finding', () => {
  const ids = Object.keys(WAYS) as FindingId[];
  const missing = ids.filter((id) => BROKEN.every((broken) => broken.id !== id));
  expect(missing).toEqual([]);
});

test('the plans that are broken on purpose are plans', () => {
  for (const { plan } of BROKEN) expect(parsePlan(serialisePlan(plan))).toEqual({ ok: true, plan });
});

describe.each(CASES)('%s: %s', (_id, _what, broken) => {
  const { ways, plan, made, finding, offers = [], none, nowMs } = shown(broken);

  test('each way has a kind of its own, and begins among its values', () => {
    expect(new Set(ways.map(({ kind }) => kind)).size).toBe(ways.length);
    for (const { steps, first } of ways) {
      expect(Number.isInteger(steps) && Number.isInteger(first)).toBe(true);
      expect(first).toBeGreaterThanOrEqual(1);
      expect(first).toBeLessThanOrEqual(steps);
    }
  });

  test('each value makes a plan file, or says that it makes none', () => {
    for (const way of ways) {
      expect(way.at(0), way.kind).toBeNull();
      expect(way.at(way.steps + 1), way.kind).toBeNull();
      for (const step of stepsToSee(way)) {
        const changed = way.at(step);
        if (changed === null) continue;
        expect(changed, `${way.kind} at ${step}`).not.toEqual(plan);
        const read = parsePlan(serialisePlan(changed));
        expect(read, `${way.kind} at ${step}`).toEqual({ ok: true, plan: changed });
        const said = `${way.label(changed)} ${way.needs(changed) ?? ''}`;
        expect(said).not.toMatch(/NaN|undefined|null|Infinity/);
        expect(way.label(changed)).toMatch(/^\S.*\S$/);
      }
    }
  });

  if (offers.length > 0)
    test('the ways named lead out, and the guess is near', () => {
      const trials = new Trials(plan, made, nowMs);
      for (const kind of offers) {
        const way = ways.find((one) => one.kind === kind) as Way;
        expect(way, kind).toBeDefined();
        const found = searchWay(way, judgeOf(trials, finding));
        expect(found.passes, `${kind}: ${found.attempt && way.label(found.attempt.plan)}`).toBe(true);
        const { plan: changed } = found.attempt as { plan: Plan };
        const text = serialisePlan(changed);
        const near = Array.from({ length: 2 * GUESS + 1 }, (_, i) => way.first - GUESS + i);
        const at = near.find((step) => {
          const there = way.at(step);
          return there !== null && serialisePlan(there) === text;
        });
        if (!FAR.has(`${broken.id} ${kind}`)) expect(at, `${kind} from ${way.first}`).toBeDefined();
      }
    });

  test(none ? 'nothing leads out, and it is said why' : 'a fix is offered', () => {
    const given = nowMs === undefined ? {} : { nowMs };
    const remedy = [...remediesOf(plan, made, given)].find(({ key }) => key === keyOf(finding));
    if (none) expect(remedy).toMatchObject({ fixes: [], whyNone: expect.stringMatching(none) });
    else expect(remedy?.fixes).not.toEqual([]);
  });
});

/** So many values to either side of a guess are a few. */
const GUESS = 6;

/** Where nobody can reckon how much suffices. */
const FAR = new Set(['aim-out-of-limits track-smaller:Slide', 'stair-stepping run-shorter']);

test('what never has a way out says why, in a sentence', () => {
  for (const sentence of Object.values(NOTHING_TO_DO)) expect(sentence).toMatch(/^[A-Z].*\.$/);
  const ids = Object.keys(WAYS) as FindingId[];
  const without = ids.filter((id) =>
    BROKEN.filter((broken) => broken.id === id).every((broken) => shown(broken).ways.length === 0),
  );
  expect(without.filter((id) => NOTHING_TO_DO[id] === undefined)).toEqual([]);
});

describe('the same change', () => {
  const plan = harbour(['pacing.intervalS', 4], ['storage.cards.0.cardBytes', 16e9]);
  const made = schedule(plan);

  test('has the same values whichever finding asks for it', () => {
    const known = new Map<string, Way>();
    let twice = 0;
    for (const finding of made.findings)
      for (const way of WAYS[finding.id](finding, plan, made)) {
        const before = known.get(way.kind);
        known.set(way.kind, before ?? way);
        if (!before) continue;
        twice += 1;
        expect(way.steps, way.kind).toBe(before.steps);
        for (const step of [1, 2, 7]) expect(way.at(step), way.kind).toEqual(before.at(step));
      }
    expect(twice).toBeGreaterThan(5);
  });
});

describe('values that a person dials', () => {
  const kinds = ['interval-longer', 'interval-shorter', 'run-slower', 'run-faster'];

  test.each(
    CASES.filter(([, , { plan }]) => plan.trigger.counts === 'startToStart').map(
      ([id, what, broken]) => [id, what, broken] as const,
    ),
  )('intervals are settings of the trigger: %s, %s', (_id, _what, broken) => {
    for (const way of shown(broken).ways.filter(({ kind }) => kinds.includes(kind)))
      for (const step of stepsToSee(way)) {
        const changed = way.at(step);
        if (changed) expect(paceOf(changed).settable, `${way.kind} at ${step}`).toBe(true);
      }
  });
});
