/** A box for text that is no field of the plan: what is typed stays with whoever asks. */
import { useId } from 'react';
import { FieldFrame } from './FieldFrame.tsx';

interface Props {
  label: string;
  hint?: string | undefined;
  text: string;
  error: string | null;
  onText: (text: string) => void;
}

export function EntryBox({ label, hint, text, error, onText }: Props) {
  const id = useId();
  return (
    <FieldFrame id={id} label={label} hint={hint} error={error}>
      {(described) => (
        <div className={`box${error === null ? '' : ' bad'}`}>
          <span className="v">
            <input
              id={id}
              className="m"
              value={text}
              aria-invalid={error !== null}
              aria-describedby={described}
              autoComplete="off"
              onChange={(event) => onText(event.target.value)}
            />
          </span>
        </div>
      )}
    </FieldFrame>
  );
}
