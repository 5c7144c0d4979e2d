/** What the ringing of a run comes to, in sentences. */
import type { Plan } from '../../engine/plan/schema.ts';
import type { RingingSummary } from '../../engine/ringing/summary.ts';
import { durationText } from '../format/durations.ts';
import { shortNumber, withUnit } from '../format/numbers.ts';
import type { Piece } from '../working/sentence.ts';

// Less is not worth another way of moving, nor a sentence.
const WORTH_S = 0.05;

const figure = (what: string, text: string): Piece => ({ text, of: `ringing.${what}` });

function worstPieces({ worstPx, worstFrame }: RingingSummary): Piece[] {
  if (worstPx === null) return [];
  if (worstFrame === null) return ['No move rings.'];
  return [
    'The worst move leaves a ring of ',
    figure('worstPx', withUnit(shortNumber(worstPx), 'px')),
    ', before ',
    figure('worstFrame', `frame ${worstFrame}`),
    '.',
  ];
}

const settlePieces = ({ longestSettleS }: RingingSummary): Piece[] =>
  longestSettleS === 0
    ? ['Every move ends still enough: ', figure('longestSettleS', 'no settle'), '.']
    : ['Longest settle ', figure('longestSettleS', durationText(longestSettleS)), '.'];

function quietPieces({ quiet }: RingingSummary, isQuiet: boolean): Piece[] {
  if (quiet === null) return [];
  const { savesS, shortestIntervalS, shortestIntervalWithoutS } = quiet;
  if (savesS < WORTH_S)
    return [`Quiet moves ${isQuiet ? 'save' : 'would save'} `, figure('savesS', 'no time'), ' here.'];
  // With as many digits as each other: their difference is what the sentence says.
  const seconds = (what: string, value: number) => figure(what, durationText(value, 2));
  const from = seconds('shortestIntervalWithoutS', shortestIntervalWithoutS);
  const to = seconds('shortestIntervalS', shortestIntervalS);
  const by = [': ', seconds('savesS', savesS), ' shorter.'];
  return isQuiet
    ? ['With quiet moves the shortest interval is ', to, ' instead of ', from, ...by]
    : ['Quiet moves would bring the shortest interval from ', from, ' to ', to, ...by];
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
export function ringingFacts(plan: Plan, summary: RingingSummary | null): Piece[][] {
  if (summary === null) return [];
  const barred = quietBarred(plan);
  const quiet = barred === '' ? quietPieces(summary, plan.move.quiet) : [barred];
  return [worstPieces(summary), settlePieces(summary), quiet].filter((pieces) => pieces.length > 0);
}
