/** How the rig rings, shown where the settle goes by it: typed, or measured beside the rig. */
import type { Plan } from '../../engine/plan/schema.ts';
import type { RingingSummary } from '../../engine/ringing/summary.ts';
import { Flag } from '../fields/ChoiceField.tsx';
import { enterAll } from '../fields/entry.ts';
import { NumberField } from '../fields/NumberField.tsx';
import { SagHelper, SwingsHelper } from '../measure/Helpers.tsx';
import { ringingFacts } from '../rig/ringingFacts.ts';
import { endGesture, usePlan, useSchedule } from '../store/plan.ts';
import { How } from '../working/How.tsx';
import { Facts } from './parts.tsx';

/** Takes what was measured beside the rig. @returns why it does not fit, or null */
function take(values: Partial<Plan['ringing']>): string | null {
  endGesture();
  return enterAll(Object.entries(values).map(([name, value]) => [`ringing.${name}`, value] as const));
}

/** Ways to the workings of what the sentences say. */
const Workings = ({ ringing: { worstFrame, quiet } }: { ringing: RingingSummary }) => (
  <p className="hint">
    How it came about:{' '}
    <How of="ringing.longestSettleS" what="longest settle">
      longest settle
    </How>
    {worstFrame !== null && (
      <>
        {', '}
        <How of="ringing.worstPx" what="largest ring">
          largest ring
        </How>
      </>
    )}
    {quiet && (
      <>
        {', '}
        <How of="ringing.savesS" what="what quiet moves save">
          what quiet moves save
        </How>
      </>
    )}
  </p>
);

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
      {rig.ringing && <Workings ringing={rig.ringing} />}
    </>
  );
}
