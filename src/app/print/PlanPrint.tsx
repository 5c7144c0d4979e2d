/** While the plan is on screen, printing the page prints the run sheet. */
import { useEffect } from 'react';
import { usePlan } from '../store/plan.ts';
import { takeAway } from './paper.ts';
import { printsRunSheet } from './runSheetPrint.ts';

export function PlanPrint() {
  const plan = usePlan((present) => present);
  useEffect(printsRunSheet, []);
  // What was drawn for another plan is of no use.
  // biome-ignore lint/correctness/useExhaustiveDependencies: runs when the plan changes
  useEffect(() => takeAway, [plan]);
  return null;
}
