/** How late the run can begin: a row of the margins that comes later than the others. */
import type { Margin } from '../../engine/findings/types.ts';
import { MarginLine } from '../charts/MarginsPanel.tsx';
import { type MarginRow, marginRow } from '../charts/marginModel.ts';
import { durationText } from '../format/durations.ts';
import { usePlan, useSchedule } from '../store/plan.ts';
import { useFixes } from './fixStore.ts';

const PENDING: MarginRow = {
  id: 'start',
  label: 'Start may slip by',
  usedOf: ['tried up to 24\u00a0h'],
  left: '…',
  leftUnit: '',
  usedShare: 0,
  reserveShare: null,
  standing: 'fine',
  when: ['being worked out'],
  summary: 'Being worked out',
};

/** Whole minutes, from a few on: nobody is late to the second. */
const text = (seconds: number): string =>
  durationText(seconds < 600 ? Math.floor(seconds) : Math.floor(seconds / 60) * 60);

/**
 * The row in hours and minutes, with the first sentence of what fails then.
 * @param current - whether it is of the plan as it is now
 */
export function slipRow(margin: Margin, current: boolean): MarginRow {
  const left = text(margin.left);
  return {
    ...marginRow(margin),
    usedOf: PENDING.usedOf,
    left: current ? left : PENDING.left,
    leftUnit: '',
    when: margin.when.split(/\.\s/).slice(0, 1),
    summary: `${left} of a day`,
  };
}

export function SlipRow() {
  const { sky } = useSchedule();
  const plan = usePlan((present) => present);
  const slip = useFixes((state) => state.slip);
  const failed = useFixes((state) => state.failed);
  if (failed !== null) return null;
  if (slip?.is) return <MarginLine row={slipRow(slip.is, slip.plan === plan)} />;
  // Without a place nothing is likely to come.
  return !slip && sky ? <MarginLine row={PENDING} /> : null;
}
