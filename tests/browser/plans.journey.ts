/** The kept plans: the list and what one does with it; two tabs; a browser that does not store. */
import { readFileSync } from 'node:fs';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { planFile } from '../outputs/plans.ts';
import { violations } from './axe.ts';
import { figures, fromBar, newPlan, pickFile, plain, setFigure } from './parts.ts';
import { startBrowser, THEMES, visit, watch } from './visit.ts';

const origin = inject('origin');
let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const title = (page: Page) => page.getByLabel('Title of the plan');
const dialog = (page: Page) => page.getByRole('dialog', { name: 'Plans' });
const rows = (page: Page) => dialog(page).getByRole('list', { name: 'Kept plans' }).getByRole('listitem');
const said = (page: Page) => dialog(page).locator('.kit-talk');

async function setTitle(page: Page, name: string): Promise<void> {
  await title(page).fill(name);
  await title(page).press('Enter');
}

async function made(page: Page, name: string, event = '40 min', clip = '12 s'): Promise<void> {
  await newPlan(page, event, clip);
  await setTitle(page, name);
}

async function openPlans(page: Page): Promise<void> {
  await button(page, 'Plans').click();
  await dialog(page).waitFor();
}

const closePlans = async (page: Page) => {
  await button(page, 'Close').click();
  await dialog(page).waitFor({ state: 'hidden' });
};

/** Titles in the list, from above. */
const titles = async (page: Page): Promise<string[]> =>
  (await rows(page).locator('.h b').allTextContents()).map(plain);

const expectTitles = (page: Page, wanted: string[]) => expect.poll(() => titles(page)).toEqual(wanted);

const titleIs = (page: Page, wanted: string) => expect.poll(() => title(page).inputValue()).toBe(wanted);

/** Another tab of the same browser. */
async function anotherTab(context: BrowserContext) {
  const watched = watch(await context.newPage(), origin);
  await watched.page.goto(`${origin}/`);
  await watched.page.getByRole('main').waitFor();
  return watched;
}

/** Whatever the browser holds under a key. */
const stored = (page: Page, keys: (string | string[])[]) =>
  page.evaluate(async (wanted) => {
    const open = indexedDB.open('escapement');
    const db: IDBDatabase = await new Promise((resolve) => {
      open.onsuccess = () => resolve(open.result);
    });
    const store = db.transaction('plans').objectStore('plans');
    const all = await Promise.all(
      wanted.map(
        (key) =>
          new Promise((resolve) => {
            const get = store.get(key);
            get.onsuccess = () => resolve(get.result);
          }),
      ),
    );
    db.close();
    return all;
  }, keys);

describe('the list of plans', () => {
  test('keeps what is new and what was changed, newest first, and opens each as it was', async () => {
    const { page, problems, context } = await visit(browser, origin);
    await openPlans(page);
    await dialog(page).getByText('No plan is kept yet').waitFor();
    await closePlans(page);
    await made(page, 'Dough', '40 min', '12 s');
    const dough = await figures(page);
    await made(page, 'Fog', '2 h', '8 s');
    const fog = await figures(page);
    expect(fog).not.toEqual(dough);
    // A demo that nobody touches is not kept; one that is changed is.
    for (const demo of ['Loaf proving', 'Clay snail']) {
      await fromBar(page, new RegExp(`^${demo}`));
      await titleIs(page, demo);
    }
    await setTitle(page, 'Snail of our own');
    await openPlans(page);
    await expectTitles(page, ['Snail of our own', 'Fog', 'Dough']);
    expect(plain((await rows(page).nth(0).textContent()) ?? '')).toMatch(/on screen.*Stop-motion/);
    expect(plain((await rows(page).nth(2).locator('.h .s').textContent()) ?? '')).toMatch(
      new RegExp(`^Time-lapse, ${dough.Frames} frames, 12 s, `),
    );
    await rows(page).nth(2).locator('.h').click();
    await dialog(page).waitFor({ state: 'hidden' });
    await titleIs(page, 'Dough');
    expect(await figures(page)).toEqual(dough);
    await page.reload();
    await page.getByRole('main').waitFor();
    await titleIs(page, 'Dough');
    // To open is no change: the order stays, and Undo is another matter.
    await page.locator('body').press('p');
    await expectTitles(page, ['Snail of our own', 'Fog', 'Dough']);
    expect(problems).toEqual([]);
    await context.close();
  });

  test('undo goes back to the plan before, and edits go where that one is kept', async () => {
    const { page, context } = await visit(browser, origin);
    await made(page, 'First');
    await made(page, 'Second', '2 h', '8 s');
    for (let steps = 0; steps < 2; steps += 1) await button(page, 'Undo').click();
    await titleIs(page, 'First');
    await setTitle(page, 'First, changed');
    await openPlans(page);
    await expect.poll(async () => (await titles(page)).toSorted()).toEqual(['First, changed', 'New plan']);
    await context.close();
  });

  test('renames, duplicates, deletes and puts back; the plan on screen too', async () => {
    const { page, problems, context } = await visit(browser, origin);
    await made(page, 'Dough');
    await made(page, 'Fog', '2 h', '8 s');
    await openPlans(page);
    await expectTitles(page, ['Fog', 'Dough']);
    await dialog(page).getByRole('button', { name: 'Rename: Dough' }).click();
    await dialog(page).getByLabel('Title of Dough').fill('Dough, first try');
    await page.keyboard.press('Enter');
    await expectTitles(page, ['Dough, first try', 'Fog']);
    // Escape gives the title up, and leaves the dialog open.
    await dialog(page).getByRole('button', { name: 'Rename: Fog' }).click();
    await dialog(page).getByLabel('Title of Fog').fill('No');
    await page.keyboard.press('Escape');
    await dialog(page).getByRole('button', { name: 'Rename: Fog' }).click();
    await dialog(page).getByLabel('Title of Fog').fill('Fog at dawn');
    await page.keyboard.press('Enter');
    await titleIs(page, 'Fog at dawn');
    await expectTitles(page, ['Fog at dawn', 'Dough, first try']);

    await dialog(page).getByRole('button', { name: 'Duplicate: Dough, first try' }).click();
    await expectTitles(page, ['Dough, first try 2', 'Fog at dawn', 'Dough, first try']);
    await dialog(page).getByRole('button', { name: 'Delete: Dough, first try', exact: true }).click();
    await expectTitles(page, ['Dough, first try 2', 'Fog at dawn']);
    await said(page).getByRole('button', { name: 'Undo' }).click();
    await expectTitles(page, ['Dough, first try 2', 'Fog at dawn', 'Dough, first try']);

    await dialog(page).getByRole('button', { name: 'Delete: Fog at dawn', exact: true }).click();
    await titleIs(page, 'Dough, first try 2');
    await dialog(page).getByRole('button', { name: 'Delete: Dough, first try 2', exact: true }).click();
    await titleIs(page, 'Dough, first try');
    await dialog(page).getByRole('button', { name: 'Delete: Dough, first try', exact: true }).click();
    await dialog(page).getByText('No plan is kept yet').waitFor();
    await titleIs(page, 'Harbour at dusk');
    await dialog(page).getByRole('button', { name: 'Put all 3 deleted back' }).click();
    await expectTitles(page, ['Dough, first try 2', 'Fog at dawn', 'Dough, first try']);
    await closePlans(page);
    expect(await button(page, 'Undo').isDisabled()).toBe(true);
    expect(problems).toEqual([]);
    await context.close();
  });

  test('goes out as one file and comes back in another browser; faults are named, the rest is taken', async () => {
    const { page, context } = await visit(browser, origin);
    await made(page, 'Dough');
    await made(page, 'Fog', '2 h', '8 s');
    await openPlans(page);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      dialog(page).getByRole('button', { name: 'Save all as a file' }).click(),
    ]);
    expect(download.suggestedFilename()).toMatch(/^escapement-plans-\d{4}-\d\d-\d\d\.json$/);
    const text = readFileSync(await download.path(), 'utf8');
    await context.close();

    const other = await visit(browser, origin);
    const add = (name: string, content: string) =>
      dialog(other.page)
        .getByLabel('Files of plans')
        .setInputFiles([{ name, mimeType: 'application/json', buffer: Buffer.from(content) }]);
    await openPlans(other.page);
    await add('all.json', text);
    await expectTitles(other.page, ['Fog', 'Dough']);
    await add('all.json', text);
    await said(other.page).getByText('0 plans added, 2 here already.').waitFor();
    await expectTitles(other.page, ['Fog', 'Dough']);

    const file = JSON.parse(text);
    file.plans[0].plan.title = 'Broken';
    file.plans[0].plan.cycle.guardS = -3;
    file.plans[1].plan.title = 'Third';
    await add('mixed.json', JSON.stringify(file));
    await said(other.page).getByText('1 plan added, 1 left out.').waitFor();
    expect(plain((await said(other.page).textContent()) ?? '')).toMatch(
      /mixed\.json, plans\[0\], ‘Broken’: cycle\.guardS: found -3; allowed: .*0 to 3600/,
    );
    await expect.poll(async () => (await titles(other.page)).toSorted()).toEqual(['Dough', 'Fog', 'Third']);
    await add('cut.json', '{"format": "escapement-plans", "plans": [');
    await said(other.page).getByText('Nothing was changed').waitFor();
    expect(await titles(other.page)).toHaveLength(3);
    await closePlans(other.page);
    // A file of plans that is picked as a plan finds its way.
    file.plans = [{ plan: { ...planFile({}), title: 'Fourth' } }];
    await pickFile(other.page, 'one.json', JSON.stringify(file));
    await expect
      .poll(async () => (await titles(other.page)).toSorted())
      .toEqual(['Dough', 'Fog', 'Fourth', 'Third']);
    await titleIs(other.page, 'Harbour at dusk');
    await other.context.close();
  });

  test('of 300 plans is searched at once, and can be used by everybody in every theme', async () => {
    const plans = Array.from({ length: 300 }, (_, n) => ({
      changed: new Date(Date.UTC(2026, 0, 1) + n * 60_000).toISOString(),
      plan: { ...planFile({}), title: `Plan ${n + 1}${n % 100 === 7 ? ', the quarry' : ''}` },
    }));
    const text = JSON.stringify({ format: 'escapement-plans', version: 1, plans });
    for (const theme of THEMES) {
      const { page, context } = await visit(browser, origin, { theme });
      await openPlans(page);
      await dialog(page)
        .getByLabel('Files of plans')
        .setInputFiles([{ name: 'many.json', mimeType: 'application/json', buffer: Buffer.from(text) }]);
      await expect.poll(() => rows(page).count(), { timeout: 20_000 }).toBe(300);
      expect((await titles(page)).slice(0, 2)).toEqual(['Plan 300', 'Plan 299']);
      await dialog(page).getByLabel('Look for').fill('QUARRY');
      await expectTitles(page, ['Plan 208, the quarry', 'Plan 108, the quarry', 'Plan 8, the quarry']);
      await dialog(page).getByText('3 of 300').waitFor();
      expect(await violations(page, { within: 'dialog' })).toEqual([]);
      await context.close();
    }
  }, 120_000);
});

describe('two tabs', () => {
  test('on different plans both keep theirs', async () => {
    const { page, context } = await visit(browser, origin);
    await made(page, 'Dough');
    const second = await anotherTab(context);
    await made(second.page, 'Fog', '2 h', '8 s');
    // The newer tab showed the same plan for a moment: the older one had to step back, and takes it again.
    await button(page, 'Keep this one').click();
    await setTitle(page, 'Dough, changed');
    await setTitle(second.page, 'Fog, changed');
    await page.reload();
    await titleIs(page, 'Dough, changed');
    await second.page.reload();
    await titleIs(second.page, 'Fog, changed');
    await button(page, 'Save').waitFor();
    await button(second.page, 'Save').waitFor();
    await context.close();
  });

  test('on the same plan: the older one stops and says so; either way out loses nothing', async () => {
    const { page, context } = await visit(browser, origin);
    await made(page, 'Dough');
    const second = await anotherTab(context);
    await titleIs(second.page, 'Dough');
    await button(page, 'Not saved: download').waitFor();
    await setTitle(second.page, 'Dough, by the newer tab');
    await setTitle(page, 'Dough, by the older tab');
    await openPlans(second.page);
    await expectTitles(second.page, ['Dough, by the newer tab']);
    await closePlans(second.page);

    await button(page, 'Keep as another plan').click();
    await button(page, 'Save').waitFor();
    await openPlans(second.page);
    await expect
      .poll(async () => (await titles(second.page)).toSorted())
      .toEqual(['Dough, by the newer tab', 'Dough, by the older tab']);
    await closePlans(second.page);
    await setTitle(page, 'Dough, by the older tab, on');
    await setTitle(second.page, 'Dough, by the newer tab, on');
    await openPlans(page);
    await expect
      .poll(async () => (await titles(page)).toSorted())
      .toEqual(['Dough, by the newer tab, on', 'Dough, by the older tab, on']);

    // And the other way out: the older tab opens what the newer one has, which then steps back.
    await rows(page).filter({ hasText: 'newer' }).locator('.h').click();
    await titleIs(page, 'Dough, by the newer tab, on');
    await button(second.page, 'Keep this one').click();
    await button(page, 'Not saved: download').waitFor();
    await button(second.page, 'Save').waitFor();
    await context.close();
  });

  test('a plan that a demo was opened over is still this tab’s own', async () => {
    const { page, context } = await visit(browser, origin);
    await made(page, 'Dough');
    await page.goto(`${origin}/?demo=clay-snail`);
    await titleIs(page, 'Clay snail');
    await button(page, 'Undo').click();
    await titleIs(page, 'Dough');
    await setTitle(page, 'Dough, again');
    await openPlans(page);
    await expectTitles(page, ['Dough, again']);
    await closePlans(page);
    await page.reload();
    await titleIs(page, 'Dough, again');
    await button(page, 'Save').waitFor();
    await context.close();
  });

  test('a tab that hears nothing of the other writes over nothing', async () => {
    const deaf = (page: Page) =>
      page.addInitScript(() => {
        BroadcastChannel.prototype.postMessage = () => {};
      });
    const { page, context } = await visit(browser, origin, { before: deaf });
    await made(page, 'Dough');
    const second = watch(await context.newPage(), origin);
    await deaf(second.page);
    await second.page.goto(`${origin}/`);
    await titleIs(second.page, 'Dough');
    await setTitle(second.page, 'Dough, by the newer tab');
    // The older tab hears nothing, so that it can only find what has been written.
    await openPlans(second.page);
    await expectTitles(second.page, ['Dough, by the newer tab']);
    await closePlans(second.page);
    await setTitle(page, 'Dough, by the older tab');
    await button(page, 'Not saved: download').waitFor();
    await second.page.reload();
    await titleIs(second.page, 'Dough, by the newer tab');
    await context.close();
  });

  test('a plan that is deleted in one is not lost in the other', async () => {
    const { page, context } = await visit(browser, origin);
    await made(page, 'Dough');
    const second = await anotherTab(context);
    await titleIs(second.page, 'Dough');
    await openPlans(page);
    await dialog(page).getByRole('button', { name: 'Delete: Dough', exact: true }).click();
    await button(second.page, 'Keep this one').click();
    await button(second.page, 'Save').waitFor();
    await expectTitles(page, ['Dough']);
    await context.close();
  });
});

describe('a browser that does not store', () => {
  /** Lets the next writes of plans end in an error. */
  const filled = (page: Page) =>
    page.evaluate(() => {
      const { put } = IDBObjectStore.prototype;
      Object.assign(globalThis, {
        emptied: () => {
          IDBObjectStore.prototype.put = put;
        },
      });
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('no room', 'QuotaExceededError');
      };
    });
  const emptied = (page: Page) =>
    page.evaluate(() => (globalThis as unknown as { emptied: () => void }).emptied());

  async function savesAsFile(page: Page, name: string): Promise<void> {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      button(page, 'Not saved: download').click(),
    ]);
    expect(JSON.parse(readFileSync(await download.path(), 'utf8')).title).toBe(name);
  }

  test('because it is full says so, saves to a file, and keeps the plan once there is room', async () => {
    const { page, problems, context } = await visit(browser, origin);
    await made(page, 'Dough');
    await made(page, 'Fog', '2 h', '8 s');
    await filled(page);
    await setFigure(page, 'Clip', '9 s');
    await setTitle(page, 'Fog, no room');
    expect(await button(page, 'Not saved: download').getAttribute('title')).toMatch(/no room left/);
    await savesAsFile(page, 'Fog, no room');
    await openPlans(page);
    await dialog(page).getByRole('button', { name: 'Duplicate: Dough' }).click();
    await said(page).getByText('has no room left').waitFor();
    await expectTitles(page, ['Fog', 'Dough']);
    await emptied(page);
    await dialog(page).getByRole('button', { name: 'Delete: Dough', exact: true }).click();
    await expectTitles(page, ['Fog, no room']);
    await closePlans(page);
    await button(page, 'Save').waitFor();
    await page.reload();
    await titleIs(page, 'Fog, no room');
    expect(problems).toEqual([]);
    await context.close();
  });

  test.each([
    ['has no database', () => Object.defineProperty(globalThis, 'indexedDB', { value: undefined })],
    [
      'refuses to open it',
      () => {
        IDBFactory.prototype.open = () => {
          throw new DOMException('not here', 'SecurityError');
        };
      },
    ],
  ])('because it %s says so, and saves to a file', async (_why, break_) => {
    const { page, problems, context } = await visit(browser, origin, {
      before: (opened) => opened.addInitScript(break_),
    });
    await setTitle(page, 'Nowhere kept');
    await button(page, 'Not saved: download').waitFor();
    await savesAsFile(page, 'Nowhere kept');
    await openPlans(page);
    await dialog(page).getByText('This browser keeps no plans').waitFor();
    expect(problems).toEqual([]);
    await context.close();
  });
});

describe('the one plan that was kept once', () => {
  /** Puts something where the page once kept its one plan. */
  const putOnce = (page: Page, kept: unknown) =>
    page.evaluate(async (value) => {
      const open = indexedDB.open('escapement');
      const db: IDBDatabase = await new Promise((resolve) => {
        open.onsuccess = () => resolve(open.result);
      });
      const write = db.transaction('plans', 'readwrite');
      write.objectStore('plans').put(value, 'current');
      await new Promise((resolve) => {
        write.oncomplete = resolve;
      });
      db.close();
      sessionStorage.clear();
    }, kept);

  const once = () => JSON.stringify({ ...planFile({}), title: 'Kept long ago' });

  test.each([
    ['as text alone', once()],
    ['with the mark of another program', { text: once(), mark: 'another' }],
  ])('%s is taken over, and stands in the list', async (_how, kept) => {
    const { page, problems, context } = await visit(browser, origin);
    await made(page, 'Dough');
    await putOnce(page, kept);
    await page.reload();
    await titleIs(page, 'Kept long ago');
    expect(await stored(page, ['current'])).toEqual([undefined]);
    await setTitle(page, 'Kept long ago, changed');
    await page.reload();
    await titleIs(page, 'Kept long ago, changed');
    await openPlans(page);
    await expectTitles(page, ['Kept long ago, changed', 'Dough']);
    expect(problems).toEqual([]);
    await context.close();
  });

  test('that cannot be read is kept as it is, named, and goes out with the others', async () => {
    const { page, context } = await visit(browser, origin);
    await putOnce(page, '{"format":"escapement-plan","version":99}');
    await page.reload();
    await titleIs(page, 'Harbour at dusk');
    await openPlans(page);
    await expectTitles(page, ['A plan that cannot be read']);
    await rows(page).locator('.h').click();
    await said(page).getByText('It stays as it is').waitFor();
    expect(plain((await said(page).textContent()) ?? '')).toMatch(/version: found 99/);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      dialog(page).getByRole('button', { name: 'Save all as a file' }).click(),
    ]);
    expect(JSON.parse(readFileSync(await download.path(), 'utf8')).plans[0].plan.version).toBe(99);
    await context.close();
  });
});
