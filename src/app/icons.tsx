/** Inline drawings: the two faces have no arrows, and no picture is fetched. */
import type { ReactNode } from 'react';
import type { Severity } from '../engine/findings/types.ts';

const box = (children: ReactNode, size = 16) => (
  <svg className="ic" viewBox="0 0 16 16" width={size} height={size} aria-hidden="true">
    {children}
  </svg>
);

const line = (d: string, width = 1.6) => <path d={d} fill="none" stroke="currentColor" strokeWidth={width} />;

export const ChevronRight = () => box(line('M5.5 3 10.5 8l-5 5'));
export const ChevronLeft = () => box(line('M10.5 3 5.5 8l5 5'));
export const ChevronDown = () => box(line('M3 5.5 8 10.5l5-5'));
export const ChevronUp = () => box(line('M3 10.5 8 5.5l5 5'));
export const UndoIcon = () => box(line('M5.5 2.5 2 6l3.5 3.5M2.4 6H10a4 4 0 0 1 0 8H6', 1.5));
export const RedoIcon = () => box(line('M10.5 2.5 14 6l-3.5 3.5M13.6 6H6a4 4 0 0 0 0 8h4', 1.5));
export const MenuIcon = () => box(line('M2 4h12M2 8h12M2 12h12'));
export const PenIcon = () => box(line('M2.5 13.5 3.4 10 11 2.4l2.6 2.6L6 12.6zM9.6 3.9l2.5 2.5', 1.3), 13);
export const CrossIcon = () => box(line('M4 4l8 8M12 4l-8 8'), 14);
export const ThemeIcon = () =>
  box(
    <>
      <circle cx="8" cy="8" r="6.2" fill="none" stroke="currentColor" strokeWidth="1.5" />
      <path d="M8 1.8a6.2 6.2 0 0 1 0 12.4z" fill="currentColor" />
    </>,
  );

export const LessIcon = () => (
  <svg viewBox="0 0 10 10" width="10" height="10" aria-hidden="true">
    {line('M1 5h8', 1.5)}
  </svg>
);
export const MoreIcon = () => (
  <svg viewBox="0 0 10 10" width="10" height="10" aria-hidden="true">
    {line('M1 5h8M5 1v8', 1.5)}
  </svg>
);
export const ArrowRight = () => (
  <svg className="arrow" viewBox="0 0 22 14" width="22" height="14" aria-hidden="true">
    {line('M0 7h20M14 1l6.5 6L14 13', 1.8)}
  </svg>
);

/** A severity, or that nothing is wrong. */
export type Standing = Severity | 'fine';

/** Words of the severities as they are read and heard. */
export const STANDING: Readonly<Record<Standing, string>> = {
  stop: 'Stop',
  warning: 'Warning',
  note: 'Note',
  fine: 'Fine',
};

const DRAWINGS: Readonly<Record<Standing, ReactNode>> = {
  stop: (
    <>
      <rect x="1" y="1" width="14" height="14" rx="1" fill="currentColor" />
      <path d="M4.2 8h7.6" stroke="var(--surface)" strokeWidth="2.4" />
    </>
  ),
  warning: (
    <>
      <path d="M8 .9 15.6 14.6H.4z" fill="currentColor" />
      <path d="M8 5.6v4.2M8 11.3v1.7" stroke="var(--surface)" strokeWidth="1.9" />
    </>
  ),
  note: (
    <>
      <circle cx="8" cy="8" r="6.6" fill="none" stroke="currentColor" strokeWidth="1.6" />
      <circle cx="8" cy="8" r="2.1" fill="currentColor" />
    </>
  ),
  fine: line('M1.8 8.6 6 12.8 14.2 3.4', 2.1),
};

export const StandingIcon = ({ standing, size = 16 }: { standing: Standing; size?: number }) =>
  box(DRAWINGS[standing], size);

/** Icon and word (or other text) of a severity: colour is never the only sign. */
export const StandingTag = ({ standing, text }: { standing: Standing; text?: string }) => (
  <span className={`sev ${standing}`}>
    <StandingIcon standing={standing} />
    {text ?? STANDING[standing]}
  </span>
);
