import { memo, useId } from 'react';
import type { Axis, Ease, Track } from '../../engine/plan/schema.ts';
import { Choice, Flag, Segments, Select } from '../fields/ChoiceField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { wordText } from '../fields/words.ts';
import { shortNumber, withUnit } from '../format/numbers.ts';
import { CrossIcon } from '../icons.tsx';
import { addKeyframe, addTrack, removeKeyframe, removeTrack } from '../store/members.ts';
import { setAt } from '../store/paths.ts';
import { usePlan, useSchedule } from '../store/plan.ts';
import { act } from './act.ts';

const EASES: Readonly<Record<Ease['kind'], Ease>> = {
  hold: { kind: 'hold' },
  linear: { kind: 'linear' },
  smooth: { kind: 'smooth' },
  smoother: { kind: 'smoother' },
  cubicBezier: { kind: 'cubicBezier', x1: 0.42, y1: 0, x2: 0.58, y2: 1 },
  ramped: { kind: 'ramped', headShare: 0.2, tailShare: 0.2 },
};

const EASE_OPTIONS = Object.keys(EASES).map((kind) => ({ value: kind, text: wordText(kind) }));

const EASE_FIGURES: Readonly<Partial<Record<Ease['kind'], readonly string[]>>> = {
  cubicBezier: ['x1', 'y1', 'x2', 'y2'],
  ramped: ['headShare', 'tailShare'],
};

interface KeyframeProps {
  trackIndex: number;
  index: number;
  ease: Ease['kind'];
  unit: Axis['unit'];
  last: boolean;
  only: boolean;
  name: string;
}

const KeyframeRow = memo(function KeyframeRow(props: KeyframeProps) {
  const { trackIndex, index, ease, unit, last, only, name } = props;
  const id = useId();
  const path = `move.tracks.${trackIndex}.keyframes.${index}`;
  const what = `${name}, keyframe ${index + 1}`;
  return (
    <>
      <div className="key">
        <NumberField path={`${path}.share`} label={`${what}: share of the run`} bare plain />
        <NumberField path={`${path}.position`} label={`${what}: position`} axisUnit={unit} bare plain />
        {last ? (
          <span className="s none">stays</span>
        ) : (
          <Select
            id={id}
            value={ease}
            options={EASE_OPTIONS}
            label={`${what}: ease to the next`}
            onChoose={(kind) => act((plan) => setAt(plan, `${path}.ease`, EASES[kind as Ease['kind']]))}
          />
        )}
        <button
          type="button"
          className="sq"
          disabled={only}
          aria-label={`Remove ${what}`}
          onClick={() => act((plan) => removeKeyframe(plan, trackIndex, index))}
        >
          <CrossIcon />
        </button>
      </div>
      {!last && EASE_FIGURES[ease] && (
        <div className="ease">
          {EASE_FIGURES[ease].map((figure) => (
            <NumberField key={figure} path={`${path}.ease.${figure}`} plain />
          ))}
        </div>
      )}
    </>
  );
});

/** What the motor does at most, from the columns. */
function TrackFacts({ name }: { name: string }) {
  const axis = useSchedule().columns.axes.find((columns) => columns.name === name);
  if (!axis || axis.steps.length < 2) return null;
  const most = axis.largestMoveSteps;
  const size = withUnit(shortNumber(most / axis.stepsPerUnit), axis.unit === 'deg' ? '°' : 'mm');
  return (
    <p className="s">
      Largest move {size}, {most} microsteps.
    </p>
  );
}

function TrackBlock({ track, index }: { track: Track; index: number }) {
  const unit = usePlan((plan) => plan.rig.axes.find(({ name }) => name === track.axis)?.unit ?? 'mm');
  return (
    <fieldset className="track w2">
      <legend>{track.axis}</legend>
      <div className="key hd" aria-hidden="true">
        <span>At</span>
        <span>Position</span>
        <span>Ease to the next</span>
      </div>
      {track.keyframes.map((keyframe, k) => (
        <KeyframeRow
          // biome-ignore lint/suspicious/noArrayIndexKey: keyframes have no identity but their place
          key={k}
          trackIndex={index}
          index={k}
          ease={keyframe.ease.kind}
          unit={unit}
          last={k === track.keyframes.length - 1}
          only={track.keyframes.length === 1}
          name={track.axis}
        />
      ))}
      <TrackFacts name={track.axis} />
      <Flag path={`move.tracks.${index}.thereAndBack`} />
      <div className="row">
        <button type="button" className="btn" onClick={() => act((plan) => addKeyframe(plan, index))}>
          Add a keyframe
        </button>
        <button type="button" className="btn" onClick={() => act((plan) => removeTrack(plan, index))}>
          Leave {track.axis} still
        </button>
      </div>
    </fieldset>
  );
}

function Tracks() {
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
      {idle.length > 0 && (
        <div className="row w2">
          {idle.map((axis) => (
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
      )}
    </>
  );
}

export function MoveBody() {
  return (
    <>
      <Segments path="move.mode" />
      <Tracks />
      <NumberField path="move.moveS" placeholder="by motors" />
      <NumberField path="move.settleS" />
      <Choice path="move.order" wide />
    </>
  );
}
