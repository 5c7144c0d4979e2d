/**
 * The working behind every figure: over the demos and random plans, worked out again by mathjs, an independent
 * evaluator, from the terms and from the printed text.
 */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { parsePlan } from '../../../src/engine/plan/parse.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { figuresOf, workingOf, workingText } from '../../../src/engine/working/working.ts';
import { planOf } from '../../outputs/plans.ts';
import { close } from '../../property/close.ts';
import { litPlans, plans, rigPlans } from '../../property/plans.ts';
import { PATIENCE_MS, settings } from '../../property/settings.ts';
import { byMathjs, judgeAll, mustHave } from './judge.ts';
import { scheduled } from './scheduled.ts';

vi.setConfig({ testTimeout: PATIENCE_MS });

const EXAMPLES = new URL('../../../public/examples/', import.meta.url);

function demo(name: string): Plan {
  const parsed = parsePlan(readFileSync(new URL(name, EXAMPLES), 'utf8'));
  if (!parsed.ok) throw new Error(`${name} is at fault`);
  return parsed.plan;
}

const DEMOS = readdirSync(EXAMPLES);

/** The first frame, one amid the run, the last. */
const someFrames = (frames: number): number[] => [1, Math.ceil(frames / 2), frames];

function judgePlan(plan: Plan, delayS = 0): void {
  const made = schedule(plan, { delayS });
  judgeAll(plan, made, someFrames(made.totals.frames));
}

describe.each(DEMOS)('%s', (name) => {
  const plan = demo(name);
  const made = schedule(plan);

  test('every figure has a working whose formula gives it', () => {
    const figures = judgeAll(plan, made, someFrames(made.totals.frames));
    expect(new Set(figures).size).toBe(figures.length);
  });

  test('every total has one, and every figure of sources, cards, margins and rig', () => {
    for (const total of Object.keys(made.totals)) expect(figuresOf(plan, made)).toContain(`totals.${total}`);
    for (const figure of scheduled(made).keys()) expect(figuresOf(plan, made)).toContain(figure);
  });

  test('the numbers of the printed text give the figure to nine digits', () => {
    for (const figure of figuresOf(plan, made)) {
      const working = mustHave(plan, made, figure);
      const text = workingText(working);
      const [, expression] = /in plain arithmetic: (.+)/.exec(text) ?? [];
      const lines = [...text.matchAll(/^ {4}(\w+) = ([^\s:]+)/gm)];
      const terms = lines.map(([, symbol = '', number = '']) => ({ symbol, value: Number(number) }));
      const size = Math.max(0, ...working.terms.map(({ value }) => Math.abs(value)));
      if (expression === undefined) expect(working.terms).toEqual([]);
      else close(byMathjs(expression, terms), working.value, text, size * 1e-3);
    }
  });
});

describe('over random plans', () => {
  const property = (drawn: fc.Arbitrary<Plan>) =>
    fc.assert(
      fc.property(drawn, (plan) => judgePlan(plan)),
      settings(0.15),
    );

  test('of every kind', () => property(plans.map(({ plan }) => plan)));
  test('on rigs of every kind', () => property(rigPlans.map(({ plan }) => plan)));
  test('under skies of every kind', () => property(litPlans));

  test('that begin later than planned', () => {
    fc.assert(fc.property(litPlans, fc.integer({ min: -40_000, max: 100_000 }), judgePlan), settings(0.15));
  });
});

test('names of sources and axes stand as they are, dots and all', () => {
  const name = 'A. 4.left';
  const plan = planOf({
    rig: { axes: [{ name, kind: 'slide', unit: 'mm' }] },
    power: { sources: [{ name }], loads: [] },
  });
  const made = schedule(plan);
  expect(workingOf(plan, made, `sources.${name}.ratedWh`)?.unit).toBe('Wh');
  expect(workingOf(plan, made, `frame.2.axes.${name}.position`)?.unit).toBe('mm');
});

test('what is no figure has none', () => {
  const plan = demo('harbour-at-dusk.json');
  const made = schedule(plan);
  const past = `frame.${made.totals.frames + 1}.cameraS`;
  for (const name of ['', 'totals', 'totals.', 'toString', '__proto__', 'frame.0.cameraS', 'frame.1.', past])
    expect(workingOf(plan, made, name), name).toBe(null);
});

// A trigger that counts from closing to opening: the first settings of the ramp are not those of the plan.
test('the speed-up goes by the interval that the run has, also where it grows with the exposure', () => {
  const plan = planOf({
    pacing: { workedOut: 'event', intervalS: 20, clipLengthS: 4 },
    trigger: { counts: 'endToStart' },
    light: { kind: 'studio', studioEv: 2 },
    exposure: {
      shutterS: 0.5,
      ramp: { used: true, steps: [{ setting: 'shutter', to: 8, step: 'third', by: 'camera' }] },
    },
  });
  const made = schedule(plan);
  expect(made.columns.exposureS[0]).toBeGreaterThan(2);
  expect(made.totals.speedUp).toBeCloseTo(made.totals.intervalS * 25, 9);
  judgeAll(plan, made, [1, 2, made.totals.frames]);
});
