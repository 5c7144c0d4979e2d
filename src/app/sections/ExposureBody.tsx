import { openShutterS } from '../../engine/exposure/shutter.ts';
import { typedEv } from '../../engine/exposure/typed.ts';
import { Flag, Segments } from '../fields/ChoiceField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { durationText } from '../format/durations.ts';
import { shutterText } from '../format/exposure.ts';
import { numberText, withUnit } from '../format/numbers.ts';
import { usePlan } from '../store/plan.ts';
import { How } from '../working/How.tsx';
import { FilterFields } from './FilterFields.tsx';
import { RampFields } from './RampFields.tsx';

/** How long the shutter really is open, and which light the settings are right for. */
function ExposureFacts() {
  const plan = usePlan((present) => present);
  const openS = openShutterS(plan);
  const open = openS < 0.3 ? `1/${numberText(1 / openS, 1)} s` : durationText(openS, 3);
  const value = withUnit(numberText(typedEv(plan), 1), 'EV');
  return (
    <p className="hint">
      {shutterText(plan.exposure.shutterS)} is open for{' '}
      <How of="exposure.openS" what={open}>
        {open}
      </How>
      . Right for a scene of{' '}
      <How of="exposure.ev" what={value}>
        {value}
      </How>
      .
    </p>
  );
}

export function ExposureBody() {
  return (
    <>
      <NumberField path="exposure.shutterS" />
      <NumberField path="exposure.apertureF" />
      <NumberField path="exposure.iso" />
      <FilterFields />
      <ExposureFacts />
      <RampFields />
      <NumberField path="exposure.bracketCount" />
      <NumberField path="exposure.bracketStops" />
      <NumberField path="camera.noiseReductionFromS" />
      <Flag path="camera.noiseReduction" />
      <Segments path="exposure.timedBy" />
    </>
  );
}
