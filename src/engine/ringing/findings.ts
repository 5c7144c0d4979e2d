/** What the ringing says: is the settle that was measured long enough, and would quiet moves save time. */
import type { Margin } from '../findings/types.ts';
import { seconds, withUnit } from '../findings/words.ts';
import type { Plan } from '../plan/schema.ts';
import type { Draft } from '../run.ts';
import { settleS } from './ring.ts';
import type { RingingSummary, Rings } from './summary.ts';

/** What is judged: a run, or as much of it as matters here. */
interface Judged {
  plan: Plan;
  columns: Pick<Rings, 'ringPx'>;
}

// Nobody times a settle to the millisecond, and no sentence shows less.
const SHORT_S = 0.001;

function notSettled({ plan, columns }: Judged, { worstPx, worstFrame }: RingingSummary): Draft[] {
  const { frequencyHz, dampingRatio, tolerancePx, measuredSettleS } = plan.ringing;
  const { ringPx } = columns;
  if (measuredSettleS === null || ringPx === null || worstPx === null || worstFrame === null) return [];
  const ringing = { omega: 2 * Math.PI * frequencyHz, damping: dampingRatio };
  const needsS = settleS(worstPx, tolerancePx, ringing);
  if (needsS <= measuredSettleS + SHORT_S) return [];
  const first = ringPx.findIndex((px) => settleS(px, tolerancePx, ringing) > measuredSettleS + SHORT_S) + 2;
  return [
    {
      id: 'not-settled',
      severity: 'warning',
      subject: 'move',
      message: `From frame ${first} the measured settle of ${seconds(measuredSettleS)} is short: before frame ${worstFrame} the ring of ${withUnit(worstPx, 'px')} needs ${seconds(needsS)} to die down to ${withUnit(tolerancePx, 'px')}.`,
      frame: first,
      values: { measuredS: measuredSettleS, needsS, worstPx, tolerancePx, worstFrame },
    },
  ];
}

// Less is not worth another way of moving.
const WORTH_S = 0.05;

function quietMove({ plan }: Judged, { quiet }: RingingSummary): Draft[] {
  if (plan.move.quiet || plan.move.moveS !== null || plan.ringing.measuredSettleS !== null) return [];
  if (quiet === null || quiet.savesS < WORTH_S) return [];
  const { shortestIntervalS, shortestIntervalWithoutS, savesS } = quiet;
  return [
    {
      id: 'quiet-move',
      severity: 'note',
      subject: 'move',
      message: `Quiet moves would shorten the shortest interval from ${seconds(shortestIntervalWithoutS)} to ${seconds(shortestIntervalS)}.`,
      frame: null,
      values: { fromS: shortestIntervalWithoutS, toS: shortestIntervalS, savesS },
    },
  ];
}

/** Judges the ringing of a run; nothing is said of it while the settle is a fixed time. */
export function judgeRinging(
  run: Judged,
  summary: RingingSummary | null,
): { findings: Draft[]; margins: Margin[] } {
  if (summary === null || run.plan.move.settleBy !== 'ringing') return { findings: [], margins: [] };
  return { findings: [...notSettled(run, summary), ...quietMove(run, summary)], margins: [] };
}
