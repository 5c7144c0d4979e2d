/** From a key or a turn of the wheel to the repainted exposure sheet of 50,000 exposures, in a real browser. */
import type { Page } from 'playwright-core';
import { serialisePlan } from '../../src/engine/plan/parse.ts';
import { pickFile } from '../browser/parts.ts';
import { benchProduction } from './plans.ts';
import { type Figure, quantile } from './report.ts';

const TIMES = 40;
const WARM_UP = 5;
const BUDGET_MS = 50;

/** An exposure that is the first of its action, after those that are ticked. */
const FIRST = 20_001;

/**
 * Notes when a key or a wheel reached the browser, and when the sheet was last repainted after it: in the task after the
 * frame of its last change.
 */
const watch = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const times = { started: 0, painted: 0 };
    Object.assign(globalThis, { sheetTimes: times });
    for (const kind of ['keydown', 'wheel'])
      addEventListener(
        kind,
        ({ timeStamp }) => {
          times.started ||= timeStamp;
        },
        { capture: true, passive: true },
      );
    const observer = new MutationObserver(() =>
      requestAnimationFrame(() => {
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => {
          times.painted = performance.now();
        };
        port2.postMessage(null);
      }),
    );
    const sheet = document.querySelector('main.sheet');
    if (!sheet) throw new Error('the sheet was not found');
    observer.observe(sheet, { subtree: true, childList: true, characterData: true, attributes: true });
  });

/** What is done, and what is done before it each time without being measured. */
interface Doing {
  what: string;
  act: (n: number) => Promise<void>;
  before?: (n: number) => Promise<void>;
}

async function time(page: Page, { what, act, before }: Doing): Promise<Figure> {
  const ms: number[] = [];
  for (let n = 0; n < WARM_UP + TIMES; n += 1) {
    await before?.(n);
    await page.waitForTimeout(60 + (n % 7) * 3);
    await page.evaluate('Object.assign(sheetTimes, { started: 0, painted: 0 })');
    await act(n);
    const deadline = performance.now() + 5000;
    let times = { started: 0, painted: 0 };
    do {
      await page.waitForTimeout(300);
      times = await page.evaluate<typeof times>('sheetTimes');
    } while (times.painted === 0 && performance.now() < deadline);
    if (times.painted === 0) throw new Error(`${what} ${n}: nothing was repainted`);
    if (n >= WARM_UP) ms.push(times.painted - times.started);
  }
  return { what: `  ${what}`, value: quantile(ms, 0.95), unit: 'ms', budget: BUDGET_MS };
}

/** Opens the production and goes to an exposure. */
async function open(page: Page): Promise<() => Promise<void>> {
  await pickFile(page, 'production.json', serialisePlan(benchProduction(50_000)));
  await page.getByRole('link', { name: 'Sheet', exact: true }).click();
  const grid = page.getByRole('grid', { name: 'Exposure sheet' });
  await grid.waitFor();
  await page.getByRole('button', { name: 'Open all', exact: true }).click();
  const home = async () => {
    await page.getByLabel('Go to').fill(`#${FIRST}`);
    await page.getByLabel('Go to').press('Enter');
    await grid.focus();
    await page.waitForTimeout(500);
  };
  await home();
  await grid.hover({ position: { x: 300, y: 200 } });
  await watch(page);
  return home;
}

/** Time from what one does on the sheet to what is seen, at the 95th percentile. */
export async function sheetFigures(page: Page): Promise<Figure[]> {
  const home = await open(page);
  const key = (name: string) => () => page.keyboard.press(name);
  const type = async (n: number) => {
    await page.keyboard.press('F2');
    await page.keyboard.type(`turns ${n}`);
  };
  const doings: readonly (Doing & { home?: boolean })[] = [
    { what: 'arrow key to repainted: 95th percentile', act: key('ArrowDown') },
    { what: 'scroll by a notch of the wheel, 120 px', act: () => page.mouse.wheel(0, 120) },
    { what: 'edit in place', before: type, act: key('Enter'), home: true },
    { what: 'undo', act: key('Control+z') },
    { what: 'redo', act: key('Control+Shift+Z') },
    { what: 'tick', before: key('ArrowDown'), act: key('Space'), home: true },
  ];
  const figures: Figure[] = [];
  for (const doing of doings) {
    if (doing.home) await home();
    figures.push(await time(page, doing));
  }
  const [first] = figures;
  if (first) first.what = `sheet of 50000 exposures, ${first.what.trim()}`;
  return figures;
}
