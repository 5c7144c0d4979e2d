/** What a track makes of its motor, in sentences. */
import type { AxisColumns } from '../../engine/schedule-types.ts';
import { plural, shortNumber, withUnit } from '../format/numbers.ts';
import type { Piece } from '../working/sentence.ts';

type Facts = Pick<
  AxisColumns,
  | 'name'
  | 'unit'
  | 'stepsPerUnit'
  | 'largestMoveSteps'
  | 'smallestMoveSteps'
  | 'repeats'
  | 'firstRepeat'
  | 'reversals'
  | 'firstReversal'
>;

/** Its largest and smallest moves, where it stalls and where it turns back; a sentence each. */
export function trackFacts(columns: Facts): Piece[][] {
  const { largestMoveSteps, smallestMoveSteps } = columns;
  if (largestMoveSteps === 0) return [['It stays where it is.']];
  const largest = sizePieces(columns, 'largestMove', largestMoveSteps);
  const moves =
    smallestMoveSteps === largestMoveSteps
      ? ['Every move is ', ...largest, '.']
      : [
          'Largest move ',
          ...largest,
          ', smallest ',
          ...sizePieces(columns, 'smallestMove', smallestMoveSteps),
          '.',
        ];
  return [moves, ...repeatFacts(columns), ...reversalFacts(columns)];
}

const figure = ({ name }: Facts, what: string, text: string): Piece => ({
  text,
  of: `axes.${name}.${what}`,
});

function sizePieces(columns: Facts, what: string, steps: number): Piece[] {
  const { unit, stepsPerUnit } = columns;
  const size = withUnit(shortNumber(steps / stepsPerUnit), unit === 'deg' ? '°' : 'mm');
  return [
    figure(columns, what, size),
    ' (',
    figure(columns, `${what}Steps`, plural(steps, 'microstep')),
    ')',
  ];
}

function repeatFacts(columns: Facts): Piece[][] {
  const { repeats, firstRepeat } = columns;
  if (firstRepeat === null) return [];
  return [
    [
      figure(columns, 'repeats', plural(repeats, 'frame')),
      ` of the move repeat${repeats === 1 ? 's' : ''} a position, the first is `,
      figure(columns, 'firstRepeat', String(firstRepeat)),
      '.',
    ],
  ];
}

function reversalFacts(columns: Facts): Piece[][] {
  const { reversals, firstReversal } = columns;
  if (firstReversal === null) return [];
  const once = reversals === 1;
  return [
    [
      'It turns back ',
      figure(columns, 'reversals', once ? 'once' : `${reversals} times`),
      once ? ', before ' : ', first before ',
      figure(columns, 'firstReversal', `frame ${firstReversal}`),
      '.',
    ],
  ];
}
