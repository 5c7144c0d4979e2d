import { NumberField } from '../fields/NumberField.tsx';
import { durationText } from '../format/durations.ts';
import { useSchedule } from '../store/plan.ts';
import { Facts } from './parts.tsx';

function Outcome() {
  const { shortestIntervalS, longestCycleFrame, tightestSpareS } = useSchedule().totals;
  const figure = (what: string, text: string) => ({ text, of: `totals.${what}` });
  return (
    <Facts
      of={[
        ['The longest cycle is that of ', figure('longestCycleFrame', `frame ${longestCycleFrame}`), '.'],
        [
          'With the guard it asks for an interval of ',
          figure('shortestIntervalS', durationText(shortestIntervalS, 2)),
          ': ',
          figure('tightestSpareS', durationText(Math.abs(tightestSpareS), 2)),
          tightestSpareS >= 0 ? ' to spare.' : ' missing.',
        ],
      ]}
    />
  );
}

export function CycleBody() {
  return (
    <>
      <NumberField path="cycle.guardS" />
      <Outcome />
    </>
  );
}
