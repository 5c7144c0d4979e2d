/** A new plan asks two questions; everything else has a default that can be shot. */
import { type FormEvent, useState } from 'react';
import { readPlan } from '../../engine/plan/parse.ts';
import { EntryBox } from '../fields/EntryBox.tsx';
import { faultsText, readField } from '../fields/entry.ts';
import { codecOf } from '../format/quantity.ts';
import { StandingIcon } from '../icons.tsx';
import { leave } from '../modal.ts';
import { askToPersist } from '../plans/persist.ts';
import { planFor } from '../store/files.ts';
import { infoAt } from '../store/infos.ts';
import { openPlan } from '../store/opening.ts';
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
    void askToPersist();
    leave(submit.currentTarget);
  };
  return (
    <Dialog title="New plan">
      <form className="plain-tips" onSubmit={workItOut} noValidate>
        <p>How long is the event, and how long should the clip be?</p>
        <div className="grid">
          <EntryBox
            label="Event"
            hint="Such as 1h30, 90m or 1:30:00."
            text={event}
            error={eventRead.error}
            onText={setEvent}
          />
          <EntryBox
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
