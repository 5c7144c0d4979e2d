/** Charts leave the page as pictures that stand alone: SVG and PNG, light on white in every theme. */
import { readFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { pickFile } from './parts.ts';
import { pixelsOf } from './pixels.ts';
import { startBrowser, visit } from './visit.ts';

const origin = inject('origin');
let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

const PANELS = [
  ['Run', 'harbour-at-dusk-run', 'Camera pack'],
  ['Cycle', 'harbour-at-dusk-cycle', 'Exposure'],
  ['Camera path', 'harbour-at-dusk-camera-path', 'Counterweight'],
] as const;

async function panelOf(page: Page, name: string): Promise<Locator> {
  // The camera's path is drawn as one comes near it.
  await page.locator('.path-place').scrollIntoViewIfNeeded();
  const panel = page.getByRole('region', { name, exact: true });
  await panel.getByRole('img').first().waitFor();
  return panel;
}

async function saved(panel: Locator, kind: 'SVG' | 'PNG'): Promise<{ name: string; file: Buffer }> {
  await panel.getByRole('button', { name: 'Save picture' }).click();
  const [download] = await Promise.all([
    panel.page().waitForEvent('download'),
    panel.getByRole('button', { name: new RegExp(`^${kind}`) }).click(),
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

const count = (data: Uint8ClampedArray): Map<string, number> => {
  const colours = new Map<string, number>();
  for (let at = 0; at < data.length; at += 4) {
    const colour = `${data[at]} ${data[at + 1]} ${data[at + 2]} ${data[at + 3]}`;
    colours.set(colour, (colours.get(colour) ?? 0) + 1);
  }
  return colours;
};

describe.each(['light', 'dim'] as const)('in the %s theme', (theme) => {
  test.each(PANELS)('%s', async (title, stem, word) => {
    const { page, problems, context } = await visit(browser, origin, { theme });
    const panel = await panelOf(page, title);
    const drawn = await panel
      .locator('path')
      .evaluateAll((all) => all.map((one) => one.getAttribute('d') ?? ''));
    const longest = drawn.reduce((most, d) => (d.length > most.length ? d : most));

    const { name, file } = await saved(panel, 'SVG');
    expect(name).toBe(`${stem}.svg`);
    const svg = await parsed(file.toString('utf8'));
    expect(svg).toMatchObject({ fault: null, root: 'svg', title, lost: [] });
    expect(svg.words[0]).toBe(title);
    expect(svg.words.join(' ')).toMatch(/Harbour at dusk · Sat.8.Aug.2026, 20:32:35/);
    expect(svg.words.join(' ')).toContain(word);
    expect(svg.paths).toContain(longest);
    // Nothing of the page is needed, and nothing happens.
    expect(svg.tags.filter((tag) => /script|foreignObject|style|image|a$/i.test(tag))).toEqual([]);
    expect(
      svg.attributes.filter((one) => /^on|href|class=|style=|var\(|https?:\/\/(?!www\.w3\.org)/i.test(one)),
    ).toEqual([]);
    // Ink of the light theme, whatever the theme.
    expect(svg.attributes).toContain('fill=#1b2430');
    expect(svg.attributes.filter((one) => one.includes('rgb(224, 82, 42)'))).toEqual([]);

    const png = await saved(panel, 'PNG');
    expect(png.name).toBe(`${stem}.png`);
    const { data, width, height } = await pixelsOf(browser, png.file);
    expect([width, height]).toEqual([2 * svg.width, 2 * svg.height]);
    const colours = count(data);
    const white = (colours.get('255 255 255 255') ?? 0) / (width * height);
    expect(white).toBeGreaterThan(0.2);
    expect(white).toBeLessThan(0.98);
    // The ink of the title.
    expect(colours.get('27 36 48 255') ?? 0).toBeGreaterThan(100);
    expect(colours.size).toBeGreaterThan(20);
    // Nothing of it is left behind on the page.
    expect(await page.locator('[data-theme] [data-theme]').count()).toBe(0);
    expect(problems).toEqual([]);
    await context.close();
  });
});

test('a cycle shown as a table has no picture, and the menu is reached by keys', async () => {
  const { page, context } = await visit(browser, origin);
  const panel = await panelOf(page, 'Cycle');
  const menu = panel.getByRole('button', { name: 'Save picture' });
  await menu.focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('ArrowDown');
  await panel.getByRole('button', { name: /^SVG/ }).waitFor();
  expect((await new AxeBuilder({ page }).include('.cycle-panel').analyze()).violations).toEqual([]);
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
  const svg = await parsed((await saved(panel, 'SVG')).file.toString('utf8'));
  expect(svg.fault).toBeNull();
  expect(svg.words.join(' ')).toContain('</text><script>alert(1)</script>');
  expect(svg.words.join(' ')).toContain(axis);
  expect(svg.tags).not.toContain('script');
  expect(svg.tags).not.toContain('b');
  const png = await saved(panel, 'PNG');
  expect((await pixelsOf(browser, png.file)).width).toBe(2 * svg.width);
  expect(problems).toEqual([]);
  await context.close();
});
