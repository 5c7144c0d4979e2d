/** Productions made in the tests: what is said here, and the defaults for the rest. */
import { readPlan } from '../../../src/engine/plan/parse.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';

/** A stop-motion plan at 24 frames a second. @throws Error with the faults, if there are any */
export function production(sheet: object, fields: object = {}): Plan {
  const file = {
    format: 'escapement-plan',
    version: 1,
    technique: 'stopMotion',
    clip: { frameRate: '24', holdFrames: 2 },
    start: { date: '2026-03-02', time: '09:00' },
    // A camera that takes no time, so that sums stay round.
    camera: { shutterLagS: 0, writeS: 0 },
    exposure: { shutterS: 0.00001 },
    sheet,
    ...fields,
  };
  const parsed = readPlan(file);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults, null, 2));
  return parsed.plan;
}

/** A working day without a break, and nothing before the first exposure. */
export const BARE = { setUpMin: 0, testFrames: 0, breaks: [], daysOff: [] };

/** One shot with actions of so many frames, on twos unless said otherwise. */
export const shotOf = (...actions: object[]): object => ({
  name: 'One',
  actions: actions.map((action) => ({ holds: [2], ...action })),
});

/** Holds of all exposures. */
export const numbers = (values: ArrayLike<number>): number[] => Array.from(values);
