/** One member of a list: folds to its name and a summary; can be removed. */
import type { ReactNode } from 'react';
import { CrossIcon } from '../icons.tsx';

interface MemberProps {
  name: string;
  summary: string;
  /** Absent where at least one must stay. */
  onRemove?: (() => void) | undefined;
  children: ReactNode;
}

export function Member({ name, summary, onRemove, children }: MemberProps) {
  return (
    <details className="member w2">
      <summary>
        <b>{name}</b>
        <span className="s">{summary}</span>
      </summary>
      <div className="grid">
        {children}
        {onRemove && (
          <button type="button" className="btn remove w2" onClick={onRemove}>
            <CrossIcon /> Remove {name}
          </button>
        )}
      </div>
    </details>
  );
}
