/** A part of the sentence that can be changed: a press opens the fields behind it. */
import {
  type FocusEvent,
  type KeyboardEvent,
  type ReactNode,
  type RefObject,
  useEffect,
  useEffectEvent,
  useId,
  useRef,
  useState,
} from 'react';
import { ChevronDown } from '../icons.tsx';

interface ClauseProps {
  /** What it is about, as it is heard. */
  title: string;
  text: string;
  children: ReactNode;
}

/** Calls when something outside an element is pressed. */
function usePressOutside(element: RefObject<HTMLElement | null>, active: boolean, outside: () => void): void {
  const call = useEffectEvent(outside);
  useEffect(() => {
    if (!active) return;
    const onPress = ({ target }: PointerEvent) => {
      if (target instanceof Node && !element.current?.contains(target)) call();
    };
    document.addEventListener('pointerdown', onPress);
    return () => document.removeEventListener('pointerdown', onPress);
  }, [active, element]);
}

/** Moves the fields to the left by as much as they would stand over the edge of the page. */
function keepInPage(editor: HTMLElement | null): void {
  if (!editor) return;
  const over = editor.getBoundingClientRect().right - (document.documentElement.clientWidth - 16);
  if (over > 0) editor.style.left = `${-over}px`;
}

export function Clause({ title, text, children }: ClauseProps) {
  const [open, setOpen] = useState(false);
  const id = useId();
  const root = useRef<HTMLSpanElement>(null);
  usePressOutside(root, open, () => setOpen(false));
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== 'Escape' || !open) return;
    setOpen(false);
    root.current?.querySelector('button')?.focus();
  };
  const onBlur = (event: FocusEvent) => {
    // Nothing has the focus next if the window lost it, or something was pressed that takes none.
    const next = event.relatedTarget;
    if (next && !event.currentTarget.contains(next)) setOpen(false);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: keys and focus of the button and the fields within
    <span className="clause" ref={root} onKeyDown={onKeyDown} onBlur={onBlur}>
      <button
        type="button"
        className="btn"
        aria-expanded={open}
        aria-controls={id}
        onClick={() => setOpen(!open)}
      >
        <span className="vh">{title}: </span>
        {text}
        <ChevronDown />
      </button>
      {open && (
        <fieldset className="editor" id={id} ref={keepInPage}>
          <legend className="vh">{title}</legend>
          <div className="grid">{children}</div>
        </fieldset>
      )}
    </span>
  );
}
