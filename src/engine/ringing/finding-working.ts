/** How the figures came about that the findings of the ringing state. */
import type { Finding } from '../findings/types.ts';
import { seconds, withUnit } from '../findings/words.ts';
import { type Draft, term, type Worked, worth } from '../working/make.ts';
import { firstFrame, frameText, numberOf, type Said, type Sayers } from '../working/said.ts';
import { DECREMENT, ring } from './working.ts';

/** How long the largest ring takes to die down to what no longer shows. */
const needs = (of: Worked, finding: Finding): Said => ({
  text: seconds(numberOf(finding, 'needsS')),
  what: 'needsS',
  draft: () => needsDraft(of, numberOf(finding, 'worstFrame')),
});

function needsDraft(of: Worked, worstFrame: number): Draft {
  const { ringing } = of.plan;
  return {
    title: 'Settle that the largest ring needs',
    unit: 's',
    expression: 'log(ringPx / tolerancePx) / decayRate',
    terms: [
      term('ringPx', 'largest ring', worth(ring(of, worstFrame - 2)), 'px', 'ringing.worstPx'),
      term('tolerancePx', 'what no longer shows', ringing.tolerancePx, 'px'),
      term(
        'decayRate',
        'decay rate',
        ringing.dampingRatio * 2 * Math.PI * ringing.frequencyHz,
        '1/s',
        'ringing.decayRate',
      ),
    ],
    remarks: ['The schedule keeps the ring to seven digits.'],
    source: DECREMENT,
  };
}

export const RINGING_SAYS: Sayers = {
  'not-settled': (of, finding) => [
    firstFrame(finding, 'first frame before which the measured settle is too short'),
    { text: frameText(numberOf(finding, 'worstFrame')), of: 'ringing.worstFrame' },
    { text: withUnit(numberOf(finding, 'worstPx'), 'px'), of: 'ringing.worstPx' },
    needs(of, finding),
  ],
  'quiet-move': (_, finding) => [
    { text: seconds(numberOf(finding, 'fromS')), of: 'ringing.shortestIntervalWithoutS' },
    { text: seconds(numberOf(finding, 'toS')), of: 'ringing.shortestIntervalS' },
  ],
};
