/** Place, start, horizon, ramp and test frame, as a person fills them in. */
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { bareJpeg, jpegWithExif } from '../app/frame/samples.ts';
import { newPlan, openSection, plain, setField, text } from './parts.ts';
import { startBrowser, visit } from './visit.ts';

const origin = inject('origin');
let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

const TITLE = 'Place & light';

const box = (section: Locator, label: string) => section.getByLabel(label, { exact: true });
const value = async (section: Locator, label: string) => plain(await box(section, label).inputValue());
const unfold = (section: Locator, title: string) =>
  section.locator('summary', { hasText: title }).first().click();

/** A new plan, far from any place, with Place & light open. */
async function fresh(): Promise<{
  page: Page;
  place: Locator;
  problems: string[];
  close: () => Promise<void>;
}> {
  const { page, context, problems } = await visit(browser, origin);
  await newPlan(page, '40 min', '12 s');
  const place = await openSection(page, TITLE);
  await setField(place, 'Time zone', 'Etc/UTC');
  return { page, place, problems, close: () => context.close() };
}

/** 43.3 N 6.4 E, on its own clock, on 8 August 2026. */
async function fillPlace(place: Locator): Promise<void> {
  await setField(place, 'Place on the map', '43.3, 6.4');
  // What reads places may still be on its way: until then the place is none of the edits that are undone.
  await expect.poll(() => value(place, 'Place on the map')).toBe('43.3° N, 6.4° E');
  await setField(place, 'Time zone', 'Europe/Paris');
  await box(place, 'Date').fill('2026-08-08');
}

describe('a place', () => {
  test('is typed, understood, and brings its zone', async () => {
    const { page, place, problems, close } = await fresh();
    await box(place, 'Place on the map').fill('N43 18.0 E006 24.0');
    await expect.poll(() => text(place)).toContain('Understood as 43° 18′ 0″ N, 6° 24′ 0″ E.');
    await place.getByRole('button', { name: 'Use it: time zone Europe/Paris' }).click();
    await expect.poll(() => value(place, 'Time zone')).toBe('Europe/Paris');
    expect(await place.getByRole('button', { name: /time zone/ }).count()).toBe(0);

    await box(place, 'Place on the map').fill('91, 6.4');
    await expect.poll(() => text(place)).toContain('Latitude is 91°. Allowed: 90° S to 90° N.');
    expect(await value(place, 'Place on the map')).toBe('91, 6.4');
    await page.keyboard.press('Escape');
    await expect.poll(() => value(place, 'Place on the map')).toBe('43.3° N, 6.4° E');

    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await expect.poll(() => value(place, 'Place on the map')).toBe('');
    expect(problems).toEqual([]);
    await close();
  });

  test('is told by the browser, or refused in words', async () => {
    const { page, place, close } = await fresh();
    await place.getByRole('button', { name: 'Use my own position' }).click();
    await expect.poll(() => text(place.getByRole('alert'))).toContain('may not tell its position');
    await page.context().grantPermissions(['geolocation']);
    await page.context().setGeolocation({ latitude: -41.28664, longitude: 174.77557, accuracy: 25 });
    await place.getByRole('button', { name: 'Use my own position' }).click();
    await expect.poll(() => value(place, 'Place on the map')).toBe('41.28664° S, 174.77557° E');
    await expect.poll(() => text(place)).toContain('to within 25 m');
    await place.getByRole('button', { name: 'Use it: time zone Pacific/Auckland' }).waitFor();
    await close();
  });
});

test('a start is tied to sunset, and moves with the date', async () => {
  const { place, problems, close } = await fresh();
  await place.getByRole('button', { name: 'Sky', exact: true }).first().click();
  await expect.poll(() => text(place)).toContain('Sun and moon need a place on the map.');
  await fillPlace(place);
  await setField(place, 'From the event', '50');
  await place.getByRole('button', { name: 'Before', exact: true }).click();
  expect(await value(place, 'From the event')).toBe('50 min before');
  // Sunset of 8 August 2026 at 43.3 N 6.4 E is 20:47:33 by the almanac formulae of the design's demo: 50 min earlier.
  const outcome = place.getByText(/^50.min before sunset:/i);
  expect(await text(outcome)).toMatch(/^50 min before sunset: 19:5[67]:\d\d on Sat 8 Aug 2026\.$/);
  await box(place, 'Date').fill('2026-09-08');
  await expect.poll(() => text(outcome)).toMatch(/19:0\d:\d\d on Tue 8 Sep/);

  await box(place, 'From the event').press('ArrowUp');
  expect(await value(place, 'From the event')).toBe('45 min before');
  await setField(place, 'From the event', '1 h 10 min after');
  await expect
    .poll(() => place.getByRole('button', { name: 'After' }).getAttribute('aria-pressed'))
    .toBe('true');

  await setField(place, 'Place on the map', '80, 15');
  await box(place, 'Date').fill('2026-06-21');
  await expect
    .poll(() => text(place))
    .toContain('There is no sunset on this day: the sun stays higher all day.');
  expect(problems).toEqual([]);
  await close();
});

test('a horizon is pasted, its fault named, and nothing lost', async () => {
  const { page, place, problems, close } = await fresh();
  await fillPlace(place);
  await unfold(place, 'Own horizon');
  const points = box(place, 'Azimuth and altitude');
  const pasted = 'Azimuth\tAltitude\n90\t4,5\n80\t10\n180\t2';
  await points.fill(pasted);
  await expect.poll(() => text(place.getByRole('alert'))).toContain('Row 3: the horizon doubles back');
  expect(await points.inputValue()).toBe(pasted);
  const drawing = place.getByRole('img', { name: /^Own horizon/ });
  const drawn = async () => plain((await drawing.getAttribute('aria-label')) ?? '');
  expect(await drawn()).toContain('Level all round');

  await points.fill(pasted.replace('80\t', '120\t'));
  await expect.poll(drawn).toContain('3 points, up to 10° at 120°');
  expect(await drawn()).toContain('up to 63°');
  expect(await place.getByRole('alert').count()).toBe(0);
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect.poll(() => points.inputValue()).toBe('');
  expect(problems).toEqual([]);
  await close();
});

test('the order of the ramp is edited by keys', async () => {
  const { page, problems, close } = await fresh();
  const exposure = await openSection(page, 'Exposure');
  await exposure.getByLabel('Follow the light').check();
  const steps = exposure.getByRole('listitem');
  const order = () =>
    exposure
      .getByLabel(/^Step \d+: change$/)
      .evaluateAll((all) => all.map((one) => (one as HTMLSelectElement).value));
  while ((await steps.count()) > 0) await exposure.getByRole('button', { name: 'Remove step 1' }).click();
  for (let i = 0; i < 3; i += 1) await exposure.getByRole('button', { name: 'Add a step' }).press('Enter');
  expect(await order()).toEqual(['shutter', 'iso', 'shutter']);

  const last = exposure.getByLabel('Step 3: to', { exact: true });
  await last.fill('6');
  await last.press('ArrowUp');
  expect(await last.inputValue()).toBe('8');
  await last.press('Alt+ArrowUp');
  expect(await order()).toEqual(['shutter', 'shutter', 'iso']);
  // The focus goes with the step, and its value too.
  expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe('Step 2: to');
  expect(await page.evaluate(() => (document.activeElement as HTMLInputElement).value)).toBe('8');
  await page.keyboard.press('Alt+ArrowDown');
  expect(await order()).toEqual(['shutter', 'iso', 'shutter']);
  await exposure.getByLabel('Step 3: change', { exact: true }).selectOption('aperture');
  expect(await last.inputValue()).toBe('f/2.8');
  await setField(exposure, 'Or its density', '0.9');
  expect(await value(exposure, 'ND filter')).toBe('3');
  expect(problems).toEqual([]);
  await close();
});

describe('a test frame', () => {
  /** Drops a file on an element, as from a folder. */
  const drop = async (page: Page, target: Locator, name: string, content: Uint8Array) => {
    const data = await page.evaluateHandle(
      ([fileName, bytes]) => {
        const transfer = new DataTransfer();
        transfer.items.add(new File([new Uint8Array(bytes)], fileName));
        return transfer;
      },
      [name, [...content]] as const,
    );
    await target.dispatchEvent('drop', { dataTransfer: data });
  };

  test('is dropped, and each thing it says is taken by itself', async () => {
    const { page, place, problems, close } = await fresh();
    await drop(page, box(place, 'Place on the map'), 'dusk.jpg', jpegWithExif());
    const offer = (title: string) => place.getByRole('button', { name: `Use it: ${title}` });
    await offer('Reading of the sky’s light').click();
    expect(await value(place, 'Shutter read')).toBe('1/60');
    expect(await value(place, 'Aperture read')).toBe('f/8');
    expect(await value(place, 'Read at')).toBe('19:40:05');
    expect(await value(place, 'Place on the map')).toBe('');
    await offer('Place').click();
    await expect.poll(() => value(place, 'Place on the map')).toBe('43.3° N, 6.4° E');
    expect(await place.getByText('In the plan').count()).toBe(2);

    const camera = await openSection(page, 'Camera & trigger');
    await camera.getByRole('button', { name: 'Use it: Focal length' }).click();
    expect(await value(camera, 'Focal length')).toBe('35');
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    expect(await value(camera, 'Focal length')).toBe('24');
    expect(problems).toEqual([]);
    await close();
  });

  test('that says nothing, or is none, changes nothing', async () => {
    const { page, place, problems, close } = await fresh();
    const pick = (name: string, content: Uint8Array | string) =>
      place
        .locator('input[type=file]')
        .setInputFiles({ name, mimeType: 'image/jpeg', buffer: Buffer.from(content as string) });
    await pick('plain.jpg', bareJpeg());
    await expect.poll(() => text(place)).toContain('plain.jpg has no EXIF that could be used');
    await pick('notes.jpg', 'Dough, second try');
    await expect.poll(() => text(place.getByRole('alert'))).toContain('notes.jpg is no photograph');
    expect(await text(place.getByRole('alert'))).toContain('Nothing was changed.');
    expect(await page.getByRole('dialog').count()).toBe(0);
    expect(problems).toEqual([]);
    await close();
  });
});
