import { describe, expect, test } from 'vitest';
import { fieldInfo, foundText, pathText } from '../../../src/engine/plan/faults.ts';
import {
  defaultPlan,
  newAxis,
  newCard,
  newKeyframe,
  newLoad,
  newSource,
  readPlan,
} from '../../../src/engine/plan/parse.ts';
import type { Ease, Plan } from '../../../src/engine/plan/schema.ts';

type Path = (string | number)[];

const EASES: readonly Ease[] = [
  { kind: 'linear' },
  { kind: 'cubicBezier', x1: 0.1, y1: 0, x2: 0.5, y2: 1 },
  { kind: 'ramped', headShare: 0.1, tailShare: 0.2 },
];

/** A plan in which every list has a member. */
function fullPlan(): Plan {
  const plan = defaultPlan();
  plan.rig.axes = [newAxis()];
  plan.power.sources = [newSource()];
  plan.power.loads = [newLoad()];
  plan.storage.cards = [newCard()];
  const keyframes = EASES.map((ease, i) => newKeyframe({ share: i / 2, position: i, ease }));
  plan.move.tracks = [{ axis: 'Axis', keyframes, thereAndBack: false }];
  return plan;
}

/** Every field that is no group and no list, once a list. */
function leavesOf(value: unknown, path: Path = []): Path[] {
  if (value === null || typeof value !== 'object') return [path];
  const isEases = path.at(-1) === 'keyframes';
  const entries: [string | number, unknown][] = Array.isArray(value)
    ? value.slice(0, isEases ? 3 : 1).map((item, i) => [i, item])
    : Object.entries(value);
  return entries.flatMap(([part, member]) => leavesOf(member, [...path, part]));
}

const LEAVES = leavesOf(fullPlan()).map((path) => [pathText(path), path] as const);

function valueAt(plan: Plan, path: Path): unknown {
  return path.reduce<unknown>((value, part) => (value as Record<string | number, unknown>)[part], plan);
}

/** The plan with one field replaced. */
function withValue(path: Path, value: unknown): unknown {
  const plan = structuredClone(fullPlan());
  const group = valueAt(plan, path.slice(0, -1)) as Record<string | number, unknown>;
  group[path.at(-1) as string] = value;
  return plan;
}

const faultAt = (path: Path, value: unknown): boolean => {
  const parsed = readPlan(withValue(path, value));
  return !parsed.ok && parsed.faults.some((fault) => fault.path === pathText(path));
};

const FIXED = ['format', 'version'];

describe('every field of a plan', () => {
  test('there are many', () => {
    expect(LEAVES.length).toBeGreaterThan(100);
  });

  test.each(LEAVES)('%s has a label and says what is allowed', (_name, path) => {
    const info = fieldInfo(path);
    expect(info.title.trim()).not.toBe('');
    expect(info.allowed.trim()).not.toBe('');
    expect(info.allowed).not.toMatch(/any number of characters|undefined|NaN|from 0 to 0( |,|$)/);
  });

  test.each(LEAVES.filter(([, path]) => typeof valueAt(fullPlan(), path) === 'number'))(
    '%s: its range holds its default and its ends, and nothing beyond',
    (name, path) => {
      if (FIXED.includes(name)) return;
      const { minimum, maximum, whole } = fieldInfo(path);
      if (minimum === undefined || maximum === undefined) throw new Error(`${name} has no range`);
      const value = valueAt(fullPlan(), path) as number;
      expect(value).toBeGreaterThanOrEqual(minimum);
      expect(value).toBeLessThanOrEqual(maximum);
      for (const beyond of [
        minimum - 1,
        maximum + 1,
        maximum * 2 + 1,
        -1e300,
        1e300,
        Number.NaN,
        Number.POSITIVE_INFINITY,
      ]) {
        expect(faultAt(path, beyond), `${name} = ${beyond}`).toBe(true);
      }
      expect(faultAt(path, `${value}`)).toBe(true);
      expect(faultAt(path, null)).toBe(true);
      // A little beside the default, to whichever side is in range.
      expect(faultAt(path, value + (value < maximum ? 1e-7 : -1e-7))).toBe(whole);
    },
  );

  test.each(LEAVES.filter(([, path]) => fieldInfo(path).optional))('%s may be null', (_name, path) => {
    expect(readPlan(withValue(path, null)).ok).toBe(true);
  });

  test.each(LEAVES.filter(([, path]) => fieldInfo(path).words))(
    '%s: its words and no other',
    (name, path) => {
      const words = fieldInfo(path).words ?? [];
      expect(words).toContain(valueAt(fullPlan(), path));
      expect(faultAt(path, `${words[0]} `)).toBe(true);
      expect(faultAt(path, 0)).toBe(true);
      if (!name.endsWith('ease.kind'))
        for (const word of words) expect(readPlan(withValue(path, word)).ok).toBe(true);
    },
  );

  test('what the plan does not have throws', () => {
    for (const path of [
      ['nothing'],
      ['clip', 'toString'],
      ['rig', 'axes', 0, '__proto__'],
      ['clip', 'frameRate', 'x'],
    ]) {
      expect(() => fieldInfo(path), pathText(path)).toThrow(RangeError);
    }
  });
});

describe('words of a fault', () => {
  test.each([
    [['rig', 'axes', 1, 'maxSpeed'], 'rig.axes[1].maxSpeed'],
    [[], ''],
    [['title'], 'title'],
  ])('path %j is printed %s', (path, text) => {
    expect(pathText(path)).toBe(text);
  });

  test.each([
    [undefined, 'nothing'],
    [null, 'null'],
    ['', '""'],
    [1e300, '1e+300'],
    [[1, 2], 'a list of 2'],
    [{}, 'a group of fields'],
  ])('%j is found as %s', (value, text) => {
    expect(foundText(value)).toBe(text);
  });

  test('a long text is shortened', () => {
    expect(foundText('x'.repeat(1000)).length).toBeLessThan(70);
  });
});
