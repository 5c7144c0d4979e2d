/** A question that fills the phone, and goes away without having changed anything. */
import { type ReactNode, useEffect, useId, useRef } from 'react';
import { CrossIcon } from '../icons.tsx';

interface AskProps {
  title: string;
  onClose: () => void;
  children: ReactNode;
}

export function Ask({ title, onClose, children }: AskProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const id = useId();
  useEffect(() => {
    if (dialog.current && !dialog.current.open) dialog.current.showModal();
  }, []);
  return (
    <dialog ref={dialog} className="on-ask" aria-labelledby={id} onClose={onClose}>
      <header>
        <h2 id={id}>{title}</h2>
        <button type="button" className="on-close" aria-label="Back" onClick={() => dialog.current?.close()}>
          <CrossIcon />
        </button>
      </header>
      {children}
    </dialog>
  );
}
