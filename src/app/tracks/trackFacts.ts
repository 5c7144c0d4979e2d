/** What a track makes of its motor, in sentences. */
import type { AxisColumns } from '../../engine/schedule-types.ts';
import { plural, shortNumber, withUnit } from '../format/numbers.ts';

type Facts = Pick<
  AxisColumns,
  | 'unit'
  | 'stepsPerUnit'
  | 'largestMoveSteps'
  | 'smallestMoveSteps'
  | 'repeats'
  | 'firstRepeat'
  | 'reversals'
  | 'firstReversal'
>;

/** Its largest and smallest moves, where it stalls and where it turns back. */
export function trackFacts(columns: Facts): string[] {
  const { unit, stepsPerUnit, largestMoveSteps, smallestMoveSteps } = columns;
  if (largestMoveSteps === 0) return ['It stays where it is.'];
  const size = (steps: number) =>
    `${withUnit(shortNumber(steps / stepsPerUnit), unit === 'deg' ? '°' : 'mm')} (${plural(steps, 'microstep')})`;
  const moves =
    smallestMoveSteps === largestMoveSteps
      ? `Every move is ${size(largestMoveSteps)}.`
      : `Largest move ${size(largestMoveSteps)}, smallest ${size(smallestMoveSteps)}.`;
  return [moves, ...repeatFacts(columns), ...reversalFacts(columns)];
}

const repeatFacts = ({ repeats, firstRepeat }: Facts): string[] =>
  firstRepeat === null
    ? []
    : [
        `${plural(repeats, 'frame')} of the move repeat${repeats === 1 ? 's' : ''} a position, the first is ${firstRepeat}.`,
      ];

const reversalFacts = ({ reversals, firstReversal }: Facts): string[] =>
  firstReversal === null
    ? []
    : [
        reversals === 1
          ? `It turns back once, before frame ${firstReversal}.`
          : `It turns back ${reversals} times, first before frame ${firstReversal}.`,
      ];
