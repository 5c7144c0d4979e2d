/** A box for text that is no field of the plan: what is typed stays with whoever asks. */
import { useId } from 'react';
import { FieldFrame } from './FieldFrame.tsx';

interface Props {
  label: string;
  hint?: string | undefined;
  text: string;
  error: string | null;
  onText: (text: string) => void;
  /** Left, or Enter was pressed. */
  onLeave?: () => void;
  /** Escape was pressed. */
  onRestore?: () => void;
  placeholder?: string;
  wide?: boolean;
  /** Name of the gesture that typing makes. */
  path?: string;
}

export function EntryBox({ label, hint, text, error, wide, path, placeholder, ...on }: Props) {
  const id = useId();
  return (
    <FieldFrame id={id} label={label} hint={hint} error={error} wide={wide}>
      {(described) => (
        <div className={`box${error === null ? '' : ' bad'}`}>
          <span className="v">
            <input
              id={id}
              data-path={path}
              className="m"
              value={text}
              placeholder={placeholder}
              aria-invalid={error !== null}
              aria-describedby={described}
              autoComplete="off"
              spellCheck={false}
              onChange={(event) => on.onText(event.target.value)}
              onBlur={on.onLeave}
              onKeyDown={(event) => {
                if (event.key === 'Enter') on.onLeave?.();
                if (event.key === 'Escape') on.onRestore?.();
              }}
            />
          </span>
        </div>
      )}
    </FieldFrame>
  );
}
