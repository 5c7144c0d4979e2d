/** What the balance says: of the arm, and of what it stands on. */
import type { Margin } from '../findings/types.ts';
import type { Draft, Run } from '../run.ts';
import { armFindings, motorMargin } from './arm-findings.ts';
import type { BalanceRun } from './balance.ts';
import { standingFindings, standingMargins } from './standing-findings.ts';

/**
 * Findings and margins of the balance.
 * @param summary - of the same run; null if the plan does not ask for it
 */
export function judgeBalance(run: Run, summary: BalanceRun | null): { findings: Draft[]; margins: Margin[] } {
  if (summary === null) return { findings: [], margins: [] };
  const { arm } = summary;
  return {
    findings: [...(arm ? armFindings(run, arm) : []), ...standingFindings(run, summary)],
    margins: [...standingMargins(run, summary), ...(arm ? motorMargin(run, arm) : [])],
  };
}
