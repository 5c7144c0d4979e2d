/** How the figures came about that the findings of the cycle state. */
import type { Finding } from '../findings/types.ts';
import { seconds } from '../findings/words.ts';
import { DEFINITION, ofFrame, term, type Worked } from '../working/make.ts';
import { firstFrame, numberOf, type Said, type Sayers } from '../working/said.ts';

/** A lane that is longer than its interval. */
function tooLong({ made }: Worked, finding: Finding, lane: 'cameraS' | 'rigS', words: string): Said[] {
  const k = numberOf(finding, 'worstFrame') - 1;
  const short: Said = {
    text: seconds(numberOf(finding, 'shortS')),
    what: 'shortS',
    draft: () => ({
      title: 'Interval: too short by',
      unit: 's',
      expression: `${lane} - intervalS`,
      terms: [
        term(lane, words, made.columns[lane][k] as number, 's', ofFrame(k, lane)),
        term('intervalS', 'interval', made.columns.intervalS[k] as number, 's', ofFrame(k, 'intervalS')),
      ],
      frame: k + 1,
      remarks: [`Of frame ${k + 1}, where most is lacking.`],
      source: DEFINITION,
    }),
  };
  return [
    { text: seconds(numberOf(finding, 'intervalS')), of: ofFrame(k, 'intervalS') },
    short,
    { text: seconds(numberOf(finding, 'needsS')), of: ofFrame(k, lane) },
    firstFrame(finding, `first frame whose ${words} is longer than its interval`),
  ];
}

export const CYCLE_SAYS: Sayers = {
  'cycle-overrun': (of, finding) => tooLong(of, finding, 'rigS', 'rig lane'),
  'camera-not-ready': (of, finding) => tooLong(of, finding, 'cameraS', 'camera lane'),
  'guard-used': (_, finding) => [
    { text: seconds(numberOf(finding, 'freeS')), of: 'margins.interval.left' },
    firstFrame(finding, 'first frame that leaves less than the guard'),
  ],
};
