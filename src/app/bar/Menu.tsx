/** A button that opens a list of actions; Escape, a choice or leaving it closes it. */
import { type FocusEvent, type KeyboardEvent, type ReactNode, useId, useRef, useState } from 'react';

interface MenuProps {
  label: string;
  /** Shown on the button; the label by default. */
  face?: ReactNode;
  className?: string;
  children: ReactNode;
}

export function Menu({ label, face, className = '', children }: MenuProps) {
  const [open, setOpen] = useState(false);
  const id = useId();
  const root = useRef<HTMLDivElement>(null);
  const items = () => [...(root.current?.querySelectorAll<HTMLElement>('.list button') ?? [])];
  const close = () => {
    setOpen(false);
    root.current?.querySelector<HTMLElement>('button')?.focus();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Escape' && open) {
      event.stopPropagation();
      close();
    }
    if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return;
    event.preventDefault();
    if (!open) return setOpen(true);
    const all = items();
    const at = all.indexOf(document.activeElement as HTMLElement);
    const step = event.key === 'ArrowDown' ? 1 : -1;
    all[(at + step + all.length) % all.length]?.focus();
  };
  const onBlur = (event: FocusEvent) => {
    if (!event.currentTarget.contains(event.relatedTarget)) setOpen(false);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: keys and focus of the button and the list within
    <div className={`menu ${className}`} ref={root} onKeyDown={onKeyDown} onBlur={onBlur}>
      <button
        type="button"
        aria-expanded={open}
        aria-controls={id}
        aria-label={face ? label : undefined}
        title={face ? label : undefined}
        onClick={() => setOpen(!open)}
      >
        {face ?? label}
      </button>
      {open && (
        // biome-ignore lint/a11y/noStaticElementInteractions: closes behind the chosen button
        // biome-ignore lint/a11y/useKeyWithClickEvents: the buttons within answer to keys
        <div className="list" id={id} onClick={close}>
          {children}
        </div>
      )}
    </div>
  );
}
