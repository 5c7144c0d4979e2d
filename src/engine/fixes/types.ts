/** Ways out of a finding, and those of them that hold when they are tried. */
import type { Finding, FindingId } from '../findings/types.ts';
import type { Change } from '../plan/changes.ts';
import type { Plan } from '../plan/schema.ts';
import type { Schedule } from '../schedule-types.ts';

/**
 * One way to change a plan, by more or by less: a quantity and the values it can take, in order of how far they are
 * from the present one. What suffices is searched for; what a subject reckons is only where the search begins.
 */
export interface Way {
  /** What is changed, stable: part of the prompt's output. Alike for the same change whichever finding asks for it. */
  kind: string;
  /** How many values there are; 1 for a switch. */
  steps: number;
  /** The value that should just suffice, 1 to `steps`: from here on it is searched in both directions. */
  first: number;
  /** The plan with the n-th value, 1 to `steps`; null if that makes no plan. It must be one that `parsePlan` takes. */
  at: (step: number) => Plan | null;
  /** What to do, for a button, with the value: `Interval to 16 s`. */
  label: (changed: Plan) => string;
  /** What it costs that no figure of the schedule shows: `1 pack more to bring`. null if nothing. */
  needs: (changed: Plan) => string | null;
}

/** The ways out of one finding, most natural first. The schedule's columns are those of the plan. */
export type WaysOut = (finding: Finding, plan: Plan, made: Schedule) => Way[];

/** The ways out of the findings that one subject says. */
export type SubjectWays<Id extends FindingId> = Readonly<Record<Id, WaysOut>>;

/** Figures of what a fix costs, each the plan's with it less the plan's without. */
export const COST_FIGURES = [
  'frames',
  'clipS',
  'startS',
  'eventS',
  'lightStops',
  'energyWh',
  'storageBytes',
] as const;
export type CostFigure = (typeof COST_FIGURES)[number];

/** A piece of the words of what a fix costs. */
export interface CostPart {
  text: string;
  /** The figure that it states; null for one that no figure of the schedule shows. */
  of: CostFigure | null;
}

/** What a fix costs: the plan with it, less the plan without. */
export interface Cost {
  /** In a few words: `−48 frames: 13.5 s clip`, `1 pack more to bring`; `nothing` if no figure gets worse. */
  text: string;
  /** The same in pieces, without what stands between them. */
  parts: CostPart[];
  /** What is lost or changes: 0 where it does not. */
  frames: number;
  clipS: number;
  /** First frame, and last frame, later by; negative is earlier. */
  startS: number;
  endS: number;
  /** Worst error of the light, stops farther off. */
  lightStops: number;
  energyWh: number;
  storageBytes: number;
  /** By which fixes are put in order: cheapest first. No unit. */
  rank: number;
}

/** A change of the plan that has been tried: the finding is gone, and nothing as bad or worse has come. */
export interface Fix {
  /** Kind of the way; of a pair both, with a `+`. */
  kind: string;
  label: string;
  changes: Change[];
  cost: Cost;
  /** Findings, by their keys, that go along with the one that it is for. */
  alsoFixes: string[];
}

/** What can be done about one finding. */
export interface Remedy {
  /** `keyOf` the finding. */
  key: string;
  /** Cheapest first, at most {@link MAX_FIXES}. */
  fixes: Fix[];
  /** Why there is none, one sentence; null if there is. */
  whyNone: string | null;
}

/** How many fixes are offered for one finding. */
export const MAX_FIXES = 3;
