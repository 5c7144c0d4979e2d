/** Where a finding was: what was done about it, and the way back, until the next edit. */
import { useLayoutEffect, useRef } from 'react';
import { StandingTag } from '../icons.tsx';
import { goTo } from '../store/goTo.ts';
import { useFixes } from './fixStore.ts';
import { takeBack } from './taking.ts';

function Row({ at, text }: { at: number; text: string }) {
  const row = useRef<HTMLLIElement>(null);
  const reached = useRef(false);
  useLayoutEffect(() => {
    const own = row.current;
    // Once: not again when the page comes back from another view.
    if (!reached.current) own?.focus({ preventScroll: true });
    reached.current = true;
    return () => {
      // What is read here goes with the next edit: the one who is on it goes on with the finding that is back.
      if (own?.contains(document.activeElement)) requestAnimationFrame(() => goTo(`finding-${at}`));
    };
  }, [at]);
  return (
    <li className="find taken" id="finding-taken" ref={row} tabIndex={-1}>
      <StandingTag standing="fine" text="Done" />
      <p>{text}</p>
      <button type="button" className="at" onClick={takeBack}>
        Undo
      </button>
    </li>
  );
}

export function Taken({ at }: { at: number }) {
  const taken = useFixes((state) => state.taken);
  return taken?.at === at && <Row key={taken.text} at={at} text={taken.text} />;
}
