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
const TWO_PAGES_MM = 2 * (279.4 - 29) - 14;

/** The sheet as it is printed: smaller if it would have three pages, and cut if it still would. */
function fitted(sheet: RunSheet, chart: SVGSVGElement | null): HTMLElement {
  const fits = (dense: boolean) => (one: RunSheet) =>
    heightMm(drawRunSheet(one, chart, dense)) <= TWO_PAGES_MM;
  if (fits(false)(sheet)) return drawRunSheet(sheet, chart);
  return drawRunSheet(fitRunSheet(sheet, fits(true)), chart, true);
}

/** Draws it and prints it, and takes it out of the page again. */
export function printRunSheet(): void {
  const { plan, schedule } = workedOut(currentPlan());
  const sheet = plan.technique === 'stopMotion' ? sheetedNow().sheet : null;
  const said = runSheet(plan, schedule, sheet);
  addEventListener('afterprint', takeAway, { once: true });
  printNow(fitted(said, sheet ? null : runChart(plan, schedule)), runSheetName(said));
}
