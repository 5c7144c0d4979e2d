/** Frames done and left, as teeth; what a hand has to do stands above them. Drawn again only with a new tooth. */
import { memo } from 'react';

const WIDTH = 1000;
const TEETH = 96;
const [TALL, SHORT, TOP, HEIGHT] = [26, 16, 14, 42];

interface DoneCombProps {
  /** Teeth that are done, and all. */
  done: number;
  all: number;
  /** Shares of the run at which a hand has to do something. */
  marks: readonly number[];
}

const tooth = (n: number, all: number, height: number): string =>
  `M${((n + 0.5) / all) * WIDTH} ${HEIGHT}v-${height}`;

const Teeth = memo(function Teeth({ done, all, marks }: DoneCombProps) {
  const teeth = Array.from({ length: all }, (_, n) => n);
  const path = (from: number, to: number, height: number) =>
    teeth
      .slice(from, to)
      .map((n) => tooth(n, all, height))
      .join('');
  return (
    <svg className="on-comb" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} preserveAspectRatio="none" aria-hidden="true">
      <path className="done" d={path(0, done, TALL)} />
      <path className="left" d={path(done, all, SHORT)} />
      {marks.map((share) => (
        <path key={share} className="mark" d={`M${share * WIDTH - 9} 2h18l-9 ${TOP - 4}z`} />
      ))}
    </svg>
  );
});

/** @param frames - of the run; `begun` of them are shot or being shot */
export function DoneComb({
  begun,
  frames,
  marks,
}: {
  begun: number;
  frames: number;
  marks: readonly number[];
}) {
  const all = Math.max(1, Math.min(TEETH, frames));
  const done = frames > 0 ? Math.floor((begun / frames) * all) : 0;
  return <Teeth done={done} all={all} marks={marks} />;
}
