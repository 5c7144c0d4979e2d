/** The working behind a figure, by keys alone: opened, gone on from, come back to, closed. */
import { evaluate } from 'mathjs';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { violations } from './axe.ts';
import { figureText, fromBar, newPlan, openSection, plain, setFigure, text } from './parts.ts';
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

test('a figure is followed to what it is made of, by keys alone', async () => {
  const { page, problems, context } = await visit(browser, origin);
  // Worked by hand: 12 s x 25 fps = 300 frames; 2400 s / 299 = 8.027 s, dialled down to 8 s.
  await newPlan(page, '40 min', '12 s');
  await how(page, 'Interval').focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => text(heading(page))).toBe('Interval');
  expect(await text(working(page).getByRole('status').first())).toBe('8 s');
  expect(await text(working(page).locator('.working-formula'))).toContain('⌊steps of the dial⌋');
  expect(await violations(page)).toEqual([]);

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

  // Sentences: what the run makes of a track, and what the ringing comes to.
  const move = await openSection(page, 'Move');
  await move.locator('[data-figure="axes.Pan.repeats"]').press('Enter');
  await expect.poll(() => text(heading(page))).toBe('Pan: frames that repeat a position');
  expect(await text(working(page).locator('.working-value output'))).toBe('10 frames');
  await page.keyboard.press('Escape');
  await working(page).waitFor({ state: 'hidden' });
  await move.locator('[data-figure="ringing.savesS"]').click();
  await expect.poll(() => text(heading(page))).toBe('What quiet moves save');
  await page.keyboard.press('Escape');

  // The verdict, and a finding: a figure of its own, and one that it shares.
  const verdict = page.getByRole('region', { name: 'Pacing' }).locator('.verdict .how');
  await verdict.press('Enter');
  await expect.poll(() => text(heading(page))).toBe('Interval: left above the reserve');
  await page.keyboard.press('Escape');
  const findings = page.getByRole('region', { name: 'Findings' });
  await findings.getByRole('button', { name: /^\d+ frames?: how it came about$/ }).click();
  await expect.poll(() => text(heading(page))).toBe('Frames lost');
  await page.keyboard.press('Escape');
  await working(page).waitFor({ state: 'hidden' });

  const balance = await openSection(page, 'Balance & support');
  await balance.getByRole('button', { name: /, On the support: how it came about$/ }).click();
  await expect.poll(() => text(heading(page))).toBe('On the support');

  await working(page).locator('summary', { hasText: 'Other figures' }).click();
  await working(page).getByRole('button', { name: 'Sagitta', exact: true }).click();
  await expect.poll(() => text(heading(page))).toBe('Sagitta');
  expect(await violations(page)).toEqual([]);
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

/** A plain number that a figure is shown as, and the number that a dialog says; null for anything else. */
const numberOf = (said: string): number | null => {
  const [, number] = /^([-+]?[0-9]+)( (frames|exposures|days|packs?))?$/.exec(said) ?? [];
  return number === undefined ? null : Number(number);
};

/** What stands there, whose figure it is and how it is heard: all at one instant, for a figure may tick. */
const seen = (pressed: Locator) =>
  pressed.evaluate((button) => ({
    said: button.textContent ?? '',
    figure: button.getAttribute('data-figure') ?? '',
    label: button.getAttribute('aria-label') ?? '',
  }));

/** Opens every figure of the view, one after another. Gives what they were, and what was wrong with them. */
async function walk(page: Page): Promise<{ figures: string[]; wrong: string[] }> {
  const all = page.getByRole('main').locator('.how').filter({ visible: true });
  const count = await all.count();
  const figures: string[] = [];
  const wrong: string[] = [];
  for (let n = 0; n < count; n += 1) {
    const pressed = all.nth(n);
    const { figure, ...words } = await seen(pressed);
    const [said, label] = [plain(words.said), plain(words.label)];
    await pressed.press('Enter');
    await heading(page).waitFor();
    const has = (await text(heading(page))) !== 'No working';
    const shown = has ? await text(working(page).getByRole('status').first()) : '';
    const name = has ? await text(working(page).locator('.working-text')) : '';
    // A countdown counts seconds that have begun in full: it is no clock.
    const [clock] = figure.endsWith('S') ? [] : (/^\d\d:\d\d(:\d\d)?$/.exec(said) ?? []);
    const number = numberOf(said);
    if (!has) wrong.push(`${figure}: ${said} has none`);
    if (has && !figure.startsWith('onset.') && !name.endsWith(`Name at the prompt ${figure}`))
      wrong.push(`${figure}: ${name}`);
    if (clock !== undefined && !shown.includes(clock)) wrong.push(`${figure}: ${said} is ${shown}`);
    if (number !== null && Number.parseFloat(shown) !== number) wrong.push(`${figure}: ${said} is ${shown}`);
    if (!label.startsWith(said)) wrong.push(`${label} does not begin with ${said}`);
    figures.push(figure);
    await page.keyboard.press('Escape');
    // The page learns of it a moment after it is gone from sight.
    await page.locator('dialog').waitFor({ state: 'detached' });
  }
  return { figures, wrong };
}

test('every figure of a sheet opens its own working', async () => {
  const { page, problems, context } = await visit(browser, origin, { query: '?demo=clay-snail#sheet' });
  const next = page.getByRole('region', { name: 'Next exposure' });
  for (const exposure of [1, 2, 3])
    await next.getByRole('button', { name: `Mark ${exposure} done`, exact: true }).click();
  await page.getByRole('region', { name: 'Pace' }).waitFor();
  const { figures, wrong } = await walk(page);
  expect(wrong).toEqual([]);
  for (const figure of [
    'sheet.screenS',
    'totals.frameRate',
    'sheet.frames',
    'sheet.exposures',
    'sheet.eachMin',
    'sheet.workMin',
    'sheet.days',
    'sheet.day.1.from',
    'sheet.finishAt',
    'sheet.finishAtPace',
    'sheet.done',
    'sheet.exposure.4.timecode',
    'sheet.exposure.4.axes.Slide.position',
    'sheet.day.1.workMin',
    'sheet.energyWh',
  ])
    expect(figures).toContain(figure);
  expect(await violations(page)).toEqual([]);
  // A cell is chosen by pressing it, and opens by a key; the foot has it too.
  await page.locator('[data-kind=exposure][data-index="5"] [data-column=clock]').click();
  await page.keyboard.press('?');
  await expect.poll(() => text(heading(page))).toBe('Exposure 6: clock');
  await page.keyboard.press('Escape');
  await working(page).waitFor({ state: 'hidden' });
  await page.keyboard.press('ArrowDown');
  await page.locator('.cell-foot [data-figure="sheet.exposure.7.clock"]').waitFor();
  // In a cell of words the key is what it says.
  await page.locator('[data-kind=exposure][data-index="5"] [data-column=text]').click();
  await page.keyboard.press('?');
  expect(await page.locator('.in-cell').inputValue()).toBe('?');
  await page.keyboard.press('Escape');
  // The exposure that one is at has its figures in the list.
  await how(page, 'Work').click();
  await working(page).locator('summary', { hasText: 'Other figures' }).click();
  await working(page).getByRole('button', { name: 'Exposure 6: takes', exact: true }).click();
  await expect.poll(() => text(heading(page))).toBe('Exposure 6: takes');
  // Where work stops: by keys to its clock, by pressing it to all of it. When it is, goes by the hour of the test.
  await page.keyboard.press('Escape');
  await working(page).waitFor({ state: 'hidden' });
  await page.locator('[data-kind=exposure][data-index="5"] [data-column=clock]').click();
  await page.keyboard.press('Alt+PageDown');
  await page.keyboard.press('?');
  await expect.poll(() => text(heading(page))).toMatch(/: (break begins|work ends)$/);
  await page.keyboard.press('Escape');
  await working(page).waitFor({ state: 'hidden' });
  await page
    .locator('[data-kind=pause]')
    .first()
    .getByText(/Break|ends/)
    .click();
  await page.locator('.cell-foot [data-figure^="sheet.day."]').filter({ hasText: /min|h/ }).click();
  await expect.poll(() => text(heading(page))).toMatch(/: (break|until work goes on)$/);
  // 51 frames do not divide evenly on twos: that is said, and its figure opens its working too.
  await page.keyboard.press('Escape');
  await working(page).waitFor({ state: 'hidden' });
  await page.getByRole('button', { name: 'Go to 4' }).click();
  await page.locator('[data-kind=action] [data-column=frames]').nth(2).click();
  await page.keyboard.type('51');
  await page.keyboard.press('Enter');
  const found = page.getByRole('region', { name: 'Findings' });
  await found.getByRole('button', { name: /^51\sframes: how/ }).click();
  await expect.poll(() => text(working(page).locator('.working-value'))).toBe('51 frames');
  expect(problems).toEqual([]);
  await context.close();
}, 240_000);

test('every figure of the days opens its own working, on another date too', async () => {
  const { page, problems, context } = await visit(browser, origin, { query: '?demo=harbour-at-dusk#days' });
  await page.locator('[data-figure="days.2026.fits"]').last().waitFor();
  const { figures, wrong } = await walk(page);
  expect(wrong).toEqual([]);
  for (const what of ['sunset', 'moonrise', 'solarNoon.azimuthDeg', 'moonLitShare', 'offsetMin', 'start'])
    expect(figures).toContain(`days.2026-08-08.${what}`);
  for (const what of ['from', 'to', 'lengthS', 'earliest', 'latest', 'spareS'])
    expect(figures).toContain(`days.2026-08-08.window.1.${what}`);
  expect(figures).toContain('days.2026.fits');
  expect(figures).toContain('run.neededS');
  expect(await violations(page)).toEqual([]);

  await page.getByRole('button', { name: 'Sun 9 Aug', exact: true }).click();
  await page.getByRole('heading', { name: 'Sunday 9 August 2026' }).waitFor();
  const sunset = page.locator('[data-figure="days.2026-08-09.sunset"]');
  const clock = await text(sunset);
  await sunset.click();
  await expect.poll(() => text(heading(page))).toBe('Sunset');
  expect(await text(working(page).getByRole('status').first())).toBe(`${clock}, Sun 9 Aug 2026`);
  await working(page).getByRole('button', { name: 'worked out: how by UTC came about' }).click();
  await working(page).getByRole('button', { name: 'worked out: how hour angle came about' }).click();
  await expect.poll(() => text(heading(page))).toBe('Sunset: hour angle');
  await page.keyboard.press('Escape');

  // The year as a table: by keys to the second of January, its sunrise.
  await page.getByRole('button', { name: 'Show as table: the year’s light' }).click();
  const year = page.getByRole('grid', { name: 'Days of 2026, table' });
  await year.focus();
  for (const key of ['ArrowDown', 'ArrowDown', 'ArrowRight', '?']) await page.keyboard.press(key);
  await expect.poll(() => text(heading(page))).toBe('Sunrise');
  expect(await text(working(page).locator('.working-value'))).toContain('Fri 2 Jan 2026');
  await page.keyboard.press('Escape');
  await working(page).waitFor({ state: 'hidden' });
  expect(await year.evaluate((element) => element === document.activeElement)).toBe(true);
  await year.getByRole('gridcell', { name: /^Fits/ }).first().click();
  await page.locator('.cell-foot .how').click();
  await expect.poll(() => text(heading(page))).toMatch(/spare/i);
  expect(await violations(page)).toEqual([]);
  expect(problems).toEqual([]);
  await context.close();
}, 240_000);

test('every figure on set opens its own working, before the run, in it and in a pause', async () => {
  const { page, problems, context } = await visit(browser, origin, {
    query: '?demo=harbour-at-dusk#onset',
    before: (opening) => opening.clock.install({ time: new Date('2026-08-08T18:30:00Z') }),
  });
  const start = page.getByRole('button', { name: /^Start: frame 1 fires now/ });
  await start.waitFor();
  const before = await walk(page);
  expect(before.wrong).toEqual([]);
  for (const figure of [
    'onset.toFirstS',
    'totals.frames',
    'totals.firstFrameAt',
    'onset.step.1.at',
    'balance.cameraOffNm',
  ])
    expect(before.figures).toContain(figure);

  await start.click();
  await page.clock.runFor(100_000);
  const running = await walk(page);
  expect(running.wrong).toEqual([]);
  for (const what of ['toNextS', 'begun', 'frames', 'percent', 'left', 'endAt', 'doneAt', 'lateS'])
    expect(running.figures).toContain(`onset.${what}`);
  expect(running.figures.filter((figure) => /^onset\.moment\..*\.(at|inS)$/.test(figure))).toHaveLength(6);
  await how(page, 'Next shutter in').click();
  await working(page)
    .getByRole('button', { name: /^worked out: how frame \d+ opens came about$/ })
    .click();
  expect(await text(heading(page))).toMatch(/^Frame \d+ opens$/);
  expect(await violations(page)).toEqual([]);
  await page.keyboard.press('Escape');

  await page.getByRole('button', { name: 'Pause', exact: true }).click();
  await page.clock.runFor(30_000);
  const paused = await walk(page);
  expect(paused.wrong).toEqual([]);
  expect(paused.figures).toContain('onset.pausedS');
  expect(paused.figures).toContain('onset.pausedAt');
  for (const what of ['frames', 'clipS', 'endAt', 'dialS'])
    expect(paused.figures).toContain(`onset.then.${what}`);
  // Of what a way to go on takes away.
  expect(paused.figures).toContain('ringing.shortestIntervalWithoutS');
  expect(problems).toEqual([]);
  await context.close();
}, 240_000);

test('from a comparison one comes back to it; the ladder’s present row has its workings', async () => {
  const { page, problems, context } = await visit(browser, origin);
  await page.waitForLoadState('networkidle');
  await fromBar(page, 'Compare with a copy');
  const compare = page.getByRole('dialog', { name: 'Compare with a copy' });
  await compare.getByRole('button', { name: 'Keep a copy to compare with' }).click();
  await compare.getByRole('button', { name: 'Close' }).click();
  await setFigure(page, 'Interval', '20 s');
  await fromBar(page, 'Compare with a copy');
  await compare.locator('[data-figure="totals.frames"]').click();
  await expect.poll(() => text(heading(page))).toBe('Frames');
  await page.keyboard.press('Escape');
  await compare.waitFor();
  // The copy's has its own: 90 min at 14 s are 386 frames, not the 271 of the plan now.
  await compare.locator('[data-figure="copy:totals.frames"]').click();
  await expect.poll(() => text(working(page).locator('.working-value'))).toBe('386 frames');
  await page.keyboard.press('Escape');
  await compare.waitFor();
  await page.keyboard.press('Escape');
  await compare.waitFor({ state: 'hidden' });

  await page.getByRole('button', { name: /^Interval ladder/ }).click();
  const row = page.locator('tr.present');
  await row.locator('[data-figure="run.swaps"]').click();
  await expect.poll(() => text(heading(page))).toBe('Swaps');
  await page.keyboard.press('Escape');
  await working(page).waitFor({ state: 'hidden' });
  expect(await row.locator('.how').count()).toBe(8);
  // Of another setting, by keys: 5400 s / 22 s are 245 intervals, 246 frames. The plan stays as it is.
  await row.getByRole('button', { name: /as planned/ }).focus();
  for (const key of ['ArrowDown', 'ArrowDown', 'ArrowRight', 'Enter']) await page.keyboard.press(key);
  await expect.poll(() => text(working(page).locator('.working-value'))).toBe('246 frames');
  await page.keyboard.press('Escape');
  await working(page).waitFor({ state: 'hidden' });
  expect(await figureText(page, 'Interval')).toBe('20 s');

  // The frames of the run as a table: a cell by pressing it, the one beside it by key.
  await page.getByRole('link', { name: 'Sheet', exact: true }).click();
  await page.locator('.r.frame [data-column=clock]').nth(2).click();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('?');
  await expect.poll(() => text(heading(page))).toBe('Exposure value of the settings');
  await page.keyboard.press('Escape');
  await working(page).waitFor({ state: 'hidden' });
  await page.locator('.cell-foot .how').click();
  await expect.poll(() => text(heading(page))).toBe('Exposure value of the settings');
  expect(await violations(page)).toEqual([]);
  expect(problems).toEqual([]);
  await context.close();
}, 120_000);
