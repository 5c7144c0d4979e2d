/** The order in which settings change as the light falls. */
import { memberSchemas, type Plan, type RampStep } from '../../engine/plan/schema.ts';

/** Most steps that a plan takes. */
export const MOST_STEPS = 12;

const withSteps = (plan: Plan, steps: RampStep[]): Plan => ({
  ...plan,
  exposure: { ...plan.exposure, ramp: { ...plan.exposure.ramp, steps } },
});

/** Where a new step of each setting goes to, until it is said otherwise. */
const USUAL_ENDS: Readonly<Record<RampStep['setting'], number>> = {
  shutter: 1,
  iso: 800,
  aperture: 2.8,
};

/** One more step at the end, of the setting that the last one does not change. */
export function addStep(plan: Plan): Plan {
  const { steps } = plan.exposure.ramp;
  const setting = steps.at(-1)?.setting === 'shutter' ? 'iso' : 'shutter';
  const step = { ...memberSchemas.rampStep.parse({}), setting, to: USUAL_ENDS[setting] } as RampStep;
  return withSteps(plan, [...steps, step]);
}

export const removeStep = (plan: Plan, index: number): Plan =>
  withSteps(plan, plan.exposure.ramp.steps.toSpliced(index, 1));

/** A step one place up (-1) or down (1); at the ends it stays. */
export function moveStep(plan: Plan, index: number, by: -1 | 1): Plan {
  const { steps } = plan.exposure.ramp;
  const step = steps[index];
  const other = steps[index + by];
  return step && other ? withSteps(plan, steps.with(index, other).with(index + by, step)) : plan;
}

/** A step of another setting: where it goes to is counted in other units, so that it starts from a usual end. */
export const turnStep = (plan: Plan, index: number, setting: RampStep['setting']): Plan =>
  withSteps(
    plan,
    plan.exposure.ramp.steps.map((step, i) =>
      i === index && step.setting !== setting ? { ...step, setting, to: USUAL_ENDS[setting] } : step,
    ),
  );
