/** What stands in the way of keeping the kit, and what of it could not be read. */
import { faultSentence } from '../../engine/plan/faults.ts';
import { plural } from '../format/numbers.ts';
import { StandingTag } from '../icons.tsx';
import { handOver } from '../store/files.ts';
import { dropUnread } from './edits.ts';
import type { Unread } from './entry.ts';
import { editKit, kitStore, useKitState } from './kitStore.ts';
import { say } from './ui.ts';

const REFUSED = 'This browser does not keep the kit: it lasts as long as this tab. Save it as a file.';

function Saving() {
  const { saving, blocked } = useKitState();
  if (saving === 'kept') return null;
  return (
    <div className="kit-note">
      <StandingTag standing="warning" text="Not kept" />
      {blocked === null ? (
        <p>{REFUSED}</p>
      ) : (
        <>
          <p>
            What this browser has in the kit’s place cannot be read, and is left as it is. Until you decide,
            gear lasts as long as this tab.
          </p>
          <p className="s">{faultSentence(blocked.fault)}</p>
          <div className="row">
            <button type="button" className="btn" onClick={() => handOver('kit-unread.json', blocked.text)}>
              Save it as a file
            </button>
            <button type="button" className="btn" onClick={kitStore.startAfresh}>
              Start a new kit in its place
            </button>
          </div>
        </>
      )}
    </div>
  );
}

function drop(unread: Unread): void {
  editKit(dropUnread(unread));
  say('The entry is no longer in the kit.', () =>
    editKit((kit) => ({ ...kit, unread: [...kit.unread, unread] })),
  );
}

function LeftOut() {
  const { unread } = useKitState().kit;
  if (unread.length === 0) return null;
  return (
    <div className="kit-note">
      <StandingTag
        standing="warning"
        text={`${plural(unread.length, 'entry', 'entries')} could not be read`}
      />
      <p>Left out here, but kept as it stands, also in the file that you save.</p>
      <ul className="plain">
        {unread.map((one, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: what cannot be read may be there twice
          <li key={index}>
            <span>
              {one.faults.map((fault) => (
                <span key={faultSentence(fault)} className="fault">
                  {faultSentence(fault)}
                </span>
              ))}
            </span>
            <button
              type="button"
              className="btn"
              aria-label={`Delete the entry: ${one.faults[0]?.path}`}
              onClick={() => drop(one)}
            >
              Delete
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}

export const KitNotes = () => (
  <>
    <Saving />
    <LeftOut />
  </>
);
