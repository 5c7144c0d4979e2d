/** From what is wrong to what to do about it: ways out, the ladder of intervals, the slip, a copy to compare with. */
import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { benchPlan } from '../bench/plans.ts';
import { violations } from './axe.ts';
import {
  figures,
  figureText,
  fromBar,
  marginText,
  openSection,
  pickFile,
  plain,
  setField,
  setFigure,
  text,
} from './parts.ts';
import { startBrowser, visit } from './visit.ts';

const origin = inject('origin');
let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

const PHONE = { width: 390, height: 844 };

/** All ways out are tried: on a busy machine that takes its time. */
const TRIED = { timeout: 40_000 };

const findings = (page: Page) => page.getByRole('region', { name: 'Findings' });

/** The finding that says something. */
const finding = (page: Page, words: RegExp) =>
  findings(page).getByRole('listitem').filter({ hasText: words });

/** Ways out of a finding, or of all. */
const ways = (page: Page, words?: RegExp) =>
  (words ? finding(page, words) : findings(page)).getByRole('list', { name: 'Ways out' }).locator('.fix');

/** No way out is still being looked for. */
const allTried = (page: Page) =>
  expect
    .poll(() => findings(page).locator('.fix[aria-disabled=true], .ways:empty').count(), TRIED)
    .toBe(0)
    .then(() => expect.poll(() => findings(page).getByText('Looking for ways out').count(), TRIED).toBe(0));

/** The plan's file, as it would be saved. */
async function saved(page: Page): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save', exact: true }).click(),
  ]);
  return readFileSync(await download.path(), 'utf8');
}

/** Goes on with Tab until the focus is on a way out. */
async function tabToWay(page: Page): Promise<string> {
  for (let presses = 0; presses < 200; presses += 1) {
    await page.keyboard.press('Tab');
    const there = await page.evaluate(() =>
      document.activeElement?.matches('.fix') ? document.activeElement.textContent : null,
    );
    if (there !== null) return plain(there);
  }
  throw new Error('no way out was reached with Tab');
}

describe('a plan broken by typing', () => {
  const FULL = /card is full/;

  async function broken(options: Parameters<typeof visit>[2] = {}) {
    const opened = await visit(browser, origin, options);
    await setFigure(opened.page, 'Interval', '5 s');
    await finding(opened.page, FULL).waitFor();
    await allTried(opened.page);
    return opened;
  }

  test('has ways out, which are looked at and taken by keys, and undone exactly', async () => {
    const { page, problems, context } = await broken();
    expect(await ways(page, FULL).count()).toBeGreaterThan(0);
    const file = await saved(page);
    const before = await figures(page);

    await findings(page).getByRole('listitem').first().focus();
    let way = '';
    do way = await tabToWay(page);
    while (!/^Interval to/.test(way));
    const over = page.locator('.if-verdict');
    await over.waitFor();
    const then = await text(over);
    const shown = page.locator('.if-figure');
    expect(await shown.count()).toBeGreaterThan(1);
    const [, interval = ''] = /^Interval to ([\d.]+ s)/.exec(way) ?? [];
    expect(await text(shown.filter({ hasText: '5' }).first())).toContain(interval);
    // It is only looked at.
    expect(await figures(page)).toEqual(before);

    await page.keyboard.press('Enter');
    await expect.poll(() => figureText(page, 'Interval')).toBe(interval);
    expect(await over.count()).toBe(0);
    const done = findings(page).locator('#finding-taken');
    expect(await text(done)).toMatch(new RegExp(`Interval is now ${interval}: .*Undo$`));
    expect(await done.evaluate((row) => row === document.activeElement)).toBe(true);
    expect(then.replace(/^With it: /, '')).toBe(
      await text(page.getByRole('region', { name: 'Pacing' }).getByRole('status')),
    );

    await page.keyboard.press('Control+z');
    expect(await figures(page)).toEqual(before);
    expect(await done.count()).toBe(0);
    expect(await saved(page)).toBe(file);
    expect(problems).toEqual([]);
    await context.close();
  });

  test('is mended with a click, and the way back is in the place of the finding', async () => {
    const { page, problems, context } = await broken();
    const file = await saved(page);
    // What it costs came about somehow.
    const cost = findings(page).getByRole('button', { name: /frames?, cost of .*: how it came about$/ });
    const lost = await text(cost.first());
    await cost.first().click();
    const working = page.getByRole('dialog', { name: 'How it came about' });
    await expect.poll(() => text(working)).toContain(`${lost.replace(' frames', '')} frames`);
    expect(await text(working)).toMatch(
      /frames with this way out [-−] frames as it is ?= \d+ frames [-−] \d+ frames/,
    );
    await page.keyboard.press('Escape');

    await ways(page, FULL).first().hover();
    await page.locator('.if-verdict').waitFor();
    await ways(page, FULL).first().click();
    await expect.poll(() => finding(page, FULL).count()).toBe(0);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await finding(page, FULL).waitFor();
    await expect.poll(() => page.evaluate(() => document.activeElement?.id ?? '')).toMatch(/^finding-\d+$/);
    expect(await saved(page)).toBe(file);

    // The next edit takes the word of it away.
    await allTried(page);
    await ways(page, FULL).first().click();
    await findings(page).locator('#finding-taken').waitFor();
    await setFigure(page, 'Interval', '5.5 s');
    await expect.poll(() => findings(page).locator('#finding-taken').count()).toBe(0);
    expect(problems).toEqual([]);
    await context.close();
  });

  test('says how late it may start, and what fails then', async () => {
    const { page, problems, context } = await visit(browser, origin);
    await page.keyboard.press('Tab');
    await expect.poll(() => marginText(page, 'Start may slip by'), TRIED).toMatch(/\d+ (s|min|h).*then: /);
    expect(problems).toEqual([]);
    await context.close();
  });

  test('on a phone, with ways out as rows that a thumb can hit', async () => {
    const { page, problems, context } = await broken({ viewport: PHONE, touch: true });
    const boxes = await ways(page).evaluateAll((all) =>
      all.map((way) => {
        const { width, height } = way.getBoundingClientRect();
        return { wide: width / (way.closest('li.find')?.clientWidth ?? 1), height };
      }),
    );
    expect(boxes.length).toBeGreaterThan(2);
    for (const { wide, height } of boxes) {
      expect(wide).toBeGreaterThan(0.85);
      expect(height).toBeGreaterThanOrEqual(44);
    }
    expect(await violations(page)).toEqual([]);
    await ways(page, FULL).first().tap();
    await findings(page).getByRole('button', { name: 'Undo', exact: true }).tap();
    await finding(page, FULL).waitFor();
    await expect
      .poll(() => page.evaluate(() => document.documentElement.scrollWidth - innerWidth))
      .toBeLessThanOrEqual(0);
    expect(problems).toEqual([]);
    await context.close();
  });

  test('keeps its findings where the worker cannot be fetched, and says so', async () => {
    const { page, context } = await visit(browser, origin, {
      before: (opened) => opened.route(/fixes\.worker-.*\.js$/, (route) => route.abort()),
    });
    await setFigure(page, 'Interval', '5 s');
    await findings(page).getByText('Ways out could not be fetched.').waitFor();
    expect(await finding(page, FULL).count()).toBe(1);
    expect(await findings(page).getByText('Looking for').count()).toBe(0);
    await context.close();
  });
});

describe('the interval ladder', () => {
  const ladder = (page: Page) => page.getByRole('table').filter({ hasText: 'Worst finding' });
  const openLadder = async (page: Page) => {
    await page.getByRole('button', { name: 'Interval ladder' }).click();
    await ladder(page).getByRole('button', { name: 'as planned' }).waitFor(TRIED);
  };

  test('shows other settings of the trigger; one is taken by keys and undone', async () => {
    const { page, problems, context } = await visit(browser, origin);
    const file = await saved(page);
    await openLadder(page);
    expect(await ladder(page).getByRole('row').count()).toBeGreaterThan(5);
    expect(await violations(page)).toEqual([]);
    await ladder(page).getByRole('button', { name: 'as planned' }).focus();
    await page.keyboard.press('ArrowDown');
    const row = ladder(page).locator('tr:has(button:focus)');
    const setting = await text(row.getByRole('rowheader'));
    const frames = await text(row.getByRole('cell').nth(1));
    await page.keyboard.press('Enter');
    await expect.poll(() => figureText(page, 'Interval')).toBe(setting);
    expect(await figureText(page, 'Frames')).toBe(frames);
    await ladder(page)
      .getByRole('button', { name: `${setting}, as planned` })
      .waitFor();
    const said = page.getByText(`Interval is now ${setting}`).last();
    await said.getByRole('button', { name: 'Undo' }).click();
    expect(await saved(page)).toBe(file);
    expect(problems).toEqual([]);
    await context.close();
  });

  test('on a phone: a row is taken by touch', async () => {
    const { page, problems, context } = await visit(browser, origin, { viewport: PHONE, touch: true });
    await openLadder(page);
    const small = await ladder(page)
      .getByRole('rowheader')
      .getByRole('button')
      .evaluateAll((all) => all.filter((button) => button.getBoundingClientRect().height < 44).length);
    expect(small).toBe(0);
    expect(
      await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth),
    ).toBe(0);
    const other = ladder(page).getByRole('row').nth(1);
    const setting = await text(other.getByRole('rowheader'));
    await other.tap();
    await expect.poll(() => figureText(page, 'Interval')).toBe(setting);
    expect(problems).toEqual([]);
    await context.close();
  });
});

test('a copy of the plan is kept through a reload, compared, and taken back', async () => {
  const { page, problems, context } = await visit(browser, origin);
  const dialog = page.getByRole('dialog', { name: 'Compare with a copy' });
  await fromBar(page, 'Compare with a copy');
  await dialog.getByRole('button', { name: 'Keep a copy to compare with' }).click();
  await dialog.getByText('The plan is as the copy is.').waitFor();
  await page.keyboard.press('Escape');
  const file = await saved(page);

  await setFigure(page, 'Interval', '5 s');
  await setField(await openSection(page, 'Cycle'), 'Guard', '2 s');
  // A reload breaks off what is still being fetched, such as the worker.
  await allTried(page);
  expect(problems).toEqual([]);
  await page.reload();
  await page.getByRole('main').waitFor();
  await page.keyboard.press('c');
  const inputs = dialog.getByRole('table').filter({ hasText: 'Inputs' });
  await inputs.waitFor();
  const rows = (await inputs.getByRole('row').allTextContents()).map(plain);
  expect(rows).toContain('IntervalPacing14 s5 s');
  expect(rows).toContain('GuardCycle1 s2 s');
  const came = dialog.getByRole('table').filter({ hasText: 'Findings' });
  expect(plain((await came.textContent()) ?? '')).toMatch(/Came.*Stop.*card is full/);
  expect(await violations(page)).toEqual([]);

  await dialog.getByRole('button', { name: 'Take the copy back' }).click();
  await dialog.getByText('The plan is as the copy is.').waitFor();
  await page.keyboard.press('Escape');
  expect(await saved(page)).toBe(file);
  await page.keyboard.press('Control+z');
  expect(await figureText(page, 'Interval')).toBe('5 s');

  await page.keyboard.press('c');
  await dialog.getByRole('button', { name: 'Swap' }).click();
  await page.keyboard.press('Escape');
  expect(await saved(page)).toBe(file);
  await page.keyboard.press('c');
  expect(plain((await inputs.getByRole('row').last().textContent()) ?? '')).toBe('GuardCycle2 s1 s');
  await dialog.getByRole('button', { name: 'Forget the copy' }).click();
  await dialog.getByRole('button', { name: 'Keep a copy to compare with' }).waitFor();
  expect(problems).toEqual([]);
  await context.close();
});

test('the time of a finding takes the sheet along, and its count leads back from the sheet', async () => {
  const { page, problems, context } = await visit(browser, origin);
  const time = findings(page)
    .getByRole('button', { name: /^Show frame \d+/ })
    .first();
  const frame = /frame (\d+)/.exec((await time.getAttribute('aria-label')) ?? '')?.[1] ?? '';
  await time.click();
  await page.locator('body').press('3');
  const row = page.getByRole('grid', { name: 'Frames' }).locator('[aria-selected=true]');
  await expect.poll(async () => (await row.getAttribute('id')) ?? '').toBe(`frame-${frame}`);
  await page
    .getByRole('button', { name: /1.warning/ })
    .filter({ visible: true })
    .click();
  await findings(page).waitFor();
  await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('finding-0');
  expect(problems).toEqual([]);
  await context.close();
});

test('the exposure sheet goes to the exposure of a finding', async () => {
  const { page, problems, context } = await visit(browser, origin, { query: '?demo=clay-snail' });
  await setField(await openSection(page, 'Cycle'), 'Guard', '203 s');
  const time = findings(page)
    .getByRole('button', { name: /^Show frame (?!1,)\d+/ })
    .first();
  const frame = /frame (\d+)/.exec((await time.getAttribute('aria-label')) ?? '')?.[1] ?? '';
  await time.click();
  await page.locator('body').press('3');
  const row = page.getByRole('grid', { name: 'Exposure sheet' }).locator('[aria-selected=true]').first();
  await expect.poll(() => row.getAttribute('id')).toBe(`row-exposure-${Number(frame) - 1}`);
  expect(problems).toEqual([]);
  await context.close();
});

/** Share of some seconds in which the page's thread was too busy to paint or to take a key, 0 to 1. */
const busyShare = (page: Page, seconds: number): Promise<number> =>
  page.evaluate(async (s) => {
    let busyMs = 0;
    const observer = new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) busyMs += duration;
    });
    observer.observe({ type: 'longtask' });
    const from = performance.now();
    await new Promise((resume) => setTimeout(resume, s * 1000));
    observer.disconnect();
    return busyMs / (performance.now() - from);
  }, seconds);

test('figures of days at one frame a second do not wait for the ways out', async () => {
  const { page, problems, context } = await visit(browser, origin);
  // So many that the ways out take more than a second on a fast machine too.
  await pickFile(page, 'long.json', JSON.stringify(benchPlan(432_000)));
  await expect.poll(() => figureText(page, 'Frames'), TRIED).toBe('432000');
  const looking = findings(page).getByText('Looking for ways out');
  await looking.or(findings(page).locator('.fix')).first().waitFor(TRIED);
  for (const clip of ['15000 s', '17000 s']) {
    const before = await figureText(page, 'Frames');
    await setFigure(page, 'Clip', clip);
    expect(await figureText(page, 'Frames')).not.toBe(before);
    expect(await looking.or(findings(page).locator('.fix[aria-disabled=true]')).count()).toBeGreaterThan(0);
    // What follows the edit on the page itself, such as the charts, has its time.
    await page.waitForTimeout(1000);
    await expect.poll(() => page.workers().length).toBeGreaterThan(0);
    expect(await busyShare(page, 1)).toBeLessThan(0.5);
  }
  expect(problems).toEqual([]);
  await context.close();
});
