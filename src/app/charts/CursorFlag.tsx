import type { KeyboardEvent, Ref } from 'react';
import type { Schedule } from '../../engine/schedule-types.ts';
import { afterKey, frameMoment } from './cursor.ts';

interface Props {
  schedule: Schedule;
  index: number;
  /** Place of the cursor and width of the strip it stands on, pixels. */
  x: number;
  widthPx: number;
  onCursor: (index: number | null) => void;
  ref: Ref<HTMLDivElement>;
}

const CHARACTER_PX = 8;

/** The cursor's handle: a flag with the clock, to be stepped by keys. */
export function CursorFlag({ schedule, index, x, widthPx, onCursor, ref }: Props) {
  const moment = frameMoment(schedule, index);
  const width = 36 + moment.length * CHARACTER_PX;
  const left = Math.max(0, Math.min(x - width / 2, widthPx - width));
  const step = (event: KeyboardEvent) => {
    const to = event.key === 'Escape' ? null : afterKey(schedule, index, event);
    if (to === null && event.key !== 'Escape') return;
    event.preventDefault();
    onCursor(to);
  };
  return (
    <>
      <div
        ref={ref}
        className="run-flag"
        role="slider"
        tabIndex={0}
        aria-label="Cursor of the run"
        aria-valuemin={1}
        aria-valuemax={schedule.columns.elapsedS.length}
        aria-valuenow={index + 1}
        aria-valuetext={`Frame ${index + 1}, ${moment}`}
        style={{ left, width }}
        onKeyDown={step}
      >
        {moment}
      </div>
      <i className="run-pole" style={{ left: x }} />
    </>
  );
}
