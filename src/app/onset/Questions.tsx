/** Started late, frames lost, stopped early: one question each, then how to go on. */
import { type ReactNode, useMemo, useState } from 'react';
import { optionsOf, outcomeOf } from '../../engine/onset/outcome.ts';
import { KEEPS, type Keep } from '../../engine/onset/rest.ts';
import { lastOpensMs, madeOf, opensMs } from '../../engine/onset/stretch.ts';
import { startFor } from '../../engine/schedule.ts';
import { isoIn } from '../../engine/time/clock.ts';
import { readClock } from '../format/clock.ts';
import { plural } from '../format/numbers.ts';
import { Ask } from './Ask.tsx';
import { Consequences, chosenOf, Options } from './Options.tsx';
import { givenAt, goneOn, type Now, type Shoot, type Slip, started, stoppedAfter } from './shoot.ts';
import { clockNow, happen } from './store.ts';
import { clockText, keepTitle, lateText, lostText } from './words.ts';

export interface QuestionProps {
  shoot: Shoot;
  now: Now;
  onClose: () => void;
}

/** A choice among few, large enough for a glove. */
function Choice<T>({
  value,
  chosen,
  onChoose,
  children,
}: {
  value: T;
  chosen: T;
  onChoose: (value: T) => void;
  children: ReactNode;
}) {
  return (
    <button
      type="button"
      className="btn on-choice"
      aria-pressed={value === chosen}
      onClick={() => onChoose(value)}
    >
      {children}
    </button>
  );
}

/** The options of a slip, worked out again with every frame, and the button that accepts one. */
function GoOn({
  shoot,
  now,
  slip,
  first,
  what,
  unread,
  onClose,
}: QuestionProps & {
  slip: Slip;
  first: Keep;
  /** For the log. */
  what: string;
  /** What was typed is none: nothing is accepted that was not meant. */
  unread: boolean;
}) {
  const [asked, setAsked] = useState(first);
  const { begun, nowMs } = now;
  // biome-ignore lint/correctness/useExhaustiveDependencies: of the instant only the frame counts
  const all = useMemo(() => optionsOf(givenAt(shoot, slip, nowMs)), [shoot, slip, begun]);
  // In a pause the rest is planned when it is over.
  const options = now.phase === 'paused' ? all.filter(({ keep: one }) => one === first) : all;
  const keep = chosenOf(options, asked);
  const accept = () => {
    const next = keep && goneOn(shoot, slip, keep, clockNow());
    if (next && keep) happen(next, 'replanned', `${what}: ${keepTitle(keep, slip.kind).toLowerCase()}`);
    onClose();
  };
  return (
    <>
      <Options
        options={options}
        slip={slip.kind}
        shoot={shoot}
        now={now}
        lost={shoot.lost + (slip.kind === 'lost' ? slip.frames : 0)}
        keep={keep ?? KEEPS[0] ?? first}
        onKeep={setAsked}
      />
      <button type="button" className="btn main on-big" disabled={keep === null || unread} onClick={accept}>
        Go on like this
      </button>
    </>
  );
}

const AGO_MIN = [1, 2, 5] as const;

/** A clock typed, as the instant nearest to the present one. */
function typedMs(text: string, shoot: Shoot, nowMs: number): number | null {
  const time = readClock(text);
  if (time === null) return null;
  const { plan } = shoot;
  const date = isoIn(nowMs, plan.place).slice(0, 10);
  const start = { ...plan.start, tiedTo: 'clock' as const, date, time };
  const { startMs } = startFor({ ...plan, start });
  return startMs > nowMs ? startMs - 86_400_000 : startMs;
}

/** When did frame 1 fire? */
export function StartedLate({ shoot, now, onClose }: QuestionProps) {
  const noted = shoot.stretches[0]?.startMs ?? null;
  const [openedMs] = useState(now.nowMs);
  const [startMs, setStartMs] = useState(noted ?? openedMs);
  const [typed, setTyped] = useState('');
  const { place } = shoot.plan;
  const lateS = (startMs - startFor(shoot.plan).startMs) / 1000;
  const slip = useMemo<Slip>(() => ({ kind: 'late', startMs }), [startMs]);
  const type = (text: string) => {
    setTyped(text);
    const ms = typedMs(text, shoot, now.nowMs);
    if (ms !== null) setStartMs(ms);
  };
  const unread = typed !== '' && typedMs(typed, shoot, now.nowMs) === null;
  const choose = (ms: number) => {
    setTyped('');
    setStartMs(ms);
  };
  return (
    <Ask title="When did frame 1 fire?" onClose={onClose}>
      <div className="on-choices">
        {noted !== null && (
          <Choice value={noted} chosen={startMs} onChoose={choose}>
            As noted, {clockText(noted, place)}
          </Choice>
        )}
        <Choice value={openedMs} chosen={startMs} onChoose={choose}>
          Now
        </Choice>
        {AGO_MIN.map((minutes) => (
          <Choice key={minutes} value={openedMs - minutes * 60_000} chosen={startMs} onChoose={choose}>
            {minutes} min ago
          </Choice>
        ))}
        <label className="on-typed">
          At
          <input
            value={typed}
            inputMode="numeric"
            placeholder={clockText(startMs, place)}
            aria-invalid={unread}
            onChange={({ target }) => type(target.value)}
          />
        </label>
      </div>
      {unread && <p className="err">Not a clock time: such as 20:36 or 20:36:10.</p>}
      <p role="status">
        Frame 1 at {clockText(startMs, place)}: {lateText(lateS)}.
      </p>
      <GoOn
        shoot={shoot}
        now={now}
        slip={slip}
        first="clipAndInterval"
        what={`Frame 1 fired at ${clockText(startMs, place)}, ${lateText(lateS)}`}
        unread={unread}
        onClose={onClose}
      />
    </Ask>
  );
}

const COUNTS = [1, 2, 3, 5] as const;

/** A whole number from 1 typed; null for anything else. */
const wholeOf = (text: string, most: number): number | null => {
  const value = /^\d{1,7}$/.test(text.trim()) ? Number(text) : 0;
  return value >= 1 && value <= most ? value : null;
};

/** How many frames were lost? */
export function LostFrames({ shoot, now, onClose }: QuestionProps) {
  const [frames, setFrames] = useState<number>(1);
  const [typed, setTyped] = useState('');
  const slip = useMemo<Slip>(() => ({ kind: 'lost', frames }), [frames]);
  const type = (text: string) => {
    setTyped(text);
    setFrames(wholeOf(text, now.begun) ?? frames);
  };
  const unread = typed !== '' && wholeOf(typed, now.begun) === null;
  const choose = (count: number) => {
    setTyped('');
    setFrames(count);
  };
  return (
    <Ask title="How many frames were lost?" onClose={onClose}>
      <div className="on-choices">
        {COUNTS.map((count) => (
          <Choice key={count} value={count} chosen={frames} onChoose={choose}>
            {count}
          </Choice>
        ))}
        <label className="on-typed">
          Or
          <input
            value={typed}
            inputMode="numeric"
            aria-invalid={unread}
            onChange={({ target }) => type(target.value)}
          />
        </label>
      </div>
      {unread && <p className="err">Allowed: 1 to {now.begun}, the frames shot so far.</p>}
      <GoOn
        shoot={shoot}
        now={now}
        slip={slip}
        first="endAndInterval"
        what={`${lostText(frames)} by frame ${now.begun}`}
        unread={unread}
        onClose={onClose}
      />
    </Ask>
  );
}

/** After which frame does it stop? */
export function StopEarly({ shoot, now, onClose }: QuestionProps) {
  const [frame, setFrame] = useState(now.begun);
  const [typed, setTyped] = useState('');
  const after = Math.min(now.frames, Math.max(now.begun, frame));
  const cut = useMemo(() => stoppedAfter(shoot, after), [shoot, after]);
  const of = shoot.stretches.at(-1);
  const stretch = cut.stretches.at(-1);
  const outcome = useMemo(() => {
    if (!of || !stretch) return null;
    const happened = { shot: 0, nextMs: opensMs(madeOf(of), 0), endMs: lastOpensMs(of), more: 0 };
    const given = { plan: shoot.plan, of, was: of, lost: shoot.lost, happened };
    return { keep: KEEPS[0] ?? 'clipAndInterval', ...outcomeOf(given, stretch) };
  }, [of, stretch, shoot]);
  const type = (text: string) => {
    setTyped(text);
    setFrame(wholeOf(text, now.frames) ?? now.begun);
  };
  const unread = typed !== '' && (wholeOf(typed, now.frames) ?? 0) < now.begun;
  const thisOne = () => {
    setTyped('');
    setFrame(now.begun);
  };
  const stop = () => {
    happen(cut, 'stopped', `Stopped after frame ${after}`);
    onClose();
  };
  const left = now.frames - after;
  return (
    <Ask title="After which frame does it stop?" onClose={onClose}>
      <div className="on-choices">
        <Choice value={now.begun} chosen={after} onChoose={thisOne}>
          This one, {now.begun}
        </Choice>
        <label className="on-typed">
          Frame
          <input
            value={typed}
            inputMode="numeric"
            aria-invalid={unread}
            onChange={({ target }) => type(target.value)}
          />
        </label>
      </div>
      {unread && (
        <p className="err">
          Allowed: {now.begun}, the one under way, to {now.frames}.
        </p>
      )}
      <p role="status">
        After frame {after}: {plural(left, 'frame')} of the plan will not be shot. The rig stops where that
        frame has it.
      </p>
      {outcome && <Consequences option={outcome} shoot={shoot} now={now} lost={shoot.lost} />}
      <button type="button" className="btn main on-big" disabled={unread} onClick={stop}>
        Stop after frame {after}
      </button>
    </Ask>
  );
}

/** While paused: how to go on, and the frame that fires when it does. */
export function Resume({ shoot, now }: Pick<QuestionProps, 'shoot' | 'now'>) {
  const [asked, setAsked] = useState<Keep>('clipAndInterval');
  const slip = useMemo<Slip>(() => ({ kind: 'paused' }), []);
  // What it comes to depends on the moment: often enough is every ten seconds.
  const tens = Math.floor(now.nowMs / 10_000);
  const options = useMemo(() => optionsOf(givenAt(shoot, slip, tens * 10_000)), [shoot, slip, tens]);
  const keep = chosenOf(options, asked);
  const resume = () => {
    const next = keep && goneOn(shoot, slip, keep, clockNow());
    if (next && keep)
      happen(
        next,
        'resumed',
        `Resumed with frame ${now.begun + 1}: ${keepTitle(keep, 'paused').toLowerCase()}`,
      );
  };
  return (
    <>
      <button type="button" className="btn main on-big" disabled={keep === null} onClick={resume}>
        Resume: frame {now.begun + 1} fires now
      </button>
      <Options
        options={options}
        slip="paused"
        shoot={shoot}
        now={now}
        lost={shoot.lost}
        keep={keep ?? asked}
        onKeep={setAsked}
      />
    </>
  );
}

/** Frame 1 fires at an instant. */
export function start(shoot: Shoot, atMs: number): void {
  const lateS = (atMs - startFor(shoot.plan).startMs) / 1000;
  happen(
    started(shoot, atMs),
    'started',
    `Frame 1 fired at ${clockText(atMs, shoot.plan.place)}, ${lateText(lateS)}`,
  );
}
