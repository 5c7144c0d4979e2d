/** Keyframes of one axis over its chart: dragged, nudged by keys, added by a double click, removed. */
import { type KeyboardEvent, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { Track } from '../../engine/plan/schema.ts';
import type { ChartModel } from '../charts/chart.ts';
import type { RunView } from '../charts/runView.ts';
import { linear } from '../charts/scale.ts';
import { colourOf } from '../charts/trace.ts';
import { act } from '../sections/act.ts';
import {
  type Added,
  addKeyframeAt,
  elapsedAt,
  indexAt,
  indexOf,
  keyframesOf,
  type Span,
  spanOf,
} from '../store/keyframes.ts';
import { currentPlan, endGesture, inGesture, usePlan } from '../store/plan.ts';
import { nudgeOf, onHandleKey } from './handleKeys.ts';
import { type Handle, handlesOf, type Plot } from './handles.ts';
import { chooseAxis } from './shown.ts';
import { useDoubleClick } from './useDoubleClick.ts';
import { useHandleDrag } from './useHandleDrag.ts';
import './handles.css';

interface Props {
  chart: ChartModel;
  view: RunView;
  /** Width of the column of figures to the left of the plot. */
  gutterPx: number;
  /** Name of the axis whose keyframes are shown. */
  axis: string;
  /** Frame under the run's cursor, counted from 0: of a long track, the keyframes around it are shown. */
  index: number;
}

export function Handles({ axis, ...drawing }: Props) {
  const trackIndex = usePlan((plan) => plan.move.tracks.findIndex((track) => track.axis === axis));
  const track = usePlan((plan) => plan.move.tracks[trackIndex]);
  return track ? <TrackHandles {...drawing} trackIndex={trackIndex} track={track} /> : null;
}

type TrackProps = Omit<Props, 'axis'> & { trackIndex: number; track: Track };

/** The chart's scales, for what stands in it. */
function plotOf({ heightPx, domain, editable }: ChartModel, { x, widthPx, domain: times }: RunView): Plot {
  return {
    x,
    momentAt: linear([0, widthPx], times),
    y: linear(domain, [heightPx, 0]),
    unitsPerPx: (domain[1] - domain[0]) / heightPx,
    unit: editable?.unit ?? 'mm',
  };
}

function TrackHandles({ chart, view, gutterPx, index, trackIndex, track }: TrackProps) {
  const layer = useRef<HTMLFieldSetElement>(null);
  const plot = useMemo(() => plotOf(chart, view), [chart, view]);
  const span = spanOf(view.elapsedS, track.thereAndBack);
  const handles = handlesOf(track, span, plot, useCalm(index, layer));
  const { id, editable } = chart;
  const scale = { chart: id, low: editable?.low ?? 0, high: editable?.high ?? 0 };
  const { dragged, handlers } = useHandleDrag(layer, { trackIndex, handles, plot, span, scale });
  const focusOn = useFocusOn(layer);
  const [said, say] = useState('');
  const { tone } = chart.traces.find(({ name }) => name === track.axis) ?? { tone: 'ink' as const };

  const added = (made: Added | null) => {
    if (!made) return;
    act(() => made.plan);
    focusOn(made.index);
  };
  useDoubleClick(layer, chart.traces, track.axis, (px, name) => {
    if (name !== track.axis) chooseAxis(name);
    else added(addKeyframeAt(currentPlan(), trackIndex, indexAt(span, plot.momentAt(px)), span));
  });
  const onKeyDown = (event: KeyboardEvent, handle: Handle) => {
    const done = onHandleKey(event, handle, { trackIndex, handles, plot, span, scale }, { added, focusOn });
    if (!done) return;
    event.preventDefault();
    event.stopPropagation();
    const now = keyframesOf(currentPlan(), trackIndex)[handle.k];
    if (now) say(handlesOf({ ...track, keyframes: [now] }, span, plot, 0)[0]?.figures ?? '');
  };
  return (
    <fieldset
      ref={layer}
      className="key-layer"
      style={{ left: gutterPx, width: view.widthPx, height: chart.heightPx, color: colourOf(tone) }}
      {...handlers}
    >
      <legend className="vh">Keyframes of {track.axis}</legend>
      <p className="vh" aria-live="polite">
        {said}
      </p>
      {track.thereAndBack && <WayBack {...{ track, span, plot, view }} />}
      {handles.map((handle) => (
        <button
          key={handle.k}
          type="button"
          data-k={handle.k}
          className={`key-handle${handle.k === dragged ? ' dragged' : ''}`}
          style={{ left: handle.x, top: handle.y }}
          aria-label={handle.label}
          aria-keyshortcuts="ArrowLeft ArrowRight ArrowUp ArrowDown Enter Delete"
          onKeyDown={(event) => onKeyDown(event, handle)}
          onBlur={() => inGesture(nudgeOf(trackIndex, handle.k)) && endGesture()}
        >
          <span
            className={`key-figures${handle.y < 34 ? ' below' : ''}${sideOf(handle.x, view.widthPx)}`}
            aria-hidden="true"
          >
            {handle.figures}
          </span>
        </button>
      ))}
    </fieldset>
  );
}

/** Words beside a handle stay within the drawing. */
const sideOf = (x: number, widthPx: number): string => {
  if (x < 70) return ' right';
  return x > widthPx - 70 ? ' left' : '';
};

/** A value that stays as it is while the focus is within: handles in use do not go away. */
function useCalm(present: number, layer: { readonly current: HTMLElement | null }): number {
  const [calm, setCalm] = useState(present);
  if (calm !== present && !layer.current?.contains(document.activeElement)) setCalm(present);
  return calm;
}

/** Gives the focus to a keyframe's handle once it is there. */
function useFocusOn(layer: { readonly current: HTMLElement | null }): (k: number) => void {
  const [wanted, setWanted] = useState<{ k: number } | null>(null);
  useLayoutEffect(() => {
    if (wanted) layer.current?.querySelector<HTMLElement>(`[data-k="${wanted.k}"]`)?.focus();
  }, [layer, wanted]);
  return (k) => setWanted({ k });
}

/** The keyframes on their way back: seen, not taken hold of. */
function WayBack({ track, span, plot, view }: { track: Track; span: Span; plot: Plot; view: RunView }) {
  const last = view.elapsedS.length - 1;
  const d = track.keyframes
    .map((keyframe) => ({ keyframe, index: indexOf(keyframe, span) }))
    .filter(({ index }) => index <= span.lastIndex)
    .map(({ keyframe, index }) => {
      const [x, y] = [plot.x(elapsedAt(span, last - index)), plot.y(keyframe.position)];
      return `M${x - 3} ${y - 3}h6v6h-6z`;
    });
  return (
    <svg className="key-back" width={view.widthPx} aria-hidden="true">
      <path d={d.join('')} fill="var(--surface)" stroke="currentColor" />
    </svg>
  );
}
