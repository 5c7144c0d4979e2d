import { exposureBytes } from '../../engine/storage/storage.ts';
import { Flag, Segments } from '../fields/ChoiceField.tsx';
import { enterAll } from '../fields/entry.ts';
import { NumberField } from '../fields/NumberField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { bytesText } from '../format/bytes.ts';
import { FromKit, KeepLine } from '../kit/FromKit.tsx';
import { TimedWriteHelper, type TimedWriteProps } from '../measure/Helpers.tsx';
import { endGesture, usePlan, useSchedule } from '../store/plan.ts';
import { Facts, More } from './parts.tsx';
import { TestFrameDrop } from './TestFrameDrop.tsx';
import { ViewFields } from './ViewFields.tsx';

/** Measured size of a frame; while there is none, the one worked out stands in its place. */
function FrameSize() {
  const { frameBytes } = useSchedule().totals;
  return <NumberField path="camera.frameBytes" workedOut={frameBytes} />;
}

function FrameTotal() {
  const size = { text: bytesText(useSchedule().totals.frameBytes), of: 'totals.frameBytes' };
  return <Facts of={[[size, ' a frame, all its exposures together.']]} />;
}

const GEAR = ['camera', 'lens', 'trigger'] as const;

const takeWrite: TimedWriteProps['onTake'] = (values) => {
  endGesture();
  return enterAll([
    'writeS' in values
      ? ['camera.writeS', values.writeS]
      : [`storage.cards.${values.card}.writeBytesPerS`, values.writeBytesPerS],
  ]);
};

function TimedWrite() {
  const frameBytes = usePlan(exposureBytes);
  const cards = usePlan((plan) => plan.storage.cards);
  return (
    <TimedWriteHelper frameBytes={frameBytes} cards={cards.map(({ name }) => name)} onTake={takeWrite} />
  );
}

/** Camera and trigger: what they take, how long, how much. */
export function CameraBody() {
  return (
    <>
      <div className="row w2">
        <FromKit kinds={GEAR} />
        <KeepLine kinds={GEAR} />
      </div>
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
      <TimedWrite />
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
