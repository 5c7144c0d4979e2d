/** One figure of the pacing strip: a large number that is an input, its name, a note, and its `=`. */
import type { KeyboardEvent, ReactNode } from 'react';
import type { Part } from '../format/durations.ts';
import { type Checks, takeTyped, withChecks } from '../store/checker.ts';
import { draftAt, setDraft, useDraft } from '../store/drafts.ts';
import { cancelGesture, endGesture } from '../store/plan.ts';
import { How } from '../working/How.tsx';
import type { Note } from './notes.ts';

interface FigureProps {
  /** Name of the figure's draft and gesture. */
  name: string;
  label: string;
  /** Name of its working. */
  of: string;
  /** The figure at rest. */
  parts: readonly Part[];
  /** The figure while it is edited. */
  text: string;
  note: Note | string;
  /** A second, quieter line. */
  extra?: string;
  /** Sign between this figure and the one before. */
  sign?: ReactNode;
  inputMode?: 'decimal' | 'numeric' | 'text';
  /** Takes what was typed. Gives why it does not fit, or null. */
  onType: (checks: Checks, text: string) => string | null;
  onStep?: (checks: Checks, steps: number) => string | null;
  /** Only for figures that can be worked out. */
  equals?: { pressed: boolean; onPress: () => void };
}

export function Figure(props: FigureProps) {
  const { name, label, parts, text, extra, equals } = props;
  const draft = useDraft(name);
  const error = draft?.error ?? null;
  const note: Note = typeof props.note === 'string' ? { text: props.note, bad: false } : props.note;
  const shown: Note = error === null ? note : { text: error, bad: true };
  const out = equals?.pressed === true;
  // In turn with what was typed, which may still wait for the checker.
  const leave = () =>
    withChecks(() => {
      endGesture();
      if (!draftAt(name)?.error) setDraft(name, null);
    });
  const step = (steps: number) =>
    withChecks((checks) => {
      const wrong = props.onStep?.(checks, steps) ?? null;
      setDraft(name, wrong === null ? null : { text: draft?.text ?? text, error: wrong });
    });
  const cancel = () => {
    cancelGesture(name);
    setDraft(name, null);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === '=' && equals) {
      event.preventDefault();
      leave();
      withChecks(() => setDraft(name, null));
      equals.onPress();
    } else if ((event.key === 'ArrowUp' || event.key === 'ArrowDown') && props.onStep) {
      event.preventDefault();
      step((event.key === 'ArrowUp' ? 1 : -1) * (event.shiftKey ? 10 : 1));
    } else if (event.key === 'Escape') {
      withChecks(cancel, cancel);
    } else if (event.key === 'Enter') {
      leave();
    }
  };
  const length = parts.reduce((sum, part) => sum + part.number.length + part.unit.length, 0);
  const size = length > 12 ? ' tiny' : length > 8 ? ' small' : '';
  return (
    <div className={`fig${out ? ' out' : ''}${shown.bad ? ' bad' : ''}`}>
      {props.sign}
      <div className={`n${size}${error === null ? '' : ' unread'}`}>
        <input
          id={name}
          data-path={name}
          value={draft?.text ?? text}
          aria-label={`${label}${out ? ', worked out' : ''}`}
          aria-invalid={error !== null}
          aria-describedby={`${name}-note`}
          inputMode={props.inputMode ?? 'text'}
          autoComplete="off"
          spellCheck={false}
          onChange={({ target: { value } }) =>
            takeTyped(name, value, (checks) => props.onType(checks, value))
          }
          onKeyDown={onKeyDown}
          onBlur={leave}
        />
        <span className="at-rest" aria-hidden="true">
          {parts.map((part, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the parts of one figure have no other identity
            <span key={index}>
              {part.number}
              {part.unit && <u>{part.unit}</u>}
            </span>
          ))}
        </span>
      </div>
      <p className="l">
        <How of={props.of} what={label}>
          <b>{label}</b>
        </How>
        <span className="says" id={`${name}-note`}>
          {shown.text && (
            <span className={shown.bad ? 'wrong' : undefined}>
              {shown.of ? (
                <How of={shown.of} what={shown.text}>
                  {shown.text}
                </How>
              ) : (
                shown.text
              )}
            </span>
          )}
          {extra && <span className="extra">{extra}</span>}
        </span>
      </p>
      {equals && (
        <button
          type="button"
          className="eq"
          aria-pressed={equals.pressed}
          aria-label={out ? `${label} is worked out` : `Work out ${label}`}
          title={out ? `${label} is worked out` : `Work out ${label}`}
          onClick={equals.onPress}
        >
          <span aria-hidden="true">=</span>
        </button>
      )}
    </div>
  );
}
