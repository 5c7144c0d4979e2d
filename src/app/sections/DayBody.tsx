/** The day of the shoot: how long each step takes, and what else to bring. */
import { LinesField } from '../fields/LinesField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { durationText } from '../format/durations.ts';
import { usePlan } from '../store/plan.ts';
import { showDialog } from '../store/view.ts';
import { Facts } from './parts.tsx';
import { afterMin, beforeMin } from './summary.ts';

const STEPS = [
  'travelMin',
  'setUpMin',
  'balanceMin',
  'rehearsalMin',
  'testFramesMin',
  'inHandMin',
  'packUpMin',
];

/** What the steps come to. */
function Around() {
  const day = usePlan((plan) => plan.day);
  const figure = (of: string, minutes: number) => ({ text: durationText(minutes * 60), of: `day.${of}` });
  return (
    <Facts
      of={[
        [
          figure('beforeMin', beforeMin(day)),
          ' before the first frame, ',
          figure('afterMin', afterMin(day)),
          ' after the last.',
        ],
      ]}
    />
  );
}

export function DayBody() {
  const stopMotion = usePlan((plan) => plan.technique === 'stopMotion');
  return (
    <>
      {stopMotion ? (
        <p className="hint">Working hours, breaks and the set-up of each shot are on the sheet.</p>
      ) : (
        <>
          {STEPS.map((name) => (
            <NumberField key={name} path={`day.${name}`} />
          ))}
          <Around />
        </>
      )}
      <LinesField path="day.bring" rows={4} list placeholder={'Head torch\nHot tea'} />
      <div className="row w2">
        <button type="button" className="btn" onClick={() => showDialog('along')}>
          Take along: run sheet, calendar, files
        </button>
      </div>
    </>
  );
}
