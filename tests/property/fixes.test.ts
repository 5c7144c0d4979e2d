import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import { remediesOf } from '../../src/engine/fixes/remedies.ts';
import type { Fix } from '../../src/engine/fixes/types.ts';
import { WAYS } from '../../src/engine/fixes/ways.ts';
import { paceOf } from '../../src/engine/pacing/pacing.ts';
import { withChanges } from '../../src/engine/plan/changes.ts';
import { parsePlan, serialisePlan } from '../../src/engine/plan/parse.ts';
import type { Plan } from '../../src/engine/plan/schema.ts';
import { schedule } from '../../src/engine/schedule.ts';
import type { Schedule } from '../../src/engine/schedule-types.ts';
import { FEW, type Ways } from '../engine/fixes/own-ways.ts';
import { close, must, same } from './close.ts';
import { litPlans, plans, rigPlans } from './plans.ts';
import { PATIENCE_MS, settings } from './settings.ts';

vi.setConfig({ testTimeout: PATIENCE_MS });

/** Short runs: what is tried is the change, not the number of frames. */
const MOST_FRAMES = 150;

/** What the finding of a kind is about, told from its numbers. */
function name({ id, values: { axis, source, side, step, setting } }: Schedule['findings'][number]): string {
  return `${id} ${axis ?? source ?? side ?? step ?? setting ?? ''}`;
}

const BADNESS = { note: 1, warning: 2, stop: 3 } as const;

/** Every finding's name with how bad it is; 0 is for those that are not there. */
function badness({ findings }: Schedule): Map<string, number> {
  const all = new Map<string, number>();
  for (const finding of findings) {
    const bad = Math.max(all.get(name(finding)) ?? 0, BADNESS[finding.severity]);
    all.set(name(finding), bad);
  }
  return all;
}

const text = (plan: Plan) => JSON.stringify(plan);

/** The change holds together, is a plan file, and can be made twice and be undone. */
function applied(plan: Plan, { changes, label }: Fix): Plan {
  const fixed = withChanges(plan, changes);
  const read = parsePlan(serialisePlan(fixed));
  if (!read.ok) throw new Error(`${label}: no plan file, ${JSON.stringify(read.faults)}`);
  must(isDeepStrictEqual(read.plan, fixed), `${label}: another plan is read back`);
  same(text(withChanges(fixed, changes)), text(fixed), `${label}: made twice`);
  const back = changes.map(({ path, from, to }) => ({ path, from: to, to: from }));
  same(text(withChanges(fixed, back)), text(plan), `${label}: undone`);
  must(changes.length > 0, `${label}: changes nothing`);
  return fixed;
}

/** It removes its finding, and nothing as bad or worse comes for it. */
function harmless(label: string, target: Schedule['findings'][number], before: Schedule, after: Schedule) {
  const [was, is] = [badness(before), badness(after)];
  must(!is.has(name(target)), `${label}: ${name(target)} is still there`);
  for (const [other, bad] of is) {
    const limit = was.get(other) ?? BADNESS[target.severity] - 1;
    must(bad <= limit, `${label}, for ${name(target)}: ${other} went from ${was.get(other) ?? 0} to ${bad}`);
  }
}

/** The cost is the difference of the figures. */
function costs({ label, cost }: Fix, before: Schedule, after: Schedule) {
  const [was, is] = [before.totals, after.totals];
  same(cost.frames, is.frames - was.frames, `${label}: frames`);
  close(cost.clipS, is.clipLengthS - was.clipLengthS, `${label}: clip`, was.clipLengthS);
  close(cost.energyWh, is.energyWh - was.energyWh, `${label}: energy`, was.energyWh);
  same(cost.storageBytes, is.storageBytes - was.storageBytes, `${label}: storage`);
  same(cost.startS, (after.startMs - before.startMs) / 1000, `${label}: start`);
  const end = ({ startMs, totals }: Schedule) => startMs / 1000 + totals.eventDurationS;
  close(cost.endS, end(after) - end(before), `${label}: end`, end(before));
  must(cost.rank >= 0, `${label}: rank ${cost.rank}`);
  same(cost.text === 'nothing', cost.rank === 0, `${label}: '${cost.text}' at rank ${cost.rank}`);
}

const readable = (said: string) => {
  const shown = said.replace(/'[^']*'/g, '');
  must(said.trim() !== '' && !/NaN|undefined|Infinity|null|\[object/.test(shown), `'${said}'`);
};

/** How often the checks below had something to look at. */
const seen = { plans: 0, findings: 0, fixes: 0, pairs: 0, none: 0 };

function check(plan: Plan, ways: Ways): void {
  if (paceOf(plan).frames > MOST_FRAMES) return;
  const before = schedule(plan);
  if (before.findings.length === 0) return;
  seen.plans += 1;
  const remedies = [...remediesOf(plan, before, { ways })];
  same(remedies.length, before.findings.length, 'remedies');
  for (const [i, { fixes, whyNone }] of remedies.entries()) {
    const target = before.findings[i] as Schedule['findings'][number];
    seen.findings += 1;
    same(whyNone === null, fixes.length > 0, `${target.id}: a reason`);
    if (whyNone !== null) {
      seen.none += 1;
      readable(whyNone);
    }
    must(fixes.length <= 3, `${target.id}: ${fixes.length} fixes`);
    same(new Set(fixes.map(({ changes }) => text(changes as never))).size, fixes.length, 'fixes alike');
    for (const [n, fix] of fixes.entries()) {
      must(n === 0 || fix.cost.rank >= (fixes[n - 1]?.cost.rank ?? 0), `${fix.label}: order`);
      const after = schedule(applied(plan, fix));
      harmless(fix.label, target, before, after);
      costs(fix, before, after);
      readable(fix.label);
      readable(fix.cost.text);
      seen.fixes += 1;
      if (fix.kind.includes('+')) seen.pairs += 1;
    }
  }
}

const everywhere = (ways: Ways, share: number) => {
  const all = fc.oneof(
    plans.map(({ plan }) => plan),
    rigPlans.map(({ plan }) => plan),
    litPlans,
  );
  fc.assert(
    fc.property(all, (plan) => check(plan, ways)),
    settings(share),
  );
};

test('every fix that is offered removes its finding, brings none as bad, and can be undone', () => {
  everywhere(WAYS, 1);
  expect(seen.plans).toBeGreaterThan(1);
});

test('so do those of ways that nobody has fitted to the plan', () => {
  everywhere(FEW, 0.5);
  for (const [what, often] of Object.entries(seen)) expect(often, what).toBeGreaterThan(0);
});
