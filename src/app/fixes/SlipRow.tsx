/** How late the run can begin: a row of the margins that comes later than the others. */
import type { Margin } from '../../engine/findings/types.ts';
import { MarginLine } from '../charts/MarginsPanel.tsx';
import { marginRow } from '../charts/marginModel.ts';
import { durationText } from '../format/durations.ts';
import { useSchedule } from '../store/plan.ts';
import { useFixes } from './fixStore.ts';

/** The row in hours and minutes: seconds are of no use here. */
function slipRow(margin: Margin) {
  const row = marginRow(margin);
  const text = (seconds: number) => durationText(Math.floor(Math.max(0, seconds) / 60) * 60);
  return { ...row, left: text(margin.left), leftUnit: ' left' };
}

export function SlipRow() {
  const { sky } = useSchedule();
  const slip = useFixes((state) => state.slip);
  const failed = useFixes((state) => state.failed);
  if (slip?.is) return <MarginLine row={slipRow(slip.is)} />;
  if (slip || failed !== null || !sky) return null;
  return (
    <li className="margin">
      <div className="margin-what">
        <b>Start may slip by</b>
        <span>is being worked out</span>
      </div>
    </li>
  );
}
