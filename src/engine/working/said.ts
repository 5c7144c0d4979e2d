/** Figures within the sentence of a finding: which words they are, and how each came about. */
import { type Finding, type FindingId, keyOf } from '../findings/types.ts';
import { countWhere, frameFound, whereRemark } from './found.ts';
import { DEFINITION, type Draft, term, type Worked } from './make.ts';

/** Where a figure stands in a sentence. */
interface Place {
  /** Words right before it, where others of its numbers may read the same. */
  lead?: string;
}

/** A figure that a sentence states, and that has a name already. */
interface Named extends Place {
  /** As it stands in the sentence: `2.3 s`, `frame 12`. */
  text: string;
  /** Name of its working. */
  of: string;
}

/** A figure that is worked out for this sentence alone. */
interface Own extends Place {
  /** As it stands in the sentence; null for one that only stands behind others. */
  text: string | null;
  /** Its name within the finding: `shortS`. */
  what: string;
  draft: () => Draft;
}

export type Said = Named | Own;

/** What the sentence of a finding may state: what does not stand in it is left out afterwards. */
export type Sayer = (of: Worked, finding: Finding) => readonly Said[];

/** What the findings of a subject state. */
export type Sayers = Partial<Record<FindingId, Sayer>>;

/** Name of a figure of a finding. */
export const ofFinding = (finding: Pick<Finding, 'id' | 'about'>, what: string): string =>
  `findings.${keyOf(finding)}.${what}`;

/** One of the numbers of a finding. */
export const numberOf = ({ values }: Pick<Finding, 'values'>, name: string): number => Number(values[name]);

/** One of the names of a finding. */
export const wordOf = ({ values }: Pick<Finding, 'values'>, name: string): string => String(values[name]);

export const frameText = (frame: number): string => `frame ${frame}`;

/** The frame where it first happens. @param words - `first frame whose …` */
export const firstFrame = ({ frame }: Finding, words: string): Own => ({
  text: frameText(frame ?? 0),
  what: 'firstFrame',
  draft: () => frameFound('First frame of it', words, frame ?? 0),
});

/** What of the frames of a run is counted. */
interface Counted {
  text: string;
  title: string;
  /** What the other frames are: `frames within the window`. */
  others: string;
  /** Of a frame, counted from 0. */
  holds: (k: number) => boolean;
  remarks?: readonly string[];
}

/** On how many frames something holds: all but those on which it does not. */
export const framesWhere = (
  { made: { totals } }: Worked,
  { text, title, others, holds, remarks = [] }: Counted,
): Own => ({
  text,
  what: 'frames',
  draft: () => ({
    title,
    unit: 'frames',
    expression: 'frames - others',
    terms: [
      term('frames', 'frames', totals.frames, 'frames', 'totals.frames'),
      term(
        'others',
        others,
        countWhere(totals.frames, (k) => !holds(k)),
        'frames',
      ),
    ],
    remarks: [...remarks, whereRemark(totals.frames, holds)],
    source: DEFINITION,
  }),
});
