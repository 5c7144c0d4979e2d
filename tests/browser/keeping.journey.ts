/** Nothing that was open is lost: undo, autosave, broken files, saving and opening. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { parsePlan } from '../../src/engine/plan/parse.ts';
import { schedule } from '../../src/engine/schedule.ts';
import { planFile } from '../outputs/plans.ts';
import { figures, figureText, newPlan, pickFile, plain, setFigure } from './parts.ts';
import { startWithProfile } from './profile.ts';
import { startBrowser, visit } from './visit.ts';

const origin = inject('origin');
let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

test('undo and redo go through every edit, by button and by key', async () => {
  const { page, context } = await visit(browser, origin);
  await newPlan(page, '40 min', '12 s');
  const seen = [await figures(page)];
  for (const clip of ['13 s', '14 s', '15 s']) {
    await setFigure(page, 'Clip', clip);
    seen.push(await figures(page));
  }
  expect(new Set(seen.map((all) => all.Interval)).size).toBeGreaterThan(1);
  await expect.poll(() => button(page, 'Redo').isDisabled()).toBe(true);
  for (const before of seen.slice(0, -1).reverse()) {
    await button(page, 'Undo').click();
    expect(await figures(page)).toEqual(before);
  }
  await page.locator('body').press('Control+Shift+KeyZ');
  expect(await figures(page)).toEqual(seen[1]);
  await page.locator('body').press('Control+KeyZ');
  expect(await figures(page)).toEqual(seen[0]);
  await button(page, 'Redo').click();
  expect(await figures(page)).toEqual(seen[1]);
  await context.close();
});

describe('what was typed is still there', () => {
  const folder = mkdtempSync(join(tmpdir(), 'escapement-profile-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }));

  test('after every process of the browser was killed', async () => {
    const first = await startWithProfile(folder);
    const [context] = first.browser.contexts();
    const page = await context?.newPage();
    if (!page) throw new Error('the browser has no window');
    await page.goto(`${origin}/`);
    await newPlan(page, '40 min', '12 s');
    await page.getByLabel('Title of the plan').fill('Kept through a kill');
    await setFigure(page, 'Clip', '17 s');
    const before = await figures(page);
    // A write starts with the edit; this is the time it is given to end.
    await page.waitForTimeout(500);
    await first.kill();

    const second = await startWithProfile(folder);
    const again = await second.browser.contexts()[0]?.newPage();
    await again?.goto(`${origin}/`);
    if (!again) throw new Error('the browser has no window');
    await again.getByRole('main').waitFor();
    expect(await again.getByLabel('Title of the plan').inputValue()).toBe('Kept through a kill');
    expect(await figures(again)).toEqual(before);
    await second.kill();
  });

  test('after a reload at once, which breaks off the write of the last edit', async () => {
    const { page, context } = await visit(browser, origin);
    await newPlan(page, '50 min', '21 s');
    // A transaction that never ends lets no write come to its turn.
    await page.evaluate(
      () =>
        new Promise<void>((begun) => {
          indexedDB.open('escapement').onsuccess = ({ target }) => {
            const store = (target as IDBOpenDBRequest).result
              .transaction('plans', 'readwrite')
              .objectStore('plans');
            const goOn = () => {
              store.get('nothing').onsuccess = goOn;
              begun();
            };
            goOn();
          };
        }),
    );
    await setFigure(page, 'Clip', '22 s');
    const before = await figures(page);
    await page.reload();
    await page.getByRole('main').waitFor();
    expect(await figures(page)).toEqual(before);
    // It is kept as before: what is edited now is still there after another one.
    await setFigure(page, 'Clip', '19 s');
    // Worked by hand: 3000 s / 475 = 6.3 s, dialled down to 6 s; 3000 / 6 + 1 = 501.
    await expect.poll(() => figureText(page, 'Frames')).toBe('501');
    const after = await figures(page);
    await button(page, 'Save').waitFor();
    await page.reload();
    await page.getByRole('main').waitFor();
    expect(await figures(page)).toEqual(after);
    await context.close();
  });
});

test('a kept plan is shown before its checker has come, and what is typed without it is not lost', async () => {
  const { page, context } = await visit(browser, origin);
  await newPlan(page, '50 min', '21 s');
  const before = await figures(page);
  await page.waitForTimeout(300);
  await page.route(/assets\/checks-.*\.js$/, (route) => route.abort());
  await page.reload();
  await page.getByRole('main').waitFor();
  expect(await figures(page)).toEqual(before);
  const pacing = page.getByRole('region', { name: 'Pacing' });
  await pacing.getByRole('textbox', { name: 'Clip' }).fill('17 s');
  await pacing.getByText('could not be fetched').waitFor();
  expect(await figureText(page, 'Clip')).toBe('17 s');
  await context.close();
});

describe('a file at fault', () => {
  test.each([
    ['cut.json', '{"format":"escapement-plan","version":1,', /not JSON|breaks off/],
    ['old.json', '{"format":"escapement-plan","version":99}', /versions read here/],
    ['wrong.json', JSON.stringify(planFile({ cycle: { guardS: -3 } })), /cycle\.guardS.*-3.*from 0 to 3600/s],
  ])('%s is named with its faults, and the open plan stays', async (name, text, fault) => {
    const { page, problems, context } = await visit(browser, origin);
    await newPlan(page, '40 min', '12 s');
    const before = await figures(page);
    await pickFile(page, name, text);
    const dialog = page.getByRole('dialog', { name: `${name} was not opened` });
    await dialog.waitFor();
    expect(plain((await dialog.textContent()) ?? '')).toMatch(fault);
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'hidden' });
    expect(await figures(page)).toEqual(before);
    expect(await button(page, 'Undo').isEnabled()).toBe(true);
    expect(problems).toEqual([]);
    await context.close();
  });
});

test('a saved file is a plan, is worked out to the same at the prompt, and opens again', async () => {
  const { page, problems, context } = await visit(browser, origin);
  await newPlan(page, '40 min', '12 s');
  await page.getByLabel('Title of the plan').fill('Dough, second try');
  await page.getByLabel('Title of the plan').press('Enter');
  const before = await figures(page);
  const [download] = await Promise.all([page.waitForEvent('download'), button(page, 'Save').click()]);
  expect(download.suggestedFilename()).toMatch(/^dough-second-try.*\.json$/);
  const text = readFileSync(await download.path(), 'utf8');
  const parsed = parsePlan(text);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  expect(String(schedule(parsed.plan).totals.frames)).toBe(before.Frames);

  await newPlan(page, '3 h', '20 s');
  expect(await figureText(page, 'Frames')).not.toBe(before.Frames);
  await pickFile(page, 'again.json', text);
  await expect.poll(() => page.getByLabel('Title of the plan').inputValue()).toBe('Dough, second try');
  expect(await figures(page)).toEqual(before);
  expect(problems).toEqual([]);
  await context.close();
});
