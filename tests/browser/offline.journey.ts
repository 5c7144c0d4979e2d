/** The page is installed, opens without a network after one visit, and takes a new version when its user agrees. */
import {
  cpSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, inject, test } from 'vitest';
import { RUN_KEY } from '../../src/app/store/running.ts';
import { isKept, writeWorker } from '../../src/dev/offline.ts';
import { violations } from './axe.ts';
import { figures, fromBar, newPlan, openSection, setField, setFigure, verdict } from './parts.ts';
import { readPdf } from './pdf.ts';
import { startWithProfile } from './profile.ts';
import { serve } from './serve.ts';
import { startBrowser, visit, watch } from './visit.ts';

const DIST = fileURLToPath(new URL('../../dist', import.meta.url));

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

/** A folder that is served: what is in it can be changed, and the server can be ended. */
let folder: string;
let server: Awaited<ReturnType<typeof serve>>;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'escapement-served-'));
  deploy('first');
  server = await serve(folder);
});
afterEach(async () => {
  await server.close().catch(() => {});
  rmSync(folder, { recursive: true, force: true });
});

/** Files of the page in a folder. */
const filesIn = (served: string): string[] =>
  readdirSync(served, { recursive: true, encoding: 'utf8' })
    .filter((file) => statSync(join(served, file)).isFile())
    .map((file) => file.replaceAll('\\', '/'));

/** A part that is fetched when it is asked for. */
const DAYS_VIEW = /DaysView-[\w-]{8}\.js/;

function rename(served: string, from: string, to: string): void {
  renameSync(join(served, 'assets', from), join(served, 'assets', to));
  for (const file of filesIn(served).filter((name) => /\.(js|html)$/.test(name))) {
    const text = readFileSync(join(served, file), 'utf8');
    if (text.includes(from)) writeFileSync(join(served, file), text.replaceAll(from, to));
  }
}

/** Puts the page there as it was built; any but the first version has another title and other names of its parts. */
function deploy(version: string, at = folder): void {
  rmSync(at, { recursive: true, force: true });
  cpSync(DIST, at, { recursive: true });
  if (version === 'first') return;
  const index = join(at, 'index.html');
  writeFileSync(
    index,
    readFileSync(index, 'utf8').replace('<title>Escapement', `<title>Escapement, ${version}`),
  );
  const part = readdirSync(join(at, 'assets')).find((name) => DAYS_VIEW.test(name)) ?? '';
  rename(at, part, `DaysView-${version.padEnd(8, '0')}.js`);
}

/** A version with a worker of its own, as the build makes one. */
async function deployNew(version: string): Promise<void> {
  deploy(version);
  await writeWorker(folder);
}

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const announcement = (page: Page) => page.getByText('A new version is ready.');
const title = (page: Page) => page.getByLabel('Title of the plan');

/** The worker controls the page, and has everything. */
async function ready(page: Page): Promise<void> {
  await button(page, 'Plans').click();
  await page.getByText('opens without a network').waitFor({ timeout: 30_000 });
  await button(page, 'Close').click();
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    while (!navigator.serviceWorker.controller) await new Promise((resume) => setTimeout(resume, 50));
  });
}

async function cut(context: BrowserContext): Promise<void> {
  await context.setOffline(true);
  await server.close();
}

async function reopen(page: Page): Promise<void> {
  await page.reload();
  await page.getByRole('main').waitFor();
}

/** Looks for a new version until it is there or given up, and says whether one is ready that is not taken. */
const lookedFor = (page: Page): Promise<boolean> =>
  page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready;
    await registration.update().catch(() => {});
    const busy = () => registration.installing ?? registration.waiting;
    while (busy() || registration.active?.state !== 'activated')
      await new Promise((resume) => setTimeout(resume, 50));
    const folder = new URL('./', location.href).href;
    const state = async (word: string) =>
      (await caches.match(new URL(`version-${word}`, folder).href))?.text();
    return (await state('ready')) !== (await state('taken'));
  });

describe('with the network cut after one visit', () => {
  test('the page opens and all of it works', async () => {
    const { page, problems, context } = await visit(browser, server.origin, { offline: true });
    await ready(page);
    await newPlan(page, '40 min', '12 s');
    const before = await figures(page);
    await cut(context);
    await reopen(page);
    expect(await figures(page)).toEqual(before);
    for (const name of ['Run', 'Cycle'])
      await page.getByRole('region', { name, exact: true }).getByRole('img').first().waitFor();

    // Dialogs.
    for (const [press, dialog] of [
      ['New', 'New plan'],
      ['Keys', 'Keys'],
      ['Kit', 'Kit'],
      ['Plans', 'Plans'],
    ] as const) {
      await fromBar(page, press);
      await page.getByRole('dialog', { name: dialog }).waitFor();
      if (dialog === 'Kit') await page.getByText('Add from a kit file').waitFor();
      if (dialog === 'Plans') await page.getByRole('list', { name: 'Kept plans' }).waitFor();
      await page.keyboard.press('Escape');
    }

    // A place is looked up.
    const place = await openSection(page, 'Place & light');
    await setField(place, 'Place on the map', '43.3, 5.4');
    await place.getByRole('button', { name: 'Use it: time zone Europe/Paris' }).click();

    // The year is worked out in a worker of its own.
    await page.getByRole('link', { name: 'Days' }).click();
    await page.getByRole('slider', { name: 'Day' }).waitFor();
    await page.getByRole('region', { name: 'Find a day' }).waitFor();

    // A demo; the sheet; the sheet on paper.
    await fromBar(page, /^Clay snail/);
    await expect.poll(() => title(page).inputValue()).toBe('Clay snail');
    await page.getByRole('link', { name: 'Sheet' }).click();
    await button(page, 'Print').waitFor();
    const pages = await readPdf(await page.pdf({ format: 'A4' }));
    expect(pages.flatMap(({ lines }) => lines).join(' ')).toContain('Clay snail');

    await page.getByRole('link', { name: 'Plan' }).click();
    await fromBar(page, /^Loaf proving/);
    await expect.poll(() => title(page).inputValue()).toBe('Loaf proving');
    expect(await verdict(page)).toMatch(/^Shootable/);
    expect(problems).toEqual([]);
    await context.close();
  });

  test('every file of the page is there, as it was served', async () => {
    const { page, context } = await visit(browser, server.origin, { offline: true });
    await ready(page);
    const files = filesIn(folder).filter(isKept);
    expect(files.length).toBeGreaterThan(50);
    await cut(context);
    const lengths = await page.evaluate(
      (all) =>
        Promise.all(
          all.map(async (file) => {
            const response = await fetch(`./${file}`).catch(() => null);
            return response?.ok ? (await response.arrayBuffer()).byteLength : null;
          }),
        ),
      files,
    );
    expect(Object.fromEntries(files.map((file, i) => [file, lengths[i]]))).toEqual(
      Object.fromEntries(files.map((file) => [file, statSync(join(folder, file)).size])),
    );
    await context.close();
  });

  test('it opens in a folder of a site too, and leaves the rest of the site alone', async () => {
    const site = mkdtempSync(join(tmpdir(), 'escapement-site-'));
    cpSync(DIST, join(site, 'tools/planner'), { recursive: true });
    writeFileSync(join(site, 'index.html'), '<title>Site</title><main>the site</main>');
    const sub = await serve(site);
    const { page, context } = await visit(browser, sub.origin, { offline: true, query: 'tools/planner/' });
    await ready(page);
    const scopes = await page.evaluate(async () =>
      (await navigator.serviceWorker.getRegistrations()).map(({ scope }) => new URL(scope).pathname),
    );
    expect(scopes).toEqual(['/tools/planner/']);
    await page.goto(`${sub.origin}/`);
    await page.getByText('the site').waitFor();
    await context.setOffline(true);
    await sub.close();
    await page.goto(`${sub.origin}/tools/planner/?demo=clay-snail#sheet`);
    await expect.poll(() => title(page).inputValue()).toBe('Clay snail');
    await context.close();
    rmSync(site, { recursive: true, force: true });
  });
});

describe('the page can be installed', () => {
  // Not from a private window, so with a profile.
  const profile = mkdtempSync(join(tmpdir(), 'escapement-installed-'));
  afterAll(() => rmSync(profile, { recursive: true, force: true, maxRetries: 5 }));

  test('its manifest is valid, and the browser has nothing against it', async () => {
    const own = await startWithProfile(profile);
    const context = own.browser.contexts()[0];
    const page = await context?.newPage();
    if (!context || !page) throw new Error('the browser has no window');
    const { problems } = watch(page, server.origin);
    await page.goto(`${server.origin}/`);
    await ready(page);
    const devtools = await context.newCDPSession(page);
    const { url, errors, data } = await devtools.send('Page.getAppManifest');
    expect([url, errors]).toEqual([`${server.origin}/manifest.webmanifest`, []]);
    const { installabilityErrors } = await devtools.send('Page.getInstallabilityErrors');
    expect(installabilityErrors).toEqual([]);
    const manifest = JSON.parse(data ?? '');
    expect(new URL(manifest.start_url, url).href).toBe(`${server.origin}/`);
    for (const { src, sizes } of manifest.icons) {
      const size = await page.evaluate(async (file) => {
        const image = new Image();
        image.src = file;
        await image.decode();
        return `${image.naturalWidth}x${image.naturalHeight}`;
      }, src);
      expect([src, size]).toEqual([src, sizes]);
    }
    expect(manifest.icons.some(({ purpose }: { purpose: string }) => purpose === 'maskable')).toBe(true);
    expect(problems).toEqual([]);
    await own.kill();
  });
});

// A version is put together, and the page opened, several times in each.
describe('a new version', { timeout: 150_000 }, () => {
  async function firstVisit() {
    const visited = await visit(browser, server.origin, { offline: true });
    const { page } = visited;
    await ready(page);
    await title(page).fill('Kept from the first version');
    await title(page).press('Enter');
    await setFigure(page, 'Interval', '13 s');
    return { ...visited, before: await figures(page) };
  }

  test('is announced, and taken when one agrees; nothing of the plan is lost', async () => {
    const { page, problems, context, before } = await firstVisit();
    await deployNew('second');
    await reopen(page);
    await announcement(page).waitFor();
    expect(await page.title()).toBe('Escapement');
    await setFigure(page, 'Interval', '17 s');
    const edited = await figures(page);
    expect(edited).not.toEqual(before);
    await button(page, 'Take it now').click();
    await expect.poll(() => page.title()).toBe('Escapement, second');
    await expect.poll(() => title(page).inputValue()).toBe('Kept from the first version');
    expect(await figures(page)).toEqual(edited);
    expect(await lookedFor(page)).toBe(false);
    await ready(page);
    expect(await announcement(page).count()).toBe(0);
    expect(problems).toEqual([]);
    // And the second version opens without a network as the first did.
    await cut(context);
    await reopen(page);
    expect(await page.title()).toBe('Escapement, second');
    await page.getByRole('link', { name: 'Days' }).click();
    await page.getByRole('slider', { name: 'Day' }).waitFor();
    await context.close();
  });

  test('that is put off stays off, whatever is closed, also for parts that were never fetched', async () => {
    const { page, context, before } = await firstVisit();
    await deployNew('second');
    await reopen(page);
    await button(page, 'Later').click();
    await announcement(page).waitFor({ state: 'detached' });
    // The last tab is closed: a worker of the usual kind would now bring in the new version by itself.
    await page.close();
    const again = await context.newPage();
    await again.goto(`${server.origin}/`);
    await announcement(again).waitFor();
    expect(await again.title()).toBe('Escapement');
    expect(await figures(again)).toEqual(before);
    await button(again, 'Later').click();
    await cut(context);
    await reopen(again);
    expect(await again.title()).toBe('Escapement');
    await again.getByRole('link', { name: 'Days' }).click();
    await again.getByRole('slider', { name: 'Day' }).waitFor();
    await again.getByRole('link', { name: 'Sheet' }).click();
    await button(again, 'Print').waitFor();
    await context.close();
  });

  test('does not disturb another tab that is still on the one before', async () => {
    const { page, context } = await firstVisit();
    const other = watch(await context.newPage(), server.origin);
    await other.page.goto(`${server.origin}/?demo=loaf-proving`);
    await expect.poll(() => title(other.page).inputValue()).toBe('Loaf proving');
    await deployNew('second');
    await reopen(page);
    await button(page, 'Take it now').click();
    await expect.poll(() => page.title()).toBe('Escapement, second');
    await setFigure(other.page, 'Interval', '20 s');
    await other.page.getByRole('link', { name: 'Days' }).click();
    await other.page.getByRole('slider', { name: 'Day' }).waitFor();
    expect(await other.page.title()).toBe('Escapement');
    await announcement(other.page).waitFor();
    expect(other.problems).toEqual([]);
    await context.close();
  });

  test('waits until a run is over', async () => {
    const { page, context } = await firstVisit();
    await page.evaluate((key) => localStorage.setItem(key, 'since 20:31'), RUN_KEY);
    await deployNew('second');
    await reopen(page);
    expect(await lookedFor(page)).toBe(true);
    await reopen(page);
    await ready(page);
    expect(await announcement(page).count()).toBe(0);
    // Another tab says that the run is over.
    const other = await context.newPage();
    await other.goto(`${server.origin}/`);
    await other.evaluate((key) => localStorage.removeItem(key), RUN_KEY);
    await announcement(page).waitFor();
    await context.close();
  });

  test('of which a part is missing or of another is left alone', async () => {
    const { page, context } = await firstVisit();
    await deployNew('second');
    // The host has not got all of it yet: a part comes from a third version.
    writeFileSync(join(folder, 'theme.js'), '// of a third version');
    await reopen(page);
    expect(await lookedFor(page)).toBe(false);
    await reopen(page);
    await ready(page);
    expect(await announcement(page).count()).toBe(0);
    expect(await page.title()).toBe('Escapement');
    await deployNew('second');
    await reopen(page);
    await announcement(page).waitFor();
    await context.close();
  });

  test('is announced to everybody, in every theme and on a phone', async () => {
    const phone = { viewport: { width: 390, height: 844 }, touch: true };
    const looks = [
      { themes: ['light', 'dark'], least: 24, how: {} },
      { themes: ['dim'], least: 44, how: phone },
    ] as const;
    for (const { themes, least, how } of looks) {
      const { page, context } = await visit(browser, server.origin, {
        offline: true,
        theme: themes[0],
        ...how,
      });
      await page.evaluate(() => navigator.serviceWorker.ready);
      await deployNew(`for-${themes[0]}`);
      await reopen(page);
      for (const theme of themes) {
        await announcement(page).waitFor();
        expect(await page.locator('html').getAttribute('data-theme')).toBe(theme);
        expect(await violations(page, { within: '.newer' })).toEqual([]);
        for (const name of ['Take it now', 'Later']) {
          const box = await button(page, name).boundingBox();
          expect(box?.height).toBeGreaterThanOrEqual(least);
        }
        if (theme !== themes.at(-1)) await page.getByRole('button', { name: /^Theme/ }).click();
      }
      await context.close();
    }
  });

  test('says so first, where the plan on screen is not kept', async () => {
    const { page, context } = await firstVisit();
    await deployNew('second');
    await reopen(page);
    await announcement(page).waitFor();
    await page.evaluate(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('no room', 'QuotaExceededError');
      };
    });
    await setFigure(page, 'Clip', '18 s');
    await page.getByText('not kept in this browser: save it').waitFor();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      button(page, 'Save as a file').click(),
    ]);
    expect(JSON.parse(readFileSync(await download.path(), 'utf8')).pacing.clipLengthS).toBe(18);
    await context.close();
  });
});

test('the first visit is not held up: the worker comes after everything that the page asks for', async () => {
  const { page, context } = await visit(browser, inject('origin'), {
    offline: true,
    before: async (opened) => {
      // A slow network: the figures are there before the charts are.
      await opened.route(/\/charts-.*\.js$/, async (route) => {
        await new Promise((resume) => setTimeout(resume, 2000));
        await route.continue();
      });
      await opened.addInitScript(() => {
        const { register } = ServiceWorkerContainer.prototype;
        ServiceWorkerContainer.prototype.register = function (...given) {
          const fetched = performance.getEntriesByType('resource').map(({ name }) => name);
          Object.assign(globalThis, { before: fetched });
          return register.apply(this, given);
        };
      });
    },
  });
  await ready(page);
  const before = await page.evaluate(() => (globalThis as unknown as { before: string[] }).before);
  for (const part of [/\/index-.*\.js$/, /\/charts-.*\.js$/, /\/fields-.*\.js$/])
    expect(before.filter((name) => part.test(name))).toHaveLength(1);
  await context.close();
});
