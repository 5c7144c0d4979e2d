/** The page keeps a schedule where only the exposure sheet is edited: so it may not depend on the sheet. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parsePlan } from '../../src/engine/plan/parse.ts';
import type { Plan } from '../../src/engine/plan/schema.ts';
import { schedule } from '../../src/engine/schedule.ts';

function demo(name: string): Plan {
  const read = parsePlan(
    readFileSync(new URL(`../../public/examples/${name}.json`, import.meta.url), 'utf8'),
  );
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.plan;
}

const { sheet: full } = demo('clay-snail');
const { sheet: empty } = demo('loaf-proving');

test.each(['harbour-at-dusk', 'loaf-proving', 'clay-snail'])(
  'the schedule of %s is the same with another sheet',
  (name) => {
    expect(full.shots.length).toBeGreaterThan(0);
    expect(empty.shots).toEqual([]);
    const plan = demo(name);
    expect(schedule({ ...plan, sheet: full })).toEqual(schedule({ ...plan, sheet: empty }));
  },
);
