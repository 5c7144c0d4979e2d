/** The working behind a figure, by keys alone: opened, gone on from, come back to, closed. */
import { AxeBuilder } from '@axe-core/playwright';
import { evaluate } from 'mathjs';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { newPlan, openSection, text } from './parts.ts';
import { startBrowser, visit } from './visit.ts';

const origin = inject('origin');
let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

const working = (page: Page): Locator => page.getByRole('dialog', { name: 'How it came about' });
const heading = (page: Page): Locator => working(page).getByRole('heading', { level: 3 });
const how = (page: Page, what: string): Locator =>
  page.getByRole('button', { name: `${what}: how it came about`, exact: true });

async function barriers(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target}`));
}

test('a figure is followed to what it is made of, by keys alone', async () => {
  const { page, problems, context } = await visit(browser, origin);
  // Worked by hand: 12 s x 25 fps = 300 frames; 2400 s / 299 = 8.027 s, dialled down to 8 s.
  await newPlan(page, '40 min', '12 s');
  await how(page, 'Interval').focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => text(heading(page))).toBe('Interval');
  expect(await text(working(page).getByRole('status').first())).toBe('8 s');
  expect(await text(working(page).locator('.working-formula'))).toContain('⌊steps of the dial⌋');
  expect(await barriers(page)).toEqual([]);

  await working(page)
    .getByRole('button', { name: 'worked out: how steps of the dial came about' })
    .press('Enter');
  await expect.poll(() => text(heading(page))).toBe('Steps of the dial');
  await expect.poll(() => heading(page).evaluate((element) => element === document.activeElement)).toBe(true);
  await working(page)
    .getByRole('button', { name: 'worked out: how interval asked for came about' })
    .press('Enter');
  await expect.poll(() => text(heading(page))).toBe('Interval asked for');
  expect(await text(working(page).locator('.working-formula'))).toContain('= 2400 s ÷');

  await working(page).getByRole('button', { name: 'Back', exact: true }).press('Enter');
  await expect.poll(() => text(heading(page))).toBe('Steps of the dial');
  await page.keyboard.press('Escape');
  await working(page).waitFor({ state: 'hidden' });
  expect(await how(page, 'Interval').evaluate((element) => element === document.activeElement)).toBe(true);
  expect(problems).toEqual([]);
  await context.close();
}, 120_000);

test('margins, cycle, path and balance have theirs, and every other figure is in a list', async () => {
  const { page, problems, context } = await visit(browser, origin);
  await page.waitForLoadState('networkidle');
  const margins = page.getByRole('region', { name: 'Margins' });
  await margins.getByRole('button', { name: /left, Interval: how it came about$/ }).click();
  await expect.poll(() => text(heading(page))).toBe('Interval: left');
  await working(page)
    .getByRole('button', { name: /^Show frame \d+$/ })
    .click();
  await working(page).waitFor({ state: 'hidden' });

  const cycle = page.getByRole('region', { name: 'Cycle' });
  await cycle.getByRole('button', { name: /s, Rig lane: how it came about$/ }).click();
  await expect.poll(() => text(heading(page))).toBe('Rig lane');
  await page.keyboard.press('Escape');

  const balance = await openSection(page, 'Balance & support');
  await balance.getByRole('button', { name: /, On the support: how it came about$/ }).click();
  await expect.poll(() => text(heading(page))).toBe('On the support');

  await working(page).locator('summary', { hasText: 'Other figures' }).click();
  await working(page).getByRole('button', { name: 'Sagitta', exact: true }).click();
  await expect.poll(() => text(heading(page))).toBe('Sagitta');
  expect(await barriers(page)).toEqual([]);
  expect(problems).toEqual([]);
  await context.close();
}, 120_000);

test('what is copied can be worked out elsewhere', async () => {
  const { page, context } = await visit(browser, origin);
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await how(page, 'Clip').click();
  await working(page).getByRole('button', { name: 'Copy as text' }).click();
  await working(page).getByText('Copied').waitFor();
  const copied = await page.evaluate(() => navigator.clipboard.readText());
  const [, formula = ''] = /in plain arithmetic: (.+)/.exec(copied) ?? [];
  const numbers = [...copied.matchAll(/^ {4}(\w+) = ([^\s:]+)/gm)].map(([, name, number]) => [
    name,
    Number(number),
  ]);
  const value = evaluate(formula, Object.fromEntries(numbers));
  expect(copied).toContain(`= ${value} s`);
  await context.close();
});
