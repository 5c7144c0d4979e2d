/** The pane that the sun comes through, and the room behind it. */
import { Flag } from '../fields/ChoiceField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { usePlan } from '../store/plan.ts';
import { paneText } from './lightText.ts';
import { PaneSketch } from './PaneSketch.tsx';
import { Caution, More } from './parts.tsx';

const SIZES = ['facingDeg', 'widthMm', 'sillMm', 'headMm', 'roomDepthMm', 'setHeightMm'] as const;
const SET = ['setNearMm', 'setFarMm', 'setLeftMm', 'setRightMm'] as const;

/** The glass that the sun comes through, and the set behind it. */
export function PaneFields() {
  const summary = usePlan(({ pane }) => paneText(pane));
  const used = usePlan((plan) => plan.pane.used);
  return (
    <More title="Pane" summary={summary}>
      <Flag path="pane.used" />
      {used && (
        <>
          {[...SIZES, ...SET].map((size) => (
            <NumberField key={size} path={`pane.${size}`} />
          ))}
          <PaneSketch />
          <Caution>
            Sun through glass heats what it falls on and can set it alight behind a lens or a bottle: cover
            lenses and black the pane out when nobody is there.
          </Caution>
        </>
      )}
    </More>
  );
}
