/** The tracks of the axes: their keyframes, and what they make of the motors. */
import type { Axis, Track } from '../../engine/plan/schema.ts';
import { Flag } from '../fields/ChoiceField.tsx';
import { plural } from '../format/numbers.ts';
import { act } from '../sections/act.ts';
import { Facts } from '../sections/parts.tsx';
import { addKeyframe, aimedAxes } from '../store/keyframes.ts';
import { addTrack, removeTrack } from '../store/members.ts';
import { usePlan, useSchedule } from '../store/plan.ts';
import { KeyframeList } from './KeyframeList.tsx';
import { chooseAxis } from './shown.ts';
import { trackFacts } from './trackFacts.ts';
import { trackSpan } from './trackSpan.ts';
import './tracks.css';

export function Tracks() {
  const tracks = usePlan((plan) => plan.move.tracks);
  const axes = usePlan((plan) => plan.rig.axes);
  const mode = usePlan((plan) => plan.move.mode);
  const idle = axes.filter(({ name }) => !tracks.some((track) => track.axis === name));
  return (
    <>
      {mode === 'still' && tracks.length > 0 && (
        <p className="hint">The rig stands still: these moves are kept, but not made.</p>
      )}
      {axes.length === 0 && <p className="hint">Add an axis under Rig first.</p>}
      {tracks.map((track, index) => (
        <TrackBlock key={track.axis} track={track} index={index} />
      ))}
      {idle.length > 0 && <Idle axes={idle} />}
    </>
  );
}

const Idle = ({ axes }: { axes: readonly Axis[] }) => (
  <div className="row w2">
    {axes.map((axis) => (
      <button
        key={axis.name}
        type="button"
        className="btn"
        onClick={() => act((plan) => addTrack(plan, axis))}
      >
        Move {axis.name}
      </button>
    ))}
  </div>
);

function TrackBlock({ track, index }: { track: Track; index: number }) {
  const unit = usePlan((plan) => plan.rig.axes.find(({ name }) => name === track.axis)?.unit ?? 'mm');
  const aimed = usePlan((plan) => aimedAxes(plan).includes(track.axis));
  return (
    <fieldset className="track w2" onFocus={() => chooseAxis(track.axis)}>
      <legend>
        {track.axis} <span className="s">{plural(track.keyframes.length, 'keyframe')}</span>
      </legend>
      {aimed && (
        <p className="hint">{track.axis} keeps the subject framed: this track is kept, but not followed.</p>
      )}
      <KeyframeList track={track} trackIndex={index} unit={unit} />
      <Outcome name={track.axis} />
      <Flag path={`move.tracks.${index}.thereAndBack`} />
      <div className="row">
        <button
          type="button"
          className="btn"
          onClick={() => act((plan) => addKeyframe(plan, index, trackSpan(plan, index))?.plan ?? plan)}
        >
          Add a keyframe
        </button>
        <button type="button" className="btn" onClick={() => act((plan) => removeTrack(plan, index))}>
          Leave {track.axis} still
        </button>
      </div>
    </fieldset>
  );
}

/** What the motor does, from the columns. */
function Outcome({ name }: { name: string }) {
  const axis = useSchedule().columns.axes.find((columns) => columns.name === name);
  if (!axis || axis.steps.length < 2) return null;
  return <Facts of={trackFacts(axis)} />;
}
