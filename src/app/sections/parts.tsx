/** Small parts of section bodies. */
import type { ReactNode } from 'react';
import { StandingIcon } from '../icons.tsx';
import { Pieces } from '../working/Pieces.tsx';
import type { Piece } from '../working/sentence.ts';

/** A plain sentence of caution where it belongs. */
export const Caution = ({ children }: { children: ReactNode }) => <p className="caution w2">{children}</p>;

/** What was worked out, in sentences whose figures open their workings. */
export const Facts = ({ of }: { of: readonly (readonly Piece[])[] }) =>
  of.length > 0 && (
    <p className="hint">
      <Pieces pieces={of.flatMap((sentence) => [...sentence, ' '])} />
    </p>
  );

/** Figures that few need; with a summary of what they say while they are folded. */
export const More = ({ title, summary, children }: MoreProps) => (
  <details className="more w2">
    <summary>
      {summary === undefined ? title : <b>{title}</b>}
      {summary !== undefined && <span className="s">{summary}</span>}
    </summary>
    <div className="grid">{children}</div>
  </details>
);

interface MoreProps {
  title: string;
  summary?: string;
  children: ReactNode;
}

/** Why a button did not do what it says. */
export const Refusal = ({ text }: { text: string | null }) =>
  text === null ? null : (
    <p className="err w2" role="alert">
      <StandingIcon standing="stop" size={14} />
      <span>{text}</span>
    </p>
  );

/** Something found that would fit the plan, and the button that takes it. */
export const OfferLine = ({ text, action, taken, onTake }: OfferLineProps) => (
  <div className="offer w2">
    {text}
    {taken ? (
      <span className="sev fine">
        <StandingIcon standing="fine" size={14} /> In the plan
      </span>
    ) : (
      <button type="button" className="btn" aria-label={action} onClick={onTake}>
        Use it
      </button>
    )}
  </div>
);

interface OfferLineProps {
  text: ReactNode;
  /** What the button does, as it is heard. */
  action: string;
  taken?: boolean;
  onTake: () => void;
}
