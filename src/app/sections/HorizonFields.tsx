/** The user's own horizon: two columns in a box, and what they draw. */
import { useId } from 'react';
import { enterAll } from '../fields/entry.ts';
import { FieldFrame } from '../fields/FieldFrame.tsx';
import { horizonText, readHorizon, rowFaultsText } from '../place/horizon.ts';
import { setDraft, useDraft } from '../store/drafts.ts';
import { cancelGesture, endGesture, usePlan } from '../store/plan.ts';
import { HorizonSketch } from './HorizonSketch.tsx';
import { horizonSummary } from './lightText.ts';
import { More } from './parts.tsx';

const PATH = 'place.horizon';

function type(text: string): void {
  const read = readHorizon(text);
  const error = 'faults' in read ? rowFaultsText(read.faults) : enterAll([[PATH, read.points]], PATH);
  setDraft(PATH, { text, error });
}

const HINT =
  'A row for each point: azimuth from north, clockwise, then altitude, in degrees. Two columns of a sheet can be pasted.';

function PointsBox() {
  const id = useId();
  const points = usePlan((plan) => plan.place.horizon);
  const draft = useDraft(PATH);
  const error = draft?.error ?? null;
  const restore = () => {
    cancelGesture(PATH);
    setDraft(PATH, null);
  };
  return (
    <FieldFrame id={id} label="Azimuth and altitude" hint={HINT} error={error} wide>
      {(described) => (
        <textarea
          id={id}
          data-path={PATH}
          className={`m${error === null ? '' : ' bad'}`}
          rows={6}
          spellCheck={false}
          placeholder={'90\t4.5\n120\t10\n180\t2'}
          value={draft?.text ?? horizonText(points)}
          aria-invalid={error !== null}
          aria-describedby={described}
          onChange={(event) => type(event.target.value)}
          onBlur={() => {
            endGesture();
            if (error === null) setDraft(PATH, null);
          }}
          onKeyDown={(event) => {
            if (event.key === 'Escape') restore();
          }}
        />
      )}
    </FieldFrame>
  );
}

export function HorizonFields() {
  const summary = usePlan((plan) => horizonSummary(plan.place.horizon));
  return (
    <More title="Own horizon" summary={summary}>
      <PointsBox />
      <HorizonSketch />
    </More>
  );
}
