/** Everybody can use it: by keys alone, with a reader, in three themes, on a phone. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { violations } from './axe.ts';
import { figureText, fromBar, openAll, setFigure } from './parts.ts';
import { startBrowser, visit } from './visit.ts';

const origin = inject('origin');
let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

const PHONE = { width: 390, height: 844 };
// WCAG 2.2, 1.4.10 (AA): down to 320 px, which is also a desk's window of 1280 px at 400 %.
const PHONES = [PHONE, { width: 320, height: 568 }];

describe('axe finds nothing', () => {
  test('on the page, in a dialog, and with every section open', async () => {
    const { page, context } = await visit(browser, origin);
    await page.waitForLoadState('networkidle');
    expect(await violations(page)).toEqual([]);
    await page.getByRole('button', { name: 'New', exact: true }).click();
    await page.getByRole('dialog', { name: 'New plan' }).waitFor();
    expect(await violations(page, { within: 'dialog[open]' })).toEqual([]);
    await page.keyboard.press('Escape');
    await openAll(page);
    expect(await page.locator('h3 > button[aria-expanded=true]').count()).toBeGreaterThan(10);
    expect(await violations(page)).toEqual([]);
    await context.close();
  }, 150_000);

  // What is on the page is the same in every theme, the colours are not.
  test.each(['dark', 'dim'] as const)('in the colours of the %s theme', async (theme) => {
    const { page, context } = await visit(browser, origin, { theme });
    await page.waitForLoadState('networkidle');
    await openAll(page);
    expect(await violations(page, { theme })).toEqual([]);
    await context.close();
  });

  test('on a phone', async () => {
    const { page, context } = await visit(browser, origin, { viewport: PHONE, touch: true });
    await page.waitForLoadState('networkidle');
    expect(await violations(page)).toEqual([]);
    await context.close();
  });
});

describe('by keys alone', () => {
  /** What has the focus: its tag and name, and whether that can be seen on it or close around it. */
  const focused = (page: Page) =>
    page.evaluate(() => {
      const around: Element[] = [];
      const element = document.activeElement ?? document.body;
      for (let at: Element | null = element; at && around.length < 4; at = at.parentElement) around.push(at);
      const labels =
        element instanceof HTMLInputElement || element instanceof HTMLSelectElement ? element.labels : null;
      return {
        tag: element.tagName.toLowerCase(),
        name: element.getAttribute('aria-label') || labels?.[0]?.textContent || element.textContent || '',
        ring: around.some((at) => getComputedStyle(at).outlineStyle !== 'none'),
      };
    });

  /** Goes on with Tab until what has the focus fits. */
  async function tabTo(page: Page, wanted: string): Promise<void> {
    for (let presses = 0; presses < 200; presses += 1) {
      if (await page.evaluate((selector) => document.activeElement?.matches(selector), wanted)) return;
      await page.keyboard.press('Tab');
    }
    throw new Error(`${wanted} was not reached with Tab`);
  }

  test('every stop on the way through the page has a name and can be seen', async () => {
    const { page, context } = await visit(browser, origin);
    await page.waitForLoadState('networkidle');
    const stops: Awaited<ReturnType<typeof focused>>[] = [];
    do {
      await page.keyboard.press('Tab');
      stops.push(await focused(page));
    } while (stops.at(-1)?.tag !== 'body' && stops.length < 300);
    expect(stops.length).toBeGreaterThan(20);
    const odd = stops
      .slice(0, -1)
      .filter(({ tag, name, ring }) => name.trim() === '' || !ring || tag === 'g')
      .map(({ tag, name, ring }) => `${tag} '${name}'${ring ? '' : ' without a ring'}`);
    expect(odd).toEqual([]);
    await context.close();
  });

  test('a figure is edited and a finding reached', async () => {
    const { page, context } = await visit(browser, origin);
    await page.waitForLoadState('networkidle');
    await tabTo(page, 'input[aria-label^="Interval"]');
    const before = await figureText(page, 'Frames');
    await page.keyboard.press('Control+KeyA');
    await page.keyboard.type('5 s');
    await page.keyboard.press('Enter');
    await expect.poll(() => figureText(page, 'Frames')).not.toBe(before);
    await page.keyboard.press('ArrowUp');
    await expect.poll(() => figureText(page, 'Interval')).toBe('6 s');

    const findings = page.getByRole('region', { name: 'Findings' });
    await tabTo(page, 'section[aria-labelledby] li button, [id^=finding-] button');
    expect(await findings.evaluate((region) => region.contains(document.activeElement))).toBe(true);
    await page.keyboard.press('Enter');
    await context.close();
  });

  // WCAG 2.2, 2.1.4 (A): keys of one character can be switched off.
  test('single keys lead to the views, until they are switched off', async () => {
    const { page, context } = await visit(browser, origin);
    const at = () => page.evaluate(() => location.hash);
    // They come with the fields.
    await page.waitForLoadState('networkidle');
    await page.keyboard.press('2');
    await expect.poll(at).toBe('#days');
    await fromBar(page, 'Keys');
    await page.getByLabel('1 2 3 4, P, C and [ ] act anywhere on the page').uncheck();
    await page.keyboard.press('Escape');
    await page.locator('body').press('3');
    await page.locator('body').press('p');
    expect(await at()).toBe('#days');
    expect(await page.getByRole('dialog').count()).toBe(0);
    await page.reload();
    await page.waitForLoadState('networkidle');
    await page.locator('body').press('3');
    expect(await at()).toBe('#days');
    await context.close();
  });

  test('a new plan is asked for and worked out', async () => {
    const { page, context } = await visit(browser, origin);
    await tabTo(page, 'header button:not([disabled])');
    await page.getByRole('button', { name: 'New', exact: true }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('dialog', { name: 'New plan' }).waitFor();
    await tabTo(page, 'dialog input');
    await page.keyboard.press('Control+KeyA');
    await page.keyboard.type('40 min');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Control+KeyA');
    await page.keyboard.type('12 s');
    await page.keyboard.press('Enter');
    await expect.poll(() => figureText(page, 'Frames')).toBe('301');
    await context.close();
  });

  // The browser tells of a closed dialog in a task of its own, which may come after the next dialog was asked for.
  test('a dialog that is asked for at the moment it is closed stands', async () => {
    const { page, context } = await visit(browser, origin);
    const dialog = page.getByRole('dialog', { name: 'New plan' });
    await page.getByRole('button', { name: 'New', exact: true }).press('Enter');
    await dialog.getByRole('button', { name: 'Cancel' }).evaluate(async (cancel: HTMLElement) => {
      const told = new Promise((resume) => cancel.closest('dialog')?.addEventListener('close', resume));
      cancel.click();
      await null;
      for (const button of document.querySelectorAll<HTMLElement>('header button'))
        if (button.textContent === 'New') button.click();
      await told;
    });
    await page.waitForTimeout(50);
    expect(await dialog.isVisible()).toBe(true);
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'hidden' });
    await context.close();
  });
});

describe.each(PHONES)('at $width px', (viewport) => {
  // WCAG 2.2, 2.5.8 (AA): 24 px; what is in a sentence is excepted.
  const small = (page: Page) =>
    page.locator('button, select, summary, input:not([type=file])').evaluateAll((all) =>
      all.flatMap((element) => {
        const { width, height } = element.getBoundingClientRect();
        const seen = width > 0 && height > 0 && getComputedStyle(element).visibility !== 'hidden';
        return seen && (width < 24 || height < 24)
          ? [`${element.outerHTML.slice(0, 90)} ${width} x ${height}`]
          : [];
      }),
    );

  test('nothing scrolls sideways and what is touched is large enough, with every section open too', async () => {
    const { page, context, fetchedAll } = await visit(browser, origin, { viewport, touch: true });
    await page.waitForLoadState('networkidle');
    const excess = () =>
      page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    expect(await excess()).toBe(0);
    expect(await small(page)).toEqual([]);
    await openAll(page);
    // What sections hold comes with a script of its own.
    await fetchedAll();
    await page.locator('[data-path="move.tracks.0.keyframes.0.share"]').waitFor();
    expect(await excess()).toBe(0);
    expect(await small(page)).toEqual([]);
    for (const [hash, there] of [
      ['#days', '.after td'],
      ['?demo=clay-snail#sheet', '[role=row]'],
    ] as const) {
      await page.goto(`${origin}/${hash}`);
      await page.locator(there).first().waitFor();
      await openAll(page);
      expect(await excess(), hash).toBe(0);
    }
    await context.close();
  });

  test('a plan is made and changed by touch', async () => {
    const { page, problems, context } = await visit(browser, origin, { viewport, touch: true });
    await page.getByRole('button', { name: 'More', exact: true }).tap();
    await page.getByRole('button', { name: 'New plan', exact: true }).tap();
    const dialog = page.getByRole('dialog', { name: 'New plan' });
    await dialog.getByLabel('Event').fill('40 min');
    await dialog.getByLabel('Clip').fill('12 s');
    await dialog.getByRole('button', { name: 'Work it out' }).tap();
    await expect.poll(() => figureText(page, 'Frames')).toBe('301');
    await setFigure(page, 'Clip', '6 s');
    await expect.poll(() => figureText(page, 'Interval')).toBe('16 s');
    expect(problems).toEqual([]);
    await context.close();
  });
});
