/**
 * A whole day of a newcomer, with the network cut after the first visit: from the demo to paper, a calendar and a link,
 * then on set, late, with changes by hand, and through a killed tab.
 */
import { readFileSync } from 'node:fs';
import ICAL from 'ical.js';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { figures, fromBar, openSection, setField, text, verdict } from './parts.ts';
import { readPdf } from './pdf.ts';
import { startBrowser, visit, watch } from './visit.ts';

const origin = inject('origin');
let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

const button = (page: Page, name: string | RegExp) =>
  page.getByRole('button', typeof name === 'string' ? { name, exact: true } : { name });
const region = (page: Page, name: string) => page.getByRole('region', { name, exact: true });
const said = async (page: Page, name: string) => text(region(page, name));
const finding = (page: Page, words: RegExp) =>
  region(page, 'Findings').getByRole('listitem').filter({ hasText: words });

/** The day after the demo's; the sun sets a little earlier, and the start goes by it. */
const DATE = '2026-08-09';
const EVENING = new Date('2026-08-09T18:00:00Z');
const INTERVAL_S = 14;
const LONG = { timeout: 20_000 };

/** Winds the clock on; the last seconds slowly, so that the page can draw them. */
async function wind(page: Page, seconds: number): Promise<void> {
  await page.clock.runFor(Math.max(0, Math.round(seconds * 1000) - 2000));
  for (let n = 0; n < 20; n += 1) await page.clock.runFor(100);
}

/** All that the page can fetch is here, and comes without a network. */
async function ready(page: Page): Promise<void> {
  await fromBar(page, 'Plans');
  await page.getByText('opens without a network').waitFor({ timeout: 60_000 });
  await page.keyboard.press('Escape');
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    while (!navigator.serviceWorker.controller) await new Promise((resume) => setTimeout(resume, 50));
  });
}

test('nothing is lost', async () => {
  const { page, problems, context } = await visit(browser, origin, {
    query: '?demo=harbour-at-dusk',
    offline: true,
    before: (page) => page.clock.install({ time: EVENING }),
  });
  await ready(page);
  await context.setOffline(true);

  // The date: the start follows the sun.
  const before = await text(region(page, 'Pacing'));
  await setField(await openSection(page, 'Place & light'), 'Date', DATE);
  await expect.poll(() => text(region(page, 'Pacing')), LONG).toContain('9 Aug 2026');
  expect(await text(region(page, 'Pacing'))).not.toBe(before);

  // The last step of the ramp is made by hand, so that there is something to do.
  const exposure = await openSection(page, 'Exposure');
  const lastStep = exposure.locator('ol > li').last();
  await lastStep.getByLabel(/in steps of/i).selectOption('full');
  await lastStep.getByLabel(/changed by/i).selectOption('hand');

  // A finding, and one of its ways out.
  const quiet = finding(page, /Quiet moves would shorten/);
  await quiet.getByRole('button', { name: /^Quiet moves/ }).click({ timeout: 60_000 });
  await expect.poll(() => quiet.count(), LONG).toBe(0);
  expect(await verdict(page)).toMatch(/^Shootable/);

  // Paper.
  await page.keyboard.press('Escape');
  await page.evaluate(() => {
    window.print = () => undefined;
  });
  await page.keyboard.press('ControlOrMeta+p');
  await page.locator('body > .run-sheet').waitFor({ state: 'attached' });
  const paper = await readPdf(await page.pdf({ format: 'A4' }));
  expect(paper.length).toBeLessThanOrEqual(2);
  const printed = paper.flatMap(({ lines }) => lines).join('\n');
  expect(printed).toContain('Harbour at dusk: run sheet');
  expect(printed).toContain('9 Aug 2026');

  // The calendar, read back by another program.
  await fromBar(page, 'Take along');
  const along = page.getByRole('dialog', { name: 'Take along' });
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    along.getByRole('button', { name: 'Save: Calendar' }).click(),
  ]);
  const calendar = new ICAL.Component(ICAL.parse(readFileSync(await download.path(), 'utf8')));
  const events = calendar.getAllSubcomponents('vevent').map((event) => new ICAL.Event(event));
  const run = events.find(({ summary }) => /: run$/.test(summary));
  if (!run) throw new Error('the calendar has no run');
  const startMs = run.startDate.toJSDate().getTime();
  expect(new Date(startMs).toISOString()).toMatch(/^2026-08-09T18:3\d/);
  await page.keyboard.press('Escape');

  // The link, in a profile that knows nothing.
  await fromBar(page, 'Share');
  const link = await page.getByLabel('Link to this plan').inputValue();
  await page.keyboard.press('Escape');
  const mine = await figures(page);
  const theirs = await visit(browser, origin, { query: link.slice(origin.length + 1) });
  await expect.poll(() => text(region(theirs.page, 'Pacing')), LONG).toContain('9 Aug 2026');
  expect(await figures(theirs.page)).toEqual(mine);
  await theirs.context.close();

  // On set, five minutes late; the rest is planned again, and the end kept.
  await page.getByRole('link', { name: 'On set' }).click();
  await button(page, /^Start: frame 1 fires now/).waitFor();
  await page.clock.pauseAt(new Date(startMs + 298_000));
  await wind(page, 2);
  await button(page, /^Start: frame 1 fires now/).click();
  await button(page, 'Started late').click();
  await page.locator('.option', { hasText: 'Keep end and interval' }).getByRole('radio').check();
  await button(page, 'Go on like this').click();
  expect(await said(page, 'Progress')).toMatch(/Frame 1 \/ 36\d/);

  // Three things done by hand.
  const done: string[] = [];
  for (let frames = 0; frames < 360 && done.length < 3; frames += 1) {
    await wind(page, INTERVAL_S);
    const due = button(page, /^Done: /).first();
    if ((await due.count()) === 0) continue;
    done.push(await text(due));
    await due.click();
  }
  expect(done).toHaveLength(3);
  const progress = await said(page, 'Progress');
  const log = await said(page, 'Log');

  // The tab is killed, and comes back without a network.
  await page.close();
  expect(problems).toEqual([]);
  const again = watch(await context.newPage(), origin);
  await again.page.clock.resume();
  await again.page.goto(`${origin}/#onset`);
  await region(again.page, 'Progress').waitFor();
  const [, frame = '0', of = '0'] = /Frame (\d+) \/ (\d+)/.exec(progress) ?? [];
  const [, frameNow = '0', ofNow = '1'] =
    /Frame (\d+) \/ (\d+)/.exec(await said(again.page, 'Progress')) ?? [];
  expect(ofNow).toBe(of);
  expect(Number(frameNow) - Number(frame)).toBeLessThan(5);
  expect(await said(again.page, 'Log')).toBe(log);
  await again.page.getByRole('link', { name: 'Plan' }).click();
  expect(await figures(again.page)).toEqual(mine);
  expect(await text(region(again.page, 'Pacing'))).toContain('9 Aug 2026');
  expect(again.problems).toEqual([]);
  await context.close();
}, 300_000);
