/** A sentence of the engine in pieces: words, and the figures that it states. */
import { useMemo } from 'react';
import type { Finding } from '../../engine/findings/types.ts';
import { madeOf } from '../../engine/onset/stretch.ts';
import type { OnSet } from '../../engine/onset/working.ts';
import { sheetStatedIn } from '../../engine/sheet/finding-figures.ts';
import type { SheetFinding } from '../../engine/sheet/types.ts';
import { statedIn, statedInVerdict } from '../../engine/working/finding-figures.ts';
import type { Stated as Figure } from '../../engine/working/stated.ts';
import type { Sheeted } from '../sheet/sheeted.ts';
import { usePlan } from '../store/plan.ts';
import { workedOut } from '../store/schedules.ts';
import { Pieces } from './Pieces.tsx';
import type { Piece } from './sentence.ts';

/** @param figures - in the order of the sentence */
export function piecesOf(sentence: string, figures: readonly Figure[]): Piece[] {
  const ends = figures.map(({ from, text }) => from + text.length);
  const words = [...figures, null].map((figure, n) => sentence.slice(ends[n - 1] ?? 0, figure?.from));
  return words.flatMap((text, n): Piece[] => {
    const figure = figures[n];
    return figure ? [text, { text: figure.text, of: figure.of }] : [text];
  });
}

export function Stated({ finding }: { finding?: Finding }) {
  const { plan, schedule } = usePlan(workedOut);
  const sentence = finding?.message ?? schedule.verdict;
  const figures = finding ? statedIn(plan, schedule, finding) : statedInVerdict(plan, schedule);
  return <Pieces pieces={piecesOf(sentence, figures)} />;
}

/** The sentence of a finding of the sheet. @param of - the plan and the sheet that has it */
export function StatedOnSheet({ of: { plan, sheet }, finding }: { of: Sheeted; finding: SheetFinding }) {
  const { schedule } = usePlan(workedOut);
  return (
    <Pieces pieces={piecesOf(finding.message, sheetStatedIn({ plan, made: schedule, sheet }, finding))} />
  );
}

export interface StatedOfProps {
  finding: Finding;
  /** The run on set whose stretch has the finding. */
  run: () => OnSet;
}

/** The sentence of a finding of what a run on set becomes. */
export function StatedOf({ finding, run }: StatedOfProps) {
  const { stretch } = run();
  // A run ticks: its sentences do not.
  const pieces = useMemo(
    () => piecesOf(finding.message, statedIn(stretch.plan, madeOf(stretch), finding)),
    [finding, stretch],
  );
  return <Pieces pieces={pieces} run={run} />;
}
