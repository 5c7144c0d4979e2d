/** A new plan asks two questions; everything else has a default that can be shot. */
import { type FormEvent, useId, useState } from 'react';
import { readPlan } from '../../engine/plan/parse.ts';
import { faultsText, readField } from '../fields/entry.ts';
import { FieldFrame } from '../fields/FieldFrame.tsx';
import { codecOf } from '../format/quantity.ts';
import { StandingIcon } from '../icons.tsx';
import { openPlan, planFor } from '../store/files.ts';
import { infoAt } from '../store/paths.ts';
import { CloseButton, Dialog } from './Dialog.tsx';

const EVENT = 'pacing.eventS';
const CLIP = 'pacing.clipLengthS';
const seconds = codecOf('', 's');

function read(path: string, text: string): { seconds: number; error: string | null } {
  const result = readField(text, infoAt(path), seconds, 0);
  return 'error' in result
    ? { seconds: 0, error: result.error }
    : { seconds: result.value ?? 0, error: null };
}

interface QuestionProps {
  label: string;
  hint: string;
  text: string;
  error: string | null;
  onText: (text: string) => void;
}

function Question({ label, hint, text, error, onText }: QuestionProps) {
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

export function NewDialog() {
  const [event, setEvent] = useState('1 h 30 min');
  const [clip, setClip] = useState('15 s');
  const [refused, setRefused] = useState<string | null>(null);
  const [eventRead, clipRead] = [read(EVENT, event), read(CLIP, clip)];
  const workItOut = (submit: FormEvent<HTMLFormElement>) => {
    submit.preventDefault();
    if (eventRead.error !== null || clipRead.error !== null) return;
    const result = readPlan(planFor(eventRead.seconds, clipRead.seconds));
    if (!result.ok) return setRefused(faultsText(result.faults, EVENT));
    openPlan(result.plan);
    submit.currentTarget.closest('dialog')?.close();
  };
  return (
    <Dialog title="New plan">
      <form onSubmit={workItOut} noValidate>
        <p>How long is the event, and how long should the clip be?</p>
        <div className="grid">
          <Question
            label="Event"
            hint="Such as 1h30, 90m or 1:30:00."
            text={event}
            error={eventRead.error}
            onText={setEvent}
          />
          <Question
            label="Clip"
            hint="On screen, such as 15 s."
            text={clip}
            error={clipRead.error}
            onText={setClip}
          />
        </div>
        {refused !== null && (
          <p className="err" role="alert">
            <StandingIcon standing="stop" size={14} />
            <span>{refused}</span>
          </p>
        )}
        <div className="row">
          <button type="submit" className="btn main">
            Work it out
          </button>
          <CloseButton text="Cancel" />
        </div>
      </form>
    </Dialog>
  );
}
