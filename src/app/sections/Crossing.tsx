/** 'It crosses the frame in T real seconds and should take s on screen': which interval that asks for. */
import { useState } from 'react';
import { crossingIntervalS } from '../../engine/pacing/pacing.ts';
import { EntryBox } from '../fields/EntryBox.tsx';
import { durationText, readDuration } from '../format/durations.ts';
import { enterFigure } from '../store/pacingEdits.ts';
import { endGesture, usePlan, useSchedule } from '../store/plan.ts';
import { Pieces } from '../working/Pieces.tsx';
import { Refusal } from './parts.tsx';

const secondsOf = (text: string): number | null => {
  const seconds = readDuration(text);
  return seconds !== null && seconds > 0 ? seconds : null;
};

const wrong = (text: string): string | null =>
  text !== '' && secondsOf(text) === null ? 'Not a length of time. Allowed: more than 0 s.' : null;

export function Crossing() {
  const [real, setReal] = useState('2 min');
  const [screen, setScreen] = useState('3 s');
  const [refused, setRefused] = useState<string | null>(null);
  const rate = useSchedule().totals.frameRate;
  const holdFrames = usePlan((plan) => plan.clip.holdFrames);
  const [realS, screenS] = [secondsOf(real), secondsOf(screen)];
  const intervalS = realS && screenS ? crossingIntervalS(realS, screenS, rate / holdFrames) : null;
  const of = `measure.crossing.${realS}:${screenS}:${rate / holdFrames}.intervalS`;
  const use = () => {
    if (intervalS === null) return;
    endGesture();
    setRefused(enterFigure('interval', Number(intervalS.toPrecision(6))));
    endGesture();
  };
  return (
    <>
      <EntryBox label="Crosses the frame in" text={real} error={wrong(real)} onText={setReal} />
      <EntryBox label="Should take on screen" text={screen} error={wrong(screen)} onText={setScreen} />
      <p className="w2 outcome" role="status">
        {intervalS === null ? (
          'Give both times.'
        ) : (
          <Pieces pieces={['Interval ', { text: durationText(intervalS, 3), of }]} />
        )}
      </p>
      <button type="button" className="btn" disabled={intervalS === null} onClick={use}>
        Use it
      </button>
      <Refusal text={refused} />
    </>
  );
}
