/** What was done in the kit, with the way back; or a question, which takes the focus until it is answered. */
import { useEffect, useId, useRef } from 'react';
import { CrossIcon, StandingIcon } from '../icons.tsx';
import { hush, type Talk, useTalk } from './ui.ts';

/** A question takes the focus; so does the way back of what removed the very thing that had it. */
function useFocusOf(talk: Talk | null) {
  const box = useRef<HTMLDivElement>(null);
  const before = useRef<HTMLElement | null>(null);
  useEffect(() => {
    const active = document.activeElement as HTMLElement | null;
    const lost = active === null || active === document.body || active.matches('dialog');
    if (talk?.question) {
      before.current = active;
      box.current?.querySelector<HTMLElement>('.btn')?.focus();
    } else if (lost && before.current?.isConnected) {
      before.current.focus();
    } else if (talk && lost) {
      box.current?.querySelector<HTMLElement>('button')?.focus();
    }
  }, [talk]);
  return box;
}

export function TalkBox() {
  const id = useId();
  const talk = useTalk();
  const box = useFocusOf(talk);
  return (
    <div ref={box} className="kit-talk">
      {/* Stays on the page, so that what is put into it is read out. */}
      <div role="status">
        {talk && (
          <p className={`sev ${talk.standing}`}>
            <StandingIcon standing={talk.standing} /> <span id={id}>{talk.text}</span>
          </p>
        )}
        {talk && talk.lines.length > 0 && (
          // biome-ignore lint/a11y/noNoninteractiveTabindex: a list that scrolls must be reachable by keys
          <ul tabIndex={0} aria-label="Particulars">
            {talk.lines.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        )}
      </div>
      {talk && (
        <fieldset className="row" aria-labelledby={id}>
          {talk.answers.map(({ text, act }) => (
            <button key={text} type="button" className="btn" onClick={act}>
              {text}
            </button>
          ))}
          {!talk.question && (
            <button type="button" className="sq" aria-label="Close this message" onClick={hush}>
              <CrossIcon />
            </button>
          )}
        </fieldset>
      )}
    </div>
  );
}
