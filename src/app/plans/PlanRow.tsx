/** One kept plan: its title and facts, which open it, and what else can be done with it. */
import { type KeyboardEvent, memo, useEffect, useRef, useState } from 'react';
import { CrossIcon } from '../icons.tsx';
import type { Listed } from '../store/facts.ts';
import { duplicate, open, remove, rename } from './actions.ts';
import { changedText, factsText } from './words.ts';

const LONGEST_TITLE = 120;

function TitleBox({ listed, onEnd }: { listed: Listed; onEnd: () => void }) {
  const [title, setTitle] = useState(listed.title);
  const box = useRef<HTMLInputElement>(null);
  useEffect(() => box.current?.select(), []);
  // The box goes away, and is left once more by that.
  const ended = useRef(false);
  const end = (wanted: string) => {
    if (ended.current) return;
    ended.current = true;
    onEnd();
    const clean = wanted.trim();
    if (clean !== '' && clean !== listed.title) void rename(listed, clean);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== 'Enter' && event.key !== 'Escape') return;
    // Enter must not press what gets the focus next, nor Escape close the dialog.
    event.preventDefault();
    end(event.key === 'Enter' ? title : listed.title);
  };
  return (
    <input
      ref={box}
      className="plans-title"
      aria-label={`Title of ${listed.title}`}
      value={title}
      maxLength={LONGEST_TITLE}
      spellCheck={false}
      autoComplete="off"
      onChange={({ target }) => setTitle(target.value)}
      onBlur={() => end(title)}
      onKeyDown={onKeyDown}
    />
  );
}

interface RowProps {
  listed: Listed;
  onScreen: boolean;
  onOpened: () => void;
}

function Head({ listed, onScreen, onOpened }: RowProps) {
  const openIt = () => void open(listed).then((shown) => shown && onOpened());
  return (
    <button type="button" className="h" aria-current={onScreen || undefined} onClick={openIt}>
      <b>{listed.title || 'Without a title'}</b>
      {onScreen && <span className="plans-here">on screen</span>}
      <span className="s">{factsText(listed)}</span>
    </button>
  );
}

export const PlanRow = memo(function PlanRow(props: RowProps) {
  const { listed } = props;
  const [renaming, setRenaming] = useState(false);
  const pen = useRef<HTMLButtonElement>(null);
  const ended = () => {
    setRenaming(false);
    pen.current?.focus();
  };
  const act = (text: string, work: () => void) => (
    <button type="button" className="btn" aria-label={`${text}: ${listed.title}`} onClick={work}>
      {text === 'Delete' && <CrossIcon />} {text}
    </button>
  );
  return (
    <li className="plans-row">
      {renaming ? <TitleBox listed={listed} onEnd={ended} /> : <Head {...props} />}
      <time className="s" dateTime={new Date(listed.changedMs).toISOString()}>
        <span className="vh">Changed </span>
        {changedText(listed.changedMs, Date.now())}
      </time>
      <div className="plans-acts">
        <button
          ref={pen}
          type="button"
          className="btn"
          aria-label={`Rename: ${listed.title}`}
          onClick={() => setRenaming(true)}
        >
          Rename
        </button>
        {act('Duplicate', () => void duplicate(listed))}
        {act('Delete', () => void remove(listed))}
      </div>
    </li>
  );
});
