/** The page keeps a schedule where only the exposure sheet is edited: so it may not depend on the sheet. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parsePlan } from '../../src/engine/plan/parse.ts';
import { schedule } from '../../src/engine/schedule.ts';

const DEMOS = new URL('../../public/examples/', import.meta.url);

test.each(['harbour-at-dusk', 'loaf-proving', 'clay-snail'])('the schedule of %s reads no sheet', (name) => {
  const read = parsePlan(readFileSync(new URL(`${name}.json`, DEMOS), 'utf8'));
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  const blind = Object.defineProperty({ ...read.plan }, 'sheet', {
    get: () => {
      throw new Error('the sheet was read');
    },
  });
  expect(schedule(blind).findings).toEqual(schedule(read.plan).findings);
});
