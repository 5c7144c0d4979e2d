/**
 * A plan typed from nothing, against a pencil: 12 s at 25 fps of a 40-minute event, a slide of 300 mm, one
 * battery.
 */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { figures, marginText, newPlan, openSection, plain, setField, verdict } from './parts.ts';
import { startBrowser, visit } from './visit.ts';

const origin = inject('origin');
let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

/** Everything below was worked out on paper first; the code only repeats the lines. */
const PENCIL = (() => {
  // Pacing. 12 s x 25 fps = 300 frames span 299 intervals: 2400 s / 299 = 8.03 s. The trigger goes by whole
  // seconds, down: 8 s. Over 2400 s that makes 2400 / 8 + 1 = 301 frames.
  const intervalS = 8;
  const frames = 2400 / intervalS + 1;
  // Move. 300 mm in 300 equal moves of 1 mm. Speeding up at 40 mm/s^2, the top speed of 20 mm/s needs
  // 20^2 / 40 = 10 mm, so that 1 mm is all ramps: 2 x sqrt(1 / 40) = 0.316 s.
  const moveS = 2 * Math.sqrt(1 / 40);
  // Cycle. A shutter marked 1/60 is open for 1/64 s. Camera: 0.1 + 1/64 + 0.8. Rig: 0.1 + 1/64 + move + 1.
  const openS = 1 / 64;
  const cameraS = 0.1 + openS + 0.8;
  const rigS = 0.1 + openS + moveS + 1;
  const spareS = intervalS - 0.5 - rigS;
  // Battery. The camera draws 2 W, 4 W while it exposes and writes. The slide draws 1.5 W, 6 W while it moves.
  // 300 intervals of 8 s, and the last frame for as long as its camera needs; no move after the last.
  const joules =
    (2 + 1.5) * (300 * intervalS + cameraS) + (4 - 2) * (openS + 0.8) * frames + (6 - 1.5) * moveS * 300;
  // Card. 6000 x 4000 pixels of 14 bit are 42 000 000 bytes a frame.
  return { intervalS, frames, moveS, rigS, spareS, wattHours: joules / 3600, gigabytes: frames * 0.042 };
})();

test('the pencil itself', () => {
  expect(PENCIL.frames).toBe(301);
  expect(PENCIL.moveS).toBeCloseTo(0.316, 3);
  expect(PENCIL.spareS).toBeCloseTo(6.068, 3);
  expect(PENCIL.wattHours).toBeCloseTo(2.589, 3);
  expect(PENCIL.gigabytes).toBeCloseTo(12.642, 3);
});

test('the page agrees with the pencil', async () => {
  const { page, problems, context } = await visit(browser, origin);
  await newPlan(page, '40 min', '12 s');

  const rig = await openSection(page, 'Rig');
  await rig.getByRole('button', { name: 'Slide', exact: true }).click();
  await rig.locator('summary', { hasText: 'Slide' }).first().click();
  for (const [label, text] of [
    ['Travel an output turn', '40'],
    ['Travel to', '600'],
    ['Top speed', '20'],
    ['Acceleration', '40'],
    ['Draw holding', '1.5'],
    ['Draw moving', '6'],
  ] as const) {
    await setField(rig, label, text);
  }
  await rig.getByLabel('Fed by').selectOption({ label: 'Camera pack' });

  const move = await openSection(page, 'Move');
  await move.getByRole('button', { name: 'Move-shoot-move' }).click();
  await move.getByRole('button', { name: 'Move Slide' }).click();
  await setField(move, 'Slide, keyframe 2: position', '300');
  await move.getByLabel('Slide, keyframe 1: ease to the next').selectOption({ label: 'Linear' });
  await setField(move, 'Settle after moving', '1');

  const power = await openSection(page, 'Power');
  await setField(power, 'Temperature', '25');
  await power.locator('summary', { hasText: 'Camera pack' }).first().click();
  await setField(power, 'Energy each', '20');
  await setField(power, 'How many you bring', '1');

  expect(await figures(page)).toEqual({
    Event: '40 min',
    Interval: '8 s',
    Frames: String(PENCIL.frames),
    'Frame rate': '25',
    Clip: '12 s',
  });
  expect(await verdict(page)).toMatch(/^Shootable/);
  expect(plain((await move.textContent()) ?? '')).toContain('Every move is 1 mm (80 microsteps)');
  const pacing = plain((await page.getByRole('region', { name: 'Pacing' }).textContent()) ?? '');
  expect(pacing).toContain('12:00:00');
  expect(pacing).toContain('12:40:00');

  const one = (value: number) => value.toFixed(1);
  expect(await marginText(page, 'Camera pack')).toContain(`${one(PENCIL.wattHours)} of 20 Wh`);
  expect(await marginText(page, 'Camera pack')).toContain(`${one(20 - PENCIL.wattHours)} Wh left`);
  expect(await marginText(page, 'Card A')).toContain(`${one(PENCIL.gigabytes)} of 64 GB`);
  const drawing = page.getByRole('region', { name: 'Cycle' }).last().getByRole('img');
  expect(plain((await drawing.getAttribute('aria-label')) ?? '')).toContain(
    `Interval ${one(PENCIL.intervalS)} s: ${PENCIL.spareS.toFixed(2)} s spare`,
  );
  expect(problems).toEqual([]);
  await context.close();
});
