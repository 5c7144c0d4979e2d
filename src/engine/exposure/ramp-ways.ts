/** Ways out along the ramp: how far each of its settings goes. */
import { planWith, way, wayOver } from '../fixes/build.ts';
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
