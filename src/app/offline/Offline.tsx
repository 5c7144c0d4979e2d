/** Says that a new version of the page is ready: taken when one agrees, and never while a run is being shot. */
import { useEffect, useState, useSyncExternalStore } from 'react';
import { saveFile } from '../store/files.ts';
import { isRunning, onRunning } from '../store/running.ts';
import { useSaving } from '../store/saving.ts';
import { startOffline, takeNewest, useOffline } from './worksOffline.ts';
import './offline.css';

/** A page that cannot be kept still works; it needs the network the next time. */
const start = () => void startOffline().catch(() => {});

function Announcement({ onLater }: { onLater: () => void }) {
  const kept = useSaving() === 'kept';
  return (
    <>
      <p>
        <b>A new version is ready.</b>{' '}
        {kept
          ? 'The page opens anew with it, on the plan that is on screen.'
          : 'The plan on screen is not kept in this browser: save it as a file before you take it.'}
      </p>
      <div className="row">
        {!kept && (
          <button type="button" className="btn" onClick={saveFile}>
            Save as a file
          </button>
        )}
        <button type="button" className={kept ? 'btn main' : 'btn'} onClick={() => void takeNewest()}>
          Take it now
        </button>
        <button type="button" className="btn" onClick={onLater}>
          Later
        </button>
      </div>
    </>
  );
}

export function Offline() {
  useEffect(start, []);
  const newer = useOffline((state) => state.newer);
  const running = useSyncExternalStore(onRunning, isRunning);
  const [later, setLater] = useState(false);
  const shown = newer && !running && !later;
  return (
    // Stays on the page, so that what is put into it is read out.
    <div className={shown ? 'newer' : undefined} role="status" aria-label="New version">
      {shown && <Announcement onLater={() => setLater(true)} />}
    </div>
  );
}
