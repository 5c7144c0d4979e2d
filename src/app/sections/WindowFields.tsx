/** What the sun has to do: the user's own hours, and the window of time. */
import { Flag, Segments } from '../fields/ChoiceField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { readClock } from '../format/clock.ts';
import { usePlan } from '../store/plan.ts';
import { degrees, windowText } from './lightText.ts';
import { More } from './parts.tsx';

const HOURS = ['goldenLowDeg', 'goldenHighDeg', 'blueLowDeg', 'blueHighDeg'] as const;

/** Golden and blue hour. */
export function SunHours() {
  const { goldenLowDeg, goldenHighDeg, blueLowDeg, blueHighDeg } = usePlan((plan) => plan.sky);
  const golden = `${degrees(goldenLowDeg)} to ${degrees(goldenHighDeg)}`;
  const blue = `${degrees(blueLowDeg)} to ${degrees(blueHighDeg)}`;
  return (
    <More title="Golden and blue hour" summary={`Golden ${golden}, blue ${blue}`}>
      {HOURS.map((hour) => (
        <NumberField key={hour} path={`sky.${hour}`} />
      ))}
    </More>
  );
}

export const readMinute = (text: string): string => readClock(text)?.slice(0, 5) ?? text.trim();

function WindowConditions() {
  const hasHorizon = usePlan((plan) => plan.place.horizon.length > 0);
  const hasPane = usePlan((plan) => plan.pane.used);
  const moon = usePlan((plan) => plan.window.moon);
  return (
    <>
      <NumberField path="window.sunAltitudeMinDeg" placeholder="any" />
      <NumberField path="window.sunAltitudeMaxDeg" placeholder="any" />
      <NumberField path="window.sunAzimuthFromDeg" placeholder="any" />
      <NumberField path="window.sunAzimuthToDeg" placeholder="any" />
      <TextField path="window.clockFrom" read={readMinute} placeholder="any" />
      <TextField path="window.clockTo" read={readMinute} placeholder="any" />
      {hasHorizon && <Segments path="window.sunAndHorizon" />}
      {hasPane && <Segments path="window.sunOnPane" />}
      <Segments path="window.moon" />
      {moon === 'downOrDim' && <NumberField path="window.moonLitMaxShare" />}
    </>
  );
}

/** The stretch of time in which the sun does what is wanted. */
export function WindowFields() {
  const summary = usePlan(({ window }) => windowText(window));
  const used = usePlan((plan) => plan.window.used);
  return (
    <More title="Window" summary={summary}>
      <Flag path="window.used" />
      {used && <WindowConditions />}
    </More>
  );
}
