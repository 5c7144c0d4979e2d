/** The sheet on paper and as CSV. */
import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { newAxis } from '../../src/engine/plan/parse.ts';
import { sheetOf } from '../../src/engine/sheet/sheet.ts';
import { sheetCsv } from '../../src/outputs/sheet-csv.ts';
import { planFile, planOf } from '../outputs/plans.ts';
import { pickFile } from './parts.ts';
import { type PdfPage, readPdf } from './pdf.ts';
import { startBrowser, visit } from './visit.ts';

const origin = inject('origin');
let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

const MM = 72 / 25.4;
/** Points. ISO 216 A4: 210 x 297 mm; ANSI/ASME Y14.1 size A: 8.5 x 11 in. */
const PAPER = { A4: [210 * MM, 297 * MM], Letter: [8.5 * 72, 11 * 72] } as const;
type Format = keyof typeof PAPER;

/** Holds of 1 and 3 in turn at 24 fps: 150 exposures over 300 frames, in ten actions. */
const ACTIONS = Array.from({ length: 10 }, (_, a) => ({
  text: `Action ${a + 1}`,
  frames: 30,
  holds: [1, 3],
}));
const SHOT = { name: 'Gate', actions: ACTIONS, cues: [{ kind: 'sound', frame: 2, text: 'latch' }] };
const SHEET = {
  title: 'Garden gate',
  technique: 'stopMotion',
  clip: { frameRate: '24' },
  sheet: { shots: [SHOT], minutesPerExposure: 3, daysOff: [] },
};

/** Timecode at 24 fps, which drops nothing: SMPTE ST 12-1. */
function timecode(frame: number): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return [0, Math.floor(frame / 1440), Math.floor(frame / 24) % 60, frame % 24].map(two).join(':');
}

/** First frame of every exposure of the actions, counted from 0: 1 + 3 seven times, then 1 and what is left, 1. */
const FIRST_FRAMES = ACTIONS.flatMap((_, a) =>
  Array.from({ length: 16 }, (_one, e) => a * 30 + Math.floor(e / 2) * 4 + (e % 2)),
);
const TIMECODES = FIRST_FRAMES.map(timecode);

async function sheetPage(fields: object, options: Parameters<typeof visit>[2] = {}) {
  const visited = await visit(browser, origin, { ...options, query: '#sheet' });
  const { page } = visited;
  await pickFile(page, 'plan.json', JSON.stringify(planFile(fields)));
  await expect
    // A production of 50,000 exposures takes a while to read.
    .poll(() => page.getByLabel('Title of the plan').inputValue(), { timeout: 30_000 })
    .toBe((fields as { title: string }).title);
  await page.getByRole('button', { name: 'Print', exact: true }).waitFor();
  return visited;
}

const printed = async (page: Page, format: Format): Promise<PdfPage[]> => readPdf(await page.pdf({ format }));

const timecodesOf = (pages: PdfPage[]): string[] =>
  pages.flatMap(({ lines }) =>
    lines.flatMap((line) => /^\d+ \S+ (\d\d:\d\d:\d\d:\d\d)/.exec(line)?.[1] ?? []),
  );

/** Sheets are rounded to pixels of 0.75 points, twice. */
const ROUNDING = 1.5;

/** Headings of a table of 7 points; a browser shrinks a sheet that is wider than its paper. */
const LEAST_SIZE = 0.9 * 7 - 0.1;

/** Margins at the sides are 10 mm, less rounding; above and below is room for half of what they are. */
function expectWithin(pages: PdfPage[], format: Format): void {
  for (const { width, height, texts } of pages) {
    expect(Math.abs(width - PAPER[format][0])).toBeLessThan(ROUNDING);
    expect(Math.abs(height - PAPER[format][1])).toBeLessThan(ROUNDING);
    for (const { text, x, y, width: wide, size } of texts) {
      expect(size, text).toBeGreaterThan(LEAST_SIZE);
      expect(x, text).toBeGreaterThanOrEqual(10 * MM - ROUNDING);
      expect(x + wide, text).toBeLessThanOrEqual(width - 10 * MM + ROUNDING);
      expect(y, text).toBeGreaterThan(7 * MM);
      expect(y, text).toBeLessThan(height - 7 * MM);
    }
  }
}

/** Prints on both kinds of paper, and looks at what is on it. */
async function onBoth(page: Page, look: (pages: PdfPage[]) => void): Promise<void> {
  for (const format of ['A4', 'Letter'] as const) {
    const pages = await printed(page, format);
    expectWithin(pages, format);
    look(pages);
  }
}

const linesOf = (pages: PdfPage[]): string[] => pages.flatMap(({ lines }) => lines);

describe('an exposure sheet', () => {
  test('has every exposure once, and on each page its title, its number and the headings', async () => {
    const { page, problems, context } = await sheetPage(SHEET, { theme: 'dark' });
    await onBoth(page, (pages) => {
      expect(timecodesOf(pages)).toEqual(TIMECODES);
      // 160 rows of about 5.5 mm on pages of about 250.
      expect(pages.length).toBeGreaterThanOrEqual(4);
      expect(pages.length).toBeLessThanOrEqual(5);
      pages.forEach(({ lines }, n) => {
        expect(lines[0]).toBe(`Garden gate: exposure sheet page ${n + 1} of ${pages.length}`);
        const rows = timecodesOf(pages.slice(n, n + 1)).length;
        const heads = lines.filter((line) => line.startsWith('No. Frames Timecode What happens'));
        expect(heads).toHaveLength(rows > 0 ? 1 : 0);
      });
    });
    expect(problems).toEqual([]);
    await context.close();
  });

  test('has nothing else of the page, begins no action at the foot of one, and ends with cautions', async () => {
    const { page, context } = await sheetPage(SHEET);
    await onBoth(page, (pages) => {
      const lines = linesOf(pages);
      expect(lines.join('\n')).not.toMatch(/Next exposure|Escapement|Stop-motion|Undo/);
      expect(lines.filter((line) => line.includes('sound: latch'))).toHaveLength(1);
      expect(lines.at(-1)).toMatch(/Local rules and licensed practice come first/);
      for (const { lines: own } of pages)
        own.forEach((line, n) => {
          if (/^Action \d+ exposures/.test(line))
            expect(own[n + 2], `second row under ${line}`).toMatch(/^\d+ \d/);
        });
    });
    await page.evaluate(() => dispatchEvent(new Event('afterprint')));
    expect(await page.title()).toBe('Escapement');
    await context.close();
  });

  test('of twelve axes has each position, in tables that are no wider than the paper', async () => {
    const axes = Array.from({ length: 12 }, (_, n) => ({
      ...newAxis(),
      name: `Motor ${n + 1}`,
      travelMin: -5000,
      travelMax: 5000,
    }));
    const tracks = axes.map(({ name }, n) => ({
      axis: name,
      keyframes: [
        { share: 0, position: -1000 - n },
        { share: 1, position: 2000 + n },
      ],
    }));
    const { page, context } = await sheetPage({
      ...SHEET,
      rig: { axes },
      move: { mode: 'moveShootMove', tracks },
    });
    await onBoth(page, (pages) => {
      // First positions are what the tracks begin with.
      const firsts = linesOf(pages)
        .filter((line) => /^1 1 00:00:00:00/.test(line))
        .join(' ');
      for (let n = 0; n < 12; n += 1) expect(firsts).toContain(`\u2212${1000 + n}.0`);
      const seen = timecodesOf(pages);
      expect(new Set(seen).size).toBe(TIMECODES.length);
      expect(seen.length % TIMECODES.length).toBe(0);
    });
    await context.close();
  });

  test('of long words loses none of them', async () => {
    const word = 'Rindfleischetikettierungsueberwachungsaufgabenuebertragungsgesetz';
    const text = Array.from({ length: 24 }, (_, n) => `word${n}`).join(' ');
    const actions = [{ text, frames: 8, details: [{ exposure: 2, text: `${word} ${word}` }] }];
    const shots = [{ name: word.slice(0, 40), actions }];
    const { page, context } = await sheetPage({
      ...SHEET,
      title: 'Gate '.repeat(24).trim(),
      sheet: { shots },
    });
    await onBoth(page, (pages) => {
      const all = linesOf(pages).join('').replace(/\s/g, '');
      for (let n = 0; n < 24; n += 1) expect(all).toContain(`word${n}`);
      // Broken over lines between other cells: its letters are all there.
      const cells = pages.flatMap(({ texts }) => texts.map((piece) => piece.text)).join('');
      expect(cells.match(/etikett/g)?.length ?? 0).toBeGreaterThanOrEqual(2);
    });
    await context.close();
  });
});

test('the frames of a time-lapse are each on paper once', async () => {
  const lapse = { title: 'Tide', pacing: { workedOut: 'clip', eventS: 2990, intervalS: 10 } };
  const { page, context } = await sheetPage(lapse);
  await onBoth(page, (pages) => {
    const numbers = linesOf(pages).flatMap((line) => /^(\d+) \d\d:\d\d:\d\d /.exec(line)?.[1] ?? []);
    // 2990 s at 10 s, first and last included.
    expect(numbers).toEqual(Array.from({ length: 300 }, (_, n) => String(n + 1)));
  });
  await context.close();
});

describe('a long sheet', () => {
  const LONG = {
    ...SHEET,
    title: 'Long gate',
    sheet: {
      ...SHEET.sheet,
      shots: [{ name: 'Gate', actions: [{ text: 'Rusts', frames: 50_000, holds: [1] }] }],
    },
  };

  test('asks first, and prints the next day of work', async () => {
    const { page, problems, context } = await sheetPage(LONG);
    await page.evaluate(() => {
      window.print = () => document.body.setAttribute('data-printed', '');
    });
    await page.keyboard.press('ControlOrMeta+p');
    const ask = page.getByRole('dialog', { name: /^Print about \d{4} pages\?$/ });
    await ask.getByRole('button', { name: 'Do not print' }).click();
    await ask.waitFor({ state: 'hidden' });
    await page.getByRole('button', { name: 'Print', exact: true }).click();
    const day = ask.getByRole('button', { name: /^Next day of work, exposures 1 to \d+/ });
    const last = Number(/to (\d+)/.exec((await day.textContent()) ?? '')?.[1]);
    await day.click();
    await page.locator('body[data-printed]').waitFor();
    const pages = await printed(page, 'A4');
    expect(timecodesOf(pages)).toEqual(Array.from({ length: last }, (_, frame) => timecode(frame)));
    expect(pages[0]?.lines.join('\n')).toContain(`Exposures 1 to ${last} of 50000 only.`);
    expect(problems).toEqual([]);
    await context.close();
  });
});

test('the CSV is that of the prompt', async () => {
  const { page, problems, context } = await sheetPage(SHEET);
  const waiting = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as CSV' }).click();
  const download = await waiting;
  expect(download.suggestedFilename()).toBe('garden-gate-exposures.csv');
  const plan = planOf(SHEET);
  expect(readFileSync(await download.path(), 'utf8')).toBe([...sheetCsv(plan, sheetOf(plan))].join(''));
  expect(problems).toEqual([]);
  await context.close();
});
