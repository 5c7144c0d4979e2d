/** What happens in one interval, one after another: how the beginning, the length and the end of each came about. */
import {
  DEFINITION,
  type Draft,
  ofFrame,
  sameAs,
  term,
  type Worked,
  type Workings,
} from '../working/make.ts';
import type { Term } from '../working/types.ts';
import { type Lanes, lanesOf, type Stretch } from './lanes.ts';

/** What a lane begins with, if that is not the trigger. */
interface From {
  expression: string;
  terms: readonly Term[];
}

/** What is free begins after the longer lane. */
function afterLanes({ made: { columns } }: Worked, k: number): From {
  const lane = (column: 'cameraS' | 'rigS', words: string) =>
    term(column, words, columns[column][k] as number, 's', ofFrame(k, column));
  return {
    expression: 'max(cameraS, rigS)',
    terms: [lane('cameraS', 'camera lane'), lane('rigS', 'rig lane')],
  };
}

/** The sum of the stretches before one, or up to its end. */
function upTo(stretches: readonly Stretch[], from: From | null, count: number, title: string): Draft {
  const parts = stretches
    .slice(0, count)
    .map(({ label, durationS, figure }, n) =>
      term(`part${n + 1}S`, label.toLowerCase(), durationS, 's', figure),
    );
  const sum = [...(from ? [from.expression] : []), ...parts.map(({ symbol }) => symbol)].join(' + ');
  return {
    title,
    unit: 's',
    expression: sum || '0',
    terms: [...(from?.terms ?? []), ...parts],
    remarks: ['From the trigger.'],
    source: DEFINITION,
  };
}

const workingsOf = (lane: keyof Lanes, stretches: readonly Stretch[], from: From | null): Workings =>
  Object.assign(
    {},
    ...stretches.map(({ label, durationS, figure }, n) => {
      const name = `lane.${lane}.${n + 1}`;
      return {
        [`${name}.startS`]: () => upTo(stretches, from, n, `${label} begins`),
        [`${name}.lastsS`]: () => sameAs(`${label} lasts`, label.toLowerCase(), durationS, 's', figure),
        [`${name}.endS`]: () => upTo(stretches, from, n + 1, `${label} ends`),
      };
    }),
  );

/** Workings of the stretches of one frame's lanes, in their order: `lane.camera.2.startS`. @param k - counted from 0 */
export function frameLaneWorkings(of: Worked, k: number): Workings {
  const { camera, rig, free } = lanesOf(of.plan, of.made, k);
  return {
    ...workingsOf('camera', camera, null),
    ...workingsOf('rig', rig, null),
    ...workingsOf('free', free, afterLanes(of, k)),
  };
}
