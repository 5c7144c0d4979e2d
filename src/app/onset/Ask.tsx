/** A question that fills the phone, and goes away without having changed anything. */
import { type ReactNode, useId } from 'react';
import { CrossIcon } from '../icons.tsx';
import { leave, useModal } from '../modal.ts';

interface AskProps {
  title: string;
  onClose: () => void;
  children: ReactNode;
}

export function Ask({ title, onClose, children }: AskProps) {
  const id = useId();
  return (
    <dialog {...useModal(onClose)} className="on-ask" aria-labelledby={id}>
      <header>
        <h2 id={id}>{title}</h2>
        <button
          type="button"
          className="on-close"
          aria-label="Back"
          onClick={(event) => leave(event.currentTarget)}
        >
          <CrossIcon />
        </button>
      </header>
      {children}
    </dialog>
  );
}
