/** Lens and sensor, and where the lens looks. */
import { Flag } from '../fields/ChoiceField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { usePlan } from '../store/plan.ts';
import { viewText } from './lightText.ts';
import { Caution, More } from './parts.tsx';

/** Where the lens looks, for the sun in frame and for stars. */
export function ViewFields() {
  const summary = usePlan(({ view }) => viewText(view));
  const { used, stars } = usePlan((plan) => plan.view);
  return (
    <More title="Sun and stars in frame" summary={summary}>
      <Flag path="view.used" />
      {used && (
        <>
          <NumberField path="view.azimuthDeg" />
          <NumberField path="view.altitudeDeg" />
        </>
      )}
      <Flag path="view.stars" />
      {stars && <NumberField path="view.starTrailMaxPx" />}
      <Caution>
        The sun in frame burns shutters and sensors, and eyes at an optical finder: an ND filter is no eye
        protection. Cover the lens until the first frame.
      </Caution>
    </More>
  );
}
