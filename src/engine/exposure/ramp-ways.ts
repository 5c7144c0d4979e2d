/** Ways out along the ramp: how far its settings go, who changes them, in how large steps. */
import { figure } from '../findings/words.ts';
import { planWith, stepsOf, switchWay, way, wayOver } from '../fixes/build.ts';
import type { Way } from '../fixes/types.ts';
import type { Edit } from '../plan/paths.ts';
import type { Plan, RampStep } from '../plan/schema.ts';
import { valueWords } from './ramp-words.ts';
import { marksBeyond, shutterWords } from './setting-ways.ts';
import { openAtMarkS } from './shutter.ts';

type Setting = RampStep['setting'];

const NAMES: Readonly<Record<Setting, string>> = { shutter: 'shutter', iso: 'ISO', aperture: 'aperture' };

const BASE = { shutter: 'shutterS', iso: 'iso', aperture: 'apertureF' } as const;

const STEPS = 'exposure.ramp.steps';

const value = (setting: Setting, to: number): string =>
  setting === 'shutter' ? shutterWords(to) : valueWords(setting, to).replace(/^ISO./, '');

const words = (setting: Setting, to: number): string => `Ramp: ${NAMES[setting]} to ${value(setting, to)}`;

/** The last step of a ramp that changes a setting; -1 if none does. */
const lastStep = ({ exposure }: Plan, setting: Setting): number =>
  exposure.ramp.steps.findLastIndex((step) => step.setting === setting);

/** What makes the ramp end at another value of a setting: its last step does, or a new one. */
function endingAt(plan: Plan, setting: Setting, to: number): Edit {
  const { steps } = plan.exposure.ramp;
  const last = lastStep(plan, setting);
  if (last !== -1) return [`${STEPS}.${last}.to`, to];
  return [STEPS, [...steps, { setting, to, step: 'third', by: 'camera' } satisfies RampStep]];
}

/** Where a setting ends now. */
const endOf = (plan: Plan, setting: Setting): number =>
  plan.exposure.ramp.steps[lastStep(plan, setting)]?.to ?? plan.exposure[BASE[setting]];

/** Marks beyond the end of a setting, and which of them is so many thirds of a stop away. */
function marksFrom(plan: Plan, setting: Setting): { marks: number[]; at: (thirds: number) => number } {
  const step = plan.exposure.ramp.steps[lastStep(plan, setting)]?.step ?? 'third';
  return {
    marks: marksBeyond(plan, setting, endOf(plan, setting), 1, step),
    at: (thirds) => (step === 'half' ? Math.ceil((2 * thirds) / 3) : thirds),
  };
}

/** What a ramp needs that ends at a wider aperture. */
const lensFor = (plan: Plan, changed: Plan): string | null => {
  const apertureF = endOf(changed, 'aperture');
  return apertureF < endOf(plan, 'aperture')
    ? `a lens that opens to f/${apertureF}; less depth of field`
    : null;
};

/** The ramp goes further along one setting as the light falls. @param thirds - of a stop that should just suffice */
export function rampFurther(plan: Plan, setting: Setting, thirds = 1): Way[] {
  const { marks, at } = marksFrom(plan, setting);
  return wayOver(marks, {
    plan,
    kind: `ramp-${setting}-further`,
    first: at(thirds),
    edits: (to) => [endingAt(plan, setting, to)],
    label: (changed) => words(setting, endOf(changed, setting)),
    needs: (changed) =>
      setting === 'aperture'
        ? `a lens that opens to f/${endOf(changed, setting)}; less depth of field`
        : null,
  });
}

/**
 * The ramp goes further along all its settings: the shutter as far as there is room for, then ISO, then the aperture.
 * @param ceilingS - seconds that the shutter may be open at most
 * @param thirds - of a stop that should just suffice
 */
export function rampFurtherAll(plan: Plan, ceilingS: number, thirds: number): Way[] {
  const order = ['shutter', 'iso', 'aperture'] as const;
  const marks = order.flatMap((setting) =>
    marksFrom(plan, setting)
      .marks.filter((to) => setting !== 'shutter' || openAtMarkS(plan, to) <= ceilingS)
      .map((to) => ({ setting, to })),
  );
  const upTo = (count: number) =>
    order.flatMap((setting) => marks.slice(0, count).findLast((mark) => mark.setting === setting) ?? []);
  const changedBy = (changed: Plan) =>
    order.filter((setting) => endOf(changed, setting) !== endOf(plan, setting));
  return way({
    kind: 'ramp-further',
    steps: marks.length,
    first: thirds,
    at: (count) =>
      upTo(count).reduce<Plan | null>(
        (next, { setting, to }) => next && planWith(next, [endingAt(next, setting, to)]),
        plan,
      ),
    label: (changed) =>
      `Ramp: ${changedBy(changed)
        .map((setting) => `${NAMES[setting]} to ${value(setting, endOf(changed, setting))}`)
        .join(', ')}`,
    needs: (changed) => lensFor(plan, changed),
  });
}

/** Shutter times that a step could end at instead, longest first: beyond those of the steps before it. */
function shorterEnds(plan: Plan, index: number): number[] {
  const { exposure } = plan;
  const { steps } = exposure.ramp;
  const step = steps[index];
  if (step?.setting !== 'shutter') return [];
  const before = steps.slice(0, index).filter(({ setting }) => setting === 'shutter');
  const least = Math.max(exposure.shutterS, ...before.map(({ to }) => to));
  return marksBeyond(plan, 'shutter', step.to, -1, step.step).filter((to) => to > least * 1.01);
}

const endsAt = (changed: Plan, index: number): number => changed.exposure.ramp.steps[index]?.to ?? 0;

/** One step of the ramp takes the shutter less far. @param reachedS - shutter time that should just suffice */
export function rampShutterLess(plan: Plan, index: number, reachedS?: number): Way[] {
  const values = shorterEnds(plan, index);
  return wayOver(values, {
    plan,
    kind: `ramp-shutter-less:${index + 1}`,
    first: reachedS === undefined ? 1 : values.findIndex((to) => to <= reachedS * 1.01) + 1,
    edits: (to) => [[`${STEPS}.${index}.to`, to]],
    label: (changed) => words('shutter', endsAt(changed, index)),
  });
}

/**
 * A step of the ramp takes the shutter less far, and the ISO goes as much further at the end.
 * @param thirds - of a stop that should just suffice
 * @param index - of the step; the last one of the shutter if not given
 */
export function rampIsoForShutter(plan: Plan, thirds = 1, index = lastStep(plan, 'shutter')): Way[] {
  const isos = marksFrom(plan, 'iso').marks;
  const from = plan.exposure.ramp.steps[index]?.to ?? 1;
  // The first ISO that makes up for the seconds lost.
  const makesUp = (to: number) => isos.find((iso) => iso / endOf(plan, 'iso') > 0.9 * (from / to));
  const pairs = shorterEnds(plan, index).flatMap((to) => {
    const iso = makesUp(to);
    return iso === undefined ? [] : [{ to, iso }];
  });
  return wayOver(pairs, {
    plan,
    kind: `ramp-iso-for-shutter:${index + 1}`,
    first: thirds,
    // A new step replaces the whole list: it comes first.
    edits: ({ to, iso }) => [endingAt(plan, 'iso', iso), [`${STEPS}.${index}.to`, to]],
    label: (changed) =>
      `${words('shutter', endsAt(changed, index))}, ISO to ${value('iso', endOf(changed, 'iso'))}`,
  });
}

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

/** Frames may be farther off. @param stops - that should just suffice */
export const moreTolerance = (plan: Plan, stops?: number): Way[] =>
  stepsOf(plan, {
    kind: 'light-tolerance',
    path: 'exposure.ramp.toleranceStops',
    by: 0.1,
    ...(stops !== undefined && { wanted: stops }),
    // Beyond this nothing can be saved afterwards: common practice, no source.
    until: 3,
    label: (allowed) => `Allow an error of ${figure(allowed)}\u00A0stops`,
    needs: 'frames that have to be corrected afterwards',
  });

/** The night may stay darker. @param stops - more, that should just suffice */
export const darkerNight = (plan: Plan, stops = 0.5): Way[] =>
  plan.light.kind === 'sky'
    ? stepsOf(plan, {
        kind: 'night-darker',
        path: 'exposure.ramp.nightStops',
        by: 0.5,
        wanted: plan.exposure.ramp.nightStops + stops,
        label: (dark) => `Let the night stay darker by ${figure(dark)}\u00A0stops`,
        needs: 'a darker picture at night than was asked for',
      })
    : [];

/** Another filter, in whole stops. @param side - 1 for a stronger one; @param stops - more that should just suffice */
export const otherFilter = (plan: Plan, side: 1 | -1, stops = 1): Way[] =>
  stepsOf(plan, {
    kind: side === 1 ? 'filter-stronger' : 'filter-weaker',
    path: 'exposure.filterStops',
    by: side,
    wanted: plan.exposure.filterStops + side * stops,
    label: (filter) =>
      filter === 0 ? 'Take the ND filter off' : `ND filter of ${figure(filter)}\u00A0stops`,
    needs: (filter) => (filter === 0 ? null : `an ND filter of ${figure(filter)}\u00A0stops`),
  });
