/** On set: at every instant the state agrees with the columns, and the rest of a run with what was planned. */
import fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import { KEEPS, replanned } from '../../src/engine/onset/rest.ts';
import { cycleParts, frameS, stateAt } from '../../src/engine/onset/state.ts';
import { firstStretch, lastOpensMs, madeOf, opensMs } from '../../src/engine/onset/stretch.ts';
import { readPlan } from '../../src/engine/plan/parse.ts';
import type { Plan } from '../../src/engine/plan/schema.ts';
import { startFor } from '../../src/engine/schedule.ts';
import { litPlans, plans, rigPlans } from './plans.ts';
import { PATIENCE_MS, settings } from './settings.ts';

vi.setConfig({ testTimeout: PATIENCE_MS });

const anyPlan: fc.Arbitrary<Plan> = fc.oneof(
  litPlans,
  plans.map(({ plan }) => plan),
  rigPlans.map(({ plan }) => plan),
  // The interval grows with the exposure.
  litPlans.map((plan) => ({ ...plan, trigger: { ...plan.trigger, counts: 'endToStart' as const } })),
);
const share = fc.double({ min: -0.1, max: 1.1, noNaN: true });

test('the state is that of the frame whose time it is, and nothing is skipped', () => {
  fc.assert(
    fc.property(anyPlan, fc.array(share, { minLength: 1, maxLength: 20 }), (plan, instants) => {
      const of = firstStretch(plan, startFor(plan).startMs);
      const made = madeOf(of);
      const { elapsedS, holdS, cameraS, rigS } = made.columns;
      const { guardS } = plan.cycle;
      const frames = elapsedS.length;
      const endS = (elapsedS[frames - 1] ?? 0) + frameS(made, frames - 1);
      for (const at of instants) {
        const nowMs = made.startMs + at * (endS + 1) * 1000;
        const atS = (nowMs - made.startMs) / 1000;
        const state = stateAt(made, guardS, nowMs);
        // By a scan from the beginning, which knows nothing of halving.
        let begun = 0;
        while (begun < frames && (elapsedS[begun] as number) <= atS) begun += 1;
        expect(state.begun).toBe(begun);
        if (begun === 0) {
          expect(state.doing).toBe('before');
          continue;
        }
        const k = begun - 1;
        const into = atS - (elapsedS[k] as number);
        expect(state.intoS).toBeCloseTo(into, 9);
        if (begun < frames) expect(state.toNextS).toBeCloseTo((elapsedS[begun] as number) - atS, 6);
        else expect(state.toNextS).toBeNull();
        const longer = Math.max(cameraS[k] as number, rigS[k] as number);
        const lengthS = frameS(made, k);
        if (into < Math.min(holdS[k] as number, lengthS)) expect(state.doing).toBe('exposing');
        else if (into < Math.min(longer, lengthS))
          expect(['moving', 'settling', 'writing']).toContain(state.doing);
        else if (begun < frames) expect(['spare', 'ready']).toContain(state.doing);
        else expect(state.doing).toBe('after');
      }
    }),
    settings(0.5),
  );
});

test('a cycle has no gaps: until something else is done, the same is done', () => {
  fc.assert(
    fc.property(anyPlan, fc.nat(), (plan, n) => {
      const made = madeOf(firstStretch(plan, startFor(plan).startMs));
      const index = n % made.columns.elapsedS.length;
      const parts = cycleParts(made, index, plan.cycle.guardS);
      parts.forEach(({ fromS, toS }, i) => {
        expect(fromS).toBe(i === 0 ? 0 : parts[i - 1]?.toS);
        expect(toS).toBeGreaterThan(fromS);
      });
      if (parts.length > 0) expect(parts.at(-1)?.toS).toBe(frameS(made, index));
    }),
    settings(),
  );
});

test('the rest of a run holds what is kept, and makes a plan that a file can hold', () => {
  fc.assert(
    fc.property(
      anyPlan,
      fc.nat(),
      fc.integer({ min: 0, max: 4000 }),
      fc.integer({ min: 0, max: 3 }),
      (plan, n, lateS, more) => {
        const of = firstStretch(plan, startFor(plan).startMs);
        const made = madeOf(of);
        const { frames, dialS } = made.totals;
        const shot = n % frames;
        const endMs = lastOpensMs(of);
        const happened = { shot, nextMs: opensMs(made, shot) + lateS * 1000, endMs, more };
        for (const keep of KEEPS) {
          const planned = replanned(of, happened, keep);
          if ('why' in planned) {
            expect(planned.why).toMatch(/\.$/);
            expect(keep).not.toBe('clipAndInterval');
            continue;
          }
          const { stretch } = planned;
          const rest = madeOf(stretch).totals;
          const read = readPlan(JSON.parse(JSON.stringify(stretch.plan)));
          if (!read.ok) expect(read.faults).toEqual([]);
          expect(stretch.framesBefore).toBe(shot);
          const left = frames - shot + more;
          if (keep === 'endAndInterval') expect(rest.frames).toBeLessThanOrEqual(left);
          else expect(rest.frames).toBe(left);
          if (keep !== 'endAndClip') expect(rest.dialS).toBeCloseTo(dialS, 6);
          if (keep !== 'clipAndInterval') expect(lastOpensMs(stretch)).toBeLessThanOrEqual(endMs + 2);
          made.columns.axes.forEach((axis, a) => {
            // A worked-out aim begins within half a turn of its zero, however far it had turned before.
            if (shot > 0 && !plan.subject.aimed)
              expect(madeOf(stretch).columns.axes[a]?.steps[0]).toBe(axis.steps[shot]);
          });
        }
      },
    ),
    settings(0.5),
  );
});
