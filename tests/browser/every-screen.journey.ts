/** axe finds nothing at all on the screens that no other journey looks at so, in every theme. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { violations } from './axe.ts';
import { fromBar } from './parts.ts';
import { startBrowser, THEMES, visit } from './visit.ts';

const origin = inject('origin');
let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

const DIALOGS = [
  ['New', 'New plan'],
  ['Kit', 'Kit'],
  ['Keys', 'Keys'],
  ['Compare with a copy', 'Compare with a copy'],
] as const;

test.each(THEMES)(
  'in %s: the frames of a time-lapse, the exposures of a production, and the dialogs',
  async (theme) => {
    const { page, problems, context } = await visit(browser, origin, { theme, query: '#sheet' });
    await page.getByRole('grid').or(page.getByRole('table')).first().waitFor();
    expect(await violations(page, { within: 'main' })).toEqual([]);
    await fromBar(page, /^Clay snail/);
    await expect.poll(() => page.getByLabel('Title of the plan').inputValue()).toBe('Clay snail');
    await page.waitForLoadState('networkidle');
    expect(await violations(page, { within: 'main' })).toEqual([]);
    for (const [press, title] of DIALOGS) {
      await fromBar(page, press);
      await page.getByRole('dialog', { name: title }).waitFor();
      expect(await violations(page, { within: 'dialog' }), title).toEqual([]);
      await page.keyboard.press('Escape');
    }
    expect(problems).toEqual([]);
    await context.close();
  },
);
