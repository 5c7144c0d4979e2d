import { NumberField } from '../fields/NumberField.tsx';
import { durationText } from '../format/durations.ts';
import { useSchedule } from '../store/plan.ts';

function CycleFacts() {
  const { shortestIntervalS, longestCycleFrame, tightestSpareS } = useSchedule().totals;
  const spare =
    tightestSpareS >= 0
      ? `${durationText(tightestSpareS)} to spare`
      : `${durationText(-tightestSpareS)} missing`;
  return (
    <p className="hint">
      The longest cycle is that of frame {longestCycleFrame}. With the guard it asks for an interval of{' '}
      {durationText(shortestIntervalS)}: {spare}.
    </p>
  );
}

export function CycleBody() {
  return (
    <>
      <NumberField path="cycle.guardS" />
      <CycleFacts />
    </>
  );
}
