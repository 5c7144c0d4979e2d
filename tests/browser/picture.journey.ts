/** Charts leave the page as pictures that stand alone: SVG and PNG, light on white in every theme. */
import { readFileSync } from 'node:fs';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { violations } from './axe.ts';
import { openSection, pickFile, plain } from './parts.ts';
import { coloursOf } from './pixels.ts';
import { startBrowser, visit } from './visit.ts';

const origin = inject('origin');
let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

/** Name of a chart, of its file, and a word that stands in it. */
type Chart = readonly [title: string, stem: string, word: string | RegExp];

interface View {
  demo: string;
  /** Brings its charts in sight. */
  open: (page: Page) => Promise<void>;
  charts: readonly Chart[];
}

const goTo = (page: Page, view: string) => page.getByRole('link', { name: view, exact: true }).click();

async function openPlan(page: Page): Promise<void> {
  // The camera's path is drawn as one comes near it.
  await page.locator('.path-place').scrollIntoViewIfNeeded();
  const place = await openSection(page, 'Place & light');
  await place.locator('summary', { hasText: 'Own horizon' }).click();
  await place.locator('summary', { hasText: 'Pane' }).click();
  await place.getByLabel('Sun through a pane').check();
}

async function openShoot(page: Page): Promise<void> {
  await goTo(page, 'Sheet');
  for (const exposure of [1, 2, 3])
    await page.getByRole('button', { name: `Mark ${exposure} done`, exact: true }).click();
}

const VIEWS: Readonly<Record<string, View>> = {
  plan: {
    demo: 'harbour-at-dusk',
    open: openPlan,
    charts: [
      ['Run', 'run', 'Camera pack'],
      ['Sky over the run, degrees', 'sky-over-the-run-degrees', 'Civil dusk'],
      ['Exposure over the run, EV', 'exposure-over-the-run-ev', 'ISO 8000'],
      ['Error over the run, stops', 'error-over-the-run-stops', 'Too bright'],
      ['Axes over the run, mm', 'axes-over-the-run-mm', 'Boom'],
      ['Axes over the run, degrees', 'axes-over-the-run-degrees', 'Pan'],
      ['Spare over the run, s a cycle', 'spare-over-the-run-s-a-cycle', 'Tightest'],
      ['Energy over the run, % left', 'energy-over-the-run-left', 'Swap Camera pack'],
      ['Card over the run, GB filled', 'card-over-the-run-gb-filled', 'Card A'],
      ['Cycle', 'cycle', /Camera lane 8\.27 s/],
      ['Margins', 'margins', /Camera pack .*13\.1 Wh left/],
      ['Camera path', 'camera-path', /Reach 1300 mm/],
      ['Own horizon', 'own-horizon', /up to 63°/],
      ['Sun through the pane', 'sun-through-the-pane', 'Set'],
    ],
  },
  days: {
    demo: 'harbour-at-dusk',
    open: (page) => goTo(page, 'Days'),
    charts: [
      [
        'The year’s light',
        'the-year-s-light',
        /2026, one line a day: 1 h 30 min with the sun from -13° to 4°/,
      ],
      ['Saturday 8 August 2026', 'saturday-8-august-2026', /Civil dusk 21:19:06/],
    ],
  },
  sheet: {
    demo: 'harbour-at-dusk',
    open: (page) => goTo(page, 'Sheet'),
    charts: [['Frames', 'frames', /289 21:39:47 6 s, f\/4, ISO 800 502\.2/]],
  },
  shoot: {
    demo: 'clay-snail',
    open: openShoot,
    charts: [
      ['Exposure sheet', 'exposure-sheet', /4 9–10 00:00:00:08 Wakes/],
      ['Pace', 'pace', 'Finish at your pace'],
      ['Days of work', 'days-of-work', 'Ends with exposure 96'],
    ],
  },
};

const menuOf = (page: Page, title: string): Locator =>
  page.getByRole('button', { name: `Save picture: ${title}`, exact: true });

async function saved(
  page: Page,
  title: string,
  kind: 'SVG' | 'PNG',
): Promise<{ name: string; file: Buffer }> {
  await menuOf(page, title).click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: new RegExp(`^${kind}`) }).click(),
  ]);
  return { name: download.suggestedFilename(), file: readFileSync(await download.path()) };
}

/** What a parser of XML makes of a text, in a page of its own. */
async function parsed(svg: string) {
  const page = await browser.newPage();
  const found = await page.evaluate((text) => {
    const all = new DOMParser().parseFromString(text, 'image/svg+xml');
    const elements = [...all.querySelectorAll('*')];
    return {
      fault: all.querySelector('parsererror')?.textContent ?? null,
      root: all.documentElement.tagName,
      width: Number(all.documentElement.getAttribute('width')),
      height: Number(all.documentElement.getAttribute('height')),
      title: all.querySelector('title')?.textContent ?? '',
      words: [...all.querySelectorAll('text')].map((one) => one.textContent),
      paths: [...all.querySelectorAll('path')].map((one) => one.getAttribute('d')),
      tags: [...new Set(elements.map((one) => one.tagName))],
      attributes: elements.flatMap((one) => [...one.attributes].map(({ name, value }) => `${name}=${value}`)),
      lost: elements.flatMap((one) =>
        [...one.attributes].flatMap(({ value }) =>
          [...value.matchAll(/url\(#([^)]+)\)/g)].flatMap(([, id]) =>
            all.getElementById(id ?? '') ? [] : [id],
          ),
        ),
      ),
    };
  }, svg);
  await page.close();
  return found;
}

/** The longest line of a chart as it stands on the page; what is not saved with it left out. */
const longestLine = (page: Page, title: string): Promise<string> =>
  menuOf(page, title).evaluate((menu) => {
    const paths = menu.closest('.run-row, .chart-panel, .panel, figure')?.querySelectorAll('path') ?? [];
    return [...paths]
      .filter((path) => !path.closest('button, .menu, [role=row]'))
      .map((path) => path.getAttribute('d') ?? '')
      .reduce((most, d) => (d.length > most.length ? d : most), '');
  });

/** Looks at both files of a chart; the PNG is drawn from the SVG. */
async function look(page: Page, demo: string, [title, stem, word]: Chart, both: boolean): Promise<void> {
  const longest = await longestLine(page, title);
  const { name, file } = await saved(page, title, 'SVG');
  expect(name).toBe(`${demo}-${stem}.svg`);
  const svg = await parsed(file.toString('utf8'));
  expect(svg).toMatchObject({ fault: null, root: 'svg', title, lost: [] });
  const words = plain(svg.words.join(' '));
  expect(svg.words[0]).toBe(title);
  expect(words).toMatch(
    demo === 'clay-snail' ? /Clay snail · / : /Harbour at dusk · Sat 8 Aug 2026, 20:32:35/,
  );
  if (typeof word === 'string') expect(words).toContain(word);
  else expect(words).toMatch(word);
  if (longest) expect(svg.paths).toContain(longest);
  // Nothing of the page is needed, and nothing happens.
  expect(svg.tags.filter((tag) => /script|foreignObject|style|image|a$/i.test(tag))).toEqual([]);
  expect(
    svg.attributes.filter((one) => /^on|href|class=|style=|var\(|https?:\/\/(?!www\.w3\.org)/i.test(one)),
  ).toEqual([]);
  // Ink of the light theme, whatever the theme.
  expect(svg.attributes).toContain('fill=#1b2430');
  expect(svg.attributes.filter((one) => one.includes('rgb(224, 82, 42)'))).toEqual([]);

  if (!both) return;
  const png = await saved(page, title, 'PNG');
  expect(png.name).toBe(`${demo}-${stem}.png`);
  const { colours, width, height } = await coloursOf(browser, png.file);
  expect([width, height]).toEqual([2 * svg.width, 2 * svg.height]);
  const white = (colours.get('255 255 255 255') ?? 0) / (width * height);
  expect(white).toBeGreaterThan(0.1);
  expect(white).toBeLessThan(0.98);
  // The ink of the title.
  expect(colours.get('27 36 48 255') ?? 0).toBeGreaterThan(100);
  expect(colours.size).toBeGreaterThan(20);
}

describe.each(['light', 'dim'] as const)('in the %s theme', (theme) => {
  test.each(Object.keys(VIEWS))('every chart of the %s', async (name) => {
    const { demo, open, charts } = VIEWS[name] as View;
    const { page, problems, context } = await visit(browser, origin, { theme, query: `?demo=${demo}` });
    await open(page);
    // There is no chart besides.
    const menus = page.getByRole('button', { name: /^Save picture: / }).filter({ visible: true });
    await expect.poll(() => menus.count()).toBe(charts.length);
    // Of one theme that the page is in all, of the other one of each view.
    for (const [n, chart] of charts.entries()) await look(page, demo, chart, theme === 'light' || n === 0);
    // Nothing of it is left behind on the page.
    expect(await page.locator('[data-theme] [data-theme]').count()).toBe(0);
    expect(problems).toEqual([]);
    await context.close();
  });
});

test('a year of days is painted as shapes: as many days long as it is', async () => {
  const { page, context } = await visit(browser, origin, { query: '?demo=harbour-at-dusk' });
  await goTo(page, 'Days');
  await page.getByText('301 days fit', { exact: false }).waitFor();
  const { paths, attributes } = await parsed(
    (await saved(page, 'The year’s light', 'SVG')).file.toString('utf8'),
  );
  // Every day has a morning and an evening, and two days are cut by a change of the clocks.
  const [most = ''] = [...paths].sort((a, b) => (b?.length ?? 0) - (a?.length ?? 0));
  expect(most?.match(/M/g)?.length ?? 0).toBeGreaterThanOrEqual(2 * 365);
  // The light theme's day and night.
  expect(attributes).toContain('fill=rgb(207, 230, 242)');
  expect(attributes).toContain('fill=rgb(43, 51, 80)');
  await context.close();
});

test('a cycle shown as a table has no picture, and the menu is reached by keys', async () => {
  const { page, context } = await visit(browser, origin);
  const panel = page.getByRole('region', { name: 'Cycle', exact: true });
  const menu = menuOf(page, 'Cycle');
  await menu.focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('ArrowDown');
  await panel.getByRole('button', { name: /^SVG/ }).waitFor();
  expect(await violations(page, { within: '.cycle-panel' })).toEqual([]);
  await page.keyboard.press('Escape');
  await panel.getByRole('button', { name: 'Show as table: Cycle' }).click();
  expect(await menu.count()).toBe(0);
  await context.close();
});

test('what a plan says is text in a picture', async () => {
  const { page, problems, context } = await visit(browser, origin);
  const title = '</text><script>alert(1)</script>\u0000\u001b\ufffe\ud800 &amp; \u202e<img onerror=x>';
  const axis = '<b onclick=alert(1)>';
  await pickFile(
    page,
    'hostile.json',
    JSON.stringify({
      format: 'escapement-plan',
      version: 1,
      title,
      rig: { axes: [{ name: axis }] },
      move: {
        mode: 'moveShootMove',
        tracks: [
          {
            axis,
            keyframes: [
              { share: 0, position: 0 },
              { share: 1, position: 100 },
            ],
          },
        ],
      },
    }),
  );
  await expect.poll(() => page.getByLabel('Title of the plan').inputValue()).toContain('</text>');
  const panel = page.getByRole('region', { name: 'Run', exact: true });
  await panel.getByText(axis).first().waitFor();
  const svg = await parsed((await saved(page, 'Run', 'SVG')).file.toString('utf8'));
  expect(svg.fault).toBeNull();
  expect(svg.words.join(' ')).toContain('</text><script>alert(1)</script>');
  expect(svg.words.join(' ')).toContain(axis);
  expect(svg.tags).not.toContain('script');
  expect(svg.tags).not.toContain('b');
  const png = await saved(page, 'Run', 'PNG');
  expect((await coloursOf(browser, png.file)).width).toBe(2 * svg.width);
  expect(problems).toEqual([]);
  await context.close();
});
