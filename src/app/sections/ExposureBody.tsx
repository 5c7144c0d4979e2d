import { Flag, Segments } from '../fields/ChoiceField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { usePlan } from '../store/plan.ts';
import { exposureFacts } from './exposureFacts.ts';
import { FilterFields } from './FilterFields.tsx';
import { Facts } from './parts.tsx';
import { RampFields } from './RampFields.tsx';

export function ExposureBody() {
  const plan = usePlan((present) => present);
  return (
    <>
      <NumberField path="exposure.shutterS" />
      <NumberField path="exposure.apertureF" />
      <NumberField path="exposure.iso" />
      <FilterFields />
      <Facts of={exposureFacts(plan)} />
      <RampFields />
      <NumberField path="exposure.bracketCount" />
      <NumberField path="exposure.bracketStops" />
      <NumberField path="camera.noiseReductionFromS" />
      <Flag path="camera.noiseReduction" />
      <Segments path="exposure.timedBy" />
    </>
  );
}
