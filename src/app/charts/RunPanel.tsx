import { useMemo, useRef } from 'react';
import type { Plan } from '../../engine/plan/schema.ts';
import type { Schedule } from '../../engine/schedule-types.ts';
import { ofFrame } from '../../engine/working/names.ts';
import { plural } from '../format/numbers.ts';
import { SavePicture } from '../picture/SavePicture.tsx';
import { useShown } from '../tracks/shown.ts';
import { How } from '../working/How.tsx';
import { AXES_TITLE } from './axesChart.ts';
import { CHANGES_PX, ClockChanges, TRACK_PX } from './ClockChanges.tsx';
import { CursorFlag } from './CursorFlag.tsx';
import type { TableColumn } from './chart.ts';
import { clipReading, cursorIndex, frameClock, frameMoment } from './cursor.ts';
import { NoSky } from './NoSky.tsx';
import { Readings } from './Readings.tsx';
import { RunRow } from './RunRow.tsx';
import { runCharts } from './runCharts.ts';
import { clockAxis, frameAxis, runView } from './runView.ts';
import { ShowQuantity } from './ShowQuantity.tsx';
import { skyBand } from './skyBand.ts';
import { TimeAxis } from './TimeAxis.tsx';
import { useDrag } from './useDrag.ts';
import { useWidth } from './useWidth.ts';
import { WindowLine } from './WindowLine.tsx';
import './charts.css';

/** From this width on the read-out stands beside the plots. */
const WIDE_PX = 640;
const READ_OUT_PX = 226;
const NARROW = { gutterPx: 44, paddingPx: 24 };
const WIDE = { gutterPx: 84, paddingPx: READ_OUT_PX + 16 + 2 };

interface Props {
  schedule: Schedule;
  plan: Plan;
  /** Frame under the cursor, counted from 0; null for the tightest. */
  cursor: number | null;
  onCursor: (index: number | null) => void;
}

/** The run against the clock: all charts on one time scale, with one cursor. */
export function RunPanel({ schedule, plan, cursor, onCursor }: Props) {
  const [ref, width] = useWidth<HTMLDivElement>();
  const frames = schedule.columns.elapsedS.length;
  const moves = plan.move.mode !== 'still' && plan.move.tracks.length > 0;
  return (
    <section className="chart-panel run-panel" aria-labelledby="run-heading">
      <header>
        <h2 id="run-heading">Run</h2>
        <p>
          {plural(frames, 'frame')} against the clock. Drag the cursor{moves ? ' or a keyframe' : ''}, or step
          with the arrow keys.
        </p>
        <SavePicture of="Run" />
      </header>
      <div ref={ref} className={width >= WIDE_PX ? 'run-wide' : 'run-narrow'}>
        {width > 0 && frames > 0 && (
          <RunCharts schedule={schedule} plan={plan} cursor={cursor} onCursor={onCursor} width={width} />
        )}
      </div>
    </section>
  );
}

export default RunPanel;

function RunCharts({ schedule, plan, cursor, onCursor, width }: Props & { width: number }) {
  const wide = width >= WIDE_PX;
  const { gutterPx, paddingPx } = wide ? WIDE : NARROW;
  const plotPx = Math.max(120, width - paddingPx - gutterPx);
  const quantity = useShown((shown) => shown.quantity);
  const held = useShown((shown) => shown.held);
  const drawn = useMemo(() => {
    const view = runView(schedule, plotPx);
    const sky = skyBand(view);
    return {
      view,
      sky,
      charts: runCharts(view, plan, sky, { quantity, held }),
      clock: clockAxis(schedule, view),
      frames: frameAxis(view),
      leading: leadingColumns(schedule),
    };
  }, [schedule, plan, plotPx, quantity, held]);
  const { view, sky, charts, clock, frames, leading } = drawn;
  const axes = charts.find(({ title }) => title === AXES_TITLE);
  const index = cursorIndex(schedule, cursor);
  const cursorX = view.x(Number(view.elapsedS[index]));
  const trackPx = schedule.offsets.length > 1 ? TRACK_PX + CHANGES_PX : TRACK_PX;
  const track = useRef<HTMLDivElement>(null);
  const flag = useRef<HTMLDivElement>(null);
  const drag = useDrag(view, gutterPx, track, flag, onCursor);
  return (
    <div className="run-charts" {...drag}>
      <div className="run-top">
        <div className="run-plot">
          <div ref={track} className="run-drawing run-track" style={{ height: trackPx }}>
            {sky && (
              <WindowLine
                windows={sky.windows}
                {...{ gutterPx, cursorX }}
                widthPx={plotPx}
                heightPx={TRACK_PX}
              />
            )}
            <ClockChanges schedule={schedule} view={view} gutterPx={gutterPx} />
            <CursorFlag
              ref={flag}
              schedule={schedule}
              index={index}
              x={gutterPx + cursorX}
              widthPx={gutterPx + plotPx}
              onCursor={onCursor}
            />
          </div>
        </div>
        <p className="run-readings run-at">
          <b>At the cursor</b>
          <span>
            frame <span className="chart-figure">{index + 1}</span>
          </span>
          <How of={ofFrame(index, 'clock')} what={`${frameClock(schedule, index)}, frame ${index + 1} opens`}>
            <span className="chart-figure">{frameClock(schedule, index)}</span>
          </How>
        </p>
      </div>
      {sky === null && <NoSky />}
      {charts.map((chart) => (
        <RunRow key={chart.id} {...{ chart, view, gutterPx, wide, clock, sky, index, leading }}>
          {chart === axes && <ShowQuantity />}
        </RunRow>
      ))}
      <div className="run-bottom">
        <div className="run-plot">
          <TimeAxis gutterPx={gutterPx} widthPx={plotPx} clock={clock} frames={frames} />
        </div>
        <div className="run-readings">
          <Readings readings={[clipReading(schedule, plan, index)]} />
        </div>
      </div>
    </div>
  );
}

function leadingColumns(schedule: Schedule): TableColumn[] {
  return [
    { heading: 'Frame', cell: (index) => String(index + 1) },
    {
      heading: 'Clock',
      cell: (index) => frameMoment(schedule, index),
      of: (index) => ofFrame(index, 'clock'),
    },
  ];
}
