/** What one takes along: the run sheet on paper, and files for a calendar, a spreadsheet, a controller. */
import { readdirSync, readFileSync } from 'node:fs';
import type { Browser, Download, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { newAxis, readPlan } from '../../src/engine/plan/parse.ts';
import { schedule } from '../../src/engine/schedule.ts';
import { calendarText } from '../../src/outputs/calendar.ts';
import { cautionsOf } from '../../src/outputs/cautions.ts';
import { partProgram } from '../../src/outputs/part-program/program.ts';
import { positionsCsv } from '../../src/outputs/positions-csv.ts';
import { planFile, planOf } from '../outputs/plans.ts';
import { WILD } from '../outputs/wild.ts';
import { violations } from './axe.ts';
import { openSection, pickFile, setField, text as textOf } from './parts.ts';
import { type PdfPage, readPdf } from './pdf.ts';
import { startBrowser, THEMES, visit } from './visit.ts';

const origin = inject('origin');
let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

const MM = 72 / 25.4;
/** Points. ISO 216 A4: 210 x 297 mm; ANSI/ASME Y14.1 size A: 8.5 x 11 in. */
const PAPER = { A4: [210 * MM, 297 * MM], Letter: [8.5 * 72, 11 * 72] } as const;
const FORMATS = ['A4', 'Letter'] as const;
/** Sheets are rounded to pixels of 0.75 points, twice. */
const ROUNDING = 1.5;

const track = (axis: string, to: number) => ({
  axis,
  keyframes: [
    { share: 0, position: 0 },
    { share: 1, position: to },
  ],
});
const REED = {
  title: 'Reed; bed, at "dawn"',
  pacing: { workedOut: 'clip', eventS: 5400, intervalS: 20 },
  start: { date: '2036-08-08', time: '20:30' },
  place: { name: 'Pier, west', latitudeDeg: 43.3, longitudeDeg: 6.4, zone: 'Europe/Paris' },
  light: { kind: 'sky' },
  exposure: {
    shutterS: 1 / 125,
    ramp: { used: true, steps: [{ setting: 'shutter', to: 1, step: 'full', by: 'hand' }] },
  },
  rig: { axes: [{ name: 'Slide' }, { name: 'Pan', unit: 'deg', unitsPerTurn: 360, travelMax: 90 }] },
  move: { mode: 'moveShootMove', tracks: [track('Slide', 700), track('Pan', 45)] },
};

async function openPage(fields: object, options: Parameters<typeof visit>[2] = {}) {
  const visited = await visit(browser, origin, options);
  const { page } = visited;
  await pickFile(page, 'plan.json', JSON.stringify(planFile(fields)));
  await expect
    .poll(() => page.getByLabel('Title of the plan').inputValue())
    .toBe((fields as { title: string }).title);
  await page.evaluate(() => {
    window.print = () => document.body.setAttribute('data-printed', String(Date.now()));
  });
  return visited;
}

async function openAlong(page: Page): Promise<Locator> {
  await page.getByRole('button', { name: 'Take along', exact: true }).filter({ visible: true }).click();
  const dialog = page.getByRole('dialog', { name: 'Take along' });
  await dialog.getByRole('heading', { name: 'Part program' }).waitFor();
  return dialog;
}

/** Words of each row on the paper, as it was drawn. */
const rowsOf = (page: Page): Promise<string[][]> =>
  page
    .locator('.run-sheet tr')
    .evaluateAll((rows) =>
      rows.map((row) =>
        [...row.children].flatMap((cell) =>
          (cell.textContent ?? '').split(/[\s\u00A0]+/).filter((word) => word !== ''),
        ),
      ),
    );

async function printed(page: Page, format: (typeof FORMATS)[number]) {
  await page.keyboard.press('ControlOrMeta+p');
  await page.locator('body > .run-sheet').waitFor({ state: 'attached' });
  const rows = await rowsOf(page);
  return { rows, pages: await readPdf(await page.pdf({ format })) };
}

/** Every row with all its words on one page. */
function expectWhole(rows: readonly string[][], pages: readonly PdfPage[]): void {
  const on = pages.map(({ lines }) => new Set(lines.flatMap((line) => line.split(' '))));
  for (const words of rows) {
    const whole = on.some((page) => words.every((word) => page.has(word)));
    expect(whole, words.join(' ')).toBe(true);
  }
}

function expectWithin(pages: readonly PdfPage[], format: (typeof FORMATS)[number]): void {
  for (const { width, height, texts } of pages) {
    expect(Math.abs(width - PAPER[format][0])).toBeLessThan(ROUNDING);
    expect(Math.abs(height - PAPER[format][1])).toBeLessThan(ROUNDING);
    for (const { text, x, y, width: wide, size } of texts) {
      expect(size, text).toBeGreaterThan(6.4);
      expect(x, text).toBeGreaterThanOrEqual(10 * MM - ROUNDING);
      expect(x + wide, text).toBeLessThanOrEqual(width - 10 * MM + ROUNDING);
      expect(y, text).toBeGreaterThan(7 * MM);
      expect(y, text).toBeLessThan(height - 7 * MM);
    }
  }
}

describe('the run sheet on paper', () => {
  test('has all that is needed on two pages, of either size, each with its title and number', async () => {
    const { page, problems, context } = await openPage(REED, { theme: 'dark' });
    for (const format of FORMATS) {
      const { rows, pages } = await printed(page, format);
      expect(pages.length).toBeLessThanOrEqual(2);
      expectWithin(pages, format);
      expectWhole(rows, pages);
      pages.forEach(({ lines }, n) => {
        expect(lines[0]).toBe(`Reed; bed, at "dawn": run sheet page ${n + 1} of ${pages.length}`);
      });
      const text = pages.flatMap(({ lines }) => lines).join('\n');
      // 15 + 5 + 10 + 10 + 20 min before 20:30 is 19:30.
      for (const line of ['19:30 Set-up, 20 min', '20:30:00 1 First frame', '22:00:00 271 Last frame'])
        expect(text).toContain(line);
      for (const heading of [
        'Bring',
        'Set before the start',
        'Rig at the keyframes',
        'Sun and moon',
        'Cautions',
      ])
        expect(text).toContain(heading);
      expect(text).toMatch(/by hand/);
      // The chart: its plots, and what its lines are.
      for (const name of ['Exposure, EV', 'Slide 0 to 700 mm', 'Pan 0 to 45°', 'E exposure by hand'])
        expect(text).toContain(name);
      expect(text).not.toMatch(/Escapement|Undo|Inputs/);
    }
    expect(problems).toEqual([]);
    await context.close();
  });

  test('cuts no row, however long it gets', async () => {
    // Each thing takes three lines, in words that stand nowhere else.
    const bring = Array.from({ length: 40 }, (_, n) =>
      Array.from({ length: 10 }, (_w, w) => `item${String.fromCharCode(97 + w)}${n}`)
        .join(' ')
        .slice(0, 80)
        .trim(),
    );
    const { page, context } = await openPage({ ...REED, title: 'Long', day: { bring, travelMin: 90 } });
    for (const format of FORMATS) {
      const { rows, pages } = await printed(page, format);
      expect(pages.length).toBeGreaterThan(1);
      expectWithin(pages, format);
      expectWhole(rows, pages);
    }
    await context.close();
  });

  test('of any plan has two pages at most, and what needs a hand before tables of settings', async () => {
    const { page, problems, context } = await openPage(WILD);
    for (const format of FORMATS) {
      const { rows, pages } = await printed(page, format);
      expect(pages.length).toBe(2);
      expectWithin(pages, format);
      expectWhole(rows, pages);
      const text = pages.flatMap(({ lines }) => lines).join('\n');
      expect(text).toMatch(/\d+ (more )?changes: in the sheet of frames/);
      expect(text).toMatch(/\d+ (more )?keyframes: in the table of positions/);
      // 15 packs of the one and 4 of the other are 14 and 3 swaps, 6 cards are 5 changes.
      expect(text.match(/swap to pack/g)).toHaveLength(17);
      expect(text.match(/Change to Card/g)).toHaveLength(5);
      for (const caution of cautionsOf(planOf(WILD), schedule(planOf(WILD))))
        expect(text).toContain(caution.split(' ').slice(0, 4).join(' '));
    }
    expect(problems).toEqual([]);
    await context.close();
  });

  test.each(readdirSync('public/examples'))('of the demo %s has two pages at most', async (file) => {
    const { page, context } = await openPage(JSON.parse(readFileSync(`public/examples/${file}`, 'utf8')));
    for (const format of FORMATS) {
      const { rows, pages } = await printed(page, format);
      expect(pages.length).toBeLessThanOrEqual(2);
      expectWhole(rows, pages);
      // Nothing of a demo is left out.
      const text = pages.flatMap(({ lines }) => lines).join('\n');
      expect(text).not.toMatch(/: in the (sheet|table|view)|: beside the/);
    }
    await context.close();
  });

  test('is the cover page of a stop-motion shoot', async () => {
    const shots = [{ name: 'Gate', actions: [{ text: 'Opens', frames: 100 }] }];
    const { page, problems, context } = await openPage({
      title: 'Gate',
      technique: 'stopMotion',
      sheet: { shots },
    });
    const { pages } = await printed(page, 'A4');
    expect(pages).toHaveLength(1);
    const text = pages.flatMap(({ lines }) => lines).join('\n');
    for (const heading of ['Days', 'Shots', 'Bring', 'Set before the start']) expect(text).toContain(heading);
    expect(text).not.toContain('First frame');
    expect(problems).toEqual([]);
    await context.close();
  });

  test('leaves the page as it was, and the sheet its own paper', async () => {
    const { page, context } = await openPage(REED);
    await printed(page, 'A4');
    await page.locator('body > .run-sheet').waitFor({ state: 'detached' });
    expect(await page.title()).toBe('Escapement');
    await page.keyboard.press('3');
    await page.getByRole('button', { name: 'Print', exact: true }).waitFor();
    await page.evaluate(() => document.body.removeAttribute('data-printed'));
    await page.keyboard.press('ControlOrMeta+p');
    await page.locator('body[data-printed]').waitFor();
    expect(await page.locator('body > .print-sheet').getAttribute('aria-label')).toMatch(/: frames$/);
    expect(await page.locator('.run-sheet').count()).toBe(0);
    await context.close();
  });
});

async function saved(page: Page, button: Locator): Promise<{ name: string; text: string }> {
  const waiting: Promise<Download> = page.waitForEvent('download');
  await button.click();
  const download = await waiting;
  return { name: download.suggestedFilename(), text: readFileSync(await download.path(), 'utf8') };
}

describe('files', () => {
  test('are those of the prompt', async () => {
    const { page, problems, context } = await openPage(REED);
    const plan = planOf(REED);
    const made = schedule(plan);
    const dialog = await openAlong(page);
    const save = (what: string) => saved(page, dialog.getByRole('button', { name: `Save: ${what}` }));

    const calendar = await save('Calendar');
    expect(calendar.name).toBe('reed-bed-at-dawn.ics');
    const stamps = new Set(calendar.text.match(/DTSTAMP:\d{8}T\d{6}Z/g));
    expect(stamps.size).toBe(1);
    const [stamp = ''] = stamps;
    const own = calendarText({ plan, made, sheet: null, stampMs: 0 });
    expect(calendar.text).toBe(own.replaceAll('DTSTAMP:19700101T000000Z', stamp));
    await expect.poll(() => dialog.getByRole('status').textContent()).toContain('calendar was handed');

    const positions = await save('Positions');
    expect(positions.name).toBe('reed-bed-at-dawn.positions.csv');
    expect(positions.text).toBe([...positionsCsv(plan, made, null)].join(''));

    expect(await dialog.textContent()).toContain('Run it first with nothing on the arm');
    const program = await save('Part program');
    expect(program.name).toBe('reed-bed-at-dawn.ngc');
    expect(program.text).toBe([...partProgram(plan, made, null)].join(''));

    const file = await save('Plan file');
    expect(readPlan(JSON.parse(file.text))).toEqual({ ok: true, plan });
    expect(problems).toEqual([]);
    await context.close();
  });

  test('of a part program are refused with the field that stands against it', async () => {
    const axes = Array.from({ length: 4 }, (_, n) => ({ ...newAxis(), name: `Motor ${n + 1}` }));
    const { page, context } = await openPage({ title: 'Four', rig: { axes } });
    const dialog = await openAlong(page);
    expect(await dialog.getByRole('button', { name: 'Save: Part program' }).isDisabled()).toBe(true);
    expect(await dialog.textContent()).toMatch(/rig\.axes\[3\]\.word: found "auto".*three lengths at most/);
    await context.close();
  });

  test('can be had on a phone, in every theme, by everybody', async () => {
    for (const theme of THEMES) {
      const { page, context } = await openPage(REED, {
        theme,
        viewport: { width: 390, height: 844 },
        touch: true,
      });
      await page.getByRole('button', { name: 'More', exact: true }).click();
      const dialog = await openAlong(page);
      expect(await violations(page, { within: 'dialog' })).toEqual([]);
      for (const button of await dialog.getByRole('button').all()) {
        const size = await button.boundingBox();
        expect(size?.height ?? 0).toBeGreaterThanOrEqual(44);
      }
      await context.close();
    }
  });
});

describe('the day', () => {
  test('is the user’s own: its steps move the clock, its things come along', async () => {
    const { page, problems, context } = await openPage(REED);
    const section = await openSection(page, 'Day');
    await setField(section, 'Way there', '45');
    await section.getByLabel('Also bring').fill('Head torch\n\n  Tea  \n');
    await section.getByLabel('Also bring').blur();
    const { pages } = await printed(page, 'A4');
    const text = pages.flatMap(({ lines }) => lines).join('\n');
    // 45 min before the set-up at 19:30.
    expect(text).toContain('18:45 Leave, 45 min');
    expect(text).toContain('Also Head torch');
    expect(text).toContain('Tea');
    await page.getByRole('button', { name: /^Day/ }).click();
    expect(await textOf(page.getByRole('button', { name: /^Day/ }))).toMatch(
      /1 h 45 min before.*2 more to bring/,
    );
    expect(problems).toEqual([]);
    await context.close();
  });

  test('a trigger line that no controller reads stays in its field, with the reason', async () => {
    const { page, context } = await openPage(REED);
    const section = await openSection(page, 'Rig');
    await section.getByText('Part program (RS-274)', { exact: true }).click();
    const field = section.getByLabel('Trigger lines');
    await field.fill('M8 (höher)');
    await expect.poll(() => section.getByRole('alert').textContent()).toContain('printable ASCII');
    await field.fill('G91');
    await expect.poll(() => section.getByRole('alert').textContent()).toContain('No part program yet');
    await field.fill('M8');
    await expect.poll(() => section.getByRole('alert').count()).toBe(0);
    await context.close();
  });
});
