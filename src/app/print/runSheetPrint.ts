/** Prints the run sheet of the present plan. */
import { fitRunSheet } from '../../outputs/run-sheet/fit.ts';
import { runSheet } from '../../outputs/run-sheet/run-sheet.ts';
import type { RunSheet } from '../../outputs/run-sheet/types.ts';
import { sheetedNow } from '../sheet/sheeted.ts';
import { currentPlan } from '../store/plan.ts';
import { workedOut } from '../store/schedules.ts';
import { heightMm, printNow, takeAway } from './paper.ts';
import { runChart } from './runChart.ts';
import { drawRunSheet, runSheetName } from './runSheetDraw.ts';
import './print.css';
import './run-sheet.css';

/**
 * What two pages hold: Letter (ANSI/ASME Y14.1, 279.4 mm) is the shorter paper, its margins take 29 mm; less a row that
 * is moved to the second page whole, with its heading.
 */
const PAGE_MM = 279.4 - 29;
const TWO_PAGES_MM = 2 * PAGE_MM - 14;

/** A second page with no more than this on it is not worth its paper, if smaller type does without it. */
const REST_MM = PAGE_MM / 3;

/** The sheet as it is printed: smaller if that saves a third page or a poor second one, and cut if it still has three. */
function fitted(sheet: RunSheet, chart: SVGSVGElement | null): HTMLElement {
  const tall = (one: RunSheet, dense: boolean) => heightMm(drawRunSheet(one, chart, dense));
  const tallMm = tall(sheet, false);
  const poor = tallMm > PAGE_MM && tallMm < PAGE_MM + REST_MM && tall(sheet, true) <= PAGE_MM;
  if (tallMm <= TWO_PAGES_MM && !poor) return drawRunSheet(sheet, chart);
  return drawRunSheet(
    fitRunSheet(sheet, (one) => tall(one, true) <= TWO_PAGES_MM),
    chart,
    true,
  );
}

/** Draws it and prints it, and takes it out of the page again. */
export function printRunSheet(): void {
  const { plan, schedule } = workedOut(currentPlan());
  const sheet = plan.technique === 'stopMotion' ? sheetedNow().sheet : null;
  const said = runSheet(plan, schedule, sheet);
  addEventListener('afterprint', takeAway, { once: true });
  printNow(fitted(said, sheet ? null : runChart(plan, schedule)), runSheetName(said));
}
