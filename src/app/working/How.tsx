/** A figure, or its name, that opens the working behind it. */
import type { ReactNode } from 'react';
import type { OnSet } from '../../engine/onset/working.ts';
import { showWorking } from '../store/view.ts';

interface HowProps {
  /** Name of the figure's working. */
  of: string;
  /** What it is, as it is heard; begins with what stands there. */
  what: string;
  /** Of a figure of a run that is being shot: how it stands when that is asked for. */
  run?: () => OnSet;
  /** -1 where the keys of a table lead to it. */
  tabIndex?: number;
  children: ReactNode;
}

export const How = ({ of, what, run, tabIndex, children }: HowProps) => (
  <button
    type="button"
    className="how"
    data-figure={of}
    aria-label={`${what}: how it came about`}
    tabIndex={tabIndex}
    onClick={() => showWorking(of, run?.())}
  >
    {children}
  </button>
);
