/** The day of the shoot: how long each step takes, and what else to bring. */
import { LinesField } from '../fields/LinesField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { usePlan } from '../store/plan.ts';
import { showDialog } from '../store/view.ts';

const STEPS = [
  'travelMin',
  'setUpMin',
  'balanceMin',
  'rehearsalMin',
  'testFramesMin',
  'inHandMin',
  'packUpMin',
];

export function DayBody() {
  const stopMotion = usePlan((plan) => plan.technique === 'stopMotion');
  return (
    <>
      {stopMotion ? (
        <p className="hint">Working hours, breaks and the set-up of each shot are on the sheet.</p>
      ) : (
        STEPS.map((name) => <NumberField key={name} path={`day.${name}`} />)
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
