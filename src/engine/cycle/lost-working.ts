/** How the frames came about that are fired in vain while hands are on the rig. */
import type { Finding } from '../findings/types.ts';
import { counted } from '../findings/words.ts';
import {
  DEFINITION,
  type Draft,
  ofFrame,
  PRACTICE,
  term,
  type Worked,
  type Workings,
  worth,
} from '../working/make.ts';
import { numberOf, type Said } from '../working/said.ts';

/** Work that has to be done just before a frame. */
interface Handwork {
  /** `swap.Pack`, `cardChange`, `exposureChange`. */
  what: string;
  words: string;
  handsS: number;
}

/** What is done by hand just before a frame. @param k - counted from 0 */
function handworkBefore({ plan, made }: Worked, k: number): Handwork[] {
  const frame = k + 1;
  const swapped = made.sources.flatMap(({ name, swapFrames }, i) => {
    const handsS = plan.power.sources[i]?.swapS ?? 0;
    return swapFrames.includes(frame) ? [{ what: `swap.${name}`, words: `swap of ${name}`, handsS }] : [];
  });
  const changed = made.events.some(({ kind, frame: at }) => kind === 'cardChange' && at === frame);
  const byHand = made.exposure?.changes.some(({ frame: at, by }) => at === frame && by === 'hand') ?? false;
  return [
    ...swapped,
    ...(changed
      ? [{ what: 'cardChange', words: 'change of the card', handsS: plan.storage.cardChangeS }]
      : []),
    ...(byHand
      ? [{ what: 'exposureChange', words: 'change of the settings', handsS: plan.exposure.ramp.changeS }]
      : []),
  ];
}

/** Time of an interval in which neither camera nor rig is busy. @param k - counted from 0 */
function free({ made }: Worked, k: number): Draft {
  const laneTerm = (symbol: 'intervalS' | 'cameraS' | 'rigS', words: string) =>
    term(symbol, words, made.columns[symbol][k] as number, 's', ofFrame(k, symbol));
  return {
    title: 'Free in the interval',
    unit: 's',
    expression: 'max(0, intervalS - max(cameraS, rigS))',
    terms: [
      laneTerm('intervalS', 'interval'),
      laneTerm('cameraS', 'camera lane'),
      laneTerm('rigS', 'rig lane'),
    ],
    source: DEFINITION,
  };
}

function lost({ plan, made }: Worked, k: number, { what, words, handsS }: Handwork): Draft {
  const before = k - 1;
  const intervalS = made.columns.intervalS[before] as number;
  const freeS = worth(free({ plan, made }, before));
  const event = made.events.find(
    ({ kind, frame, text }) =>
      frame === k + 1 &&
      kind === what.split('.', 1)[0] &&
      (kind !== 'swap' || text.startsWith(`${what.slice(5)}: `)),
  );
  return {
    title: 'Frames lost',
    value: event?.lostFrames ?? 0,
    unit: 'frames',
    expression: 'max(0, ceil((handsS - freeS) / intervalS))',
    terms: [
      term('handsS', words, handsS, 's'),
      term('freeS', 'free in the interval before', freeS, 's', ofFrame(before, 'freeS')),
      term('intervalS', 'interval before', intervalS, 's', ofFrame(before, 'intervalS')),
    ],
    remarks: ['The trigger fires on while hands are on the rig: what is begun is lost whole.'],
    source: PRACTICE,
  };
}

/** Workings of what is lost before one frame. @param k - counted from 0 */
export const frameLostWorkings = (of: Worked, k: number): Workings => ({
  freeS: () => free(of, k),
  ...Object.fromEntries(
    (k === 0 ? [] : handworkBefore(of, k)).map((work) => [`lost.${work.what}`, () => lost(of, k, work)]),
  ),
});

/** Most frames lost at once, and where that is. @param frames - before which the work is done, counted from 1 */
export function lostTo({ made }: Worked, finding: Finding, what: string, frames: readonly number[]): Said {
  const most = numberOf(finding, 'lostFrames');
  const kind = what.split('.', 1)[0];
  const at = made.events.find(
    (event) => event.kind === kind && event.lostFrames === most && frames.includes(event.frame),
  );
  return { text: counted(most, 'frame'), of: ofFrame((at?.frame ?? 1) - 1, `lost.${what}`) };
}
