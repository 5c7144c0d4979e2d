/** Prints the run sheet of the present plan. */
import { runSheet } from '../../outputs/run-sheet/run-sheet.ts';
import { sheetedNow } from '../sheet/sheeted.ts';
import { currentPlan } from '../store/plan.ts';
import { workedOut } from '../store/schedules.ts';
import { printNow, takeAway } from './paper.ts';
import { runChart } from './runChart.ts';
import { drawRunSheet, runSheetName } from './runSheetDraw.ts';
import './print.css';
import './run-sheet.css';

/** Draws it and prints it, and takes it out of the page again. */
export function printRunSheet(): void {
  const { plan, schedule } = workedOut(currentPlan());
  const sheet = plan.technique === 'stopMotion' ? sheetedNow().sheet : null;
  const said = runSheet(plan, schedule, sheet);
  addEventListener('afterprint', takeAway, { once: true });
  printNow(drawRunSheet(said, sheet ? null : runChart(plan, schedule)), runSheetName(said));
}
