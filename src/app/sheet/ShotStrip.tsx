/** The production in figures: seconds times rate are frames, on so many are exposures, times minutes are hours. */
import type { ReactNode } from 'react';
import { durationParts, type Part } from '../format/durations.ts';
import { numberText, plural } from '../format/numbers.ts';
import { rateText } from '../format/rate.ts';
import { ArrowRight, StandingIcon } from '../icons.tsx';
import { How } from '../working/How.tsx';
import { Pieces } from '../working/Pieces.tsx';
import type { Piece } from '../working/sentence.ts';
import { writeOut } from './commands.ts';
import { SheetWhen } from './SheetWhen.tsx';
import type { Sheeted } from './sheeted.ts';
import { standingOf, statusPieces, workParts } from './words.ts';

interface FigureProps {
  parts: readonly Part[];
  label: string;
  /** Name of its working. */
  of: string;
  note?: Piece | undefined;
  sign?: ReactNode;
  out?: boolean;
}

const Figure = ({ parts, label, of, note, sign, out }: FigureProps) => (
  <div className={`fig${out ? ' out' : ''}`}>
    {sign}
    <p
      className={`n${parts.reduce((sum, { number, unit }) => sum + number.length + unit.length, 0) > 8 ? ' small' : ''}`}
    >
      {parts.map(({ number, unit }) => (
        <span key={unit}>
          {number}
          {unit && <u>{unit}</u>}
        </span>
      ))}
    </p>
    <p className="l">
      <How of={of} what={label}>
        <b>{label}</b>
      </How>
      {note && (
        <span>
          <Pieces pieces={[note]} />
        </span>
      )}
    </p>
  </div>
);

const Sign = ({ children }: { children: ReactNode }) => (
  <span className="op" aria-hidden="true">
    {children}
  </span>
);

const count = (value: number): Part[] => [{ number: numberText(value), unit: '' }];

/** `on twos` if all is; else that it is mixed. */
function holdsOf({ sheet }: Sheeted): string {
  const texts = new Set(sheet.actions.map(({ holdsText }) => holdsText));
  const [only] = texts;
  return texts.size === 1 && only && only.length < 16 ? only : 'mixed holds';
}

function secondsOf({ plan, sheet }: Sheeted): number {
  const [num = 24, den = 1] = plan.clip.frameRate.split('/').map(Number);
  return (sheet.frames * den) / num;
}

function Figures({ of }: { of: Sheeted }) {
  const { plan, sheet } = of;
  const { totals, exposures, shots } = sheet;
  const eachMin = exposures === 0 ? 0 : totals.workMin / exposures;
  const passes = plan.sheet.passes.length;
  const arrow = (
    <Sign>
      <ArrowRight />
    </Sign>
  );
  return (
    <>
      <Figure
        parts={durationParts(secondsOf(of), secondsOf(of) < 60 ? 2 : 0)}
        label={shots.length === 1 ? 'Shot' : plural(shots.length, 'shot')}
        of="sheet.screenS"
        note="on screen"
      />
      <Figure
        parts={[{ number: rateText(plan.clip.frameRate), unit: 'fps' }]}
        label="Frame rate"
        of="totals.frameRate"
        sign={<Sign>×</Sign>}
      />
      <Figure parts={count(sheet.frames)} label="Frames" of="sheet.frames" sign={arrow} />
      <Figure
        parts={count(exposures)}
        label="Exposures"
        of="sheet.exposures"
        note={holdsOf(of)}
        sign={arrow}
      />
      <Figure
        parts={workParts(eachMin)}
        label="Each"
        of="sheet.eachMin"
        note={`${passes > 1 ? `${plural(passes, 'pass', 'passes')}, ` : ''}set-ups shared out`}
        sign={<Sign>×</Sign>}
      />
      <Figure
        parts={workParts(totals.workMin)}
        label="Work"
        of="sheet.workMin"
        note={{ text: plural(sheet.days.length, 'day'), of: 'sheet.days' }}
        sign={arrow}
        out
      />
    </>
  );
}

const MOST_TEETH = 72;

/** One tooth an exposure, or for as many as there is room. */
function DoneComb({ done, all }: { done: number; all: number }) {
  const teeth = Math.min(MOST_TEETH, all);
  const filled = all === 0 ? 0 : Math.round((done / all) * teeth);
  const x = (n: number) => n * 4 + 2;
  const path = (from: number, to: number, top: number, bottom: number) =>
    Array.from({ length: Math.max(0, to - from) }, (_, n) => `M${x(from + n)} ${top}V${bottom}`).join('');
  return (
    <svg
      className="done-comb"
      width={x(teeth)}
      height="18"
      role="img"
      aria-label={`${done} of ${all} exposures done`}
    >
      <path d={path(0, filled, 2, 16)} stroke="var(--ink)" strokeWidth="2" />
      {filled < teeth && <path d={path(filled, filled + 1, 0, 18)} stroke="var(--act)" strokeWidth="3" />}
      <path d={path(filled + 1, teeth, 6, 12)} stroke="var(--edge)" strokeWidth="1.2" />
    </svg>
  );
}

export function ShotStrip({ of }: { of: Sheeted }) {
  const { plan, sheet } = of;
  const standing = standingOf(of);
  return (
    <section className="strip shot-strip" aria-label="Production">
      <div className="row">
        <div className="five">
          <div className="figs">
            <Figures of={of} />
          </div>
        </div>
        <SheetWhen of={of} />
      </div>
      {plan.sheet.shots.length === 0 && (
        <p className="stands">
          The plan’s clip stands here as one action of {plural(sheet.exposures, 'exposure')}. It follows the
          clip until you write it out or edit a row.
          <button type="button" className="btn" onClick={writeOut}>
            Write it out
          </button>
        </p>
      )}
      <div className="verdict">
        <span className={`sev ${standing}`}>
          <StandingIcon standing={standing} />
        </span>
        <p role="status">
          <Pieces pieces={statusPieces(of)} />
        </p>
        <span className="r">
          <DoneComb done={sheet.totals.done} all={sheet.exposures} />
        </span>
      </div>
    </section>
  );
}
