/** What ways out cost: by hand, against the costs and the plans with them, and their formulas by mathjs. */
import { expect, test, vi } from 'vitest';
import { keyOf } from '../../../src/engine/findings/types.ts';
import { remediesOf } from '../../../src/engine/fixes/remedies.ts';
import { COST_FIGURES, type Fix } from '../../../src/engine/fixes/types.ts';
import { withChanges } from '../../../src/engine/plan/changes.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import type { Schedule } from '../../../src/engine/schedule-types.ts';
import { ofFix } from '../../../src/engine/working/names.ts';
import { type FixesKnown, type Working, workingOf } from '../../../src/engine/working/working.ts';
import { planOf } from '../../outputs/plans.ts';
import { close } from '../../property/close.ts';
import { PATIENCE_MS } from '../../property/settings.ts';
import { BROKEN } from '../fixes/broken-plans.ts';
import { byMathjs } from './judge.ts';

vi.setConfig({ testTimeout: PATIENCE_MS });

const known =
  (all: ReadonlyMap<string, readonly Fix[]>): FixesKnown =>
  (finding, n) =>
    all.get(finding)?.[n - 1] ?? null;

/** A change of the interval from 10 s to 15 s, as if it were a way out. */
const SLOWER: Fix = {
  kind: 'interval',
  label: 'Interval to 15 s',
  changes: [{ path: 'pacing.intervalS', from: 10, to: 15 }],
  cost: {
    text: '',
    parts: [],
    frames: 0,
    clipS: 0,
    startS: 0,
    endS: 0,
    lightStops: 0,
    energyWh: 0,
    storageBytes: 0,
    rank: 0,
  },
  alsoFixes: [],
};

// 5400 s / 10 s = 540 intervals, 541 frames: 21.64 s at 25 fps. 5400 s / 15 s: 361 frames, 14.44 s.
test('frames and clip of an interval of 15 s instead of 10 s, by hand', () => {
  const plan = planOf({
    pacing: { workedOut: 'clip', eventS: 5400, intervalS: 10 },
    trigger: { stepS: 1 },
    clip: { frameRate: '25' },
  });
  const made = schedule(plan);
  const fixes = known(new Map([['overrun', [SLOWER]]]));
  const working = (figure: string) => workingOf(plan, made, figure, undefined, fixes);
  expect(working('fix.overrun.1.cost.frames')).toMatchObject({
    value: -180,
    expression: 'withIt - now',
    terms: [
      { value: 361, figure: 'fix.overrun.1.totals.frames' },
      { value: 541, figure: 'totals.frames' },
    ],
  });
  expect(working('fix.overrun.1.cost.clipS')?.value).toBeCloseTo(-7.2, 12);
  const frames = working('fix.overrun.1.totals.frames');
  expect(frames).toMatchObject({
    value: 361,
    remarks: expect.arrayContaining(['With this way out: Interval to 15 s.']),
  });
  // One goes on within the plan with it.
  expect(frames?.terms.map(({ figure }) => figure)).toEqual(['fix.overrun.1.pacing.intervalsInEvent']);
  expect(working('fix.overrun.1.pacing.intervalsInEvent')?.value).toBe(360);
  for (const nothing of ['fix.overrun.2.cost.frames', 'fix.other.1.cost.frames', 'fix.overrun.1.cost.rank'])
    expect(working(nothing), nothing).toBeNull();
  expect(workingOf(plan, made, 'fix.overrun.1.cost.frames')).toBeNull();
});

function judge(plan: Plan, made: Schedule, finding: string, n: number, fix: Fix, fixes: FixesKnown): number {
  const after = schedule(withChanges(plan, fix.changes));
  const wanted = { ...fix.cost, eventS: after.totals.eventDurationS - made.totals.eventDurationS };
  const ask = (figure: string): Working => {
    const found = workingOf(plan, made, figure, undefined, fixes);
    if (!found) throw new Error(`${figure} has no working`);
    return found;
  };
  for (const of of COST_FIGURES) {
    const { value, expression, terms } = ask(ofFix(finding, n, `cost.${of}`));
    const size = Math.max(...terms.map((term) => Math.abs(term.value)));
    close(value, wanted[of], `${fix.label}: ${of}`, size);
    close(byMathjs(expression, terms), value, `${fix.label}: ${expression}`, size);
    for (const { figure, value: number } of terms)
      if (figure) close(ask(figure).value, number, `${fix.label}: ${figure}`);
  }
  // What is said to be lost is.
  const said = fix.cost.parts.flatMap(({ of }) => (of === null ? [] : [of]));
  for (const of of said) expect(Math.abs(wanted[of]), `${fix.label}: ${of}`).toBeGreaterThan(0);
  return said.length;
}

test('what every way out of many broken plans costs has a working', () => {
  let said = 0;
  for (const { plan, nowMs } of BROKEN) {
    const made = schedule(plan, nowMs === undefined ? {} : { nowMs });
    const remedies = [...remediesOf(plan, made, nowMs === undefined ? {} : { nowMs })];
    const fixes = known(new Map(remedies.map((remedy) => [remedy.key, remedy.fixes])));
    for (const { key, fixes: offered } of remedies) {
      expect(made.findings.map(keyOf)).toContain(key);
      for (const [i, fix] of offered.entries()) said += judge(plan, made, key, i + 1, fix, fixes);
    }
  }
  expect(said).toBeGreaterThan(50);
});
