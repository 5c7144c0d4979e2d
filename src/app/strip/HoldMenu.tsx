/** How many frames of the clip one exposure covers: ones, twos, threes, fours. */
import { withChecks } from '../store/checker.ts';
import { changeField, endGesture } from '../store/plan.ts';
import { holdText } from './notes.ts';

const OFFERED = [1, 2, 3, 4];

export function HoldMenu({ holdFrames }: { holdFrames: number }) {
  const holds = OFFERED.includes(holdFrames) ? OFFERED : [...OFFERED, holdFrames];
  return (
    <select
      className="op hold"
      aria-label="Each exposure is held for"
      value={holdFrames}
      onChange={({ target: { value } }) =>
        withChecks(() => {
          endGesture();
          changeField('clip.holdFrames', Number(value));
          endGesture();
        })
      }
    >
      {holds.map((frames) => (
        <option key={frames} value={frames}>
          {holdText(frames)}
        </option>
      ))}
    </select>
  );
}
