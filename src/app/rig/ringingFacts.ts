/** What the ringing of a run comes to, in sentences. */
import type { Plan } from '../../engine/plan/schema.ts';
import type { RingingSummary } from '../../engine/ringing/summary.ts';
import { atLeastText, durationText } from '../format/durations.ts';
import { shortNumber, withUnit } from '../format/numbers.ts';

// Less is not worth another way of moving, nor a sentence.
const WORTH_S = 0.05;

function worstText({ worstPx, worstFrame }: RingingSummary): string {
  if (worstPx === null) return '';
  if (worstFrame === null) return 'No move rings.';
  const px = withUnit(shortNumber(worstPx), 'px');
  return `The worst move leaves a ring of ${px}, before frame ${worstFrame}.`;
}

const settleText = ({ longestSettleS }: RingingSummary): string =>
  longestSettleS === 0
    ? 'Every move ends still enough: no settle.'
    : `Longest settle ${durationText(longestSettleS)}.`;

function quietText({ quiet }: RingingSummary, isQuiet: boolean): string {
  if (quiet === null) return '';
  const { savesS, shortestIntervalS, shortestIntervalWithoutS } = quiet;
  if (savesS < WORTH_S)
    return isQuiet ? 'Quiet moves save no time here.' : 'Quiet moves would save no time here.';
  const [from, to] = [atLeastText(shortestIntervalWithoutS), atLeastText(shortestIntervalS)];
  const by = `${durationText(savesS)} shorter`;
  return isQuiet
    ? `With quiet moves the shortest interval is ${to} instead of ${from}: ${by}.`
    : `Quiet moves would bring the shortest interval from ${from} to ${to}: ${by}.`;
}

/** What keeps quiet moves from helping, by the plan itself. */
function quietBarred({ move: { moveS }, ringing: { measuredSettleS } }: Plan): string {
  if (measuredSettleS !== null) return 'The measured settle counts for every move, quiet or not.';
  return moveS === null ? '' : 'Every move takes its fixed time: none is slowed to be quiet.';
}

/**
 * The sentences of a run's ringing, those that there are.
 * @param summary - null while the schedule knows of none
 */
export function ringingFacts(plan: Plan, summary: RingingSummary | null): string[] {
  if (summary === null) return [];
  const barred = quietBarred(plan);
  const quiet = barred === '' ? quietText(summary, plan.move.quiet) : barred;
  return [worstText(summary), settleText(summary), quiet].filter((text) => text !== '');
}
