/** How the figures came about that the findings of the storage state. */
import { lostTo } from '../cycle/lost-working.ts';
import type { Finding } from '../findings/types.ts';
import { bytes, seconds } from '../findings/words.ts';
import { DEFINITION, ofFrame, term, type Worked } from '../working/make.ts';
import { firstFrame, numberOf, type Said, type Sayers } from '../working/said.ts';

/** What all cards hold together. */
export const usable = ({ made: { cards } }: Worked, finding: Pick<Finding, 'values'>): Said => ({
  text: bytes(numberOf(finding, 'usableBytes')),
  what: 'usableBytes',
  draft: () => ({
    title: 'Usable on the cards',
    unit: 'bytes',
    expression: cards.map((_, i) => `card${i + 1}Bytes`).join(' + ') || '0',
    terms: cards.map(({ name, usableBytes }, i) =>
      term(`card${i + 1}Bytes`, `usable on ${name}`, usableBytes, 'bytes', `cards.${name}.usableBytes`),
    ),
    remarks: ['What you asked to keep free is left out.'],
    source: DEFINITION,
  }),
});

/** What the card takes in from one frame to the next. */
function written(of: Worked, finding: Finding): Said {
  const k = (finding.frame ?? 1) - 1;
  const rate = numberOf(finding, 'writeBytesPerS');
  const intervalS = numberOf(finding, 'intervalS');
  return {
    text: bytes(rate * intervalS),
    what: 'writtenBytes',
    draft: () => ({
      title: 'Written in an interval',
      unit: 'bytes',
      expression: 'writeRate * intervalS',
      terms: [
        term('writeRate', 'sustained rate of the card', rate, 'bytes/s'),
        term('intervalS', 'interval', of.made.columns.intervalS[k] as number, 's', ofFrame(k, 'intervalS')),
      ],
      frame: k + 1,
      source: DEFINITION,
    }),
  };
}

const changeFrames = ({ made }: Worked): number[] =>
  made.events.filter(({ kind }) => kind === 'cardChange').map(({ frame }) => frame);

export const STORAGE_SAYS: Sayers = {
  'card-full': (of, finding) => [
    firstFrame(finding, 'first frame that fits on no card'),
    { text: bytes(numberOf(finding, 'neededBytes')), of: 'totals.storageBytes' },
    usable(of, finding),
  ],
  'card-change-does-not-fit': (of, finding) => [
    firstFrame(finding, 'first frame before which a change loses frames'),
    lostTo(of, finding, 'cardChange', changeFrames(of)),
  ],
  'buffer-fills': (of, finding) => [
    firstFrame(finding, 'first frame that the buffer has no room for'),
    { text: bytes(numberOf(finding, 'frameBytes')), of: 'totals.frameBytes' },
    { text: seconds(numberOf(finding, 'intervalS')), of: ofFrame((finding.frame ?? 1) - 1, 'intervalS') },
    written(of, finding),
  ],
};
