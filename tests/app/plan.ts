/** A plan of the tests' own: two axes, two sources, two cards. */
import { fetchChecks } from '../../src/app/store/checker.ts';
import { newAxis, newCard, newSource, readPlan } from '../../src/engine/plan/parse.ts';
import { PLAN_FORMAT, PLAN_VERSION, type Plan } from '../../src/engine/plan/schema.ts';

// In the page the checker comes after the figures; here it is there from the start.
await fetchChecks();

const smooth = { kind: 'smooth' } as const;

export function testPlan(): Plan {
  const read = readPlan({
    format: PLAN_FORMAT,
    version: PLAN_VERSION,
    title: 'Test',
    pacing: { workedOut: 'clip', eventS: 3600, intervalS: 12, clipLengthS: 12 },
    rig: {
      axes: [
        { ...newAxis(), name: 'Slide', source: 'Rig pack' },
        { ...newAxis(), name: 'Pan', kind: 'pan', unit: 'deg', travelMin: -180, travelMax: 180 },
      ],
    },
    move: {
      mode: 'moveShootMove',
      tracks: [
        {
          axis: 'Slide',
          keyframes: [
            { share: 0, position: 0, ease: smooth },
            { share: 1, position: 300, ease: smooth },
          ],
        },
      ],
    },
    power: {
      sources: [
        { ...newSource(), name: 'Rig pack', capacityMah: 10_000 },
        { ...newSource(), name: 'Camera pack', count: 3 },
      ],
      loads: [{ name: 'Camera', source: 'Camera pack', idleW: 2 }],
    },
    storage: {
      cards: [
        { ...newCard(), name: 'A' },
        { ...newCard(), name: 'B' },
      ],
    },
  });
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.plan;
}
