/** The rig as a person sets it up: keyframes on the chart, ringing, balance, the camera's path, the kit. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { fromBar, newPlan, openSection, plain, setField, text } from './parts.ts';
import { startBrowser, visit } from './visit.ts';

const origin = inject('origin');
let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

/** Name of a keyframe's handle: `Boom, keyframe 2 of 2: frame 258, 200 mm`. */
async function handleName(page: Page, start: string): Promise<string> {
  const handle = page.locator('#run').getByRole('button', { name: new RegExp(`^${start}`) });
  return plain((await handle.getAttribute('aria-label')) ?? '');
}

/** A new plan with a boom that moves between exposures. */
async function withBoom(): Promise<{ page: Page; problems: string[]; close: () => Promise<void> }> {
  const { page, context, problems } = await visit(browser, origin);
  await newPlan(page, '40 min', '12 s');
  const rig = await openSection(page, 'Rig');
  await rig.getByRole('button', { name: 'Boom', exact: true }).click();
  const move = await openSection(page, 'Move');
  await move.getByText('Move-shoot-move', { exact: true }).click();
  await move.getByRole('button', { name: 'Move Boom', exact: true }).click();
  return { page, problems, close: () => context.close() };
}

test('a keyframe is dragged, nudged, and all of it undone', async () => {
  const { page, problems, close } = await withBoom();
  const handle = page.locator('#run').getByRole('button', { name: /^Boom, keyframe 2 of 2/ });
  await handle.scrollIntoViewIfNeeded();
  const before = await handleName(page, 'Boom, keyframe 2 of 2');
  const box = await handle.boundingBox();
  if (!box) throw new Error('the handle is not drawn');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x - 60, y + 20, { steps: 6 });
  await page.mouse.move(x - 200, y + 20, { steps: 6 });
  await page.mouse.up();
  await expect.poll(() => handleName(page, 'Boom, keyframe 2 of 2')).not.toBe(before);
  const dragged = await handleName(page, 'Boom, keyframe 2 of 2');
  const frameOf = (name: string) => Number(/: frame ([\d,]+)/.exec(name)?.[1]?.replace(',', ''));
  expect(frameOf(dragged)).toBeLessThan(frameOf(before));

  await handle.focus();
  await page.keyboard.press('ArrowLeft');
  await expect
    .poll(async () => frameOf(await handleName(page, 'Boom, keyframe 2 of 2')))
    .toBe(frameOf(dragged) - 1);
  // A drag is one step, and nudges in a row are another.
  await page.keyboard.press('Control+z');
  await expect.poll(() => handleName(page, 'Boom, keyframe 2 of 2')).toBe(dragged);
  await page.keyboard.press('Control+z');
  await expect.poll(() => handleName(page, 'Boom, keyframe 2 of 2')).toBe(before);
  expect(problems).toEqual([]);
  await close();
});

test('a boom is balanced, aimed and made quiet', async () => {
  const { page, problems, close } = await withBoom();
  const rig = await openSection(page, 'Rig');
  for (const kind of ['Pan', 'Tilt']) await rig.getByRole('button', { name: kind, exact: true }).click();
  const balance = await openSection(page, 'Balance & support');
  await balance.getByLabel('Balance the arm', { exact: true }).check();
  await setField(balance, 'Payload', '2 kg');
  // 2 kg at 1000 mm and 1 kg at 200 mm against 5 kg: levers.
  await expect.poll(() => text(balance.getByLabel(/Counterweight sits at/).first())).toContain('440');
  await expect.poll(() => text(balance)).toContain('first the camera, then the weights');

  const move = await openSection(page, 'Move');
  await move.locator('summary', { hasText: 'Subject' }).first().click();
  await move.getByLabel('There is a subject', { exact: true }).check();
  await move.getByLabel('Keep it framed', { exact: true }).check();
  await move.getByLabel('Settle', { exact: true }).selectOption('ringing');
  const quiet = move.getByLabel('Quiet moves', { exact: true });
  await quiet.waitFor();
  const path = page.getByRole('region', { name: 'Camera path' });
  await page.locator('.path-place').scrollIntoViewIfNeeded();
  await path.getByRole('img').first().waitFor();
  expect(plain((await path.getByRole('img').first().getAttribute('aria-label')) ?? '')).toContain('rises');
  expect(await text(path)).toContain('Sagitta');
  expect(problems).toEqual([]);
  await close();
});

test('gear goes into the kit, survives a reload, and comes into another plan', async () => {
  const { page, problems, close } = await withBoom();
  const own = await openSection(page, 'Rig');
  await own.locator('summary', { hasText: 'Boom' }).first().click();
  await own.getByRole('button', { name: 'Keep in the kit: Boom', exact: true }).click();
  const kit = page.getByRole('dialog', { name: 'Kit' });
  await kit.getByRole('button', { name: /^Boom / }).waitFor();
  await kit.getByRole('button', { name: 'Close', exact: true }).click();
  await page.reload();
  await newPlan(page, '10 min', '8 s');
  await fromBar(page, 'Kit');
  await kit.getByRole('button', { name: 'Put into the plan: Boom', exact: true }).click();
  await kit.getByRole('button', { name: 'Close', exact: true }).click();
  const rig = await openSection(page, 'Rig');
  await expect.poll(() => text(rig)).toContain('Boom');
  expect(problems).toEqual([]);
  await close();
});
