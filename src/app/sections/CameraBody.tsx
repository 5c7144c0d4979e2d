import { Flag, Segments } from '../fields/ChoiceField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { bytesText } from '../format/bytes.ts';
import { useSchedule } from '../store/plan.ts';
import { More } from './parts.tsx';
import { TestFrameDrop } from './TestFrameDrop.tsx';
import { ViewFields } from './ViewFields.tsx';

/** Measured size of a frame; while there is none, the one worked out stands in its place. */
function FrameSize() {
  const { frameBytes } = useSchedule().totals;
  return <NumberField path="camera.frameBytes" workedOut={frameBytes} />;
}

function FrameTotal() {
  return (
    <p className="hint">{bytesText(useSchedule().totals.frameBytes)} a frame, all its exposures together.</p>
  );
}

/** Camera and trigger: what they take, how long, how much. */
export function CameraBody() {
  return (
    <>
      <TextField path="camera.name" label="Camera" />
      <TextField path="trigger.name" label="Trigger" />
      <NumberField path="camera.shutterLagS" />
      <NumberField path="camera.writeS" />
      <Segments path="trigger.counts" label="Trigger counts" />
      <NumberField path="trigger.stepS" />
      <NumberField path="trigger.minS" />
      <NumberField path="trigger.maxS" />
      <NumberField path="camera.bufferBytes" />
      <FrameSize />
      <FrameTotal />
      <TestFrameDrop />
      <NumberField path="camera.focalLengthMm" />
      <ViewFields />
      <More title="Sensor">
        <NumberField path="camera.sensorWidthMm" />
        <NumberField path="camera.sensorHeightMm" />
      </More>
      <More title="Frame size from pixels">
        <NumberField path="camera.imageWidthPx" plain />
        <NumberField path="camera.imageHeightPx" plain />
        <NumberField path="camera.bitsPerPixel" />
        <NumberField path="camera.compression" />
      </More>
      <More title="How the shutter keeps time">
        <Flag path="camera.exactStops" />
        <NumberField path="camera.shutterCorrection" />
      </More>
    </>
  );
}
