/** How the figures came about that the findings of the path state. */
import { counted, seconds, withUnit } from '../findings/words.ts';
import { firstFrame, frameText, numberOf, type Sayers } from '../working/said.ts';

export const PATH_SAYS: Sayers = {
  'motion-blur': (_, finding) => [
    { text: withUnit(numberOf(finding, 'blurPx'), 'px'), of: 'image.blurPx' },
    firstFrame(finding, 'first frame with more blur than you allow'),
  ],
  'panning-fast': (_, finding) => [
    { text: seconds(numberOf(finding, 'crossingS')), of: 'image.crossingS' },
    firstFrame(finding, 'first frame from which on it crosses in less'),
  ],
  'aim-out-of-limits': (_, finding) => [
    { text: withUnit(numberOf(finding, 'worstDeg'), 'deg'), of: 'aim.worstDeg' },
    { text: withUnit(numberOf(finding, 'worstPx'), 'px'), of: 'aim.worstPx' },
    { text: counted(numberOf(finding, 'missFrames'), 'frame'), of: 'aim.missFrames' },
    { text: frameText(finding.frame ?? 1), of: 'aim.firstMissFrame' },
  ],
};
