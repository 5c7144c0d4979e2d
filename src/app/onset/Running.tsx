/** A run under way: the next shutter, what rig and camera do, how far it is, what comes next. */
import { useEffect, useRef, useState } from 'react';
import { rungWords } from '../../engine/exposure/ramp-words.ts';
import { cycleParts } from '../../engine/onset/state.ts';
import { lastOpensMs, madeOf } from '../../engine/onset/stretch.ts';
import { ofFrame, ofOnset } from '../../engine/working/names.ts';
import { How } from '../working/How.tsx';
import { Pieces } from '../working/Pieces.tsx';
import type { Piece } from '../working/sentence.ts';
import { CycleBar } from './CycleBar.tsx';
import { DoneComb } from './DoneComb.tsx';
import { Moments, nextOf, useMoments } from './Moments.tsx';
import { LostFrames, Resume, StartedLate, StopEarly } from './Questions.tsx';
import { type Now, onSetOf, paused, plannedStretch, present, type Shoot } from './shoot.ts';
import { clockNow, happen } from './store.ts';
import { clockText, countdown, lateText, lostText, stateSentence } from './words.ts';

interface RunningProps {
  shoot: Shoot;
  now: Now;
}

function Countdown({ shoot, now }: RunningProps) {
  const { toNextS } = now.instant;
  const text = countdown(toNextS ?? now.instant.untilS);
  const title = toNextS === null ? 'Last frame, done in' : 'Next shutter in';
  return (
    <>
      <p>
        <How of={ofOnset('toNextS')} what={title} run={() => onSetOf(shoot, now)}>
          {title}
        </How>
      </p>
      <p className={text.length < 3 ? 'on-figure' : 'on-figure long'} role="timer">
        {text}
        {text.length < 3 && <small>s</small>}
      </p>
    </>
  );
}

function State({ shoot, now }: RunningProps) {
  const made = madeOf(now.stretch);
  const { index, intoS, doing } = now.instant;
  const { cycle, move } = now.stretch.plan;
  const [state, means] = stateSentence(doing, move.mode);
  const rung = made.exposure?.rungs[made.columns.rung?.[Math.max(0, index)] ?? 0];
  return (
    <section aria-label="Now" className="on-count">
      <Countdown shoot={shoot} now={now} />
      <p className="on-state">
        <b>{state}</b> {means}
      </p>
      <CycleBar parts={cycleParts(made, Math.max(0, index), cycle.guardS)} intoS={intoS} />
      {rung && (
        <p className="s">
          <Pieces
            run={() => onSetOf(shoot, now)}
            pieces={[
              'Settings of this frame: ',
              { text: rungWords(rung), of: ofFrame(Math.max(0, index), 'exposureS') },
            ]}
          />
        </p>
      )}
      {shoot.lost > 0 && <p className="s">{lostText(shoot.lost)}</p>}
    </section>
  );
}

/** When it ends, and how late that is against the plan as it was; in a pause nobody knows yet. */
function endPieces(shoot: Shoot): Piece[] {
  const { plan } = shoot;
  const endMs = lastOpensMs(present(shoot));
  if (shoot.pausedMs !== null) return [`End was ${clockText(endMs, plan.place)}, open while paused`];
  const lateS = (endMs - lastOpensMs(plannedStretch(plan))) / 1000;
  return [
    { text: `End ${clockText(endMs, plan.place)}`, of: ofOnset('endAt') },
    ', ',
    { text: lateText(lateS), of: ofOnset('lateS') },
  ];
}

export function Progress({ shoot, now }: RunningProps) {
  const moments = useMoments(shoot, now.stretch);
  const marks = moments.filter(({ byHand }) => byHand).map(({ frame }) => (frame - 0.5) / now.frames);
  const run = () => onSetOf(shoot, now);
  const percent = Math.floor((now.begun / Math.max(1, now.frames)) * 100);
  return (
    <section aria-label="Progress" className="on-progress">
      <p className="line">
        <span>
          <How of={ofOnset('begun')} what={`Frame ${now.begun}`} run={run}>
            Frame <b className="m">{now.begun}</b>
          </How>{' '}
          <How of={ofOnset('frames')} what={`/ ${now.frames}, frames of the run`} run={run}>
            <span className="m">/ {now.frames}</span>
          </How>
        </span>
        <span className="r">
          <span>
            <Pieces
              run={run}
              pieces={[
                { text: `${percent} % shot`, of: ofOnset('percent') },
                ', ',
                { text: `${now.frames - now.begun} left`, of: ofOnset('left') },
              ]}
            />
          </span>
          <span>
            <Pieces run={run} pieces={endPieces(shoot)} />
          </span>
        </span>
      </p>
      <DoneComb begun={now.begun} frames={now.frames} marks={marks} />
    </section>
  );
}

type Question = 'late' | 'lost' | 'stop' | null;

function Actions({ shoot, now }: RunningProps) {
  const [question, setQuestion] = useState<Question>(null);
  const close = () => setQuestion(null);
  const asked = { shoot, now, onClose: close };
  const pause = () => {
    const next = now.begun + 1;
    happen(paused(shoot, clockNow()), 'paused', `Paused after frame ${now.begun}, before ${next}`);
  };
  const canGoOn = now.begun < now.frames;
  return (
    <section aria-label="Something happened" className="on-actions">
      {shoot.stretches.length === 1 && now.phase === 'running' && (
        <button type="button" className="btn" onClick={() => setQuestion('late')}>
          Started late
        </button>
      )}
      {canGoOn && now.phase === 'running' && (
        <button type="button" className="btn" onClick={pause}>
          Pause
        </button>
      )}
      <button type="button" className="btn" onClick={() => setQuestion('lost')}>
        Lost frames
      </button>
      {canGoOn && (
        <button type="button" className="btn" onClick={() => setQuestion('stop')}>
          Stop early
        </button>
      )}
      {question === 'late' && <StartedLate {...asked} />}
      {question === 'lost' && <LostFrames {...asked} />}
      {question === 'stop' && <StopEarly {...asked} />}
    </section>
  );
}

function Paused({ shoot, now }: RunningProps) {
  const since = shoot.pausedMs ?? now.nowMs;
  const section = useRef<HTMLElement>(null);
  // What was pressed is gone, and may have been far below: one goes on here.
  useEffect(() => section.current?.focus(), []);
  return (
    <section ref={section} tabIndex={-1} aria-label="Paused" className="on-count">
      <p>
        <Pieces
          run={() => onSetOf(shoot, now)}
          pieces={[
            { text: 'Paused', of: ofOnset('pausedS') },
            ' since ',
            { text: clockText(since, shoot.plan.place), of: ofOnset('pausedAt') },
          ]}
        />
      </p>
      <p className="on-figure long" role="timer">
        {countdown(Math.floor((now.nowMs - since) / 1000))}
      </p>
      <p className="on-state">
        <b>Paused.</b> Stop the trigger: nothing is counted.
      </p>
      <Resume shoot={shoot} now={now} />
    </section>
  );
}

export function Running({ shoot, now }: RunningProps) {
  const moments = useMoments(shoot, now.stretch);
  const isPaused = now.phase === 'paused';
  // In a pause what is to be done waits where it was; what comes by itself does not.
  const then = { ...now, nowMs: shoot.pausedMs ?? now.nowMs };
  const waiting = isPaused ? moments.filter(({ byHand }) => byHand) : moments;
  return (
    <>
      {isPaused ? <Paused shoot={shoot} now={now} /> : <State shoot={shoot} now={now} />}
      <Progress shoot={shoot} now={now} />
      <Moments all={nextOf(waiting, shoot, then.nowMs)} shoot={shoot} now={then} />
      <Actions shoot={shoot} now={now} />
    </>
  );
}
