/** One keyframe of a track and how the axis goes on from it. */
import { memo, useId } from 'react';
import { setAt } from '../../engine/plan/paths.ts';
import type { Axis, Keyframe } from '../../engine/plan/schema.ts';
import { Select } from '../fields/ChoiceField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { wordText } from '../fields/words.ts';
import { CrossIcon, MoreIcon } from '../icons.tsx';
import { act } from '../sections/act.ts';
import { infoAt } from '../store/infos.ts';
import { addKeyframeAfter, hasRoomAfter, placeBy, removeKeyframe } from '../store/keyframes.ts';
import { usePlan } from '../store/plan.ts';
import { EASE_FIGURES, EASE_OPTIONS, easeOfKind, easePath } from './eases.ts';
import { trackSpan } from './trackSpan.ts';

/** Field of a keyframe that says where it is, and its name. */
const PLACES = {
  share: { field: 'share', name: 'share of the run' },
  frame: { field: 'frame', name: 'frame' },
  time: { field: 'timeS', name: 'time' },
} as const;

interface Props {
  keyframe: Keyframe;
  trackIndex: number;
  k: number;
  unit: Axis['unit'];
  last: boolean;
  only: boolean;
  axis: string;
}

export const KeyframeRow = memo(function KeyframeRow(props: Props) {
  const { keyframe, trackIndex, k, unit, last, only, axis } = props;
  const path = `move.tracks.${trackIndex}.keyframes.${k}`;
  const what = `${axis}, keyframe ${k + 1}`;
  return (
    <li className="key">
      <span className="key-no m" aria-hidden="true">
        {k + 1}
      </span>
      <Place {...{ keyframe, path, what, trackIndex, k }} />
      <NumberField path={`${path}.position`} label={`${what}: position`} axisUnit={unit} bare plain />
      <button
        type="button"
        className="sq"
        disabled={only}
        aria-label={`Remove ${what}`}
        onClick={() => act((plan) => removeKeyframe(plan, trackIndex, k))}
      >
        <CrossIcon />
      </button>
      {last ? (
        <span className="key-on s">stays there</span>
      ) : (
        <EaseOn {...{ path, what }} ease={keyframe.ease} />
      )}
      <AddAfter {...{ trackIndex, k, what }} />
      {!last && <EaseFigures path={path} kind={keyframe.ease.kind} />}
    </li>
  );
});

function AddAfter({ trackIndex, k, what }: Pick<Props, 'trackIndex' | 'k'> & { what: string }) {
  const room = usePlan((plan) => hasRoomAfter(plan, trackIndex, k, trackSpan(plan, trackIndex)));
  return (
    <button
      type="button"
      className="sq key-more"
      disabled={!room}
      aria-label={`Add a keyframe after ${what}`}
      onClick={() =>
        act((plan) => addKeyframeAfter(plan, trackIndex, k, trackSpan(plan, trackIndex))?.plan ?? plan)
      }
    >
      <MoreIcon />
    </button>
  );
}

/** Where it is: by what, and the figure. */
function Place({ keyframe, path, what, trackIndex, k }: PlaceProps) {
  const id = useId();
  const place = PLACES[keyframe.at];
  const options = (infoAt(`${path}.at`).words ?? []).map((word) => ({ value: word, text: wordText(word) }));
  return (
    <div className="key-at">
      <Select
        id={id}
        value={keyframe.at}
        options={options}
        label={`${what}: placed at`}
        onChoose={(at) =>
          act((plan) => placeBy(plan, trackIndex, k, at as Keyframe['at'], trackSpan(plan, trackIndex)))
        }
      />
      <NumberField path={`${path}.${place.field}`} label={`${what}: ${place.name}`} bare plain />
    </div>
  );
}

interface PlaceProps extends Pick<Props, 'keyframe' | 'trackIndex' | 'k'> {
  path: string;
  what: string;
}

const DRAWING = { widthPx: 26, heightPx: 14 };

function EaseOn({ path, what, ease }: { path: string; what: string; ease: Keyframe['ease'] }) {
  const id = useId();
  const { widthPx, heightPx } = DRAWING;
  return (
    <div className="key-on">
      <svg width={widthPx} height={heightPx} aria-hidden="true">
        <path d={easePath(ease, widthPx, heightPx)} />
      </svg>
      <Select
        id={id}
        value={ease.kind}
        options={EASE_OPTIONS}
        label={`${what}: ease to the next`}
        onChoose={(kind) => act((plan) => setAt(plan, `${path}.ease`, easeOfKind(kind)))}
      />
    </div>
  );
}

function EaseFigures({ path, kind }: { path: string; kind: Keyframe['ease']['kind'] }) {
  const figures = EASE_FIGURES[kind];
  if (!figures) return null;
  return (
    <div className="ease">
      {figures.map((figure) => (
        <NumberField key={figure} path={`${path}.ease.${figure}`} plain />
      ))}
    </div>
  );
}
