/** A cell while one types into it. */
import { type KeyboardEvent, useLayoutEffect, useRef } from 'react';
import type { Typing } from './gridStore.ts';

/** Where to go once a cell is taken. */
export type Onward = 'down' | 'up' | 'right' | 'left' | 'stay';

interface Props {
  typing: Typing;
  label: string;
  onText: (text: string) => void;
  onEnter: (text: string, onward: Onward) => void;
  onEscape: () => void;
}

const ONWARD: Readonly<Record<string, readonly [plain: Onward, shifted: Onward]>> = {
  Enter: ['down', 'up'],
  Tab: ['right', 'left'],
};

export function CellEditor({ typing, label, onText, onEnter, onEscape }: Props) {
  // Kept with the sheet: the cell may be scrolled out of sight.
  const { text } = typing;
  const input = useRef<HTMLInputElement>(null);
  const left = useRef(false);
  useLayoutEffect(() => {
    const box = input.current;
    box?.focus({ preventScroll: true });
    if (typing.whole) box?.select();
    else box?.setSelectionRange(box.value.length, box.value.length);
  }, [typing.whole]);
  const onKeyDown = (event: KeyboardEvent) => {
    // The table's keys are not meant while one types.
    event.stopPropagation();
    const ways = ONWARD[event.key];
    if (event.key !== 'Escape' && !ways) return;
    event.preventDefault();
    left.current = true;
    if (ways) onEnter(text, ways[event.shiftKey ? 1 : 0]);
    else onEscape();
    left.current = false;
  };
  return (
    <>
      <input
        ref={input}
        className="in-cell"
        aria-label={label}
        aria-invalid={typing.error !== null}
        aria-describedby={typing.error === null ? undefined : 'cell-error'}
        value={text}
        autoComplete="off"
        spellCheck={false}
        onChange={(event) => onText(event.target.value)}
        onKeyDown={onKeyDown}
        onBlur={() => !left.current && onEnter(text, 'stay')}
      />
      {typing.error !== null && (
        <span id="cell-error" className="cell-error" role="alert">
          {typing.error}
        </span>
      )}
    </>
  );
}
