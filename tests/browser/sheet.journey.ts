/** The exposure sheet as an animator uses it: reading, editing, ticking, pasting; and the frames of a time-lapse. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { text } from './parts.ts';
import { startBrowser, visit } from './visit.ts';

const origin = inject('origin');
let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

/** The sheet of a demo; `at` stops the clock there to begin with. */
async function sheetOf(
  demo: string,
  at?: string,
): Promise<{ page: Page; problems: string[]; close: () => Promise<void> }> {
  const before = at === undefined ? {} : { before: (page: Page) => page.clock.install({ time: at }) };
  const { page, context, problems } = await visit(browser, origin, { query: `?demo=${demo}`, ...before });
  await page
    .getByRole('link', { name: 'Sheet', exact: true })
    .or(page.getByRole('tab', { name: 'Sheet' }))
    .first()
    .click();
  await page.getByRole('grid').waitFor();
  return { page, problems, close: () => context.close() };
}

const status = (page: Page) => text(page.getByRole('region', { name: 'Production' }).getByRole('status'));

test('an exposure is renamed and held longer, and both are undone', async () => {
  const { page, problems, close } = await sheetOf('clay-snail');
  const grid = page.getByRole('grid', { name: 'Exposure sheet' });
  await expect.poll(() => status(page)).toContain('96 exposures');
  await grid.focus();
  await page.keyboard.press('F2');
  const editor = page.getByRole('textbox', { name: 'Action of exposure 1', exact: true });
  await editor.fill('Opens one eye');
  await page.keyboard.press('Enter');
  await expect.poll(() => text(grid)).toContain('Opens one eye');
  // Exposure 2: on a hold of eight the action no longer ends where it did.
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('F2');
  await page.keyboard.type('8');
  await page.keyboard.press('Enter');
  await expect.poll(() => text(page.getByRole('region', { name: 'Production' }))).not.toContain('192');
  await page.keyboard.press('Control+z');
  await expect.poll(() => text(page.getByRole('region', { name: 'Production' }))).toContain('192');
  await page.keyboard.press('Control+z');
  await expect.poll(() => text(grid)).not.toContain('Opens one eye');
  expect(problems).toEqual([]);
  await close();
});

/** The demo's working days from its first on: 09:30 to 17:30 with a break from 13:00 to 13:30, no Monday, no Tuesday. */
const WORKDAYS = ['28 Nov', '29 Nov', '2 Dec', '3 Dec'];
const MINUTES_A_DAY = 450;

/** Minutes of work from the beginning of the first day to `Sat 28 Nov, 12:33`. */
function minutesInto(moment: string): number {
  const [, date = '', hour, minute] = /(\d+ \w+), (\d+):(\d+)/.exec(moment) ?? [];
  const clock = Number(hour) * 60 + Number(minute) - 570;
  return WORKDAYS.indexOf(date) * MINUTES_A_DAY + clock - (clock > 210 ? 30 : 0);
}

const workedMin = (from: string, to: string): number => minutesInto(to) - minutesInto(from);

test('ticked exposures move the end of the work by the pace, and survive a reload', async () => {
  const { page, problems, close } = await sheetOf('clay-snail', '2026-11-28T10:20:00Z');
  for (let exposure = 1; exposure <= 20; exposure += 1) {
    await page.getByRole('button', { name: `Mark ${exposure} done`, exact: true }).click();
    // Twice as long as even the slowest of them is planned for.
    await page.clock.fastForward('07:00');
  }
  await expect.poll(() => status(page)).toContain('20 of 96 exposures done');
  const ends = /finish at (.+), at yours (.+)\.$/.exec(await status(page));
  const left = [ends?.[1], ends?.[2]].map((end) => workedMin('Sat 28 Nov, 12:33', end ?? ''));
  // Seven minutes each, where 12 were planned for 2 min and 7 for 3.5 min, and some seconds of the rig: some 2.65 times
  // as long. What does not fit before a break or the end of a day waits.
  expect((left[1] ?? 0) / (left[0] ?? 1)).toBeGreaterThan(2.45);
  expect((left[1] ?? 0) / (left[0] ?? 1)).toBeLessThan(2.85);
  await page.clock.runFor(1000);
  await page.reload();
  await expect.poll(() => status(page)).toContain('20 of 96 exposures done');
  expect(problems).toEqual([]);
  await close();
});

test('rows of a spreadsheet are pasted, and what is wrong with them is named', async () => {
  const { page, close } = await sheetOf('clay-snail');
  const grid = page.getByRole('grid', { name: 'Exposure sheet' });
  await grid.focus();
  const paste = (rows: string) =>
    grid.evaluate((element, tsv) => {
      const data = new DataTransfer();
      data.setData('text/plain', tsv);
      element.dispatchEvent(
        new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }),
      );
    }, rows);
  await paste('action\thold\nTurns\tlong\n');
  await page.getByRole('alert').getByRole('list', { name: 'Faults' }).waitFor();
  await expect.poll(() => status(page)).toContain('96 exposures');
  await close();
});

test('what is typed goes where it was meant, and the cell stays in sight', async () => {
  const { page, problems, close } = await sheetOf('clay-snail');
  const grid = page.getByRole('grid', { name: 'Exposure sheet' });
  const at = () => grid.getAttribute('aria-activedescendant');
  const rows = await grid.getAttribute('aria-rowcount');
  // From the box to the sheet without the mouse; two are selected and get the same words.
  await page.getByLabel('Go to').fill('#30');
  await page.getByLabel('Go to').press('Enter');
  await page.getByLabel('Go to').press('ArrowDown');
  await expect.poll(at).toBe('row-exposure-29-text');
  await page.keyboard.press('Shift+ArrowDown');
  await page.keyboard.type('Waits');
  await page.keyboard.press('Enter');
  for (const row of [29, 30])
    await expect.poll(() => text(page.locator(`#row-exposure-${row}-text`))).toBe('Waits');
  // A press elsewhere takes what is typed for the cell that it was typed into.
  const hold = (row: number) => page.locator(`#row-exposure-${row} [data-column="hold"]`);
  const before = [await text(hold(33)), await text(hold(35))];
  await hold(33).dblclick();
  await page.keyboard.type('7');
  await hold(35).click();
  await expect.poll(() => text(hold(33))).toBe('7');
  expect(await text(hold(35))).toBe(before[1]);
  // The first tick closes no action, and undo leads back.
  await page.keyboard.press('Space');
  await expect.poll(() => status(page)).toContain('1 of');
  expect(Number(await grid.getAttribute('aria-rowcount'))).toBeGreaterThanOrEqual(Number(rows));
  await page.keyboard.press('Control+Home');
  await page.keyboard.press('Control+z');
  await expect.poll(at).toBe('row-exposure-35-hold');
  await page.keyboard.press('Control+z');
  await expect.poll(() => text(hold(33))).toBe(before[0]);
  expect(problems).toEqual([]);
  await close();
});

test('the frames of a time-lapse are listed, and one is gone to by its clock', async () => {
  const { page, problems, close } = await sheetOf('harbour-at-dusk');
  const grid = page.getByRole('grid', { name: 'Frames' });
  await page.getByLabel('Go to').fill('21:00');
  await page.getByLabel('Go to').press('Enter');
  await expect.poll(() => text(grid)).toContain('21:00');
  expect(Number(await grid.getAttribute('aria-rowcount'))).toBeGreaterThan(386);
  expect(problems).toEqual([]);
  await close();
});
