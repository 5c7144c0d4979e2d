import { readFileSync } from 'node:fs';
import { expect, test, vi } from 'vitest';
import { type Fault, faultSentence } from '../../src/engine/plan/faults.ts';
import { parsePlan } from '../../src/engine/plan/parse.ts';
import { schedule } from '../../src/engine/schedule.ts';
import { type Broken, breakPlan, Dice, everyCrossed } from './broken.ts';
import { must } from './close.ts';
import { PATIENCE_MS, SEED } from './settings.ts';

vi.setConfig({ testTimeout: PATIENCE_MS });

const FILES = 10_000;
const valid = readFileSync(new URL('../engine/plan/versions/v1.plan.json', import.meta.url), 'utf8');

/** The place itself, or something in it. */
const names = (fault: Fault, place: string): boolean =>
  fault.path === place || fault.path.startsWith(`${place}.`) || fault.path.startsWith(`${place}[`);

/** Throws unless the faults are fit to be shown and one of them names the place. */
function judge({ how, where }: Broken, faults: readonly Fault[]): void {
  must(faults.length > 0, `${how}: refused without a fault`);
  for (const fault of faults) {
    must(
      typeof fault.path === 'string' && fault.found !== '' && fault.allowed.trim() !== '',
      `${how}: ${JSON.stringify(fault)}`,
    );
    must(
      fault.found.length < 200 && !/\[object|undefined|NaN to|to NaN/.test(faultSentence(fault)),
      `${how}: ${faultSentence(fault)}`,
    );
  }
  const named = where.length === 0 || faults.some((fault) => where.some((place) => names(fault, place)));
  must(
    named,
    `${how} at ${where.join(' or ')}: named ${faults
      .map(({ path }) => path)
      .slice(0, 5)
      .join(', ')}`,
  );
}

test('the file that is broken is a valid one', () => {
  expect(parsePlan(valid)).toMatchObject({ ok: true });
});

test('each fault between fields is found and named', () => {
  for (const broken of everyCrossed(valid)) {
    const parsed = parsePlan(broken.text);
    must(!parsed.ok, `${broken.how}: read as a plan`);
    if (!parsed.ok) judge(broken, parsed.faults);
  }
});

test(`${FILES} broken files: faults that name their field, and never a crash`, () => {
  const dice = new Dice(SEED);
  let refused = 0;
  let accepted = 0;
  while (refused < FILES) {
    const broken = breakPlan(valid, dice);
    const parsed = parsePlan(broken.text);
    if (parsed.ok) {
      must(!broken.sure, `${broken.how} at ${broken.where.join(' or ')}: read as a plan`);
      accepted += 1;
      // What is accepted can also be worked out.
      if (accepted % 50 === 0) schedule(parsed.plan);
    } else {
      judge(broken, parsed.faults);
      refused += 1;
    }
  }
  expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
  expect(accepted).toBeGreaterThan(0);
});
