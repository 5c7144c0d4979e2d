/** How the rig rings, shown where the settle goes by it: typed, or measured beside the rig. */
import type { Plan } from '../../engine/plan/schema.ts';
import { Flag } from '../fields/ChoiceField.tsx';
import { enterAll } from '../fields/entry.ts';
import { NumberField } from '../fields/NumberField.tsx';
import { SagHelper, SwingsHelper } from '../measure/Helpers.tsx';
import { ringingFacts } from '../rig/ringingFacts.ts';
import { endGesture, usePlan, useSchedule } from '../store/plan.ts';
import { Facts } from './parts.tsx';

/** Takes what was measured beside the rig. @returns why it does not fit, or null */
function take(values: Partial<Plan['ringing']>): string | null {
  endGesture();
  return enterAll(Object.entries(values).map(([name, value]) => [`ringing.${name}`, value] as const));
}

const FIGURES = ['frequencyHz', 'dampingRatio', 'tolerancePx', 'flexMm'] as const;

export function RingingBody() {
  const plan = usePlan((present) => present);
  const { rig } = useSchedule();
  return (
    <>
      <h4 className="w2">Ringing</h4>
      {FIGURES.map((name) => (
        <NumberField key={name} path={`ringing.${name}`} />
      ))}
      <NumberField path="ringing.measuredSettleS" />
      <SagHelper onTake={take} />
      <SwingsHelper onTake={take} />
      <Flag path="move.quiet" />
      <Facts of={ringingFacts(plan, rig.ringing)} />
    </>
  );
}
