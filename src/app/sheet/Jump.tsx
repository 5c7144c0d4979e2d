/** A box that takes one to a place on the sheet. */
import { type FormEvent, useId, useState } from 'react';
import { exposureAt, goToExposure } from './commands.ts';
import { gridNow } from './gridStore.ts';
import { find } from './jump.ts';
import { sheetedNow } from './sheeted.ts';

interface Props {
  label: string;
  placeholder: string;
  /** Goes there. @returns what is there, or why not */
  onAsk: (text: string) => { text: string } | { error: string };
}

export function JumpBox({ label, placeholder, onAsk }: Props) {
  const id = useId();
  const [text, setText] = useState('');
  const [answer, setAnswer] = useState<{ text: string } | { error: string } | null>(null);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setAnswer(onAsk(text));
  };
  const bad = answer !== null && 'error' in answer;
  return (
    <form className="jump" onSubmit={submit}>
      <label htmlFor={id}>{label}</label>
      <span className="box">
        <input
          id={id}
          value={text}
          placeholder={placeholder}
          autoComplete="off"
          spellCheck={false}
          aria-invalid={bad}
          aria-describedby={`${id}-answer`}
          onKeyDown={(event) => {
            if (event.key !== 'ArrowDown' && event.key !== 'Escape') return;
            const sheet = event.currentTarget.closest('section')?.querySelector<HTMLElement>('[role=grid]');
            if (!sheet) return;
            event.preventDefault();
            sheet.focus();
          }}
          onChange={({ target }) => {
            setText(target.value);
            setAnswer(null);
          }}
        />
      </span>
      <span id={`${id}-answer`} className={bad ? 's wrong' : 's'} role="status">
        {answer && ('error' in answer ? answer.error : answer.text)}
      </span>
    </form>
  );
}

function ask(text: string): { text: string } | { error: string } {
  const { at } = gridNow();
  const of = sheetedNow();
  const from =
    at.kind === 'action' ? (of.sheet.actions[at.index]?.firstExposure ?? 1) - 1 : (exposureAt(of, at) ?? -1);
  const found = find(of, text, from);
  if (!('error' in found)) goToExposure(found.index);
  return found;
}

export const Jump = () => <JumpBox label="Go to" placeholder="frame, timecode, words" onAsk={ask} />;
