/** How the figures came about that the findings of the clock state. */
import { firstFrame, numberOf, type Sayers } from '../working/said.ts';
import { offsetText } from './clock.ts';

export const TIME_SAYS: Sayers = {
  'clock-skipped': ({ made }) => [
    { text: made.totals.firstFrameAt.slice(11, 19), of: 'totals.firstFrameAt' },
  ],
  'clock-repeated': ({ made }) => [{ text: made.totals.firstFrameAt.slice(19), of: 'offsets.1.offsetMin' }],
  'clock-change': (_, finding) => [
    firstFrame(finding, 'first frame after the change'),
    { text: offsetText(numberOf(finding, 'fromMin')), of: 'offsets.1.offsetMin' },
    { text: offsetText(numberOf(finding, 'toMin')), of: 'offsets.2.offsetMin' },
  ],
  'start-past': ({ made }) => [{ text: made.totals.firstFrameAt.slice(11, 19), of: 'totals.firstFrameAt' }],
};
