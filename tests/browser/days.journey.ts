/** The Days screen: from the sentence to a day, and back into the plan. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { planFile } from '../outputs/plans.ts';
import { violations } from './axe.ts';
import { openSection, pickFile, plain } from './parts.ts';
import { startBrowser, visit } from './visit.ts';

const origin = inject('origin');
let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

const RIVIERA = { zone: 'Europe/Paris', latitudeDeg: 43.3, longitudeDeg: 6.4 };
/** An hour and a half of dusk on the Mediterranean, 8 August 2026. */
const DUSK = {
  title: 'Dusk',
  pacing: { workedOut: 'clip', eventS: 5000, intervalS: 10, clipLengthS: 10 },
  start: { date: '2026-08-08', time: '12:00:00' },
  place: RIVIERA,
  window: { used: true, sunAltitudeMinDeg: -12, sunAltitudeMaxDeg: 3, clockFrom: '12:00' },
};

type Options = NonNullable<Parameters<typeof visit>[2]>;

/** The Days screen with a plan, its year worked out. */
async function daysOf(fields: object, options: Options = {}) {
  const visited = await visit(browser, origin, { ...options, query: '#days' });
  await pickFile(visited.page, 'plan.json', JSON.stringify(planFile(fields)));
  return visited;
}

const find = (page: Page) => page.getByRole('region', { name: 'Find a day' });
const sentence = async (page: Page): Promise<string> =>
  plain((await find(page).getByRole('status').textContent()) ?? '');
const worked = (page: Page) => expect.poll(() => sentence(page), { timeout: 20_000 });
const slider = (page: Page) => page.getByRole('slider', { name: 'Day' });
const dayTitle = async (page: Page) => (await page.locator('.day h2').textContent()) ?? '';
const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name });

/** Date and first frame of the plan, as the Plan page shows them. */
async function planStart(page: Page): Promise<[string, string]> {
  await page.getByRole('link', { name: 'Plan' }).click();
  const place = await openSection(page, 'Place & light');
  const date = await place.getByLabel('Date', { exact: true }).inputValue();
  const time = await place.getByLabel('First frame at', { exact: true }).inputValue();
  await page.getByRole('link', { name: 'Days' }).click();
  return [date, time];
}

describe('the views', () => {
  test('are in the address: reload, back and keys keep to them', async () => {
    const { page, problems, context } = await visit(browser, origin);
    const current = () => page.locator('nav [aria-current=page]').textContent();
    expect(await current()).toBe('Plan');
    await page.keyboard.press('2');
    await expect.poll(() => page.url()).toMatch(/#days$/);
    await find(page).waitFor();
    expect(await current()).toBe('Days');
    expect(await page.getByRole('region', { name: 'Inputs' }).isVisible()).toBe(false);
    await page.reload();
    await find(page).waitFor();
    await page.getByRole('link', { name: 'Plan' }).click();
    await page.getByRole('region', { name: 'Inputs' }).waitFor();
    await page.goBack();
    await find(page).waitFor();
    // A worker that is still being fetched when its page goes would count as a problem.
    await worked(page).toMatch(/days fit/);
    await page.keyboard.press('1');
    await page.getByRole('region', { name: 'Inputs' }).waitFor();
    expect(problems).toEqual([]);
    await context.close();
  });

  test('a digit that is typed stays in its field', async () => {
    const { page, context } = await visit(browser, origin);
    await page.getByLabel('Title of the plan').fill('Day ');
    await page.keyboard.type('2');
    expect(await page.getByLabel('Title of the plan').inputValue()).toBe('Day 2');
    expect(page.url()).not.toContain('#days');
    await context.close();
  });

  test('the Plan is found as it was left', async () => {
    const { page, context } = await visit(browser, origin);
    const place = await openSection(page, 'Place & light');
    await place.locator('summary', { hasText: 'Window' }).first().click();
    const flag = place.getByLabel('Ask for a window');
    expect(await flag.isVisible()).toBe(true);
    await page.getByRole('link', { name: 'Days' }).click();
    await find(page).waitFor();
    await page.getByRole('link', { name: 'Plan' }).click();
    expect(await flag.isVisible()).toBe(true);
    await context.close();
  });
});

describe('a day is found and used', () => {
  test('by pointer; one undo takes it back', async () => {
    const { page, problems, context } = await daysOf(DUSK);
    await worked(page).toMatch(/\d+ days fit\. 8 August: fits/);
    expect(await dayTitle(page)).toBe('Saturday 8 August 2026');
    const { height, width } = (await slider(page).boundingBox()) ?? { height: 0, width: 0 };
    await slider(page).hover({ position: { x: width / 2, y: height / 2 } });
    await slider(page).click({ position: { x: width / 2, y: height / 2 } });
    const chosen = await slider(page).getAttribute('aria-valuetext');
    expect(chosen).toMatch(/(June|July) 2026/);
    expect(chosen).toContain(await dayTitle(page));
    await button(page, /^Use \d+ (June|July)$/).click();
    expect(await button(page, /^The plan is on/).getAttribute('aria-disabled')).toBe('true');
    const [date] = await planStart(page);
    expect(date).toMatch(/^2026-0[67]-/);
    await button(page, 'Undo').click();
    expect((await planStart(page))[0]).toBe('2026-08-08');
    expect(problems).toEqual([]);
    await context.close();
  });

  test('by keys alone', async () => {
    const { page, context } = await daysOf(DUSK);
    await worked(page).toMatch(/days fit/);
    await slider(page).focus();
    const seen: (string | null)[] = [];
    for (const key of ['ArrowRight', 'ArrowDown', 'PageUp', 'Home', 'ArrowLeft', 'End', 'PageUp']) {
      await page.keyboard.press(key);
      seen.push((await slider(page).getAttribute('aria-valuetext'))?.match(/\d+ \w+ \d{4}/)?.[0] ?? null);
    }
    expect(seen).toEqual([
      '9 August 2026',
      '16 August 2026',
      '16 July 2026',
      '1 January 2026',
      '1 January 2026',
      '31 December 2026',
      '30 November 2026',
    ]);
    await page.keyboard.press('Enter');
    expect((await planStart(page))[0]).toBe('2026-11-30');
    await context.close();
  });

  test('with a start by the clock that fits, date and time in one step', async () => {
    const { page, context } = await daysOf(DUSK);
    await worked(page).toMatch(/but the planned start is .* too early/);
    await page.getByRole('button', { name: 'Sun 9 Aug' }).click();
    const offer = button(page, /^Use 9 August, start at \d\d:\d\d/);
    const time = /at ([\d:]+)/.exec(plain((await offer.textContent()) ?? ''))?.[1];
    await offer.click();
    await worked(page).toMatch(/9 August: fits, .* to spare; the next/);
    expect(await planStart(page)).toEqual(['2026-08-09', time]);
    await button(page, 'Undo').click();
    expect(await planStart(page)).toEqual(['2026-08-08', '12:00']);
    await context.close();
  });

  test('with a start tied to the sky, which stays tied', async () => {
    const start = { ...DUSK.start, tiedTo: 'sky', event: 'sunset', offsetMin: -10 };
    const { page, context } = await daysOf({ ...DUSK, start });
    await worked(page).toMatch(/days fit/);
    await slider(page).press('PageDown');
    await page.getByRole('button', { name: 'Use 8 September', exact: true }).click();
    expect(plain((await page.locator('.use').textContent()) ?? '')).toContain('10 min before sunset');
    await page.getByRole('link', { name: 'Plan' }).click();
    const pacing = plain((await page.getByRole('region', { name: 'Pacing' }).textContent()) ?? '');
    // Sunset there is about 20:00 in September, 20:48 in August.
    expect(pacing).toMatch(/19:4\d:\d\d/);
    await context.close();
  });
});

describe('the sentence is the filter', () => {
  test('what is typed behind it goes into the plan, and can be undone', async () => {
    const { page, problems, context } = await daysOf(DUSK);
    await worked(page).toMatch(/days fit/);
    const before = await sentence(page);
    await button(page, /Height of the sun/).click();
    const editor = page.getByRole('group', { name: 'Height of the sun' });
    await editor.getByLabel('Sun at most at', { exact: true }).fill('30');
    await worked(page).not.toBe(before);
    await page.keyboard.press('Escape');
    expect(await editor.isVisible()).toBe(false);
    await button(page, /Height of the sun/).click();
    await editor.getByLabel('Sun at most at', { exact: true }).fill('30');
    await editor.getByLabel('Sun at most at', { exact: true }).press('Enter');
    await page.locator('h2', { hasText: 'The year’s light' }).click();
    expect(await editor.isVisible()).toBe(false);
    expect(plain((await button(page, /Height of the sun/).textContent()) ?? '')).toContain('-12° to 30°');
    await button(page, 'Undo').click();
    await worked(page).toBe(before);
    expect(problems).toEqual([]);
    await context.close();
  });

  test('other years', async () => {
    const { page, context } = await daysOf(DUSK);
    await worked(page).toMatch(/days fit/);
    await button(page, /^Year after/).click();
    expect(await dayTitle(page)).toBe('Sunday 8 August 2027');
    await worked(page).toMatch(/days fit/);
    await button(page, /^Use 8 August/)
      .first()
      .click();
    expect((await planStart(page))[0]).toBe('2027-08-08');
    await context.close();
  });
});

describe('what there is not', () => {
  test('no place: the way to its fields', async () => {
    const { page, problems, context } = await daysOf({ ...DUSK, place: { zone: 'Europe/Paris' } });
    await button(page, 'Enter the place').click();
    const place = await openSection(page, 'Place & light');
    await place.getByLabel('Place on the map', { exact: true }).waitFor();
    expect(page.url()).toMatch(/#plan$/);
    expect(problems).toEqual([]);
    await context.close();
  });

  test('no window asked for: the light alone, and an offer to ask', async () => {
    const { page, context } = await daysOf({ ...DUSK, window: { used: false } });
    await page.getByRole('img', { name: /No window is asked for/ }).waitFor();
    expect(await page.getByRole('button', { name: 'Use 8 August' }).count()).toBe(0);
    await button(page, 'Golden hour').click();
    await worked(page).toMatch(/fit/);
    await button(page, 'No window').click();
    await page.getByRole('img', { name: /No window is asked for/ }).waitFor();
    await context.close();
  });

  test('a sun that never gets there: the nearest that it does', async () => {
    const place = { zone: 'Europe/Oslo', latitudeDeg: 69.65, longitudeDeg: 18.96 };
    const { page, context } = await daysOf({ ...DUSK, place, window: { used: true, sunAltitudeMinDeg: 50 } });
    await worked(page).toMatch(/^No day fits\. 8 August: no window\.$/);
    await button(page, 'Ask for 43.5° or higher').click();
    await worked(page).toMatch(/^\d+ days fit|^No day fits\. 8 August: no window/);
    await slider(page).focus();
    await page.keyboard.press('Home');
    expect(plain((await page.locator('.ephemeris').textContent()) ?? '')).toContain('The sun does not rise.');
    await context.close();
  });

  test('a day that the calendar leaves out cannot be used', async () => {
    const place = { zone: 'Pacific/Apia', latitudeDeg: -13.8, longitudeDeg: -171.8 };
    const start = { ...DUSK.start, date: '2011-12-29' };
    const { page, context } = await daysOf({ ...DUSK, place, start });
    await worked(page).toMatch(/29 December/);
    await slider(page).press('ArrowRight');
    expect(await page.locator('.day').textContent()).toContain('leaves this day out');
    await page.keyboard.press('Enter');
    expect((await planStart(page))[0]).toBe('2011-12-29');
    await context.close();
  });
});

describe('the drawing', () => {
  /** Share of the canvas that is inked, and the colours in it. */
  const pixels = (page: Page) =>
    page.locator('.carpet canvas').evaluate((canvas) => {
      const { width, height } = canvas as HTMLCanvasElement;
      const data = (canvas as HTMLCanvasElement).getContext('2d')?.getImageData(0, 0, width, height).data;
      const colours = new Map<string, number>();
      for (let i = 0; data && i < data.length; i += 4) {
        const colour = [data[i], data[i + 1], data[i + 2]].join();
        if (data[i + 3] === 255) colours.set(colour, (colours.get(colour) ?? 0) + 1);
      }
      return { width, height, colours: Object.fromEntries(colours) };
    });
  const token = (page: Page, name: string) =>
    page.evaluate((of) => {
      const value = getComputedStyle(document.documentElement).getPropertyValue(of);
      return [1, 3, 5].map((at) => Number.parseInt(value.slice(at, at + 2), 16)).join();
    }, name);

  test('has the light of the theme, and ink where it fits', async () => {
    const { page, context } = await daysOf(DUSK);
    await worked(page).toMatch(/days fit/);
    const light = await pixels(page);
    for (const name of ['--b-day', '--b-golden', '--b-night', '--on-b-light', '--used'])
      expect(light.colours[await token(page, name)] ?? 0, name).toBeGreaterThan(100);
    await page.getByRole('button', { name: /^Theme/ }).click();
    const night = await token(page, '--b-night');
    await expect.poll(async () => (await pixels(page)).colours[night] ?? 0).toBeGreaterThan(1000);
    await context.close();
  });

  test('is a table as well', async () => {
    const { page, context } = await daysOf(DUSK);
    await worked(page).toMatch(/days fit/);
    await button(page, /^Show as table/).click();
    const rows = page.getByRole('grid', { name: 'Days of 2026, table' }).getByRole('row');
    // The table comes when it is first asked for.
    await expect.poll(() => rows.count()).toBe(366);
    const row = plain((await rows.nth(220).locator('th, td').allTextContents()).join(' '));
    expect(row).toMatch(/^Saturday 8 August 2026 06:3\d 20:4\d 20:2\d to 21:5\d Fits, \d+ min to spare$/);
    await context.close();
  });
});

describe('everybody can use it', () => {
  test.each(['light', 'dark', 'dim'] as const)('axe finds nothing serious in %s', async (theme) => {
    const { page, context } = await daysOf(DUSK, { theme });
    await worked(page).toMatch(/days fit/);
    await button(page, /Height of the sun/).click();
    expect(await violations(page, { theme })).toEqual([]);
    await context.close();
  });

  test.each([390, 360])('on a phone of %i px: a season at a time, by touch', async (width) => {
    const viewport = { width, height: 800 };
    const { page, problems, context } = await daysOf(DUSK, { viewport, touch: true });
    await worked(page).toMatch(/days fit/);
    const excess = () =>
      page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    expect(await excess()).toBe(0);
    await button(page, /Moon/).tap();
    expect(await excess()).toBe(0);
    await page.locator('h2', { hasText: 'The year’s light' }).tap();
    await button(page, 'Apr–Jun').tap();
    expect(await dayTitle(page)).toBe('Wednesday 1 April 2026');
    const box = (await slider(page).boundingBox()) ?? { width: 0, height: 0 };
    await slider(page).tap({ position: { x: box.width - 20, y: box.height / 2 } });
    expect(await dayTitle(page)).toMatch(/June 2026/);
    const small = await page.locator('main button, nav a').evaluateAll((all) =>
      all.flatMap((element) => {
        const { width: w, height: h } = element.getBoundingClientRect();
        return w > 0 && (w < 24 || h < 24) ? [element.outerHTML.slice(0, 80)] : [];
      }),
    );
    expect(small).toEqual([]);
    await page.getByRole('link', { name: 'Plan' }).tap();
    await page.getByRole('region', { name: 'Inputs' }).waitFor();
    expect(problems).toEqual([]);
    await context.close();
  });
});
