import { useMemo, useState } from 'react';
import type { Schedule } from '../../engine/schedule-types.ts';
import { shortestCycle } from './cycleFrames.ts';

interface Props {
  schedule: Schedule;
  /** Frame shown, counted from 0. */
  frameIndex: number;
  onFrame: (index: number) => void;
}

/** Which frame is shown: the longest, the shortest, or any. */
export function FrameChoice({ schedule, frameIndex, onFrame }: Props) {
  const frames = schedule.columns.elapsedS.length;
  const longest = schedule.totals.longestCycleFrame - 1;
  const shortest = useMemo(() => shortestCycle(schedule), [schedule]);
  // What is being typed stays as it is until the field is left, whether it names a frame yet or not.
  const [typed, setTyped] = useState<string | null>(null);
  const choose = (text: string) => {
    const frame = Math.round(Number(text));
    if (frame >= 1 && frame <= frames) onFrame(frame - 1);
  };
  return (
    <div className="cycle-choice">
      <button
        type="button"
        className="chart-link"
        disabled={frameIndex === longest}
        onClick={() => onFrame(longest)}
      >
        Show the longest
      </button>
      <button
        type="button"
        className="chart-link"
        disabled={frameIndex === shortest}
        onClick={() => onFrame(shortest)}
      >
        Show the shortest
      </button>
      <label className="cycle-slide">
        <span className="chart-hidden">Frame shown</span>
        <input
          type="range"
          min={1}
          max={frames}
          value={frameIndex + 1}
          disabled={frames === 1}
          onChange={(event) => choose(event.target.value)}
        />
      </label>
      <label className="cycle-frame">
        Frame
        <input
          inputMode="numeric"
          value={typed ?? frameIndex + 1}
          onChange={(event) => {
            setTyped(event.target.value);
            choose(event.target.value);
          }}
          onBlur={() => setTyped(null)}
        />
        of {frames}
      </label>
    </div>
  );
}
