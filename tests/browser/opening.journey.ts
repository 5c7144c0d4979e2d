/** The page opens on a demo that is worked out, keeps to itself, and has three demos. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { ASKED_FOR } from '../../src/dev/sizes.ts';
import { figures, figureText, fromBar, verdict } from './parts.ts';
import { startBrowser, THEMES, visit } from './visit.ts';

const origin = inject('origin');
let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

describe('the page opens', () => {
  test('on a plan that is worked out, with its charts', async () => {
    const { page, problems, context } = await visit(browser, origin);
    expect(Number((await figures(page)).Frames)).toBeGreaterThan(1);
    expect(await verdict(page)).toMatch(/^(Shootable|Not shootable)/);
    const run = page.getByRole('region', { name: 'Run', exact: true });
    await run.getByRole('img').first().waitFor();
    const longest = async () =>
      Math.max(
        0,
        ...(await run.locator('path').evaluateAll((all) => all.map((p) => p.getAttribute('d')?.length ?? 0))),
      );
    await expect.poll(longest, { message: 'a series is drawn' }).toBeGreaterThan(500);
    expect(await page.getByRole('region', { name: 'Margins' }).getByRole('listitem').count()).toBeGreaterThan(
      2,
    );
    await page.waitForLoadState('networkidle');
    expect(problems).toEqual([]);
    await context.close();
  });

  test('without what nobody has asked for yet', async () => {
    const { page, context } = await visit(browser, origin);
    await page.waitForLoadState('networkidle');
    await page.waitForTimeout(500);
    const fetched = await page.evaluate(() =>
      performance.getEntriesByType('resource').map(({ name }) => name),
    );
    expect(fetched.filter((name) => /assets\/charts-.*\.js$/.test(name))).toHaveLength(1);
    expect(fetched.filter((name) => ASKED_FOR.test(name))).toEqual([]);
    await context.close();
  });

  test('under a policy that is in force', async () => {
    const { page, problems, context } = await visit(browser, origin);
    await page.evaluate(() => document.body.setAttribute('style', 'color: red'));
    await page.waitForTimeout(100);
    expect(problems.join()).toMatch(/Content Security Policy/);
    await context.close();
  });

  test('with its figures, if the network goes before the charts are there', async () => {
    const { page, context } = await visit(browser, origin, {
      before: (opened) => opened.route(/assets\/(charts|fields)-.*\.js$/, (route) => route.abort()),
    });
    await expect.poll(() => page.getByText('could not be fetched').count()).toBeGreaterThan(1);
    const before = await figureText(page, 'Frames');
    await page
      .getByRole('region', { name: 'Pacing' })
      .getByRole('textbox', { name: 'Interval' })
      .fill('30 s');
    await expect.poll(() => figureText(page, 'Frames')).not.toBe(before);
    await context.close();
  });

  test('with the network gone after loading, and works on', async () => {
    const { page, problems, context } = await visit(browser, origin);
    // All parts have come: on a busy machine the network may rest before the last is asked for.
    for (const name of ['Run', 'Cycle']) {
      await page.getByRole('region', { name, exact: true }).getByRole('img').first().waitFor();
    }
    await page.getByRole('combobox', { name: 'Shutter' }).or(page.getByLabel('Shutter')).first().waitFor();
    await page.waitForLoadState('networkidle');
    await context.setOffline(true);
    const before = await figureText(page, 'Frames');
    await page
      .getByRole('region', { name: 'Pacing' })
      .getByRole('textbox', { name: 'Interval' })
      .fill('30 s');
    await expect.poll(() => figureText(page, 'Frames')).not.toBe(before);
    expect(problems).toEqual([]);
    await context.close();
  });
});

test('three demos open, each worked out', async () => {
  const { page, problems, context } = await visit(browser, origin);
  const seen = new Set<string>();
  for (const demo of ['Harbour at dusk', 'Loaf proving', 'Clay snail']) {
    await fromBar(page, new RegExp(`^${demo}`));
    await expect.poll(() => page.getByLabel('Title of the plan').inputValue()).toBe(demo);
    expect(await verdict(page)).toMatch(/^Shootable/);
    seen.add((await page.getByRole('region', { name: 'Pacing' }).textContent()) ?? '');
  }
  expect(seen.size).toBe(3);
  expect(problems).toEqual([]);
  await context.close();
});

test('the theme goes light, dark, dim and round again, and is remembered', async () => {
  const { page, context } = await visit(browser, origin);
  const theme = () => page.evaluate(() => document.documentElement.getAttribute('data-theme'));
  const paper = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  const papers = new Set<string>();
  for (const name of THEMES) {
    expect(await theme()).toBe(name);
    papers.add(await paper());
    if (name === 'dark') {
      // The visit sets a theme at every load; what counts here is what the page has stored.
      expect(await page.evaluate(() => Object.values({ ...localStorage }))).toContain('dark');
    }
    await page.getByRole('button', { name: /^Theme/ }).click();
  }
  expect(await theme()).toBe('light');
  expect(papers.size).toBe(3);
  await context.close();
});
