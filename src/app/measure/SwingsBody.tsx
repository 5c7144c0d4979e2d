import { type KeyboardEvent, useState } from 'react';
import { numberText, plural, withUnit } from '../format/numbers.ts';
import { Caution } from '../sections/parts.tsx';
import {
  BETWEEN,
  COUNTED,
  dyingError,
  FIRST,
  LATER,
  SECONDS,
  swingsDamping,
  swingsHz,
  tapped,
} from './figures.ts';
import type { SwingsProps } from './Helpers.tsx';
import { FrequencyResult, Result, secondsText, useEntry } from './parts.tsx';

// A key that is held down repeats: it is one tap.
const onlyFirst = (event: KeyboardEvent) => {
  if (event.repeat) event.preventDefault();
};

/** A tap at each swing counts and times them. */
function Taps({ onTaps }: { onTaps: (swings: number, seconds: number) => void }) {
  const [taps, setTaps] = useState<readonly number[]>([]);
  const tap = (timeMs: number) => {
    const next = [...taps, timeMs];
    const counted = tapped(next);
    setTaps(next);
    if (counted) onTaps(counted.swings, counted.seconds);
  };
  const counted = tapped(taps);
  return (
    <div className="row w2 timing">
      <button type="button" className="btn" onKeyDown={onlyFirst} onClick={(event) => tap(event.timeStamp)}>
        Tap at each swing
      </button>
      <span className="m" aria-hidden="true">
        {taps.length > 0 && plural(counted?.swings ?? 0, 'swing')}
        {counted && `, ${secondsText(counted.seconds, 2)}`}
      </span>
      {taps.length > 0 && (
        <button type="button" className="btn" onClick={() => setTaps([])}>
          Count again
        </button>
      )}
    </div>
  );
}

/** Frequency from swings counted over a time. */
function Frequency({ onTake }: SwingsProps) {
  const [counted, took] = [useEntry(COUNTED), useEntry(SECONDS)];
  const onTaps = (swings: number, seconds: number) => {
    counted.set(String(swings));
    took.set(String(seconds));
  };
  const frequencyHz =
    counted.value === null || took.value === null ? null : swingsHz(counted.value, took.value);
  return (
    <>
      <Taps onTaps={onTaps} />
      {counted.box()}
      {took.box()}
      <FrequencyResult
        measure="swings"
        numbers={[counted.value ?? 0, took.value ?? 0]}
        {...{ frequencyHz, onTake }}
      />
    </>
  );
}

/** Damping from how fast the swings die away. */
function Damping({ onTake }: SwingsProps) {
  const [first, later, between] = [useEntry(FIRST), useEntry(LATER), useEntry(BETWEEN)];
  const wrong = dyingError(first.value, later.value);
  const known = wrong === null && first.value !== null && later.value !== null && between.value !== null;
  const dampingRatio = known ? swingsDamping(first.value ?? 0, later.value ?? 0, between.value ?? 1) : null;
  return (
    <>
      <p className="hint">
        How far it dies away: film it against the ruler, and read how far one swing goes from rest, and how
        far a later one does. From the first to the sixth there are five between.
      </p>
      {first.box()}
      {later.box(wrong)}
      {between.box()}
      {dampingRatio !== null && (
        <Result
          title="Damping ratio"
          measure="decay"
          numbers={[first.value ?? 0, later.value ?? 0, between.value ?? 0]}
          text={withUnit(numberText(dampingRatio * 100, 3), '%')}
          onTake={() => onTake({ dampingRatio })}
        />
      )}
    </>
  );
}

/** Frequency and damping from swings that are counted. */
export function SwingsBody({ onTake }: SwingsProps) {
  return (
    <>
      <p className="hint">
        With the payload on, push the tip a few millimetres and let go. One swing is there and back: count
        each time it comes to the same side. Tap along from the first, or film it and count what is too fast
        to tap.
      </p>
      <Caution>
        Let go and keep your hand off the arm while it swings. Nobody under it or within its reach; payload
        and counterweight tethered.
      </Caution>
      <Frequency onTake={onTake} />
      <Damping onTake={onTake} />
    </>
  );
}
