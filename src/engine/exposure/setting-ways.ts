/**
 * Ways out along the dials of the camera: settings are changed mark by mark, alone or so that the picture stays as bright.
 *
 * The same light in fewer seconds is as many thirds of a stop on another dial. ISO and f-numbers are only offered as far
 * as they are of use: common practice, no source.
 */
import { tidy, type WayGiven, wayOver } from '../fixes/build.ts';
import type { Way } from '../fixes/types.ts';
import type { Edit } from '../plan/paths.ts';
import type { Plan, RampStep } from '../plan/schema.ts';
import {
  APERTURE_HALVES,
  APERTURE_THIRDS,
  ISO_HALVES,
  ISO_THIRDS,
  markSeconds,
  SHUTTER_HALVES,
  SHUTTER_THIRDS,
  type Stop,
  shutterStop,
} from './stops.ts';

const NO_BREAK = '\u00A0';

/** Highest ISO that is offered, unless the plan itself goes higher, and widest f-number. */
const MOST_ISO = 12_800;
const WIDEST_F = 1.4;

type Dial = 'shutter' | 'iso' | 'aperture';

const THIRDS: Readonly<Record<Dial, readonly Stop[]>> = {
  shutter: SHUTTER_THIRDS,
  iso: ISO_THIRDS,
  aperture: APERTURE_THIRDS,
};

const HALVES: Readonly<Record<Dial, readonly Stop[]>> = {
  shutter: SHUTTER_HALVES,
  iso: ISO_HALVES,
  aperture: APERTURE_HALVES,
};

export const PATHS: Readonly<Record<Dial, string>> = {
  shutter: 'exposure.shutterS',
  iso: 'exposure.iso',
  aperture: 'exposure.apertureF',
};

const presentOf = ({ exposure }: Plan, dial: Dial): number =>
  dial === 'shutter' ? exposure.shutterS : dial === 'iso' ? exposure.iso : exposure.apertureF;

/** Highest ISO that a plan may be brought to. */
export const mostIso = ({ exposure }: Plan): number =>
  Math.max(
    MOST_ISO,
    exposure.iso,
    ...exposure.ramp.steps.filter(({ setting }) => setting === 'iso').map(({ to }) => to),
  );

/** Widest aperture that a plan may be brought to, f-number. */
const widestF = ({ exposure }: Plan): number =>
  Math.min(
    WIDEST_F,
    exposure.apertureF,
    ...exposure.ramp.steps.filter(({ setting }) => setting === 'aperture').map(({ to }) => to),
  );

/**
 * Marks of a dial on one side of a value, nearest first, as numbers.
 * @param side - 1 for marks that make the picture brighter
 * @param step - of the dial's series: half stops have marks of their own
 */
export function marksBeyond(
  plan: Plan,
  dial: Dial,
  from: number,
  side: 1 | -1,
  step: RampStep['step'] = 'third',
): number[] {
  const series = step === 'half' ? HALVES : THIRDS;
  const marks = series[dial].map(({ mark }) => markSeconds(mark));
  const rank = dial === 'aperture' ? -1 : 1;
  // Farther than a tenth of a stop from it: else it is the mark itself.
  const off = (value: number) => side * rank * Math.log2(value / from) * (dial === 'aperture' ? 2 : 1);
  const within = (value: number) =>
    dial === 'iso' ? value <= mostIso(plan) : dial === 'aperture' ? value >= widestF(plan) : true;
  return marks.filter((value) => off(value) > 0.1 && within(value)).sort((a, b) => off(a) - off(b));
}

/** A shutter time as its mark: `1/8 s`. */
export const shutterWords = (shutterS: number): string =>
  `${shutterStop(shutterS)?.mark ?? tidy(shutterS, 3)}${NO_BREAK}s`;

const WORDS: Readonly<Record<Dial, (value: number) => string>> = {
  shutter: (value) => `shutter to ${shutterWords(value)}`,
  iso: (value) => `ISO to ${value}`,
  aperture: (value) => `aperture to f/${value}`,
};

/** `Shutter to 1/8 s, ISO to 800`. */
function wordsOf(before: Plan, changed: Plan): string {
  const dials: Dial[] = ['shutter', 'iso', 'aperture'];
  const text = dials
    .filter((dial) => presentOf(before, dial) !== presentOf(changed, dial))
    .map((dial) => WORDS[dial](presentOf(changed, dial)))
    .join(', ');
  return text.charAt(0).toUpperCase() + text.slice(1);
}

type Needs = Exclude<WayGiven['needs'], undefined>;

const aperture =
  (plan: Plan): Needs =>
  (changed) =>
    changed.exposure.apertureF < plan.exposure.apertureF
      ? `a lens that opens to f/${changed.exposure.apertureF}; less depth of field`
      : null;

/** The shutter on one side and another dial to match, so that the picture stays as bright. */
function matched(plan: Plan, kind: string, side: 1 | -1, dial: 'iso' | 'aperture', thirds: number): Way[] {
  const shutters = marksBeyond(plan, 'shutter', plan.exposure.shutterS, side);
  const others = marksBeyond(plan, dial, presentOf(plan, dial), side === 1 ? -1 : 1);
  const pairs = shutters.slice(0, others.length).map((shutterS, i): Edit[] => [
    [PATHS.shutter, shutterS],
    [PATHS[dial], others[i]],
  ]);
  return wayOver(pairs, {
    plan,
    kind,
    first: thirds,
    edits: (pair) => pair,
    label: (changed) => wordsOf(plan, changed),
    needs: dial === 'iso' ? null : aperture(plan),
  });
}

/** Thirds of a stop between two times. */
export const thirdsBetween = (longS: number, shortS: number): number =>
  Math.ceil(3 * Math.log2(longS / shortS) - 1e-6);

/** A shorter exposure of the same light, by ISO. @param thirds - of a stop that should just suffice */
export const shorterByIso = (plan: Plan, thirds = 1): Way[] =>
  matched(plan, 'shutter-shorter-iso', -1, 'iso', thirds);

/** A shorter exposure of the same light, by the aperture. */
export const shorterByAperture = (plan: Plan, thirds = 1): Way[] =>
  matched(plan, 'shutter-shorter-aperture', -1, 'aperture', thirds);

/** One dial alone: the picture gets brighter or darker. @param side - 1 for brighter */
export function dialAlone(plan: Plan, dial: Dial, side: 1 | -1, thirds = 1): Way[] {
  const up =
    dial === 'shutter' ? ['longer', 'shorter'] : dial === 'iso' ? ['higher', 'lower'] : ['wider', 'narrower'];
  return wayOver(marksBeyond(plan, dial, presentOf(plan, dial), side), {
    plan,
    kind: `${dial}-${up[side === 1 ? 0 : 1]}`,
    first: thirds,
    edits: (value) => [[PATHS[dial], value]],
    label: (changed) => wordsOf(plan, changed),
    needs: dial === 'aperture' ? aperture(plan) : null,
  });
}

/** Shutter times of a list, each with the ISO to match, nearest first. */
export function shuttersWithIso(plan: Plan, kind: string, shutters: readonly number[]): Way[] {
  const { shutterS, iso } = plan.exposure;
  const matching = (wantedIso: number) =>
    ISO_THIRDS.map(({ mark }) => Number(mark)).reduce((a, b) =>
      Math.abs(Math.log2(b / wantedIso)) < Math.abs(Math.log2(a / wantedIso)) ? b : a,
    );
  const away = (value: number) => Math.abs(Math.log2(value / shutterS));
  const pairs = shutters
    .filter((value) => away(value) > 0.1)
    .sort((a, b) => away(a) - away(b))
    .map((value) => [value, matching((iso * shutterS) / value)] as const)
    .filter(
      ([value, other]) =>
        other <= mostIso(plan) && Math.abs(Math.log2((value * other) / (shutterS * iso))) < 0.3,
    );
  return wayOver(pairs, {
    plan,
    kind,
    edits: ([value, other]) => [
      [PATHS.shutter, value],
      [PATHS.iso, other],
    ],
    label: (changed) => wordsOf(plan, changed),
  });
}
