/** Dialogs of the browser's own kind: they keep the focus, Escape closes them. */
import { type RefObject, type SyntheticEvent, useEffect, useRef } from 'react';

/**
 * Closes the dialog that an element stands in, and says so at once. The browser says so in a task of its own: a dialog
 * that is asked for before it would be taken for the one that was closed.
 */
export function leave(element: Element): void {
  const dialog = element.closest('dialog');
  if (!dialog?.open) return;
  dialog.close();
  dialog.dispatchEvent(new Event('close'));
}

interface Modal {
  ref: RefObject<HTMLDialogElement | null>;
  onCancel: (event: SyntheticEvent) => void;
  onClose: () => void;
}

/**
 * What a dialog needs that shows itself while it is on the page.
 * @param closed - called once, when it is left, whichever way; it takes the dialog off the page
 */
export function useModal(closed: () => void): Modal {
  const ref = useRef<HTMLDialogElement>(null);
  const left = useRef(false);
  useEffect(() => {
    if (ref.current && !ref.current.open) ref.current.showModal();
  }, []);
  return {
    ref,
    // Fields for files cancel too, and that passes by here.
    onCancel: ({ target, currentTarget }) => {
      if (target === currentTarget) leave(currentTarget);
    },
    onClose: () => {
      if (left.current) return;
      left.current = true;
      closed();
    },
  };
}
