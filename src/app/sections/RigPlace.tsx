/** Where the rig stands and how the axes lie that place its camera: only what it has. */
import { Flag } from '../fields/ChoiceField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { armText, hasKind, slideText, spotText, standsText } from '../rig/rigText.ts';
import { usePlan } from '../store/plan.ts';
import { More } from './parts.tsx';

const Figures = ({ of, names }: { of: string; names: readonly string[] }) =>
  names.map((name) => <NumberField key={name} path={`${of}.${name}`} />);

export function RigPlace() {
  const rig = usePlan((plan) => plan.rig);
  if (rig.axes.length === 0) return null;
  return (
    <>
      <More title="Where it stands" summary={standsText(rig)}>
        <Figures of="rig" names={['pivotHeightMm', 'lensBearingDeg', 'lensTiltDeg']} />
      </More>
      {hasKind(rig, 'boom') && (
        <More title="Arm" summary={armText(rig.arm)}>
          <Figures of="rig.arm" names={['lengthMm', 'planeTiltDeg', 'zeroDeg']} />
          <Flag path="rig.arm.keepsLevel" />
        </More>
      )}
      {hasKind(rig, 'slide') && (
        <More title="Slide" summary={slideText(rig.slide)}>
          <Figures of="rig.slide" names={['bearingDeg', 'inclineDeg']} />
        </More>
      )}
      {hasKind(rig, 'turntable') && (
        <More title="Turntable" summary={spotText(rig.turntable.rightMm, rig.turntable.forwardMm)}>
          <Figures of="rig.turntable" names={['rightMm', 'forwardMm']} />
        </More>
      )}
    </>
  );
}
