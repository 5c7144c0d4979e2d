/** Sets a keyframe of an axis at the run's cursor; the first ones of an axis that stands still. */
import { act } from '../sections/act.ts';
import { addKeyframeAt, isFree, spanOf } from '../store/keyframes.ts';
import { addTrack } from '../store/members.ts';
import { usePlan } from '../store/plan.ts';

interface Props {
  /** Name of the axis. */
  axis: string;
  /** Frame under the cursor, counted from 0. */
  index: number;
  elapsedS: Float64Array;
}

export function AddHere({ axis, index, elapsedS }: Props) {
  const plan = usePlan((present) => present);
  const trackIndex = plan.move.tracks.findIndex((track) => track.axis === axis);
  const track = plan.move.tracks[trackIndex];
  const found = plan.rig.axes.find(({ name }) => name === axis);
  if (!track || !found) {
    return found ? (
      <button type="button" className="chart-link" onClick={() => act((now) => addTrack(now, found))}>
        Move {axis}
      </button>
    ) : null;
  }
  const span = spanOf(elapsedS, track.thereAndBack);
  return (
    <button
      type="button"
      className="chart-link"
      disabled={!isFree(track.keyframes, index, span)}
      aria-label={`Set a keyframe of ${axis} at frame ${index + 1}`}
      onClick={() => act((now) => addKeyframeAt(now, trackIndex, index, span)?.plan ?? now)}
    >
      Keyframe here
    </button>
  );
}
