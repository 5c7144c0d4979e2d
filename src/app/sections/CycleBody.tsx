import type { Totals } from '../../engine/schedule-types.ts';
import { NumberField } from '../fields/NumberField.tsx';
import { durationText } from '../format/durations.ts';
import { useSchedule } from '../store/plan.ts';
import { How } from '../working/How.tsx';

function CycleFacts() {
  const { shortestIntervalS, longestCycleFrame, tightestSpareS } = useSchedule().totals;
  const figure = (of: keyof Totals, text: string) => (
    <How of={`totals.${of}`} what={text}>
      {text}
    </How>
  );
  return (
    <p className="hint">
      The longest cycle is that of frame {figure('longestCycleFrame', String(longestCycleFrame))}. With the
      guard it asks for an interval of {figure('shortestIntervalS', durationText(shortestIntervalS))}:{' '}
      {figure('tightestSpareS', durationText(Math.abs(tightestSpareS)))}{' '}
      {tightestSpareS >= 0 ? 'to spare' : 'missing'}.
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
