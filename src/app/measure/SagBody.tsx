import { Caution } from '../sections/parts.tsx';
import { SAG, sagHz } from './figures.ts';
import type { SagProps } from './Helpers.tsx';
import { FrequencyResult, useEntry } from './parts.tsx';

/** Frequency from the sag that the payload adds. */
export function SagBody({ onTake }: SagProps) {
  const sag = useEntry(SAG);
  const frequencyHz = sag.value === null ? null : sagHz(sag.value);
  return (
    <>
      <p className="hint">
        Lock the arm at its pivot, so that it only bends. Hold a ruler to its tip and read the height; hang
        the payload on and read again. What counts is how much lower the tip is with it than without.
      </p>
      {sag.box()}
      <Caution>
        Without its payload a balanced arm swings up: take the counterweight off first, or have someone hold
        the arm, before anything comes off or goes on. Nobody under it, fingers clear of the pivot.
      </Caution>
      <FrequencyResult measure="sag" numbers={[sag.value ?? 0]} {...{ frequencyHz, onTake }} />
    </>
  );
}
