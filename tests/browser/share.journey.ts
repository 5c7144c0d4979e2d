/** A plan goes to somebody else as a link or as a QR code, and takes the place of nothing unasked. */
import jsQR from 'jsqr';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { packed } from '../../src/outputs/deflate.ts';
import { LONGEST_FRAGMENT, planFragment } from '../../src/outputs/share-link.ts';
import { planFile, planOf } from '../outputs/plans.ts';
import { violations } from './axe.ts';
import { figures, figureText, newPlan, pickFile, text } from './parts.ts';
import { pixelsOf } from './pixels.ts';
import { startBrowser, THEMES, visit } from './visit.ts';

const origin = inject('origin');
let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const title = (page: Page) => page.getByLabel('Title of the plan').inputValue();
const offer = (page: Page) => page.getByRole('dialog', { name: 'Open the plan in the link?' });

/** Opens the dialog that shares the present plan, and gives its link. */
async function shared(page: Page): Promise<string> {
  await button(page, 'Share').filter({ visible: true }).click();
  return page.getByLabel('Link to this plan').inputValue();
}

/** Follows a link in a page that is open, as typing it into the address would. */
const follow = (page: Page, link: string): Promise<void> =>
  page.evaluate(
    (fragment) => {
      location.hash = fragment;
    },
    link.slice(link.indexOf('#')),
  );

// Worked by hand: 12 s x 25 fps = 300 frames; 2400 s / 299 = 8.03 s, dialled down to 8 s; 2400 / 8 + 1 = 301.
const DOUGH = { title: 'Dough', pacing: { workedOut: 'interval', eventS: 2400, clipLengthS: 12 } } as const;

describe('a plan that is shared', () => {
  test('opens in a fresh profile, and the address carries it no longer', async () => {
    const mine = await visit(browser, origin);
    await newPlan(mine.page, '40 min', '12 s');
    await mine.page.getByLabel('Title of the plan').fill('Dough, second try');
    const before = await figures(mine.page);
    const link = await shared(mine.page);
    expect(link).toMatch(new RegExp(`^${origin}/#p1\\.[\\w-]+$`));

    const theirs = await visit(browser, origin, { query: link.slice(origin.length + 1) });
    await expect.poll(() => title(theirs.page)).toBe('Dough, second try');
    expect(await figures(theirs.page)).toEqual(before);
    expect(theirs.page.url()).toBe(`${origin}/`);
    // A reload keeps what was done since.
    await theirs.page.getByLabel('Title of the plan').fill('Mine now');
    await theirs.page.waitForTimeout(300);
    await theirs.page.reload();
    await expect.poll(() => title(theirs.page)).toBe('Mine now');
    expect([...mine.problems, ...theirs.problems]).toEqual([]);
    await mine.context.close();
    await theirs.context.close();
  });

  test('is copied, by the browser or by hand', async () => {
    const { page, context, problems } = await visit(browser, origin);
    await context.grantPermissions(['clipboard-read', 'clipboard-write'], { origin });
    const link = await shared(page);
    await button(page, 'Copy').click();
    await page.getByText('Copied.').waitFor();
    expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(link);
    await page.evaluate(() => {
      navigator.clipboard.writeText = () => Promise.reject(new Error('refused'));
    });
    await button(page, 'Copy').click();
    await page.getByText('The link is selected').waitFor();
    expect(await page.evaluate(() => getSelection()?.toString())).toBe(link);
    expect(problems).toEqual([]);
    await context.close();
  });

  test.each(THEMES)('is read off the screen by another program, in the %s theme', async (theme) => {
    const { page, context, problems } = await visit(browser, origin, { theme });
    await pickFile(page, 'dough.json', JSON.stringify(planFile(DOUGH)));
    await expect.poll(() => title(page)).toBe('Dough');
    const link = await shared(page);
    if (theme === 'dim') await button(page, 'Show the QR code (white, bright)').click();
    const code = page.getByRole('img', { name: /^QR code/ });
    const { data, width, height } = await pixelsOf(browser, await code.screenshot());
    expect(jsQR(data, width, height)?.data).toBe(link);
    expect(await violations(page)).toEqual([]);
    expect(problems).toEqual([]);
    await context.close();
  });

  test('is offered as a file where a link would be too long', async () => {
    const { page, context, problems } = await visit(browser, origin);
    // Letters by a fixed recurrence (Numerical Recipes' constants), which compress badly.
    let seed = 1;
    const letter = () => {
      seed = (seed * 1_664_525 + 1_013_904_223) % 2 ** 32;
      return String.fromCharCode(0x4e00 + Math.floor((seed / 2 ** 32) * 16_384));
    };
    const notes = (length: number) => Array.from({ length }, letter).join('');
    await pickFile(page, 'long.json', JSON.stringify(planFile({ title: 'Long', notes: notes(5000) })));
    await expect.poll(() => title(page)).toBe('Long');
    expect((await shared(page)).length).toBeGreaterThan(8000);
    const dialog = page.getByRole('dialog');
    expect(await text(dialog)).toMatch(
      /Long link.*many mail and chat programs cut it.*Too long for a QR code/s,
    );
    await page.keyboard.press('Escape');

    const tooLong = { title: 'Too long', notes: notes(20_000), sheet: { notes: notes(20_000) } };
    await pickFile(page, 'too-long.json', JSON.stringify(planFile(tooLong)));
    await expect.poll(() => title(page)).toBe('Too long');
    await button(page, 'Share').click();
    await dialog.getByText('No link').waitFor();
    expect(await page.getByLabel('Link to this plan').count()).toBe(0);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      button(page, 'Save the plan as a file').click(),
    ]);
    expect(download.suggestedFilename()).toBe('too-long.json');
    expect(problems).toEqual([]);
    await context.close();
  });
});

describe('where a plan of one’s own is open', () => {
  test('a link says what it holds, and is left or opened', async () => {
    const { page, context, problems } = await visit(browser, origin);
    await newPlan(page, '50 min', '21 s');
    await page.getByLabel('Title of the plan').fill('Mine');
    const mine = await figures(page);
    await follow(page, await planFragment(planOf(DOUGH)));
    await offer(page).waitFor();
    expect(await text(offer(page))).toMatch(
      /Dough.*301 frames.*12 s at 25 fps.*Sun 21 Jun 2026.*Mine is open now/s,
    );
    expect(await violations(page)).toEqual([]);
    // A reload asks again.
    await page.waitForTimeout(300);
    await page.reload();
    await button(page, 'Leave it').click();
    expect(await title(page)).toBe('Mine');
    expect(page.url()).toBe(`${origin}/`);

    await follow(page, await planFragment(planOf(DOUGH)));
    // A key that is pressed before the question stands closes nothing.
    await offer(page).waitFor();
    await page.keyboard.press('Escape');
    await offer(page).waitFor({ state: 'hidden' });
    expect(await figures(page)).toEqual(mine);

    await follow(page, await planFragment(planOf(DOUGH)));
    await button(page, 'Open it').click();
    await expect.poll(() => title(page)).toBe('Dough');
    expect(await figureText(page, 'Frames')).toBe('301');
    expect(page.url()).toBe(`${origin}/`);
    await button(page, 'Undo').click();
    expect(await title(page)).toBe('Mine');
    expect(await figures(page)).toEqual(mine);
    expect(problems).toEqual([]);
    await context.close();
  });

  test('the views keep their addresses', async () => {
    const { page, context } = await visit(browser, origin);
    await page.getByRole('link', { name: 'Sheet' }).click();
    expect(page.url()).toBe(`${origin}/#sheet`);
    await shared(page);
    await page.keyboard.press('Escape');
    expect(page.url()).toBe(`${origin}/#sheet`);
    await context.close();
  });
});

describe('a link at fault changes nothing', () => {
  const linkOf = async (file: unknown) =>
    `#p1.${await packed(typeof file === 'string' ? file : JSON.stringify(file))}`;
  const LINKS: readonly (readonly [string, () => Promise<string>, RegExp])[] = [
    ['oversized', async () => `#p1.${'A'.repeat(LONGEST_FRAGMENT)}`, /64004 characters/],
    ['a bomb', () => linkOf(`{"notes":"${'a'.repeat(40_000_000)}"}`), /more than 4000000 characters/],
    ['of another version', async () => '#p7.abc', /a link of version 7/],
    ['not base64', async () => '#p1.<script>alert(1)</script>', /at character 1/],
    ['broken deflate', async () => '#p1.AAAA', /damaged or cut off/],
    ['not a plan', () => linkOf('[]'), /a plan file/],
    ['a field out of range', () => linkOf(planFile({ cycle: { guardS: -3 } })), /cycle\.guardS.*-3/],
    [
      'markup for a field',
      () => linkOf(planFile({ '<img src=x onerror=alert(1)>': 1 })),
      /<img src=x onerror=alert\(1\)>.*a field that plans do not have/,
    ],
    ['a prototype', () => linkOf('{"format":"escapement-plan","version":1,"constructor":{}}'), /constructor/],
  ];
  let visited: Awaited<ReturnType<typeof visit>>;
  let before: Awaited<ReturnType<typeof figures>>;
  beforeAll(async () => {
    visited = await visit(browser, origin);
    await newPlan(visited.page, '40 min', '12 s');
    before = await figures(visited.page);
  });
  afterAll(() => visited.context.close());
  // One after another on one page: none of them leaves a trace.
  test.each(LINKS)('%s', async (_, make, fault) => {
    const { page, problems } = visited;
    await follow(page, await make());
    const dialog = page.getByRole('dialog', { name: 'The link was not opened' });
    await dialog.waitFor();
    expect(await text(dialog)).toMatch(fault);
    expect(await dialog.locator('img, script').count()).toBe(0);
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'hidden' });
    expect(await figures(page)).toEqual(before);
    expect(page.url()).toBe(`${origin}/`);
    expect(problems).toEqual([]);
  });
});

test('on a phone, by touch', async () => {
  const { page, context, problems } = await visit(browser, origin, {
    viewport: { width: 390, height: 844 },
    touch: true,
  });
  await button(page, 'More').tap();
  const link = await shared(page);
  const code = page.getByRole('img', { name: /^QR code/ });
  const box = await code.boundingBox();
  expect(box && box.x >= 0 && box.x + box.width <= 390).toBe(true);
  expect((await button(page, 'Copy').boundingBox())?.height).toBeGreaterThanOrEqual(44);
  expect(link).toContain('#p1.');
  expect(problems).toEqual([]);
  await context.close();
});
