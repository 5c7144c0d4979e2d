/** What each option prints. */
import { intervalLadder } from '../engine/fixes/interval-ladder.ts';
import { remediesOf } from '../engine/fixes/remedies.ts';
import { serialisePlan } from '../engine/plan/parse.ts';
import { fixesJson } from '../outputs/fixes-json.ts';
import { ladderText } from '../outputs/ladder-text.ts';
import { linkText } from './link.ts';
import type { Options } from './options.ts';
import { workingTexts } from './working.ts';
import { OUTPUTS, type Worked } from './write-outputs.ts';

type Text = Iterable<string> | AsyncIterable<string>;

export const PRINTED: Readonly<Record<Options['print'], (worked: Worked, options: Options) => Text>> = {
  ...OUTPUTS,
  link: ({ plan }, { page }) => linkText(plan, page),
  fixes: ({ plan, made }) => [fixesJson(plan, made, remediesOf(plan, made))],
  // The plan has the fix already.
  apply: ({ plan }) => [serialisePlan(plan)],
  ladder: ({ plan, made }) => [ladderText(intervalLadder(plan, made))],
  working: ({ plan, made }, { working }) => workingTexts(plan, made, working ?? 'all'),
};
