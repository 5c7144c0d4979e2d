/** How the figures came about that the findings of the energy state. */

import { lostTo } from '../cycle/lost-working.ts';
import type { Finding } from '../findings/types.ts';
import { counted, withUnit } from '../findings/words.ts';
import type { Worked } from '../working/make.ts';
import { firstFrame, numberOf, type Sayers, wordOf } from '../working/said.ts';
import { ofSource } from './drawn-working.ts';

const nameOf = (finding: Finding): string => wordOf(finding, 'source');

const summaryOf = ({ made }: Worked, finding: Finding) =>
  made.sources.find(({ name }) => name === nameOf(finding));

export const ENERGY_SAYS: Sayers = {
  'source-short': (_, finding) => [
    { text: `${numberOf(finding, 'needed')} needed`, of: ofSource(nameOf(finding), 'needed') },
    firstFrame(finding, 'first frame that no pack is left for'),
  ],
  'swap-does-not-fit': (of, finding) => [
    firstFrame(finding, 'first frame before which a swap loses frames'),
    {
      text: counted(numberOf(finding, 'swaps'), 'swap'),
      of: ofSource(nameOf(finding), 'swaps'),
    },
    lostTo(of, finding, `swap.${nameOf(finding)}`, summaryOf(of, finding)?.swapFrames ?? []),
  ],
  'flight-limit': (_, finding) => [
    { text: withUnit(numberOf(finding, 'ratedWh'), 'Wh'), of: ofSource(nameOf(finding), 'ratedWh') },
  ],
};
