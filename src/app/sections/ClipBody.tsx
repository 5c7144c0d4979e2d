import { NumberField } from '../fields/NumberField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { COMMON_RATES, rateText, readRate } from '../format/rate.ts';
import { Crossing } from './Crossing.tsx';
import { More } from './parts.tsx';

/** The finished footage: rate, size, handles, holds. */
export function ClipBody() {
  return (
    <>
      <TextField path="clip.frameRate" list="rates" read={readRate} show={rateText} />
      <datalist id="rates">
        {COMMON_RATES.map((rate) => (
          <option key={rate} value={rateText(rate)} />
        ))}
      </datalist>
      <NumberField path="clip.handlesFrames" />
      <NumberField path="clip.widthPx" plain />
      <NumberField path="clip.heightPx" plain />
      <NumberField path="clip.holdFrames" />
      <More title="Interval for a subject that crosses the frame">
        <Crossing />
      </More>
    </>
  );
}
