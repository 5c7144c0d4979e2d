/**
 * The figures in the sentences of findings: each opens a working that comes to what the sentence says, and what is left
 * of its numbers was typed, or is a mark of a dial.
 */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import type { Finding } from '../../../src/engine/findings/types.ts';
import { parsePlan } from '../../../src/engine/plan/parse.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import type { Schedule } from '../../../src/engine/schedule-types.ts';
import { findingFiguresOf, statedIn, statedInVerdict } from '../../../src/engine/working/finding-figures.ts';
import { numberOf } from '../../../src/engine/working/said.ts';
import { workingOf } from '../../../src/engine/working/working.ts';
import { litPlans, plans, rigPlans } from '../../property/plans.ts';
import { PATIENCE_MS, settings } from '../../property/settings.ts';
import { BROKEN } from '../fixes/broken-plans.ts';
import { judgeWorking } from './judge.ts';
import { printed, SAYS_NO_FIGURE, withoutTyped } from './sentences.ts';

vi.setConfig({ testTimeout: PATIENCE_MS });

const EXAMPLES = new URL('../../../public/examples/', import.meta.url);

const demos = readdirSync(EXAMPLES).map((name) => {
  const parsed = parsePlan(readFileSync(new URL(name, EXAMPLES), 'utf8'));
  if (!parsed.ok) throw new Error(`${name} is at fault`);
  return parsed.plan;
});

/** A sentence without the figures that it states, each replaced by a sign. */
function withoutFigures(plan: Plan, made: Schedule, finding: Finding): string {
  let rest = '';
  let from = 0;
  for (const stated of statedIn(plan, made, finding)) {
    rest += `${finding.message.slice(from, stated.from)}#`;
    from = stated.from + stated.text.length;
  }
  return rest + finding.message.slice(from);
}

/** Throws unless all that the sentence of a finding states can be asked for. */
function judgeSentence(plan: Plan, made: Schedule, finding: Finding): void {
  const stated = statedIn(plan, made, finding);
  for (const { text, of } of stated) {
    const working = judgeWorking(plan, made, of);
    expect(printed(working), `${finding.message}: ${of}`).toContain(text);
  }
  if (stated.length === 0) expect(SAYS_NO_FIGURE, finding.message).toContain(finding.id);
  const rest = withoutTyped(plan, finding, withoutFigures(plan, made, finding));
  expect(rest, `${finding.id}: ${finding.message}`).not.toMatch(/\d/);
}

function judgePlan(plan: Plan, made: Schedule): void {
  for (const finding of made.findings) judgeSentence(plan, made, finding);
  for (const { text, of } of statedInVerdict(plan, made)) {
    expect(made.verdict).toContain(text);
    expect(printed(judgeWorking(plan, made, of)), of).toContain(text);
  }
}

test.each(BROKEN)('$id: $what', ({ plan, nowMs, id }) => {
  const made = schedule(plan, nowMs === undefined ? {} : { nowMs });
  expect(made.findings.map((finding) => finding.id)).toContain(id);
  judgePlan(plan, made);
});

test('of the demos', () => {
  for (const plan of demos) judgePlan(plan, schedule(plan));
});

test.each([
  ['of every kind', plans.map(({ plan }) => plan)],
  ['on rigs of every kind', rigPlans.map(({ plan }) => plan)],
  ['under skies of every kind', litPlans],
])('of random plans %s', (_, drawn) => {
  fc.assert(
    fc.property(drawn, (plan) => judgePlan(plan, schedule(plan))),
    settings(0.15),
  );
});

test('every kind has a plan here', () => {
  const kinds = new Set(BROKEN.map(({ id }) => id));
  for (const id of SAYS_NO_FIGURE) expect(kinds).toContain(id);
});

test('a verdict that names the tightest thing states how tight it is', () => {
  for (const plan of demos) {
    const made = schedule(plan);
    if (!made.verdict.includes('Tightest') || made.verdict.includes('into its reserve')) continue;
    expect(statedInVerdict(plan, made), made.verdict).toHaveLength(1);
  }
});

const brokenBy = (id: string, wanted: (value: Finding['values']) => boolean) => {
  for (const { plan, nowMs } of BROKEN) {
    const made = schedule(plan, nowMs === undefined ? {} : { nowMs });
    const finding = made.findings.find((each) => each.id === id && wanted(each.values));
    if (finding) return { plan, made, finding };
  }
  throw new Error(`No plan shows ${id}.`);
};

const valuesOf = (plan: Plan, made: Schedule, figure: string): Record<string, number> => {
  const working = workingOf(plan, made, figure);
  if (!working) throw new Error(`${figure} has no working`);
  return Object.fromEntries(working.terms.map(({ symbol, value }) => [symbol, value]));
};

// The marks of a dial in thirds go 4, 5, 6, 8, 10, 13 (from memory): the one that does not fit is the next.
test('a step that is cut short ends one mark before the one that does not fit', () => {
  const { plan, made } = brokenBy('shutter-beyond-cycle', ({ reachedS }) => reachedS === 8);
  expect(valuesOf(plan, made, 'findings.shutter-beyond-cycle:1.reachedS')).toMatchObject({
    markS: 8,
    nextS: 10,
  });
});

// All intervals of the run are counted, each once, and with the setting that was found they fill its time.
test('the setting that keeps the end: its intervals fill the time of the run', () => {
  const { plan, made, finding } = brokenBy('interval-grows', ({ keepDialS }) => keepDialS !== undefined);
  const open = valuesOf(plan, made, 'findings.interval-grows.meanOpenS');
  const counts = Object.entries(open).filter(([symbol]) => symbol.endsWith('Count'));
  const all = counts.reduce((sum, [, count]) => sum + count, 0);
  expect(all).toBeCloseTo(made.totals.frames - 1, 6);
  const steps = workingOf(plan, made, 'findings.interval-grows.keepSteps')?.value ?? 0;
  const filledS = counts.reduce(
    (sum, [symbol, count]) =>
      sum + count * (steps * plan.trigger.stepS + (open[symbol.replace('Count', 'S')] ?? 0)),
    0,
  );
  expect(filledS).toBeCloseTo((made.totals.frames - 1) * numberOf(finding, 'firstIntervalS'), 6);
});

test('keyframes that are misplaced besides the first', () => {
  const { plan } = brokenBy('keyframe-order', () => true);
  const [track] = plan.move.tracks;
  const [keyframe] = track?.keyframes ?? [];
  if (!track || !keyframe) throw new Error('It has no keyframe.');
  const keyframes = [1, 300, 300, 20, 400].map((frame) => ({ ...keyframe, at: 'frame' as const, frame }));
  const changed: Plan = { ...plan, move: { ...plan.move, tracks: [{ ...track, keyframes }] } };
  const made = schedule(changed);
  judgePlan(changed, made);
  const finding = made.findings.find(({ id }) => id === 'keyframe-order');
  const more = workingOf(changed, made, `findings.keyframe-order:${track.axis}.more`);
  expect(finding?.message).toContain(`${more?.value} more of its keyframes`);
  expect(finding && numberOf(finding, 'misplaced')).toBe((more?.value ?? 0) + 1);
});

test('names with dots and colons lead to their finding', () => {
  const broken = BROKEN.find(({ id }) => id === 'travel');
  if (!broken) throw new Error('No plan goes beyond its travel.');
  const name = 'A. 4:left';
  const plan: Plan = {
    ...broken.plan,
    rig: { ...broken.plan.rig, axes: broken.plan.rig.axes.map((axis) => ({ ...axis, name })) },
    move: { ...broken.plan.move, tracks: broken.plan.move.tracks.map((track) => ({ ...track, axis: name })) },
  };
  const made = schedule(plan);
  const finding = made.findings.find(({ id }) => id === 'travel');
  if (!finding) throw new Error('It does not go beyond its travel.');
  for (const figure of findingFiguresOf(plan, made, finding))
    expect(workingOf(plan, made, figure), figure).not.toBe(null);
  expect(workingOf(plan, made, `findings.travel:${name}.beyond`)?.unit).toBe('mm');
});
