/** Capacity of a source against temperature. */
import { NumberField } from '../fields/NumberField.tsx';
import { CrossIcon } from '../icons.tsx';
import { addCurvePoint, removeCurvePoint } from '../store/members.ts';
import { useDesk, usePlan } from '../store/plan.ts';
import { act } from './act.ts';
import { More } from './parts.tsx';

export function CapacityCurve({ index }: { index: number }) {
  const desk = useDesk();
  const source = usePlan((plan) => plan.power.sources[index]);
  if (!source) return null;
  const path = `power.sources.${index}.capacityCurve`;
  return (
    <More title="Capacity in the cold">
      <p className="s w2">
        Enter the curve of your own cells’ data sheet; between two points it is a straight line.
      </p>
      {source.capacityCurve.map((_, k) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: points have no identity but their place
        <div key={k} className="point w2">
          <NumberField path={`${path}.${k}.temperatureC`} plain />
          <NumberField path={`${path}.${k}.share`} plain />
          <button
            type="button"
            className="sq"
            disabled={source.capacityCurve.length === 1}
            aria-label={`Remove point ${k + 1} of ${source.name}`}
            onClick={() => act((plan) => removeCurvePoint(plan, index, k), desk)}
          >
            <CrossIcon />
          </button>
        </div>
      ))}
      <button type="button" className="btn" onClick={() => act((plan) => addCurvePoint(plan, index), desk)}>
        Add a point
      </button>
    </More>
  );
}
