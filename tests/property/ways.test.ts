import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import type { Way } from '../../src/engine/fixes/types.ts';
import { WAYS } from '../../src/engine/fixes/ways.ts';
import { paceOf } from '../../src/engine/pacing/pacing.ts';
import { parsePlan, serialisePlan } from '../../src/engine/plan/parse.ts';
import type { Plan } from '../../src/engine/plan/schema.ts';
import { schedule } from '../../src/engine/schedule.ts';
import { must, same } from './close.ts';
import { litPlans, plans, rigPlans } from './plans.ts';
import { PATIENCE_MS, settings } from './settings.ts';

vi.setConfig({ testTimeout: PATIENCE_MS });

const MOST_FRAMES = 400;

const seen = { findings: 0, ways: 0, values: 0, none: 0 };

/** Some values of a way: its ends, those about its guess, one between. */
const someOf = ({ steps, first }: Way): number[] =>
  [...new Set([1, first - 1, first, first + 1, Math.ceil(steps / 3), steps])].filter(
    (step) => step >= 1 && step <= steps,
  );

function checkValue(plan: Plan, way: Way, step: number): void {
  const changed = way.at(step);
  if (changed === null) {
    seen.none += 1;
    return;
  }
  seen.values += 1;
  const where = `${way.kind} at ${step}`;
  const read = parsePlan(serialisePlan(changed));
  if (!read.ok) throw new Error(`${where}: ${JSON.stringify(read.faults)}`);
  must(isDeepStrictEqual(read.plan, changed), `${where}: another plan is read back`);
  must(!isDeepStrictEqual(changed, plan), `${where}: changes nothing`);
  const said = `${way.label(changed)} ${way.needs(changed) ?? ''}`.replace(/'[^']*'/g, '');
  must(!/NaN|undefined|Infinity|\[object/.test(said), `${where}: '${said}'`);
}

test('every value of every way makes a plan file, or none', () => {
  const all = fc.oneof(
    plans.map(({ plan }) => plan),
    rigPlans.map(({ plan }) => plan),
    litPlans,
  );
  const check = (plan: Plan) => {
    if (paceOf(plan).frames > MOST_FRAMES) return;
    const made = schedule(plan);
    for (const finding of made.findings) {
      const ways = WAYS[finding.id](finding, plan, made);
      seen.findings += 1;
      same(new Set(ways.map(({ kind }) => kind)).size, ways.length, `${finding.id}: kinds`);
      for (const way of ways) {
        seen.ways += 1;
        must(way.first >= 1 && way.first <= way.steps, `${way.kind}: ${way.first} of ${way.steps}`);
        must(way.at(0) === null && way.at(way.steps + 1) === null, `${way.kind}: ends`);
        for (const step of someOf(way)) checkValue(plan, way, step);
      }
    }
  };
  fc.assert(fc.property(all, check), settings(0.5));
  for (const [what, often] of Object.entries(seen)) expect(often, what).toBeGreaterThan(0);
});
