/** Prints the run sheet of the present plan; while the plan is on screen, printing the page prints it. */
import { runSheet } from '../../outputs/run-sheet/run-sheet.ts';
import { sheetedNow } from '../sheet/sheeted.ts';
import { currentPlan } from '../store/plan.ts';
import { workedOut } from '../store/schedules.ts';
import { type Drawn, printNow, printsInstead, takeAway } from './paper.ts';
import { runChart } from './runChart.ts';
import { drawRunSheet, runSheetName } from './runSheetDraw.ts';
import './print.css';
import './run-sheet.css';

function drawNow(): Drawn {
  const { plan, schedule } = workedOut(currentPlan());
  const sheet = plan.technique === 'stopMotion' ? sheetedNow().sheet : null;
  const said = runSheet(plan, schedule, sheet);
  const drawn = drawRunSheet(said, sheet ? null : runChart(plan, schedule));
  return { drawn, name: runSheetName(said) };
}

/** Prints it, and takes it out of the page again. */
export function printRunSheet(): void {
  const { drawn, name } = drawNow();
  addEventListener('afterprint', takeAway, { once: true });
  printNow(drawn, name);
}

/** Prints the run sheet instead of the page from now on. @returns how to end that */
export const printsRunSheet = (): (() => void) => printsInstead(drawNow, printRunSheet);
