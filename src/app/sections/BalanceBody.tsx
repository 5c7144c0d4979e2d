/** What hangs on the arm, what balances it, and what stands on the feet. */
import { balanceCautions } from '../../engine/balance/cautions.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { Flag, Segments } from '../fields/ChoiceField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { WorkedOutField } from '../fields/WorkedOutField.tsx';
import { armResults, supportResults } from '../rig/balanceResults.ts';
import { hasKind } from '../rig/rigText.ts';
import { usePlan, useSchedule } from '../store/plan.ts';
import { Pieces } from '../working/Pieces.tsx';
import { Caution, More } from './parts.tsx';
import { Results } from './Results.tsx';

const Figures = ({ names }: { names: readonly string[] }) =>
  names.map((name) => <NumberField key={name} path={`balance.${name}`} />);

/** Mass and place of the counterweight: one of them may be worked out. */
function Counterweight({ workedOut }: { workedOut: Plan['balance']['workedOut'] }) {
  const arm = useSchedule().rig.balance?.arm ?? null;
  return (
    <>
      {workedOut === 'mass' ? (
        <WorkedOutField
          path="balance.counterweightKg"
          value={arm && Number(arm.counterweightKg.toFixed(2))}
        />
      ) : (
        <NumberField path="balance.counterweightKg" />
      )}
      {workedOut === 'place' ? (
        <WorkedOutField path="balance.counterweightMm" value={arm && Math.round(arm.counterweightMm)} />
      ) : (
        <NumberField path="balance.counterweightMm" />
      )}
      <NumberField path="balance.counterweightMaxMm" />
    </>
  );
}

function ArmFields({ plan }: { plan: Plan }) {
  const arm = useSchedule().rig.balance?.arm ?? null;
  return (
    <>
      <h4 className="w2">On the arm</h4>
      <Figures names={['payloadKg', 'armKg', 'armCentreMm']} />
      <Segments path="balance.workedOut" />
      <Counterweight workedOut={plan.balance.workedOut} />
      {arm && <Results rows={armResults(plan, arm)} />}
      <More title="What its maker allows">
        <Figures names={['ratedKg', 'ratedMm']} />
      </More>
    </>
  );
}

function SupportFields() {
  const run = useSchedule().rig.balance;
  return (
    <>
      <h4 className="w2">On its feet</h4>
      <Figures names={['baseKg', 'ballastKg', 'supportKg', 'supportRatedKg', 'feetRadiusMm', 'legs']} />
      {run && <Results rows={supportResults(run)} />}
      {run && (
        <>
          <h4 className="w2">Before anything goes on or comes off</h4>
          {balanceCautions(run).map(({ id, text, pieces }) => (
            <Caution key={id}>
              <Pieces pieces={pieces ?? [text]} />
            </Caution>
          ))}
        </>
      )}
    </>
  );
}

export function BalanceBody() {
  const plan = usePlan((present) => present);
  const hasArm = hasKind(plan.rig, 'boom');
  return (
    <>
      <Flag path="balance.used" />
      {plan.balance.used && (
        <>
          {hasArm ? <ArmFields plan={plan} /> : <Figures names={['payloadKg']} />}
          {!hasArm && <p className="hint">Without a boom there is no arm to balance, only the support.</p>}
          <SupportFields />
        </>
      )}
    </>
  );
}
