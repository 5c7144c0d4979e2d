/** A neutral-density filter by its stops, or by the density that is engraved on it. */
import { useState } from 'react';
import { densityOfStops, factorName, filterStopsOfDensity } from '../../engine/exposure/filters.ts';
import { EntryBox } from '../fields/EntryBox.tsx';
import { enter } from '../fields/entry.ts';
import { NumberField } from '../fields/NumberField.tsx';
import { numberText, readNumber } from '../format/numbers.ts';
import { setDraft } from '../store/drafts.ts';
import { endGesture, usePlan } from '../store/plan.ts';

const PATH = 'exposure.filterStops';

/** To a tenth of a stop, as closely as filters are made: density 0.9 is sold as three stops. */
function enterDensity(text: string): string | null {
  const density = readNumber(text);
  if (density === null) return 'Not a number. Allowed: a density from 0 to 9, such as 0.9.';
  setDraft(PATH, null);
  return enter(PATH, Number(filterStopsOfDensity(density).toFixed(1)));
}

function Density() {
  const stops = usePlan((plan) => plan.exposure.filterStops);
  const [text, setText] = useState<string | null>(null);
  const [error, setError] = useState<string | null>(null);
  const leave = () => {
    endGesture();
    if (error === null) setText(null);
  };
  return (
    <EntryBox
      label="Or its density"
      hint={`As engraved: 0.3, 0.9, 1.8, 3.0. The present filter is also named ${factorName(stops)}.`}
      text={text ?? numberText(densityOfStops(stops), 1)}
      error={error}
      onText={(typed) => {
        setText(typed);
        setError(enterDensity(typed));
      }}
      onLeave={leave}
      onRestore={() => {
        setText(null);
        setError(null);
      }}
    />
  );
}

export function FilterFields() {
  return (
    <>
      <NumberField path={PATH} />
      <Density />
    </>
  );
}
