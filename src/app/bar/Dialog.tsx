/** A dialog of the browser's own kind: it keeps the focus, Escape closes it. */
import { type ReactNode, useEffect, useId, useRef } from 'react';
import { closeDialog } from '../store/view.ts';

interface DialogProps {
  title: string;
  className?: string;
  /** When it is left, whichever way. */
  onClose?: () => void;
  children: ReactNode;
}

export function Dialog({ title, className, onClose, children }: DialogProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const id = useId();
  useEffect(() => {
    if (dialog.current && !dialog.current.open) dialog.current.showModal();
  }, []);
  return (
    <dialog
      ref={dialog}
      className={className}
      aria-labelledby={id}
      onClose={() => {
        onClose?.();
        closeDialog();
      }}
    >
      <h2 id={id}>{title}</h2>
      {children}
    </dialog>
  );
}

/** Closes the dialog it stands in. */
export const CloseButton = ({ text = 'Close' }: { text?: string }) => (
  <button type="button" className="btn" onClick={(event) => event.currentTarget.closest('dialog')?.close()}>
    {text}
  </button>
);
