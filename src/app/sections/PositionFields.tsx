/** Where on the map: typed in one box, told by the browser, and the zone that goes with it. */
import { useEffect, useState } from 'react';
import type { Edit } from '../../engine/plan/paths.ts';
import { EntryBox } from '../fields/EntryBox.tsx';
import { enterAll } from '../fields/entry.ts';
import { NumberField } from '../fields/NumberField.tsx';
import type { PositionRead } from '../place/coordinates.ts';
import { type Located, locate } from '../place/locate.ts';
import { type Position, positionText, sixtiethsText } from '../place/position.ts';
import { setDraft, useDraft } from '../store/drafts.ts';
import { cancelGesture, endGesture, usePlan } from '../store/plan.ts';
import { More, OfferLine, Refusal } from './parts.tsx';

/** Name of the box, as draft and as gesture. */
const BOX = 'place.position';

const editsOf = (position: Position | null): Edit[] => [
  ['place.latitudeDeg', position?.latitudeDeg ?? null],
  ['place.longitudeDeg', position?.longitudeDeg ?? null],
];

/** The plan's position, if it has a whole one. */
export function usePosition(): Position | null {
  const latitudeDeg = usePlan((plan) => plan.place.latitudeDeg);
  const longitudeDeg = usePlan((plan) => plan.place.longitudeDeg);
  return latitudeDeg === null || longitudeDeg === null ? null : { latitudeDeg, longitudeDeg };
}

/** The reader of positions comes when the first one is typed. */
const readText = (text: string): Promise<PositionRead> =>
  import('../place/coordinates.ts').then(
    ({ readPosition }) => readPosition(text),
    () => ({
      error:
        'Not read: the reader of positions could not be loaded. Latitude and longitude below do without.',
    }),
  );

/** Text of the box that is being read, if any. */
let reading: string | null = null;
/** Whether the box was left before it was read. */
let left = false;

async function typePosition(text: string): Promise<void> {
  reading = text;
  left = false;
  setDraft(BOX, { text, error: null });
  const read = text.trim() === '' ? null : await readText(text);
  if (reading !== text) return;
  reading = null;
  const error = read && 'error' in read ? read.error : enterAll(editsOf(read), BOX);
  setDraft(BOX, { text, error });
  if (left) leaveBox(error);
}

/** What is still being read stays in the box until it has come into the plan. */
function leaveBox(error: string | null): void {
  left = reading !== null;
  if (left) return;
  endGesture();
  if (error === null) setDraft(BOX, null);
}

function restoreBox(): void {
  reading = null;
  cancelGesture(BOX);
  setDraft(BOX, null);
}

function PositionBox({ position }: { position: Position | null }) {
  const draft = useDraft(BOX);
  const shown = position ? positionText(position) : '';
  const error = draft?.error ?? null;
  return (
    <>
      <EntryBox
        wide
        path={BOX}
        label="Place on the map"
        hint="Latitude, then longitude: 43.3, 6.4 or 43°18′N 6°24′E or geo:43.3,6.4."
        placeholder="43.3, 6.4"
        text={draft?.text ?? shown}
        error={error}
        onText={(text) => void typePosition(text)}
        onLeave={() => leaveBox(error)}
        onRestore={restoreBox}
      />
      {/* Stays when the box is left: nothing may move under a pointer on its way to a button. */}
      {position && (
        <p className="hint" role="status">
          Understood as {sixtiethsText(position)}.
        </p>
      )}
    </>
  );
}

/** What came of asking the browser. */
function locatedText(located: Located | 'asking' | null): string | null {
  if (located === null || (located !== 'asking' && 'error' in located)) return null;
  if (located === 'asking') return 'Asking the browser.';
  return `${positionText(located)}, to within ${Math.round(located.withinM)} m.`;
}

function OwnPosition() {
  const [located, setLocated] = useState<Located | 'asking' | null>(null);
  const ask = async () => {
    setLocated('asking');
    const found = await locate(navigator.geolocation);
    setLocated(found);
    if ('error' in found) return;
    setDraft(BOX, null);
    endGesture();
    enterAll(editsOf(found));
  };
  const said = locatedText(located);
  return (
    <>
      <div className="row w2">
        <button type="button" className="btn" disabled={located === 'asking'} onClick={() => void ask()}>
          Use my own position
        </button>
        <span className="s" role="status">
          {said}
        </span>
      </div>
      <Refusal text={typeof located === 'object' && located && 'error' in located ? located.error : null} />
    </>
  );
}

/** The zone at the place, offered where the plan has another. The look-up comes when there is a place. */
export function ZoneOffer() {
  const position = usePosition();
  const planZone = usePlan((plan) => plan.place.zone);
  const [offered, setOffered] = useState<string | null>(null);
  const { latitudeDeg = null, longitudeDeg = null } = position ?? {};
  useEffect(() => {
    let stale = false;
    setOffered(null);
    if (latitudeDeg === null || longitudeDeg === null) return;
    void import('../place/zone.ts').then(
      ({ otherZone }) => {
        if (!stale) setOffered(otherZone({ latitudeDeg, longitudeDeg }, planZone));
      },
      // Without the look-up there is no offer: the zone can be typed.
      () => {},
    );
    return () => {
      stale = true;
    };
  }, [latitudeDeg, longitudeDeg, planZone]);
  if (offered === null) return null;
  return (
    <OfferLine
      text={<span role="status">This place keeps the time of {offered}.</span>}
      action={`Use it: time zone ${offered}`}
      onTake={() => {
        endGesture();
        enterAll([['place.zone', offered]]);
      }}
    />
  );
}

export function PositionFields() {
  return (
    <>
      <PositionBox position={usePosition()} />
      <OwnPosition />
      <More title="Latitude and longitude by themselves">
        <NumberField path="place.latitudeDeg" />
        <NumberField path="place.longitudeDeg" />
      </More>
    </>
  );
}
