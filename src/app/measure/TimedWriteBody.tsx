import { useId, useState } from 'react';
import { Select } from '../fields/ChoiceField.tsx';
import { FieldFrame } from '../fields/FieldFrame.tsx';
import { bytesText } from '../format/bytes.ts';
import { bytesPerSOf, FRAMES, SECONDS, writeSOf } from './figures.ts';
import type { TimedWriteProps } from './Helpers.tsx';
import { Result, StopWatch, secondsText, useEntry } from './parts.tsx';

function WhichCard({
  cards,
  card,
  onCard,
}: {
  cards: readonly string[];
  card: number;
  onCard: (card: number) => void;
}) {
  const id = useId();
  if (cards.length < 2) return null;
  return (
    <FieldFrame id={id} label="Card in the camera">
      {() => (
        <Select
          id={id}
          value={String(card)}
          options={cards.map((text, index) => ({ value: String(index), text }))}
          onChoose={(index) => onCard(Number(index))}
        />
      )}
    </FieldFrame>
  );
}

/** Write time of the camera and rate of the card from frames that are timed. */
export function TimedWriteBody({ onTake, frameBytes, cards, camera = true }: TimedWriteProps) {
  const [frames, took] = [useEntry(FRAMES), useEntry(SECONDS)];
  const [card, setCard] = useState(0);
  const name = cards[card];
  const known = frames.value !== null && took.value !== null ? { n: frames.value, s: took.value } : null;
  const writeS = known && writeSOf(known.n, known.s);
  const writeBytesPerS = known && bytesPerSOf(known.n, known.s, frameBytes);
  return (
    <>
      <p className="hint">
        With a short shutter time, take frames as fast as the camera will, more than its buffer holds. Start
        at the first; stop when the card lamp has gone out after the last.
      </p>
      <StopWatch onStop={(seconds) => took.set(seconds.toFixed(2))} />
      {frames.box()}
      {took.box()}
      <WhichCard cards={cards} card={card} onCard={setCard} />
      {camera && writeS !== null && (
        <Result
          title="Write"
          text={`${secondsText(writeS, 3)} a frame`}
          measure="write"
          numbers={[known?.n ?? 0, known?.s ?? 0]}
          onTake={() => onTake({ writeS })}
        />
      )}
      {name !== undefined && writeBytesPerS !== null && (
        <Result
          title={`${name} writes`}
          text={`${bytesText(writeBytesPerS)}/s, at ${bytesText(frameBytes)} a frame`}
          measure="card"
          numbers={[known?.n ?? 0, known?.s ?? 0, frameBytes]}
          onTake={() => onTake({ writeBytesPerS, card })}
        />
      )}
    </>
  );
}
