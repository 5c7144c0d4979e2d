/** A sentence whose figures open their workings. */
import { Fragment } from 'react';
import type { OnSet } from '../../engine/onset/working.ts';
import { How } from './How.tsx';
import type { Piece } from './sentence.ts';

interface PiecesProps {
  pieces: readonly Piece[];
  /** Of a run that is being shot: how it stands when that is asked for. */
  run?: () => OnSet;
}

export const Pieces = ({ pieces, run }: PiecesProps) =>
  pieces.map((piece, n) => {
    // A piece has no other identity than its place in the sentence.
    const key = String(n);
    return typeof piece === 'string' ? (
      <Fragment key={key}>{piece}</Fragment>
    ) : (
      <How key={key} of={piece.of} what={piece.text} {...(run && { run })}>
        {piece.text}
      </How>
    );
  });
