/** A figure, or its name, that opens the working behind it. */
import type { ReactNode } from 'react';
import { showWorking } from '../store/view.ts';

interface HowProps {
  /** Name of the figure's working. */
  of: string;
  /** What it is, as it is heard; begins with what stands there. */
  what: string;
  children: ReactNode;
}

export const How = ({ of, what, children }: HowProps) => (
  <button
    type="button"
    className="how"
    aria-label={`${what}: how it came about`}
    onClick={() => showWorking(of)}
  >
    {children}
  </button>
);
