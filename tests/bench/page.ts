/** From an edit to repainted figures and repainted charts, in a real browser on the built page. */
import type { Page } from 'playwright-core';
import { serialisePlan } from '../../src/engine/plan/parse.ts';
import { schedule } from '../../src/engine/schedule.ts';
import { pickFile } from '../browser/parts.ts';
import { serve } from '../browser/serve.ts';
import { startBrowser, visit } from '../browser/visit.ts';
import { columnsOf } from './engine.ts';
import { benchPlan } from './plans.ts';
import { type Figure, median, quantile } from './report.ts';
import { sheetFigures } from './sheet-page.ts';

const EDITS = 40;

/** Milliseconds from one edit to what followed, painted. */
interface Edit {
  figuresMs: number;
  chartsMs: number;
}

/** The same of a drag, and in which refresh of the screen after it the figures changed: the next is 1. */
interface Drag extends Edit {
  refreshes: number;
}

/**
 * Edits the interval in the page, again and again, each time waiting until nothing moves any more.
 * A thing counts as repainted in the task after the frame of its last change; waiting for the frame counts too.
 */
export function timeEdits(page: Page, edits: number): Promise<Edit[]> {
  return page.evaluate(async (count) => {
    const input = document.querySelector<HTMLInputElement>('input[aria-label^="Interval"]');
    const setValue = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set;
    const part = (id: string) => document.querySelector(id);
    const [strip, margins, run] = [
      part('section[aria-label="Pacing"]'),
      part('[aria-labelledby*="margins"]'),
      part('#run'),
    ];
    if (!input || !setValue || !strip || !margins || !run)
      throw new Error('a part of the page was not found');

    const afterPaint = (then: (ms: number) => void) =>
      requestAnimationFrame(() => {
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => then(performance.now());
        port2.postMessage(null);
      });
    // How far the start may slip is tried in a worker, and the figures do not wait for it.
    const isLate = ({ target }: MutationRecord) =>
      (target instanceof Element ? target : target.parentElement)
        ?.closest('.margin')
        ?.textContent?.startsWith('Start may slip') ?? false;
    const watch = (parts: Element[], onPaint: (ms: number) => void) => {
      const observer = new MutationObserver((records) => {
        if (!records.every(isLate)) afterPaint(onPaint);
      });
      const all = { subtree: true, childList: true, characterData: true, attributes: true };
      for (const element of parts) observer.observe(element, all);
      return observer;
    };
    const quiet = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

    const results: Edit[] = [];
    for (let edit = 0; edit < count; edit += 1) {
      const painted = { figures: 0, charts: 0 };
      const observers = [
        watch([strip, margins], (ms) => {
          painted.figures = ms;
        }),
        watch([run], (ms) => {
          painted.charts = ms;
        }),
      ];
      await quiet(50 + (edit % 7) * 3);
      const started = performance.now();
      setValue.call(input, `${21 + (edit % 9)} s`);
      input.dispatchEvent(new Event('input', { bubbles: true }));
      const deadline = started + 5000;
      do await quiet(250);
      while ((painted.figures === 0 || painted.charts === 0) && performance.now() < deadline);
      for (const observer of observers) observer.disconnect();
      if (painted.figures === 0 || painted.charts === 0)
        throw new Error(`edit ${edit}: nothing was repainted`);
      results.push({ figuresMs: painted.figures - started, chartsMs: painted.charts - started });
    }
    return results;
  }, edits);
}

/**
 * Drags a keyframe on the chart of its axis, a few pixels at a time with the button down, each time waiting until nothing
 * moves any more. Counted as the edits are, from the pointer's event.
 */
async function timeDrags(page: Page, moves: number): Promise<Drag[]> {
  const handle = page
    .locator('#run')
    .getByRole('button', { name: /keyframe 2 of 2/ })
    .first();
  await handle.scrollIntoViewIfNeeded();
  await page.evaluate(() => {
    const times = { started: 0, figures: 0, charts: 0, from: 0, to: 0, over: false };
    Object.assign(globalThis, { dragTimes: times });
    // Refreshes are counted by their time, which is the same for all that is done in one.
    let [refreshes, last] = [0, 0];
    const now = () => Number(document.timeline.currentTime);
    const refreshed = () => {
      refreshes += 1;
      last = now();
      if (!times.over) requestAnimationFrame(refreshed);
    };
    requestAnimationFrame(refreshed);
    addEventListener(
      'pointermove',
      () => {
        if (times.started !== 0) return;
        times.started = performance.now();
        times.from = refreshes;
      },
      true,
    );
    const isLate = ({ target }: MutationRecord) =>
      (target instanceof Element ? target : target.parentElement)
        ?.closest('.margin')
        ?.textContent?.startsWith('Start may slip') ?? false;
    const watch = (parts: (Element | null)[], what: 'figures' | 'charts') => {
      const observer = new MutationObserver((records) => {
        if (records.every(isLate)) return;
        if (what === 'figures' && times.started !== 0) times.to = refreshes + (now() > last ? 1 : 0);
        requestAnimationFrame(() => {
          const { port1, port2 } = new MessageChannel();
          port1.onmessage = () => {
            times[what] = performance.now();
          };
          port2.postMessage(null);
        });
      });
      const all = { subtree: true, childList: true, characterData: true, attributes: true };
      for (const part of parts) if (part) observer.observe(part, all);
    };
    const part = (name: string) => document.querySelector(name);
    watch([part('section[aria-label="Pacing"]'), part('[aria-labelledby*="margins"]')], 'figures');
    watch([part('#run')], 'charts');
  });
  const box = await handle.boundingBox();
  if (!box) throw new Error('a keyframe to drag was not found');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  const results: Drag[] = [];
  for (let move = 0; move < moves; move += 1) {
    await page.evaluate('Object.assign(dragTimes, { started: 0, figures: 0, charts: 0, from: 0, to: 0 })');
    await page.mouse.move(x - 40 - 5 * (move % 20), y + 3 * (move % 7));
    await page.waitForTimeout(350);
    const { started, figures, charts, from, to } = await page.evaluate<{
      started: number;
      figures: number;
      charts: number;
      from: number;
      to: number;
    }>('dragTimes');
    // Where no margin changes with the move, the charts are all there is to see.
    if (started === 0 || charts === 0) throw new Error(`drag ${move}: nothing was repainted`);
    results.push({
      figuresMs: Math.max(0, figures - started),
      chartsMs: charts - started,
      refreshes: Math.max(0, to - from),
    });
  }
  await page.mouse.up();
  await page.evaluate('dragTimes.over = true');
  return results;
}

/**
 * Milliseconds for filling 8-byte columns of so many bytes with one multiply, in the same page: in memory that is
 * new each time, as a schedule's is, and in memory that is used again. The difference is the machine's.
 */
function timeKernel(page: Page, bytes: number): Promise<{ freshMs: number[]; reusedMs: number[] }> {
  return page.evaluate(async (size) => {
    const length = 86_400;
    const columns = () =>
      Array.from({ length: Math.ceil(size / 8 / length) }, () => new Float64Array(length));
    const fill = (column: Float64Array, factor: number) => {
      for (let k = 0; k < column.length; k += 1) column[k] = k * factor;
    };
    const reused = columns();
    const results = { freshMs: [] as number[], reusedMs: [] as number[] };
    for (let run = 0; run < 30; run += 1) {
      const started = performance.now();
      for (const [i, column] of columns().entries()) fill(column, i + 0.5);
      const between = performance.now();
      for (const [i, column] of reused.entries()) fill(column, i + 0.5);
      results.freshMs.push(between - started);
      results.reusedMs.push(performance.now() - between);
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
    return results;
  }, bytes);
}

function figuresOf(frames: number, edits: readonly Edit[], chartsBudget: number, what = 'edit'): Figure[] {
  const figures = edits.map(({ figuresMs }) => figuresMs);
  const charts = edits.map(({ chartsMs }) => chartsMs);
  return [
    {
      what: `${frames} frames, ${what} to repainted figures: median`,
      value: quantile(figures, 0.5),
      unit: 'ms',
    },
    { what: '  95th percentile', value: quantile(figures, 0.95), unit: 'ms', budget: 33.4 },
    {
      what: `${frames} frames, ${what} to repainted charts: median`,
      value: quantile(charts, 0.5),
      unit: 'ms',
    },
    { what: '  95th percentile', value: quantile(charts, 0.95), unit: 'ms', budget: chartsBudget },
  ];
}

/** Time from an edit to what is seen, at 500 and 86,400 frames. */
export async function pageFigures(): Promise<Figure[]> {
  const { origin, close } = await serve();
  const browser = await startBrowser();
  const { page } = await visit(browser, origin);
  await page.waitForLoadState('networkidle');
  // tsx wraps named functions in this helper, which the page does not have.
  await page.evaluate('globalThis.__name = (named) => named');
  const results: Figure[] = [];
  for (const [frames, chartsBudget] of [
    [500, 50],
    [86_400, 100],
  ] as const) {
    await pickFile(page, 'bench.json', serialisePlan(benchPlan(frames)));
    await page.waitForFunction(
      (text) => document.querySelector<HTMLInputElement>('input[aria-label^="Frames"]')?.value === text,
      String(frames),
    );
    await timeEdits(page, 5);
    results.push(...figuresOf(frames, await timeEdits(page, EDITS), chartsBudget));
    if (frames === 500) {
      await timeDrags(page, 5);
      const drags = await timeDrags(page, EDITS);
      results.push(...figuresOf(frames, drags, chartsBudget, 'keyframe dragged'), {
        what: '  refresh of the screen in which the figures change, the next is 1: 95th percentile',
        value: quantile(
          drags.map(({ refreshes }) => refreshes),
          0.95,
        ),
        unit: '',
        budget: 1,
      });
    }
  }
  const bytes = columnsOf(schedule(benchPlan(86_400)).columns).reduce(
    (sum, { byteLength }) => sum + byteLength,
    0,
  );
  const kernel = await timeKernel(page, bytes);
  results.push(
    {
      what: 'kernel of 86400 frames in the same page, fresh memory: median',
      value: median(kernel.freshMs),
      unit: 'ms',
    },
    { what: '  memory used again: median', value: median(kernel.reusedMs), unit: 'ms' },
  );
  results.push(...(await sheetFigures(page)));
  await browser.close();
  await close();
  return results;
}
