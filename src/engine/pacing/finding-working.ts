/** How the figures came about that the findings of the pacing state. */
import { seconds } from '../findings/words.ts';
import { PRACTICE, term, type Worked, withFloor } from '../working/make.ts';
import { numberOf, type Said, type Sayers } from '../working/said.ts';
import { neighbouringSettings } from './pacing.ts';

/** A setting of the dial next to what cannot be set. */
function setting({ plan, made }: Worked, dialS: number, lead: string): Said {
  const { stepS } = plan.trigger;
  const wantedS = made.totals.dialS;
  const above = dialS > wantedS;
  const below = Math.round(dialS / stepS) - (above ? 1 : 0);
  return {
    text: seconds(dialS),
    lead,
    what: above ? 'aboveS' : 'belowS',
    draft: () => ({
      title: above ? 'Setting just above' : 'Setting just below',
      value: dialS,
      unit: 's',
      expression: above ? '(floor(steps) + 1) * stepS' : 'floor(steps) * stepS',
      terms: [
        term(
          'steps',
          'steps of the dial in what would have to be set',
          stepsIn(wantedS, stepS, below),
          'steps',
        ),
        term('stepS', 'step of the dial', stepS, 's'),
      ],
      remarks: ['The dial goes in whole steps.'],
      source: PRACTICE,
    }),
  };
}

const stepsIn = (wantedS: number, stepS: number, whole: number): number => withFloor(wantedS / stepS, whole);

export const PACING_SAYS: Sayers = {
  'interval-not-settable': (of, finding) => {
    const dialS = numberOf(finding, 'dialS');
    return [
      { text: seconds(dialS), of: 'totals.dialS' },
      ...neighbouringSettings(of.plan, dialS).map((near, n) =>
        setting(of, near, n === 0 ? 'Nearest: ' : 'and '),
      ),
    ];
  },
  'interval-stretched': (_, finding) => [
    { text: seconds(numberOf(finding, 'dialS')), of: 'totals.dialS' },
    { text: seconds(numberOf(finding, 'intervalS')), of: 'totals.intervalS' },
    { text: seconds(numberOf(finding, 'rawIntervalS')), of: 'totals.rawIntervalS' },
  ],
  'no-clip': (_, finding) => [{ text: `${numberOf(finding, 'clipFrames')} frames`, of: 'totals.clipFrames' }],
};
