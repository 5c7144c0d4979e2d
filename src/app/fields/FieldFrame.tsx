/** Label above, control, and beside it what is wrong; what is allowed shows while the control has the focus. */
import type { ReactNode } from 'react';
import { StandingIcon } from '../icons.tsx';

interface FieldFrameProps {
  id: string;
  label: string;
  hint?: string | undefined;
  error?: string | null;
  /** Label is heard only: the control carries it itself. */
  bare?: boolean | undefined;
  wide?: boolean | undefined;
  children: (describedBy: string | undefined) => ReactNode;
}

export function FieldFrame({ id, label, hint, error = null, bare, wide, children }: FieldFrameProps) {
  const noteId = `${id}-note`;
  return (
    <div className={`fld${wide ? ' w2' : ''}`}>
      {!bare && <label htmlFor={id}>{label}</label>}
      {children(error !== null || hint ? noteId : undefined)}
      {error !== null ? (
        <p id={noteId} className="err" role="alert">
          <StandingIcon standing="stop" size={14} />
          <span>{error}</span>
        </p>
      ) : (
        hint && (
          <p id={noteId} className="tip">
            {hint}
          </p>
        )
      )}
    </div>
  );
}

/** The unit right behind a field's text. */
export const Unit = ({ text, unit }: { text: string; unit: string }) =>
  unit === '' ? null : (
    <span className="ghost">
      <span className="m" aria-hidden="true">
        {text}
      </span>
      <span className="u">{unit}</span>
    </span>
  );
