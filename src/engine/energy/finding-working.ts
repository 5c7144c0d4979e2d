/** How the figures came about that the findings of the energy state. */

import { lostTo } from '../cycle/lost-working.ts';
import type { Finding } from '../findings/types.ts';
import { counted, withUnit } from '../findings/words.ts';
import { sameAs, type Worked } from '../working/make.ts';
import { firstFrame, numberOf, type Said, type Sayers, wordOf } from '../working/said.ts';
import { ofSource } from './drawn-working.ts';

const nameOf = (finding: Finding): string => wordOf(finding, 'source');

const summaryOf = ({ made }: Worked, finding: Finding) =>
  made.sources.find(({ name }) => name === nameOf(finding));

/** How often a pack is swapped. */
function swapsOf(of: Worked, finding: Finding): Said {
  const swaps = numberOf(finding, 'swaps');
  const frames = summaryOf(of, finding)?.swapFrames ?? [];
  const listed = frames.slice(0, 12).join(', ');
  return {
    text: counted(swaps, 'swap'),
    what: 'swaps',
    draft: () =>
      sameAs(`${nameOf(finding)}: swaps`, 'fresh packs in the course of the run', swaps, 'swaps', null, {
        remarks: [
          'A pack is swapped before the frame that it would not last through: counted frame by frame.',
          `Before frame ${listed}${frames.length > 12 ? ' and so on' : ''}.`,
        ],
      }),
  };
}

export const ENERGY_SAYS: Sayers = {
  'source-short': (_, finding) => [
    { text: `${numberOf(finding, 'needed')} needed`, of: ofSource(nameOf(finding), 'needed') },
    firstFrame(finding, 'first frame that no pack is left for'),
  ],
  'swap-does-not-fit': (of, finding) => [
    firstFrame(finding, 'first frame before which a swap loses frames'),
    swapsOf(of, finding),
    lostTo(of, finding, `swap.${nameOf(finding)}`, summaryOf(of, finding)?.swapFrames ?? []),
  ],
  'flight-limit': (_, finding) => [
    { text: withUnit(numberOf(finding, 'ratedWh'), 'Wh'), of: ofSource(nameOf(finding), 'ratedWh') },
  ],
};
