/** The plans kept in this browser. */
import { type DragEvent, useCallback, useEffect, useRef, useState } from 'react';
import { EntryBox } from '../fields/EntryBox.tsx';
import { plural } from '../format/numbers.ts';
import { StandingIcon } from '../icons.tsx';
import { TalkBox } from '../kit/TalkBox.tsx';
import { hush } from '../kit/ui.ts';
import { useOffline } from '../offline/worksOffline.ts';
import { presentEntry } from '../store/entries.ts';
import { takeArriving } from '../store/files.ts';
import { usePlan } from '../store/plan.ts';
import { showDialog } from '../store/view.ts';
import { putBack, saveAll } from './actions.ts';
import { addFiles } from './arrivals.ts';
import { followPlans, usePlans } from './listStore.ts';
import { PlanRow } from './PlanRow.tsx';
import { askToPersist } from './persist.ts';
import { isFound } from './words.ts';
import '../kit/kit.css';
import './plans.css';

/** From this many plans on they are looked for by name. */
const MANY = 5;

/** What the dialog was opened with: a file of plans that was picked or dropped on the page. */
function useOpening(): void {
  useEffect(() => {
    hush();
    const unfollow = followPlans();
    const arriving = takeArriving();
    if (arriving.length > 0) void addFiles(arriving);
    return unfollow;
  }, []);
}

/** Whether the browser has promised not to clear them; null until it has answered. */
function usePromise(any: boolean): boolean | null {
  const [promised, setPromised] = useState<boolean | null>(null);
  useEffect(() => {
    if (any) void askToPersist().then(setPromised);
  }, [any]);
  return promised;
}

function Picker() {
  const picker = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" className="btn" onClick={() => picker.current?.click()}>
        Add from files
      </button>
      <input
        ref={picker}
        type="file"
        hidden
        multiple
        aria-label="Files of plans"
        accept=".json,application/json"
        onChange={({ target }) => {
          void addFiles([...(target.files ?? [])]);
          // The same file may be picked again.
          target.value = '';
        }}
      />
    </>
  );
}

function PutBack() {
  const deleted = usePlans((state) => state.deleted);
  if (deleted.length < 2) return null;
  return (
    <button type="button" className="btn" onClick={() => void putBack(deleted)}>
      Put all {deleted.length} deleted back
    </button>
  );
}

function Tools({ any }: { any: boolean }) {
  return (
    <div className="row">
      <button type="button" className="btn" onClick={() => showDialog('new')}>
        New plan
      </button>
      <Picker />
      {any && (
        <button type="button" className="btn" onClick={() => void saveAll()}>
          Save all as a file
        </button>
      )}
      <PutBack />
    </div>
  );
}

/** Files that fall on the list are added to it, and do not take the place of the plan on screen. */
function onDrop(event: DragEvent): void {
  const files = [...event.dataTransfer.files];
  if (files.length === 0) return;
  event.preventDefault();
  event.stopPropagation();
  void addFiles(files);
}

const REFUSED = 'This browser keeps no plans. Save the plan on screen as a file.';

function Empty({ refused }: { refused: boolean }) {
  return (
    <p className="kit-first">
      {refused ? (
        <>
          <StandingIcon standing="warning" /> {REFUSED}
        </>
      ) : (
        <>
          <b>No plan is kept yet.</b> A new plan is kept at once, and so is a file that you open; a demo is
          kept with the first change that you make. Plans are kept in this browser only: save them as a file
          to take them along.
        </>
      )}
    </p>
  );
}

/** How many there are, and how safely they are kept. */
function aboutText(count: number, promised: boolean | null): string {
  const kept = `${plural(count, 'plan')} kept in this browser only`;
  if (promised === false)
    return `${kept}, which may clear them when space runs short: save them as a file now and then.`;
  return `${kept}.`;
}

export function PlansBody() {
  const { list, refused } = usePlans((state) => state);
  const [query, setQuery] = useState('');
  useOpening();
  const all = list ?? [];
  const promised = usePromise(all.length > 0);
  const offline = useOffline((state) => state.works);
  const presentId = usePlan(() => presentEntry().id);
  const searched = all.length > MANY ? query.trim() : '';
  const found = searched === '' ? all : all.filter((listed) => isFound(listed, searched));
  const close = useCallback(() => showDialog(null), []);
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: files can be picked by the button just as well
    <div className="kit-body" onDrop={onDrop}>
      <div className="kit-top">
        <p className="s">
          {all.length > 0 ? aboutText(all.length, promised) : 'Plans of your own.'}
          {offline && ' The page is kept too, and opens without a network.'}
        </p>
        <Tools any={all.length > 0} />
      </div>
      <TalkBox />
      {list !== null && all.length === 0 && <Empty refused={refused} />}
      {all.length > MANY && (
        <div className="kit-search">
          <EntryBox label="Look for" text={query} error={null} onText={setQuery} />
          <span className="s" role="status">
            {searched !== '' && `${found.length} of ${all.length}`}
          </span>
        </div>
      )}
      {found.length > 0 && (
        <ul className="plain plans-list" aria-label="Kept plans">
          {found.map((listed) => (
            <PlanRow key={listed.id} listed={listed} onScreen={listed.id === presentId} onOpened={close} />
          ))}
        </ul>
      )}
    </div>
  );
}
