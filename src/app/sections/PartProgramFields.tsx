/** What a part program of this rig needs to know. */
import { Flag } from '../fields/ChoiceField.tsx';
import { LinesField } from '../fields/LinesField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { usePlan } from '../store/plan.ts';
import { More } from './parts.tsx';

export function PartProgramFields() {
  const { inches, feedShare } = usePlan((plan) => plan.partProgram);
  const summary = `${inches ? 'inches' : 'millimetres'}, feed ${Math.round(feedShare * 100)} %`;
  return (
    <More title="Part program (RS-274)" summary={summary}>
      <Flag path="partProgram.inches" />
      <NumberField path="partProgram.feedShare" />
      <LinesField path="partProgram.triggerLines" rows={3} />
    </More>
  );
}
