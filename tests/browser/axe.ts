/** What bars people from the page, as axe finds it. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import type { THEMES } from './visit.ts';

interface Look {
  /** Selector of what is looked at; the whole page if it is left out. */
  within?: string;
  /** What is on a page is the same in all themes, the colours are not: of the dark ones only those are looked at. */
  theme?: (typeof THEMES)[number];
}

/**
 * Every violation, whatever its impact, with where it is.
 *
 * axe is asked to name no element that passes, and not to look for frames of other pages, which there are none of: that
 * takes it a quarter of the time, and it finds the same.
 */
export async function violations(page: Page, { within, theme = 'light' }: Look = {}): Promise<string[]> {
  const axe = new AxeBuilder({ page }).options({ resultTypes: ['violations'] }).setLegacyMode(true);
  if (within !== undefined) axe.include(within);
  if (theme !== 'light') axe.withRules(['color-contrast']);
  const found = await axe.analyze();
  return found.violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target}`));
}
