/** A sentence whose figures open their workings. */
import { Fragment, type ReactNode } from 'react';
import type { OnSet } from '../../engine/onset/working.ts';
import { How } from './How.tsx';
import type { Piece } from './sentence.ts';

interface PiecesProps {
  pieces: readonly Piece[];
  /** What the figures are of, where that is not heard in the sentence. */
  about?: string;
  /** Of a run that is being shot: how it stands when that is asked for. */
  run?: () => OnSet;
}

/**
 * Words between two figures: what holds to the figure before them, what stands free, what holds to the one after. A
 * browser may break a line on either side of a button, and would leave a bracket or a full stop alone.
 */
function parted(words: string, before: boolean, after: boolean) {
  const [closes = ''] = (before && /^\S+/.exec(words)) || [];
  const rest = words.slice(closes.length);
  const [opens = ''] = (after && /\S+$/.exec(rest)) || [];
  return { closes, free: rest.slice(0, rest.length - opens.length), opens };
}

const isFigure = (piece: Piece | undefined) => piece !== undefined && typeof piece !== 'string';

export const Pieces = ({ pieces, about, run }: PiecesProps) => {
  const words = (n: number) => {
    const piece = pieces[n];
    return parted(typeof piece === 'string' ? piece : '', isFigure(pieces[n - 1]), isFigure(pieces[n + 1]));
  };
  return pieces.map((piece, n): ReactNode => {
    // A piece has no other identity than its place in the sentence.
    const key = String(n);
    if (typeof piece === 'string') return <Fragment key={key}>{words(n).free}</Fragment>;
    const figure = (
      <How
        key={key}
        of={piece.of}
        what={about === undefined ? piece.text : `${piece.text}, ${about}`}
        {...(run && { run })}
      >
        {piece.text}
      </How>
    );
    const [{ opens }, { closes }] = [words(n - 1), words(n + 1)];
    return opens + closes === '' ? (
      figure
    ) : (
      <span key={key} className="unbroken">
        {opens}
        {figure}
        {closes}
      </span>
    );
  });
};
