/** Ways out of what the ringing says. */
import { seconds, withUnit } from '../findings/words.ts';
import { numberIn, stepsOf, switchWay } from '../fixes/build.ts';
import type { SubjectWays, WaysOut } from '../fixes/types.ts';
import { quietMoves } from '../motion/move-ways.ts';
import { smallerTracks } from '../motion/track-ways.ts';

const notSettled: WaysOut = (finding, plan) => [
  ...switchWay(plan, [['ringing.measuredSettleS', null]], {
    kind: 'settle-until-still',
    label: () => `Settle until the ring is below ${withUnit(plan.ringing.tolerancePx, 'px')}`,
    needs: 'a test frame after the longest move',
  }),
  ...stepsOf(plan, {
    kind: 'settle-longer',
    path: 'ringing.measuredSettleS',
    by: 0.1,
    wanted: numberIn(finding, 'needsS'),
    label: (settleS) => `Settle for ${seconds(settleS)}`,
  }),
  ...quietMoves(plan),
  ...smallerTracks(plan, numberIn(finding, 'tolerancePx') / numberIn(finding, 'worstPx')),
];

const quietMove: WaysOut = (_, plan) => quietMoves(plan);

export const ringingWays: SubjectWays<'not-settled' | 'quiet-move'> = {
  'not-settled': notSettled,
  'quiet-move': quietMove,
};
