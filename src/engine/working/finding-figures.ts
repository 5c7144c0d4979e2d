/**
 * The figures in the sentences of findings and in the verdict: which words of a sentence they are, and the names of
 * their workings. Numbers that were typed, and marks of a dial, are none.
 */
import { BALANCE_SAYS } from '../balance/finding-working.ts';
import { CYCLE_SAYS } from '../cycle/finding-working.ts';
import { ENERGY_SAYS } from '../energy/finding-working.ts';
import { EXPOSURE_SAYS } from '../exposure/finding-working.ts';
import { headroom, tightestOf } from '../findings/order.ts';
import { type Finding, keyOf } from '../findings/types.ts';
import { bytes, percent, seconds, withUnit } from '../findings/words.ts';
import { MOTION_SAYS } from '../motion/finding-working.ts';
import { PACING_SAYS } from '../pacing/finding-working.ts';
import { PATH_SAYS } from '../path/finding-working.ts';
import type { Plan } from '../plan/schema.ts';
import { RINGING_SAYS } from '../ringing/finding-working.ts';
import type { Schedule } from '../schedule-types.ts';
import { SKY_SAYS } from '../sky/finding-working.ts';
import { STORAGE_SAYS } from '../storage/finding-working.ts';
import { TIME_SAYS } from '../time/finding-working.ts';
import type { Worked, Workings } from './make.ts';
import { ofMargin } from './margins.ts';
import { ofFinding, type Said, type Sayers } from './said.ts';
import { located, ownFigures, ownWorkings, type Stated, statedOf } from './stated.ts';

const SAYS: Sayers = {
  ...PACING_SAYS,
  ...TIME_SAYS,
  ...CYCLE_SAYS,
  ...EXPOSURE_SAYS,
  ...MOTION_SAYS,
  ...RINGING_SAYS,
  ...PATH_SAYS,
  ...BALANCE_SAYS,
  ...ENERGY_SAYS,
  ...STORAGE_SAYS,
  ...SKY_SAYS,
};

const saidOf = (of: Worked, finding: Finding): readonly Said[] => SAYS[finding.id]?.(of, finding) ?? [];

/**
 * The figures in the sentence of a finding that were worked out.
 * @param made - the schedule of that plan, which the finding is one of
 */
export const statedIn = (plan: Plan, made: Schedule, finding: Finding): Stated[] =>
  statedOf(finding.message, saidOf({ plan, made }, finding), (what) => ofFinding(finding, what));

/** How much is left of the tightest thing, as the verdict has it. */
function tightest({ margins }: Schedule): (Omit<Stated, 'from'> & { lead: string })[] {
  const margin = tightestOf(margins);
  if (!margin) return [];
  const left = margin.left - margin.reserve;
  const lead = 'Tightest: ';
  const spare = ofMargin(margin, margin.reserve === 0 ? 'left' : 'spare');
  if (margin.unit === 'Wh')
    return [{ text: percent(headroom(margin)), lead, of: ofMargin(margin, 'headroom') }];
  const texts = { s: seconds, bytes } as Partial<Record<string, (value: number) => string>>;
  return [{ text: texts[margin.unit]?.(left) ?? withUnit(left, margin.unit), lead, of: spare }];
}

/** The figures in the verdict: of the worst finding if the plan cannot be shot, else of what is tightest. */
export function statedInVerdict(plan: Plan, made: Schedule): Stated[] {
  const [worst] = made.findings;
  const { verdict } = made;
  if (worst?.severity !== 'stop') return located(verdict, tightest(made));
  const begins = verdict.length - worst.message.length;
  return statedIn(plan, made, worst).map((stated) => ({ ...stated, from: stated.from + begins }));
}

/** Names of all figures that the sentence of a finding states. */
export const findingFiguresOf = (plan: Plan, made: Schedule, finding: Finding): string[] => [
  ...new Set(statedIn(plan, made, finding).map(({ of }) => of)),
];

/** Workings of what a finding alone states. @param key - of the finding: `speed:Boom` */
export function findingWorkings(of: Worked, key: string): Workings {
  const finding = of.made.findings.find((each) => keyOf(each) === key);
  return finding ? ownWorkings(saidOf(of, finding)) : {};
}

/** Names of the figures that findings alone state. */
export const findingsFiguresOf = (of: Worked): string[] => [
  ...new Set(
    of.made.findings.flatMap((finding) =>
      ownFigures(finding.message, saidOf(of, finding), (what) => ofFinding(finding, what)),
    ),
  ),
];
