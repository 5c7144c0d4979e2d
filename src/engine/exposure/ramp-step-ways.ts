/** Ways out by the steps of the ramp: who makes the changes, how large they are, and which there are at all. */
import { planWith, switchWay, way, wayOver } from '../fixes/build.ts';
import type { Way } from '../fixes/types.ts';
import type { Edit } from '../plan/paths.ts';
import type { Plan, RampStep } from '../plan/schema.ts';

const STEPS = 'exposure.ramp.steps';

/** All changes of the ramp by the camera itself. */
export function rampByCamera(plan: Plan): Way[] {
  const edits = plan.exposure.ramp.steps.map((_, i): Edit => [`${STEPS}.${i}.by`, 'camera']);
  return switchWay(plan, edits, {
    kind: 'ramp-by-camera',
    label: () => 'Let the camera make the changes',
    needs: 'a camera or a trigger that changes its settings by itself',
  });
}

const SIZES: readonly RampStep['step'][] = ['third', 'half', 'full'];

/** Fewer and larger changes where they are made by hand. */
export function rampLargerSteps(plan: Plan): Way[] {
  const { steps } = plan.exposure.ramp;
  const hand = steps.flatMap((step, i) => (step.by === 'hand' ? [{ step, i }] : []));
  const smallest = Math.min(...hand.map(({ step }) => SIZES.indexOf(step.step)));
  const larger = hand.length === 0 ? [] : SIZES.slice(smallest + 1);
  return wayOver(larger, {
    plan,
    kind: 'ramp-larger-steps',
    edits: (size) =>
      hand
        .filter(({ step }) => SIZES.indexOf(step.step) < SIZES.indexOf(size))
        .map(({ i }): Edit => [`${STEPS}.${i}.step`, size]),
    label: (changed) => {
      const size = changed.exposure.ramp.steps[hand[0]?.i ?? 0]?.step ?? 'full';
      return `Change by hand in ${size} stops`;
    },
  });
}

/** The ramp follows the light instead of leaving the settings. */
export const rampOn = (plan: Plan): Way[] =>
  switchWay(plan, [['exposure.ramp.used', true]], {
    kind: 'ramp-on',
    label: () => 'Let the settings follow the light',
    needs: plan.exposure.ramp.steps.some(({ by }) => by === 'hand')
      ? 'changes by hand on the way'
      : 'a camera or a trigger that changes its settings by itself',
  });

/** A step of the ramp that leads nowhere, or not all the way. */
export interface Idle {
  /** Counted from 1. */
  step: number;
  reached: number;
  /** Whether it does something on its way to a value that the dial does not have. */
  onDial: boolean;
}

/** Leaves out steps that change nothing, and ends others at the mark that they reach. */
export function rampTidied(plan: Plan, idle: readonly Idle[]): Way[] {
  const steps = plan.exposure.ramp.steps.flatMap((step, i) => {
    const found = idle.find((one) => one.step === i + 1);
    if (!found) return [step];
    return found.onDial ? [{ ...step, to: found.reached }] : [];
  });
  const left = plan.exposure.ramp.steps.length - steps.length;
  return way({
    kind: 'ramp-tidied',
    steps: idle.length > 0 ? 1 : 0,
    at: () => planWith(plan, [[STEPS, steps]]),
    label: () =>
      left > 0
        ? `Leave out ${left === 1 ? 'the step' : `${left} steps`} of the ramp that change${left === 1 ? 's' : ''} nothing`
        : 'End the ramp’s steps at marks of the dial',
  });
}
