/** A file of many plans: there and back, and what is at fault in it. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { PLANS_FORMAT, type PlansRead, readPlans, writePlans } from '../../../src/app/plans/plansFile.ts';
import { parsePlan, readPlan, serialisePlan } from '../../../src/engine/plan/parse.ts';
import { testPlan } from '../plan.ts';

const titled = (title: string) => ({ ...testPlan(), title });
const read = (text: string) => readPlans(text, { parsePlan, readPlan });
const written = (...plans: { text: string; changedMs: number }[]) => writePlans(plans).join('');

function taken(result: PlansRead) {
  if ('fault' in result) throw new Error(JSON.stringify(result.fault));
  return result;
}

describe('a file of plans', () => {
  test('gives back what was put in, in its order, with its dates', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(fc.string({ maxLength: 120, unit: 'grapheme' }), fc.integer({ min: 0, max: 4e12 })),
        ),
        (all) => {
          const plans = all.map(([title, changedMs]) => ({ plan: titled(title.slice(0, 120)), changedMs }));
          const text = written(
            ...plans.map(({ plan, changedMs }) => ({ text: serialisePlan(plan), changedMs })),
          );
          const { arrived, leftOut } = taken(read(text));
          expect(leftOut).toEqual([]);
          expect(arrived).toEqual(plans);
        },
      ),
      { numRuns: 30 },
    );
  });

  test('is one JSON text of the documented form', () => {
    const text = written({
      text: serialisePlan(titled('Dusk')),
      changedMs: Date.UTC(2026, 7, 8, 18, 31, 10),
    });
    expect(JSON.parse(text)).toMatchObject({
      format: 'escapement-plans',
      version: 1,
      plans: [
        {
          changed: '2026-08-08T18:31:10.000Z',
          plan: { format: 'escapement-plan', version: 1, title: 'Dusk' },
        },
      ],
    });
    expect(JSON.parse(written())).toEqual({ format: 'escapement-plans', version: 1, plans: [] });
  });

  test('takes along what is no JSON, as it is', () => {
    const text = written({ text: '{"format": "escap', changedMs: 0 });
    expect(JSON.parse(text).plans[0].plan).toBe('{"format": "escap');
    const { arrived, leftOut } = taken(read(text));
    expect(arrived).toEqual([]);
    expect(leftOut[0]?.faults[0]?.found).toBe('text that breaks off');
  });

  test('with one plan at fault gives the others, and names the one with its faults', () => {
    const broken = serialisePlan(titled('Broken')).replace(/"guardS": [\d.]+/, '"guardS": -3');
    const { arrived, leftOut } = taken(
      read(
        written(
          { text: serialisePlan(titled('Before')), changedMs: 1 },
          { text: broken, changedMs: 2 },
          { text: serialisePlan(titled('After')), changedMs: 3 },
        ),
      ),
    );
    expect(arrived.map(({ plan }) => plan.title)).toEqual(['Before', 'After']);
    expect(leftOut).toEqual([
      {
        name: 'plans[1], ‘Broken’',
        faults: [expect.objectContaining({ path: 'cycle.guardS', found: '-3' })],
      },
    ]);
  });

  test('a plan without a date, or with one that is none, is taken without', () => {
    const plan = titled('Dusk');
    const file = {
      format: PLANS_FORMAT,
      version: 1,
      plans: [{ plan }, { plan, changed: 'yesterday' }, { plan, changed: 7 }],
    };
    const { arrived } = taken(read(JSON.stringify(file)));
    expect(arrived.map(({ changedMs }) => changedMs)).toEqual([null, null, null]);
  });

  test('a plan file is a file of one plan; with a byte order mark too', () => {
    const plan = titled('Alone');
    const arrived = [{ plan, changedMs: null }];
    expect(taken(read(serialisePlan(plan))).arrived).toEqual(arrived);
    expect(taken(read(`\uFEFF${serialisePlan(plan)}`)).arrived).toEqual(arrived);
    expect(taken(read(`\uFEFF${written({ text: serialisePlan(plan), changedMs: 0 })}`)).arrived).toHaveLength(
      1,
    );
  });

  test.each([
    ['another version', { format: PLANS_FORMAT, version: 2, plans: [] }, /version.*2.*version read here: 1/],
    ['no list', { format: PLANS_FORMAT, version: 1, plans: {} }, /plans.*a group of fields.*a list of plans/],
    [
      'too many',
      { format: PLANS_FORMAT, version: 1, plans: Array(2001).fill(0) },
      /2001 plans.*at most 2000/,
    ],
  ])('%s is a fault of the file', (_what, file, said) => {
    const result = read(JSON.stringify(file));
    expect('fault' in result ? Object.values(result.fault).join(' ') : '').toMatch(said);
  });

  test.each(['', 'null', '[]', '7', '"x"', '{', '{"format":"escapement-plans"', '{"plans":[]}'])(
    'text that is none is said: %s',
    (text) => {
      const { arrived, leftOut } = taken(read(text));
      expect(arrived).toEqual([]);
      expect(leftOut[0]?.faults).toHaveLength(1);
    },
  );

  test('entries of every kind are at fault, not a crash', () => {
    fc.assert(
      fc.property(fc.array(fc.jsonValue(), { maxLength: 5 }), (plans) => {
        const result = taken(read(JSON.stringify({ format: PLANS_FORMAT, version: 1, plans })));
        expect(result.arrived.length + result.leftOut.length).toBe(plans.length);
        for (const { name, faults } of result.leftOut) {
          expect(name).toMatch(/^plans\[\d\]/);
          expect(faults.length).toBeGreaterThan(0);
        }
      }),
    );
  });
});
