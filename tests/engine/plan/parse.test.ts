import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { faultSentence } from '../../../src/engine/plan/faults.ts';
import { MIGRATIONS, migrate, READABLE_VERSIONS } from '../../../src/engine/plan/migrate.ts';
import {
  defaultPlan,
  MAX_PLAN_CHARACTERS,
  newAxis,
  newCard,
  newLoad,
  newSource,
  parsePlan,
  readPlan,
  serialisePlan,
} from '../../../src/engine/plan/parse.ts';
import { PLAN_VERSION } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';

const file = (path: string) => readFileSync(new URL(path, import.meta.url), 'utf8');
const listed = (folder: string, ending: string) =>
  readdirSync(new URL(folder, import.meta.url)).filter((name) => name.endsWith(ending));

const faultsOf = (text: string) => {
  const parsed = parsePlan(text);
  return parsed.ok ? [] : parsed.faults;
};

describe('stored files of every version released', () => {
  test('there is one of each version that is read, and each migration is used by one', () => {
    const stored = listed('versions/', '.plan.json').map(
      (name) => JSON.parse(file(`versions/${name}`)).version,
    );
    expect(new Set(stored)).toEqual(new Set(READABLE_VERSIONS));
    expect(Object.keys(MIGRATIONS).map(Number)).toEqual(
      READABLE_VERSIONS.filter((version) => version < PLAN_VERSION),
    );
  });

  test.each(listed('versions/', '.plan.json'))('%s is read, and can be worked out', (name) => {
    const parsed = parsePlan(file(`versions/${name}`));
    expect(parsed).toMatchObject({ ok: true });
    if (parsed.ok) expect(schedule(parsed.plan).totals.frames).toBeGreaterThan(0);
  });

  test('version 1, with every field given, is read field for field', () => {
    const text = file('versions/v1.plan.json');
    expect(parsePlan(text)).toEqual({ ok: true, plan: JSON.parse(text) });
  });

  test('a version without a migration to the present one throws', () => {
    expect(() => migrate({ version: 0 }, 0)).toThrow(RangeError);
    expect(migrate({ version: PLAN_VERSION, x: 1 }, PLAN_VERSION)).toEqual({ version: PLAN_VERSION, x: 1 });
  });
});

describe('broken files and their faults', () => {
  test.each(listed('faults/', '.plan.json'))('%s', (name) => {
    const wanted = JSON.parse(file(`faults/${name.replace('.plan.json', '.faults.json')}`));
    expect(faultsOf(file(`faults/${name}`))).toEqual(wanted);
  });

  test.each([
    ['not-a-plan', '{"format":"shopping list","version":1}', 'format'],
    ['no version', '{"format":"escapement-plan"}', 'version'],
    ['a version to come', '{"format":"escapement-plan","version":99}', 'version'],
    ['a list', '[]', ''],
    ['nothing', '', ''],
    ['a word', '"plan"', ''],
    ['null', 'null', ''],
  ])('%s: one fault', (_name, text, path) => {
    const faults = faultsOf(text);
    expect(faults).toHaveLength(1);
    expect(faults[0]?.path).toBe(path);
    expect(faultSentence(faults[0] as never)).toMatch(/^(file|format|version): found .+; allowed: .+/);
  });

  test('an unknown version says which versions are read', () => {
    expect(faultsOf('{"format":"escapement-plan","version":99}')[0]).toEqual({
      path: 'version',
      found: '99',
      allowed: `one of the versions read here: ${READABLE_VERSIONS.join(', ')}`,
    });
  });

  test.each([
    ['{\n  "format": "escapement-plan",\n}', /line 3/],
    [
      '{\n  "format": "escapement-plan",\n  "version": 1,\n  "title": oops,\n  "notes": "long enough"\n}',
      /line 4/,
    ],
    // Of a short text the reader tells no place: then no line is better than a wrong one.
    ['{\n  "format": oops\n}', /not JSON(, in line 2)?$/],
    ['{"format": "escapement-plan"', /breaks off|line 1/],
  ])('broken JSON %j says where it breaks', (text, found) => {
    expect(faultsOf(text)).toEqual([
      { path: '', found: expect.stringMatching(found), allowed: expect.any(String) },
    ]);
  });

  test('a text that is too long is not even read', () => {
    expect(faultsOf('x'.repeat(MAX_PLAN_CHARACTERS + 1))[0]?.found).toContain(
      String(MAX_PLAN_CHARACTERS + 1),
    );
  });

  test('all faults are told at once, in the order of the fields', () => {
    const plan = {
      ...defaultPlan(),
      clip: { frameRate: 'fast' },
      camera: { writeS: -1 },
      cycle: { guardS: 'none' },
    };
    expect(faultsOf(JSON.stringify(plan)).map(({ path }) => path)).toEqual([
      'clip.frameRate',
      'camera.writeS',
      'cycle.guardS',
    ]);
  });

  test.each([
    ['clip', 'frameRate', 25, /25 or 24000\/1001/],
    ['start', 'date', 20_260_625, /date/],
    ['start', 'time', 12, /time/],
  ])('%s.%s: a number instead of its text is told the form', (group, field, value, allowed) => {
    const plan = { ...defaultPlan(), [group]: { [field]: value } };
    expect(faultsOf(JSON.stringify(plan))[0]).toMatchObject({
      path: `${group}.${field}`,
      found: String(value),
      allowed: expect.stringMatching(allowed),
    });
  });
});

describe('what is read', () => {
  test('a byte order mark before the text does no harm', () => {
    expect(parsePlan(`\uFEFF${serialisePlan(defaultPlan())}`).ok).toBe(true);
  });

  test('missing fields get their defaults', () => {
    expect(parsePlan('{"format":"escapement-plan","version":1}')).toEqual({ ok: true, plan: defaultPlan() });
    expect(readPlan({ format: 'escapement-plan', version: 1, clip: { handlesFrames: 3 } })).toMatchObject({
      plan: { clip: { handlesFrames: 3, frameRate: '25' } },
    });
  });

  test('a new plan can be shot as it stands', () => {
    const run = schedule(defaultPlan());
    expect(run.counts.stop).toBe(0);
    expect(run.counts.warning).toBe(0);
  });

  test('two new plans share nothing', () => {
    const first = defaultPlan();
    first.power.sources[0]?.capacityCurve.push({ temperatureC: 90, share: 1 });
    first.storage.cards.length = 0;
    const axis = newAxis();
    axis.name = 'changed';
    const source = newSource();
    source.capacityCurve.length = 0;
    expect(defaultPlan().power.sources[0]?.capacityCurve).toHaveLength(3);
    expect(defaultPlan().storage.cards).toHaveLength(1);
    expect(newAxis().name).toBe('Axis');
    expect(newSource().capacityCurve).toHaveLength(3);
  });

  test('new list members are valid as they are', () => {
    const plan = defaultPlan();
    plan.rig.axes.push(newAxis());
    plan.power.sources.push(newSource());
    plan.power.loads.push(newLoad());
    plan.storage.cards.push(newCard());
    expect(parsePlan(serialisePlan(plan))).toEqual({ ok: true, plan });
  });

  test('the text ends in a line end and names format and version first', () => {
    const text = serialisePlan(defaultPlan());
    expect(text.endsWith('}\n')).toBe(true);
    expect(Object.keys(JSON.parse(text)).slice(0, 2)).toEqual(['format', 'version']);
  });
});
