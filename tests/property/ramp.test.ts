import fc from 'fast-check';
import { test, vi } from 'vitest';
import { ladderOf } from '../../src/engine/exposure/ladder.ts';
import { fillRamp, type RampColumns, type RampInput } from '../../src/engine/exposure/ramp.ts';
import { defaultPlan } from '../../src/engine/plan/parse.ts';
import type { Plan, RampStep } from '../../src/engine/plan/schema.ts';
import type { Spell } from '../../src/engine/spell.ts';
import { must } from './close.ts';
import { PATIENCE_MS, settings } from './settings.ts';

vi.setConfig({ testTimeout: PATIENCE_MS });

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Any falling exposure values, neighbours a sixth to one and a half stops apart. */
const ladders = fc
  .tuple(between(-5, 18), fc.array(between(1 / 6, 1.5), { maxLength: 60 }))
  .map(([first, falls]) => {
    const values = [first];
    for (const fall of falls) values.push((values.at(-1) as number) - fall);
    return Float64Array.from(values);
  });

interface Light {
  ladderEv: Float64Array;
  targetEv: number[];
  nodeStepS: number;
  firstNode: number;
  dialS: number;
  endToStart: boolean;
  hysteresisStops: number;
}

const lights: fc.Arbitrary<Light> = fc.record({
  ladderEv: ladders,
  targetEv: fc.array(between(-12, 20), { minLength: 2, maxLength: 40 }),
  nodeStepS: between(1, 600),
  firstNode: between(0, 1),
  dialS: between(0.1, 100),
  endToStart: fc.boolean(),
  hysteresisStops: fc.oneof(fc.constant(0), between(0, 2)),
});

const FRAMES = 400;

const openSpanS = (light: Light) => light.ladderEv.map((_, i) => 0.01 * 1.26 ** (i % 40));

function filled(light: Light, frames = FRAMES): RampColumns & { spells: Spell[] } {
  const columns: RampColumns = {
    rung: new Uint16Array(frames).fill(9999),
    evScene: new Float32Array(frames).fill(Number.NaN),
    evError: new Float32Array(frames).fill(Number.NaN),
    elapsedS: new Float64Array(frames).fill(Number.NaN),
    intervalS: new Float64Array(frames).fill(Number.NaN),
  };
  const targetEv = Float64Array.from(light.targetEv);
  const input: RampInput = { ...light, targetEv, sceneEv: targetEv, openSpanS: openSpanS(light) };
  return { ...columns, spells: fillRamp(input, columns) };
}

/** Light at a moment, looked up anew each time. */
function lightAt({ targetEv, nodeStepS, firstNode }: Light, elapsedS: number): number {
  const at = Math.min(firstNode + elapsedS / nodeStepS, targetEv.length - 1);
  const node = Math.min(Math.floor(at), targetEv.length - 2);
  const [a, b] = [targetEv[node] as number, targetEv[node + 1] as number];
  return a + (b - a) * (at - node);
}

/** Rung with the least error; where two are as near, the first of them. */
function nearest(ladderEv: Float64Array, ev: number): number {
  let best = 0;
  for (let i = 1; i < ladderEv.length; i += 1)
    if (Math.abs((ladderEv[i] as number) - ev) < Math.abs((ladderEv[best] as number) - ev)) best = i;
  return best;
}

const property = (check: (light: Light) => void, share = 1) =>
  fc.assert(fc.property(lights, check), settings(share));

test('every frame agrees with the rule worked out frame by frame', () => {
  property((light) => {
    const { ladderEv, hysteresisStops, endToStart, dialS } = light;
    const { rung, evScene, evError, elapsedS, intervalS } = filled(light);
    let elapsed = 0;
    for (let k = 0; k < FRAMES; k += 1) {
      const now = rung[k] as number;
      const target = lightAt(light, elapsedS[k] as number);
      const error = target - (ladderEv[now] as number);
      // The engine goes by the neighbours' borders, this by the distance to the nearest rung: a last place may differ.
      const away = Math.abs(error) - Math.abs(target - (ladderEv[nearest(ladderEv, target)] as number));
      const before = rung[k - 1];
      if (k === 0 || now !== before)
        must(away < 1e-9, `frame ${k + 1}: rung ${now} is ${away} off the nearest`);
      if (before !== undefined) {
        const beyond = beyondBy(ladderEv, before, target) - hysteresisStops;
        if (now === before) must(beyond < 1e-9, `frame ${k + 1}: stays, ${beyond} too far`);
        else must(beyond > -1e-9, `frame ${k + 1}: changes, ${-beyond} too soon`);
      }
      must(
        Math.abs((evScene[k] as number) - target) < 1e-4,
        `frame ${k + 1}: scene ${evScene[k]}, ${target}`,
      );
      must(Math.abs((evError[k] as number) - error) < 1e-4, `frame ${k + 1}: error ${evError[k]}, ${error}`);
      const interval = endToStart ? dialS + (openSpanS(light)[now] as number) : dialS;
      must(intervalS[k] === interval, `frame ${k + 1}: interval ${intervalS[k]}, ${interval}`);
      must(Math.abs((elapsedS[k] as number) - elapsed) <= 1e-9 * elapsed, `frame ${k + 1}: ${elapsedS[k]} s`);
      elapsed += interval;
    }
  }, 0.3);
});

test('spells are all frames in order, each of one rung and one interval, none like the one before', () => {
  property((light) => {
    const { rung, intervalS, spells } = filled(light);
    let next = 0;
    spells.forEach((spell, i) => {
      must(spell.begin === next && spell.end > next, `spell ${i}: from ${spell.begin} to ${spell.end}`);
      must(spell.rung !== spells[i - 1]?.rung, `spell ${i}: rung ${spell.rung} again`);
      for (let k = spell.begin; k < spell.end; k += 1) {
        must(rung[k] === spell.rung, `frame ${k + 1}: rung ${rung[k]}, ${spell.rung} in its spell`);
        must(
          intervalS[k] === spell.intervalS,
          `frame ${k + 1}: interval ${intervalS[k]}, ${spell.intervalS}`,
        );
      }
      next = spell.end;
    });
    must(next === FRAMES, `the last spell ends at ${next}`);
  });
});

/** Stops by which the light is beyond half the step to a rung's neighbour; negative within. */
function beyondBy(ladderEv: Float64Array, rung: number, ev: number): number {
  const own = ladderEv[rung] as number;
  const [brighter, darker] = [ladderEv[rung - 1], ladderEv[rung + 1]];
  return Math.max(
    brighter === undefined ? Number.NEGATIVE_INFINITY : ev - (own + brighter) / 2,
    darker === undefined ? Number.NEGATIVE_INFINITY : (own + darker) / 2 - ev,
  );
}

test('light that only falls or only rises is followed one way', () => {
  property((light) => {
    for (const sign of [1, -1]) {
      const targetEv = [...light.targetEv].sort((a, b) => sign * (b - a));
      const { rung } = filled({ ...light, targetEv });
      for (let k = 1; k < FRAMES; k += 1)
        must(sign * ((rung[k] as number) - (rung[k - 1] as number)) >= 0, `frame ${k + 1} goes back`);
    }
  });
});

test('noise below the hysteresis changes nothing, wherever the light stands', () => {
  const noise = fc.array(between(-1, 1), { minLength: 2, maxLength: 60 });
  const noisy = fc.tuple(lights, between(-12, 20), between(0.02, 2), noise);
  fc.assert(
    fc.property(noisy, ([light, level, hysteresisStops, swings]) => {
      // From the first frame on, the light is never farther from where it was than the hysteresis.
      const targetEv = [level, ...swings.map((swing) => level + swing * hysteresisStops * 0.999)];
      const { rung } = filled({ ...light, firstNode: 0, targetEv, hysteresisStops });
      must(new Set(rung).size === 1, `${new Set(rung).size} rungs in use`);
    }),
    settings(),
  );
});

test('after a change the light has to come back by the hysteresis and more before it is undone', () => {
  property((light) => {
    const { rung, elapsedS } = filled(light);
    let last: { ev: number; up: boolean } | null = null;
    for (let k = 1; k < FRAMES; k += 1) {
      if (rung[k] === rung[k - 1]) continue;
      const ev = lightAt(light, elapsedS[k] as number);
      const up = (rung[k] as number) < (rung[k - 1] as number);
      if (last && last.up !== up) {
        const back = up ? ev - last.ev : last.ev - ev;
        must(back >= light.hysteresisStops - 1e-9, `frame ${k + 1}: undone after ${back} stops`);
      }
      last = { ev, up };
    }
  });
});

const rampSteps: fc.Arbitrary<RampStep[]> = fc
  .array(
    fc.oneof(
      fc.record({ setting: fc.constant('shutter' as const), to: between(1 / 8000, 200) }),
      fc.record({ setting: fc.constant('iso' as const), to: between(25, 100_000) }),
      fc.record({ setting: fc.constant('aperture' as const), to: between(0.7, 64) }),
    ),
    { maxLength: 12 },
  )
  .chain((steps) =>
    fc.tuple(
      ...steps.map((step) =>
        fc.record({
          setting: fc.constant(step.setting),
          to: fc.constant(step.to),
          step: fc.constantFrom('third' as const, 'half' as const, 'full' as const),
          by: fc.constantFrom('camera' as const, 'hand' as const),
        }),
      ),
    ),
  );

const rampPlans: fc.Arbitrary<Plan> = fc
  .record({
    steps: rampSteps,
    shutterS: between(1 / 8000, 60),
    apertureF: between(0.7, 64),
    iso: between(25, 100_000),
    timedBy: fc.constantFrom('camera' as const, 'trigger' as const),
    filterStops: between(0, 20),
    exactStops: fc.boolean(),
  })
  .map(({ steps, exactStops, ...exposure }) => {
    const plan = defaultPlan();
    return {
      ...plan,
      camera: { ...plan.camera, exactStops },
      exposure: { ...plan.exposure, ...exposure, ramp: { ...plan.exposure.ramp, used: true, steps } },
    };
  });

test('a ladder always falls, one setting at a time, within what its steps ask and the ceiling allows', () => {
  fc.assert(
    fc.property(rampPlans, between(0, 100), (plan, ceilingS) => {
      const { rungs, ev100, cuts } = ladderOf(plan, ceilingS);
      for (let i = 1; i < rungs.length; i += 1) {
        const [before, rung] = [rungs[i - 1], rungs[i]];
        if (!before || !rung) throw new Error('a hole in the ladder');
        must((ev100[i] as number) < (ev100[i - 1] as number), `rung ${i} does not fall`);
        const changed = [
          rung.shutterS !== before.shutterS && 'shutter',
          rung.iso !== before.iso && 'iso',
          rung.apertureF !== before.apertureF && 'aperture',
        ].filter(Boolean);
        must(changed.join() === rung.setting, `rung ${i}: ${changed.join()} changed, not ${rung.setting}`);
        const step = plan.exposure.ramp.steps[rung.stepIndex ?? -1];
        must(step?.setting === rung.setting && step?.by === rung.by, `rung ${i}: not of its step`);
        if (rung.setting === 'shutter')
          must(rung.openS <= ceilingS * (1 + 1e-9), `rung ${i}: open ${rung.openS} s of ${ceilingS} s`);
        must(rung.setting !== 'iso' || rung.iso <= (step?.to ?? 0) * 1.01, `rung ${i}: ISO ${rung.iso}`);
      }
      must(
        cuts.every(({ wantedS, reachedS }) => reachedS < wantedS),
        'a cut that cuts nothing',
      );
    }),
    settings(),
  );
});
