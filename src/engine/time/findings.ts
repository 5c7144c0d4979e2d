/** What the clock says: a start that the clock skips or shows twice, a change of the clocks within the run. */
import type { Draft, Judge, Run } from '../run.ts';
import { offsetText } from './clock.ts';

function start({ plan, start: { kind }, at }: Run): Draft[] {
  const { time, date, whenRepeated } = plan.start;
  if (kind === 'plain') return [];
  const skipped = kind === 'skipped';
  const message = skipped
    ? `${time} does not exist on ${date}: the clocks go forward. The first frame is taken at ${at(1).slice(11, 19)}.`
    : `${time} comes twice on ${date}: the clocks go back. The ${whenRepeated} one is meant, at ${at(1).slice(19)} from UTC.`;
  return [
    {
      id: skipped ? 'clock-skipped' : 'clock-repeated',
      severity: skipped ? 'warning' : 'note',
      subject: 'place',
      message,
      frame: 1,
      values: { date, time },
    },
  ];
}

function changes({ clockChanges }: Run): Draft[] {
  return clockChanges.slice(0, 1).map(({ frame, fromMin, toMin }) => ({
    id: 'clock-change' as const,
    severity: 'note' as const,
    subject: 'place' as const,
    message: `The clocks change before frame ${frame}, from ${offsetText(fromMin)} to ${offsetText(toMin)}: clock times jump, the interval goes on.`,
    frame,
    values: { fromMin, toMin, changes: clockChanges.length },
  }));
}

function past({ start: { startMs }, nowMs, at }: Run): Draft[] {
  if (nowMs === null || startMs >= nowMs) return [];
  return [
    {
      id: 'start-past',
      severity: 'note',
      subject: 'place',
      message: `The start is past: ${at(1).slice(0, 10)}, ${at(1).slice(11, 19)}.`,
      frame: null,
      values: { startMs, nowMs },
    },
  ];
}

export const judgeTime: Judge = (run) => ({
  findings: [...start(run), ...changes(run), ...past(run)],
  margins: [],
});
