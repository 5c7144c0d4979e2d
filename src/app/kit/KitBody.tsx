/** The kit: the operator's own gear, kept in the browser, to be put into any plan. */
import { type DragEvent, useEffect, useRef, useState } from 'react';
import { EntryBox } from '../fields/EntryBox.tsx';
import { type KitAsk, showKit, useView } from '../store/view.ts';
import { addFromFile, saveKit } from './actions.ts';
import { isFound } from './itemText.ts';
import { KitGroup } from './KitGroup.tsx';
import { KitNotes } from './KitNotes.tsx';
import { KINDS, KIT_KINDS, type KitKind } from './kinds.ts';
import { followKit, useKitState } from './kitStore.ts';
import { keepFromPlan } from './planActions.ts';
import { TalkBox } from './TalkBox.tsx';
import { hush, openItem } from './ui.ts';
import './kit.css';

/** From this many pieces on they are looked for by name. */
const MANY = 10;

/** What the dialog was opened to keep is kept once. */
function useOpening({ keep }: KitAsk): void {
  const asked = useRef(keep);
  useEffect(() => {
    hush();
    openItem(null);
    const unfollow = followKit();
    if (asked.current) keepFromPlan(asked.current.kind, asked.current.index);
    asked.current = null;
    return unfollow;
  }, []);
}

function Files() {
  const picker = useRef<HTMLInputElement>(null);
  const empty = useKitState().kit.items.length === 0;
  return (
    <div className="row">
      <button type="button" className="btn" onClick={() => picker.current?.click()}>
        Add from a kit file
      </button>
      {!empty && (
        <button type="button" className="btn" onClick={saveKit}>
          Save the kit as a file
        </button>
      )}
      <input
        ref={picker}
        type="file"
        hidden
        aria-label="Kit file"
        accept=".json,application/json"
        onChange={({ target }) => {
          const [file] = target.files ?? [];
          if (file) void addFromFile(file);
          // The same file may be picked again.
          target.value = '';
        }}
      />
    </div>
  );
}

/** A kit file that falls on the kit is added to it, and is no plan for the page. */
function onDrop(event: DragEvent): void {
  const [file] = event.dataTransfer.files;
  if (!file) return;
  event.preventDefault();
  event.stopPropagation();
  void addFromFile(file);
}

/** `Cameras, lenses, triggers`. */
const scopeText = (kinds: readonly KitKind[]): string =>
  kinds.map((kind, i) => (i === 0 ? KINDS[kind].many : KINDS[kind].many.toLowerCase())).join(', ');

function Scope({ kinds }: { kinds: NonNullable<KitAsk['kinds']> }) {
  return (
    <p className="kit-scope">
      {scopeText(kinds)} only.{' '}
      <button type="button" className="link" onClick={() => showKit()}>
        Show all gear
      </button>
    </p>
  );
}

export function KitBody() {
  const asked = useView((view) => view.kit);
  const { items } = useKitState().kit;
  const [query, setQuery] = useState('');
  useOpening(asked);
  const searched = items.length > MANY ? query.trim() : '';
  const found = searched === '' ? items : items.filter((item) => isFound(item, searched));
  const shown = KIT_KINDS.filter(
    (kind) =>
      (asked.kinds?.includes(kind) ?? true) && (searched === '' || found.some((item) => item.kind === kind)),
  );
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: a file can be picked by the button just as well
    <div className="kit-body" onDrop={onDrop}>
      <div className="kit-top">
        <p className="s">Your own gear, kept in this browser. What is put into a plan is a copy.</p>
        <Files />
      </div>
      <TalkBox />
      <KitNotes />
      {items.length === 0 && (
        <p className="kit-first">
          <b>Nothing is kept yet.</b> Fill in a camera, an axis or a pack in the inputs of a plan, then keep
          it here: the plan that is open has what the buttons below name. In the next plan it is there at one
          press.
        </p>
      )}
      {items.length > MANY && (
        <div className="kit-search">
          <EntryBox label="Look for" text={query} error={null} onText={setQuery} />
          <span className="s" role="status">
            {searched !== '' && `${found.length} of ${items.length}`}
          </span>
        </div>
      )}
      {asked.kinds && <Scope kinds={asked.kinds} />}
      {shown.map((kind) => (
        <KitGroup
          key={kind}
          kind={kind}
          items={found.filter((item) => item.kind === kind)}
          kept={items.filter((item) => item.kind === kind)}
        />
      ))}
    </div>
  );
}
