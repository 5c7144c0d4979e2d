/** Parts of the page as a person finds them: by their names. */
import type { Locator, Page } from 'playwright-core';

/** Text with plain spaces and minus signs. */
export const plain = (text: string): string =>
  text
    .replace(/[\u00A0\u202F]/g, ' ')
    .replaceAll('\u2212', '-')
    .trim();

/** What something says, with plain spaces and minus signs. */
export const text = async (locator: Locator): Promise<string> => plain((await locator.textContent()) ?? '');

/** Figures of a time-lapse's pacing strip. */
export const FIGURES = ['Event', 'Interval', 'Frames', 'Frame rate', 'Clip'] as const;
type Figure = (typeof FIGURES)[number];

/** Input of a figure of the pacing strip, worked out or not. */
export const figure = (page: Page, name: Figure): Locator =>
  page
    .getByRole('region', { name: 'Pacing' })
    .getByRole('textbox', { name: new RegExp(`^${name}(, worked out)?$`) });

/** What a figure of the pacing strip says. */
export const figureText = async (page: Page, name: Figure): Promise<string> =>
  plain(await figure(page, name).inputValue());

/** All figures of the strip. */
export async function figures(page: Page): Promise<Record<Figure, string>> {
  const texts = await Promise.all(FIGURES.map(async (name) => [name, await figureText(page, name)] as const));
  return Object.fromEntries(texts) as Record<Figure, string>;
}

/** Types a figure of the strip and leaves it. */
export async function setFigure(page: Page, name: Figure, text: string): Promise<void> {
  await figure(page, name).fill(text);
  await figure(page, name).press('Enter');
}

/** The verdict's sentence. */
export const verdict = async (page: Page): Promise<string> =>
  plain((await page.getByRole('region', { name: 'Pacing' }).getByRole('status').textContent()) ?? '');

/** A section of the inputs, opened. */
export async function openSection(page: Page, title: string): Promise<Locator> {
  const inputs = page.getByRole('region', { name: 'Inputs' });
  const head = inputs.locator('h3 > button', { has: page.getByText(title, { exact: true }) });
  if ((await head.getAttribute('aria-expanded')) === 'false') await head.click();
  return inputs.locator(`#${await head.getAttribute('aria-controls')}`);
}

/** Opens all sections of a view and all parts of them, at once and not by the pointer: what is to be seen is what they hold. */
export const openAll = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    const SHUT = 'h3 > button[aria-expanded=false], main details:not([open]) > summary';
    const shut = () =>
      [...document.querySelectorAll<HTMLElement>(SHUT)].filter((head) => head.checkVisibility());
    for (let heads = shut(); heads.length > 0; heads = shut()) {
      for (const head of heads) head.click();
      // What they hold may have parts of its own, once it is there.
      await new Promise((painted) => setTimeout(painted, 50));
    }
  });

/** Fills a field of a section by its label. */
export async function setField(section: Locator, label: string, text: string): Promise<void> {
  const field = section.getByLabel(label, { exact: true }).filter({ visible: true });
  await field.fill(text);
  await field.press('Enter');
}

/** Chooses an action of the bar, from its menu if it stands there. */
export async function fromBar(page: Page, name: string | RegExp): Promise<void> {
  const tools = page.locator('.tools');
  const more = tools.getByRole('button', { name: 'More', exact: true }).filter({ visible: true });
  const action = tools.getByRole('button', { name, exact: true }).filter({ visible: true });
  await more.waitFor();
  if ((await action.count()) === 0) await more.click();
  await action.click();
}

/** Asks for a new plan of an event and a clip. */
export async function newPlan(page: Page, event: string, clip: string): Promise<void> {
  await page.getByRole('button', { name: 'New', exact: true }).click();
  const dialog = page.getByRole('dialog', { name: 'New plan' });
  await dialog.getByLabel('Event').fill(event);
  await dialog.getByLabel('Clip').fill(clip);
  await dialog.getByRole('button', { name: 'Work it out' }).click();
  await dialog.waitFor({ state: 'hidden' });
}

/** What a row of the margins says. */
export const marginText = async (page: Page, label: string): Promise<string> => {
  const rows = page.getByRole('region', { name: 'Margins' }).getByRole('listitem');
  return plain((await rows.filter({ hasText: label }).first().textContent()) ?? '');
};

/** Offers a file to the page as if it had been picked. */
export const pickFile = (page: Page, name: string, text: string): Promise<void> =>
  page
    .getByLabel('Plan file')
    .setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
