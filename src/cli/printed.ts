/** What each option prints. */
import { linkText } from './link.ts';
import type { Options } from './options.ts';
import { OUTPUTS, type Worked } from './write-outputs.ts';

type Text = Iterable<string> | AsyncIterable<string>;

export const PRINTED: Readonly<Record<Options['print'], (worked: Worked, options: Options) => Text>> = {
  ...OUTPUTS,
  link: ({ plan }, { page }) => linkText(plan, page),
};
