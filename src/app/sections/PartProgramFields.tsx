/** What a part program of this rig needs to know. */
import { partProgramFaults } from '../../engine/plan/part-program-check.ts';
import { Flag } from '../fields/ChoiceField.tsx';
import { LinesField } from '../fields/LinesField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { usePlan } from '../store/plan.ts';
import { More, Refusal } from './parts.tsx';

export function PartProgramFields() {
  const plan = usePlan((present) => present);
  const { inches, feedShare } = plan.partProgram;
  const summary = `${inches ? 'inches' : 'millimetres'}, feed ${Math.round(feedShare * 100)} %`;
  return (
    <More title="Part program (RS-274)" summary={summary}>
      <Flag path="partProgram.inches" />
      <NumberField path="partProgram.feedShare" />
      <LinesField path="partProgram.triggerLines" rows={3} />
      {partProgramFaults(plan).map(({ path, found, allowed }) => (
        <Refusal
          key={`${path} ${found}`}
          text={`No part program yet. ${path}: found ${found}; allowed: ${allowed}.`}
        />
      ))}
    </More>
  );
}
