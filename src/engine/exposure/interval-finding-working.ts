/** How the figures came about that the finding of an interval states that grows with the exposure. */
import type { Finding } from '../findings/types.ts';
import { counted, seconds } from '../findings/words.ts';
import { DEFINITION, ofFrame, sameAs, term, type Worked, withFloor } from '../working/make.ts';
import { firstFrame, numberOf, type Said, type Sayer } from '../working/said.ts';

/** The interval of a length. */
function interval({ made }: Worked, lengthS: number): Said[] {
  const k = made.columns.intervalS.indexOf(lengthS);
  return k < 0 ? [] : [{ text: seconds(lengthS), of: ofFrame(k, 'intervalS') }];
}

/** Frames in the event, against an interval that stays. */
function fewer({ plan, made }: Worked, finding: Finding): Said {
  const { eventS } = plan.pacing;
  const { frames } = made.totals;
  const firstS = numberOf(finding, 'firstIntervalS');
  const difference = numberOf(finding, 'fewer');
  return {
    text: counted(Math.abs(difference), 'frame'),
    what: 'fewer',
    draft: () => ({
      title: 'Frames that the growing interval makes of difference',
      unit: 'frames',
      expression: 'abs(floor(intervals) + 1 - frames)',
      terms: [
        term(
          'intervals',
          'first intervals in the event',
          withFloor(eventS / firstS, difference + frames - 1),
          'intervals',
        ),
        term('frames', 'frames', frames, 'frames', 'totals.frames'),
      ],
      remarks: [
        `An interval of ${firstS} s, as the run begins with it, in an event of ${eventS} s; both ends count, as with the posts of a fence.`,
      ],
      source: DEFINITION,
    }),
  };
}

/** When the last frame comes, against an interval that stays. */
function later({ made }: Worked, finding: Finding): Said {
  const last = made.totals.frames - 1;
  return {
    text: seconds(Math.abs(numberOf(finding, 'laterS'))),
    what: 'laterS',
    draft: () => ({
      title: 'Difference of the end',
      unit: 's',
      expression: 'abs(lastS - (frames - 1) * firstIntervalS)',
      terms: [
        term(
          'lastS',
          'opening of the last frame',
          made.columns.elapsedS[last] ?? 0,
          's',
          ofFrame(last, 'elapsedS'),
        ),
        term('frames', 'frames', made.totals.frames, 'frames', 'totals.frames'),
        term(
          'firstIntervalS',
          'interval of the first frame',
          numberOf(finding, 'firstIntervalS'),
          's',
          ofFrame(0, 'intervalS'),
        ),
      ],
      source: DEFINITION,
    }),
  };
}

/** The setting of the trigger that would keep the end. */
const keeping = (finding: Finding): Said => ({
  text: seconds(numberOf(finding, 'keepDialS')),
  what: 'keepDialS',
  draft: () =>
    sameAs('Setting that would about keep the end', 'setting', numberOf(finding, 'keepDialS'), 's', null, {
      remarks: [
        'Found by halving: at each moment the shutter opens for as long as it does now, since the light does not wait; of the settings of the trigger the next one down.',
      ],
    }),
});

export const growingSays: Sayer = (of, finding) => [
  ...interval(of, numberOf(finding, 'shortestIntervalS')),
  ...interval(of, numberOf(finding, 'longestIntervalS')),
  ...('fewer' in finding.values ? [fewer(of, finding)] : [later(of, finding)]),
  ...('keepDialS' in finding.values ? [keeping(finding)] : []),
  firstFrame(finding, 'first frame with another setting'),
];
