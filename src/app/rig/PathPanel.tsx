/** The path of the camera to scale: from the side, from above, and in figures. */
import { useMemo } from 'react';
import type { Plan } from '../../engine/plan/schema.ts';
import type { Schedule } from '../../engine/schedule-types.ts';
import type { Reading } from '../charts/chart.ts';
import { cursorIndex, frameMoment } from '../charts/cursor.ts';
import { Readings } from '../charts/Readings.tsx';
import { useWidth } from '../charts/useWidth.ts';
import { withUnit } from '../format/numbers.ts';
import { SavePicture } from '../picture/SavePicture.tsx';
import { scaleBarMm } from '../sections/paneDrawing.ts';
import { drawnCamera, type RigDrawing, rigDrawing } from './drawing.ts';
import { imageReadings, imageReadingsAt, pathReadings, pathText, standingReadings } from './pathReadings.ts';
import { RigPlate } from './RigPlate.tsx';
import { type DrawnRig, drawnRig } from './standing.ts';
import '../charts/charts.css';
import '../styles/rig.css';

interface Props {
  schedule: Schedule;
  plan: Plan;
  /** Frame under the cursor, counted from 0; null for the tightest. */
  cursor: number | null;
  onCursor: (index: number | null) => void;
}

/** Narrower, the figures stand under the drawing. */
const WIDE_PX = 640;
const FIGURES_PX = 258;
const PADDING_PX = 32;

export function PathPanel({ schedule, plan, cursor, onCursor }: Props) {
  const [ref, width] = useWidth<HTMLDivElement>();
  const { columns } = schedule;
  const { axes } = columns;
  const { path, image, balance } = schedule.rig;
  const rearMm = balance?.arm && balance.arm.counterweightKg > 0 ? balance.arm.counterweightMm : null;
  const rig = useMemo(() => drawnRig(plan, axes, rearMm), [plan, axes, rearMm]);
  const sheetPx = Math.max(240, width - PADDING_PX - (width >= WIDE_PX ? FIGURES_PX : 0));
  const drawing = useMemo(() => rigDrawing(rig, path, sheetPx), [rig, path, sheetPx]);
  const index = cursorIndex(schedule, cursor);
  return (
    <section className="chart-panel path-panel" aria-labelledby="path-heading">
      <header>
        <h2 id="path-heading">Camera path</h2>
        <p>To scale. Solid is the first frame, dashed the last; the frame under the cursor is filled.</p>
        <SavePicture of="Camera path" sentence="To scale: solid is the first frame, dashed the last" />
      </header>
      <div ref={ref} className={width >= WIDE_PX ? 'path-body path-wide' : 'path-body'}>
        {width > 0 && <Drawing {...{ rig, drawing, index }} label={pathText(plan, path)} />}
        <div className="path-figures">
          {path && <Figures title="The whole move" readings={pathReadings(path)} />}
          {image && <Figures title="In the picture, most a frame" readings={imageReadings(image)} />}
          <FrameSlider {...{ schedule, index, onCursor }} />
          <Readings readings={[...standingReadings(rig.at(index)), ...imageReadingsAt(columns, index)]} />
        </div>
      </div>
    </section>
  );
}

const Figures = ({ title, readings }: { title: string; readings: readonly Reading[] }) =>
  readings.length > 0 && (
    <div>
      <h3>{title}</h3>
      <Readings readings={readings} />
    </div>
  );

interface DrawingProps {
  rig: DrawnRig;
  drawing: RigDrawing;
  index: number;
  label: string;
}

function Drawing({ rig, drawing: { layout, plates }, index, label }: DrawingProps) {
  const standing = rig.at(index);
  const isEnd = index === 0 || index === rig.last.index;
  return (
    <svg width={layout.width} height={layout.height + SCALE_PX} role="img" aria-label={label}>
      {plates.map((plate) => {
        const camera = isEnd ? null : drawnCamera(plate.view, rig, standing);
        return (
          <RigPlate
            key={plate.view.id}
            plate={plate}
            now={camera && { camera, name: `Frame ${index + 1}` }}
          />
        );
      })}
      <ScaleBar pxPerMm={layout.pxPerMm} y={layout.height} />
    </svg>
  );
}

/** Room under the views for the scale bar. */
const SCALE_PX = 18;
/** The scale bar is a quarter of this at most. */
const BAR_OF_PX = 480;

function ScaleBar({ pxPerMm, y }: { pxPerMm: number; y: number }) {
  const mm = scaleBarMm({ width: BAR_OF_PX, unitsPerMm: pxPerMm });
  const text = mm < 1000 ? withUnit(String(mm), 'mm') : withUnit(String(mm / 1000), 'm');
  return (
    <>
      <path className="rig-dimension" d={`M.5 ${y + 2}v8h${mm * pxPerMm}v-8`} />
      <text x={mm * pxPerMm + 8} y={y + 12}>
        {text}
      </text>
    </>
  );
}

interface SliderProps {
  schedule: Schedule;
  index: number;
  onCursor: (index: number) => void;
}

/** The run's cursor once more, beside what it moves. */
function FrameSlider({ schedule, index, onCursor }: SliderProps) {
  const frames = schedule.columns.elapsedS.length;
  return (
    <label className="path-frame">
      <span>
        <b>At the cursor</b>
        <span>
          frame <span className="chart-figure">{index + 1}</span> of {frames}
        </span>
      </span>
      <input
        type="range"
        min={1}
        max={frames}
        value={index + 1}
        disabled={frames === 1}
        aria-label="Frame of the camera path"
        aria-valuetext={`Frame ${index + 1}, ${frameMoment(schedule, index)}`}
        onChange={(event) => onCursor(Number(event.target.value) - 1)}
      />
    </label>
  );
}
