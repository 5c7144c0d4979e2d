/** Helpers to measure what a form asks for; each folds to its title, and is fetched when it is opened. */
import { type ReactNode, Suspense, useState } from 'react';
import { fetched } from '../fetched.tsx';

/** Takes what was measured. @returns why it does not fit, or null */
type Take<Values> = (values: Values) => string | null;

export interface SagProps {
  onTake: Take<{ frequencyHz: number }>;
}

export interface SwingsProps {
  onTake: Take<{ frequencyHz: number } | { dampingRatio: number }>;
}

export interface TimedWriteProps {
  /** `card` is the place of the card in `cards`. */
  onTake: Take<{ writeS: number } | { writeBytesPerS: number; card: number }>;
  /** Bytes of one exposure. */
  frameBytes: number;
  /** Cards that may have been in the camera; none if no card is asked about. */
  cards: readonly string[];
  /** Whether the camera's write time is asked about. */
  camera?: boolean;
}

const WHAT = 'The measuring helper';
const SagBody = fetched(WHAT, () => import('./measures.ts').then((part) => part.SagBody));
const SwingsBody = fetched(WHAT, () => import('./measures.ts').then((part) => part.SwingsBody));
const TimedWriteBody = fetched(WHAT, () => import('./measures.ts').then((part) => part.TimedWriteBody));

function Fold({ title, children }: { title: string; children: ReactNode }) {
  const [opened, setOpened] = useState(false);
  return (
    <details className="more measure w2" onToggle={(event) => event.currentTarget.open && setOpened(true)}>
      <summary>{title}</summary>
      <div className="grid">
        <Suspense>{opened && children}</Suspense>
      </div>
    </details>
  );
}

/** Natural frequency from how far the payload bends the arm. */
export const SagHelper = (props: SagProps) => (
  <Fold title="Measure it: how far it sinks">
    <SagBody {...props} />
  </Fold>
);

/** Natural frequency and damping from counted swings. */
export const SwingsHelper = (props: SwingsProps) => (
  <Fold title="Measure it: count its swings">
    <SwingsBody {...props} />
  </Fold>
);

/** Write time and card rate from frames that are timed. */
export const TimedWriteHelper = (props: TimedWriteProps) => (
  <Fold title="Measure it: time the write">
    <TimedWriteBody {...props} />
  </Fold>
);
