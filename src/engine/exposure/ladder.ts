/**
 * The ladder of a ramp: every combination of settings that it can come to, from the brightest light to the dimmest.
 *
 * The settings of the plan are the first rung. The steps of the ramp follow in their order, each taking one setting
 * along its marks; as the light returns the same rungs are climbed backwards. What a rung exposes rightly is
 * computed from the exact values behind the marks, with the filter.
 */
import type { Plan, RampStep } from '../plan/schema.ts';
import { ev100 } from './apex.ts';
import { brighterStops, type Mark, marksTo } from './dials.ts';
import { openAtMarkS } from './shutter.ts';
import { exactApertureF, exactIso, exactShutterS, SAME_MARK_STOPS, shutterStop } from './stops.ts';

/** One combination of settings. */
export interface Rung {
  /** Counted from 0, the brightest light. */
  index: number;
  /** As marked: seconds and how the dial writes them, f-number, ISO. */
  shutterS: number;
  shutterMark: string;
  apertureF: number;
  iso: number;
  /** Seconds the shutter is open, or the middle of a bracket. */
  openS: number;
  /** Exposure value at ISO 100 of the scene that comes out right, filter counted. */
  ev100: number;
  /** What differs from the rung before, by whom and in which step of the ramp; null for the first rung. */
  setting: RampStep['setting'] | null;
  by: RampStep['by'] | null;
  stepIndex: number | null;
}

/** A step of the ramp that leads nowhere, or not all the way. Figures as marked. */
export interface IdleStep {
  stepIndex: number;
  setting: RampStep['setting'];
  wanted: number;
  reached: number;
  /** `brighter`: it would take the setting back. `already there`: nothing to change. `dial`: no such mark. */
  why: 'brighter' | 'already there' | 'dial';
}

/** A step whose shutter time is cut short by the ceiling. Seconds as marked. */
export interface CutStep {
  stepIndex: number;
  wantedS: number;
  reachedS: number;
}

/** All rungs of a ramp. */
export interface Ladder {
  rungs: readonly Rung[];
  /** Exposure value of each rung, strictly falling. */
  ev100: Float64Array;
  idleSteps: readonly IdleStep[];
  cuts: readonly CutStep[];
}

type Settings = Record<RampStep['setting'], Mark>;

/** A shutter time as the dial writes it, or in three digits if no dial has it. */
function shutterMark(markedS: number): string {
  const short = (value: number) => String(Number(value.toPrecision(3)));
  return shutterStop(markedS)?.mark ?? (markedS < 0.3 ? `1/${short(1 / markedS)}` : short(markedS));
}

function brightest({ exposure }: Plan): Settings {
  const { shutterS, apertureF, iso } = exposure;
  return {
    shutter: { name: shutterMark(shutterS), marked: shutterS, exact: exactShutterS(shutterS) },
    aperture: { name: String(apertureF), marked: apertureF, exact: exactApertureF(apertureF) },
    iso: { name: String(iso), marked: iso, exact: exactIso(iso) },
  };
}

function rungOf(plan: Plan, settings: Settings, index: number, stepIndex: number | null): Rung {
  const { shutter, aperture, iso } = settings;
  const openS = openAtMarkS(plan, shutter.marked, shutter.exact);
  const step = stepIndex === null ? undefined : plan.exposure.ramp.steps[stepIndex];
  return {
    index,
    shutterS: shutter.marked,
    shutterMark: shutter.name,
    apertureF: aperture.marked,
    iso: iso.marked,
    openS,
    ev100: ev100(aperture.exact, openS, iso.exact) + plan.exposure.filterStops,
    setting: step?.setting ?? null,
    by: step?.by ?? null,
    stepIndex,
  };
}

/** Why a step does not get to where it should; null if it does. */
function idleOf(step: RampStep, stepIndex: number, from: Mark, reached: number): IdleStep | null {
  const { setting, to: wanted } = step;
  const further = brighterStops(setting, wanted, from.marked);
  const short = brighterStops(setting, wanted, reached);
  if (further >= SAME_MARK_STOPS && short < SAME_MARK_STOPS) return null;
  const why = further >= SAME_MARK_STOPS ? 'dial' : further > -SAME_MARK_STOPS ? 'already there' : 'brighter';
  return { stepIndex, setting, wanted, reached, why };
}

const ladderFrom = (rungs: Rung[], idleSteps: IdleStep[], cuts: CutStep[]): Ladder => ({
  rungs,
  ev100: Float64Array.from(rungs, (rung) => rung.ev100),
  idleSteps,
  cuts,
});

/** The ladder of settings that stay: a single rung. */
export const fixedLadder = (plan: Plan): Ladder =>
  ladderFrom([rungOf(plan, brightest(plan), 0, null)], [], []);

/**
 * Every rung of the plan's ramp.
 * @param ceilingS - seconds that the shutter may be open at most (middle of a bracket); Infinity for any
 * @returns at least one rung; the first stays even if its own shutter time is beyond the ceiling
 */
export function ladderOf(plan: Plan, ceilingS: number): Ladder {
  const settings = brightest(plan);
  const rungs = [rungOf(plan, settings, 0, null)];
  const idleSteps: IdleStep[] = [];
  const cuts: CutStep[] = [];
  // The ceiling comes from sums: its last places must not decide.
  const allows = ({ marked, exact }: Mark) => openAtMarkS(plan, marked, exact) <= ceilingS * (1 + 1e-10);
  plan.exposure.ramp.steps.forEach((step, stepIndex) => {
    const from = settings[step.setting];
    const wanted = marksTo(plan, from, step, () => true);
    const marks = step.setting === 'shutter' ? marksTo(plan, from, step, allows) : wanted;
    for (const mark of marks) {
      settings[step.setting] = mark;
      rungs.push(rungOf(plan, settings, rungs.length, stepIndex));
    }
    const reached = settings[step.setting].marked;
    const idle = idleOf(step, stepIndex, from, (wanted.at(-1) ?? from).marked);
    if (idle) idleSteps.push(idle);
    else if (marks.length < wanted.length) cuts.push({ stepIndex, wantedS: step.to, reachedS: reached });
  });
  return ladderFrom(rungs, idleSteps, cuts);
}
