/** A dialog over the page. */
import { type ReactNode, useId } from 'react';
import { leave, useModal } from '../modal.ts';
import { closeDialog } from '../store/view.ts';

interface DialogProps {
  title: string;
  className?: string;
  /** When it is left, whichever way. */
  onClose?: () => void;
  children: ReactNode;
}

export function Dialog({ title, className, onClose, children }: DialogProps) {
  const id = useId();
  const modal = useModal(() => {
    onClose?.();
    closeDialog();
  });
  return (
    <dialog {...modal} className={className} aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      {children}
    </dialog>
  );
}

/** Closes the dialog it stands in. */
export const CloseButton = ({ text = 'Close' }: { text?: string }) => (
  <button type="button" className="btn" onClick={(event) => leave(event.currentTarget)}>
    {text}
  </button>
);
