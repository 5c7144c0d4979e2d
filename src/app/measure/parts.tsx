/** Parts that the measuring helpers share. */
import { type ReactNode, useEffect, useState } from 'react';
import { capital, worth } from '../../engine/working/make.ts';
import { type MeasureKind, measureDraft, ofMeasure } from '../../engine/working/measures.ts';
import { formulaText, numbersText, readable } from '../../engine/working/text.ts';
import { EntryBox } from '../fields/EntryBox.tsx';
import { numberText, withUnit } from '../format/numbers.ts';
import { More, OfferLine, Refusal } from '../sections/parts.tsx';
import { type Entry, readEntry, type Typed } from './figures.ts';

/** A box for something measured: its text, what it says, and the box itself. */
export function useEntry(
  entry: Entry,
): Typed & { set: (text: string) => void; box: (error?: string | null) => ReactNode } {
  const [text, set] = useState('');
  const typed = readEntry(text, entry);
  const label = entry.unit === '' ? entry.label : `${entry.label}, ${entry.unit}`;
  const box = (error: string | null = null) => (
    <EntryBox label={label} text={text} error={typed.error ?? error} onText={set} />
  );
  return { ...typed, set, box };
}

interface ResultProps {
  title: string;
  text: string;
  /** What it follows from. */
  measure: MeasureKind;
  numbers: readonly number[];
  /** Puts the value where it belongs. @returns why it does not fit, or null */
  onTake: () => string | null;
}

/** Something that follows from what was measured, and the button that takes it. */
export function Result({ title, text, measure, numbers, onTake }: ResultProps) {
  const [taken, setTaken] = useState<{ text: string; error: string | null } | null>(null);
  const now = taken?.text === text ? taken : null;
  return (
    <>
      <OfferLine
        text={
          <span role="status">
            <b>{title}</b> {text}
          </span>
        }
        action={`Use it: ${title}`}
        taken={now !== null && now.error === null}
        onTake={() => setTaken({ text, error: onTake() })}
      />
      <Refusal text={now?.error ?? null} />
      <HowMeasured measure={measure} numbers={numbers} />
    </>
  );
}

/** How it came about, in its place: a dialog over it would forget what was typed. */
function HowMeasured({ measure, numbers }: Pick<ResultProps, 'measure' | 'numbers'>) {
  const draft = measureDraft(measure, numbers);
  return (
    <More title="How it came about">
      <p className="hint w2" data-figure={ofMeasure(measure, numbers)}>
        {capital(formulaText(draft))}
        <br />= <span className="m">{numbersText(draft)}</span>
        <br />= <span className="m">{readable(worth(draft), draft.unit)}</span>
        <br />
        {draft.source}
      </p>
    </More>
  );
}

/** A frequency that follows, if it does. */
export function FrequencyResult({ frequencyHz, onTake, ...measured }: FrequencyProps) {
  if (frequencyHz === null) return null;
  return (
    <Result
      title="Rings at"
      text={withUnit(numberText(frequencyHz), 'Hz')}
      {...measured}
      onTake={() => onTake({ frequencyHz })}
    />
  );
}

interface FrequencyProps extends Pick<ResultProps, 'measure' | 'numbers'> {
  frequencyHz: number | null;
  onTake: (measured: { frequencyHz: number }) => string | null;
}

export const secondsText = (seconds: number, decimals = 1): string =>
  withUnit(numberText(Number(seconds.toFixed(decimals)), decimals), 's');

/** Starts and stops at a press, by hand or by key. */
export function StopWatch({ onStop }: { onStop: (seconds: number) => void }) {
  const [startedMs, setStartedMs] = useState<number | null>(null);
  const [nowMs, setNowMs] = useState(0);
  useEffect(() => {
    if (startedMs === null) return;
    const timer = setInterval(() => setNowMs(performance.now()), 100);
    return () => clearInterval(timer);
  }, [startedMs]);
  const press = () => {
    const now = performance.now();
    if (startedMs !== null) onStop((now - startedMs) / 1000);
    setNowMs(now);
    setStartedMs(startedMs === null ? now : null);
  };
  const running = startedMs !== null;
  return (
    <div className="row w2 timing">
      <button type="button" className={`btn${running ? ' main' : ''}`} onClick={press}>
        {running ? 'Stop' : 'Start the timer'}
      </button>
      {running && (
        <span className="m" aria-hidden="true">
          {secondsText((nowMs - startedMs) / 1000)}
        </span>
      )}
    </div>
  );
}
