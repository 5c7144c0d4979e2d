/** On set, beside the camera: large, with one hand, in the dark, without a network. */
import { Suspense, useCallback, useEffect, useState } from 'react';
import { balanceCautions } from '../../engine/balance/cautions.ts';
import { madeOf } from '../../engine/onset/stretch.ts';
import type { Moment } from '../../engine/onset/todo.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { ofOnset } from '../../engine/working/names.ts';
import { cautionsOf } from '../../outputs/cautions.ts';
import { fetched } from '../fetched.tsx';
import { ChevronLeft, ThemeIcon, UndoIcon } from '../icons.tsx';
import { usePlan } from '../store/plan.ts';
import { useTheme } from '../theme.ts';
import { Pieces } from '../working/Pieces.tsx';
import { After } from './After.tsx';
import { Before, isLongPast } from './Before.tsx';
import { Log } from './Log.tsx';
import { announcedOf, dueNow, Moments, markDone, nextOf, useMoments } from './Moments.tsx';
import { type Jump, JumpNote, Notes } from './Notes.tsx';
import { Progress, Running } from './Running.tsx';
import { type Now, nowOf, onSetOf, overMs, type Shoot } from './shoot.ts';
import { clockNow, fetchRun, markRunning, note, runNow, undoLast, useRun } from './store.ts';
import { useAwake } from './useAwake.ts';
import { useClockJump, useNow } from './useNow.ts';
import { signal, useSignal } from './useSignal.ts';
import { clockText } from './words.ts';
import './onset.css';

/** It brings the sheet's own means with it. */
const StopMotion = fetched('The next exposure', () =>
  import('./StopMotion.tsx').then((part) => part.StopMotion),
);

function Head({ title, clock }: { title: string; clock: string | null }) {
  const [theme, next] = useTheme();
  return (
    <header className="on-head">
      <a className="on-leave" href="#plan">
        <ChevronLeft /> Plan
      </a>
      <h1>{title}</h1>
      {clock !== null && <p className="m">{clock}</p>}
      <button type="button" className="on-theme" aria-label={`Theme: ${theme}. Change it`} onClick={next}>
        <ThemeIcon />
      </button>
    </header>
  );
}

function Undo() {
  const what = useRun((state) => state.past.at(-1)?.what);
  if (what === undefined) return null;
  return (
    <button type="button" className="btn on-wide on-undo" onClick={undoLast}>
      <UndoIcon /> Undo <small>{what}</small>
    </button>
  );
}

/** Space marks what is to be done as done, unless something else has the focus. */
function useSpace(shoot: Shoot, moments: ReturnType<typeof useMoments>): void {
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      const busy = (event.target as HTMLElement).closest('button, a, input, summary, dialog');
      if (event.key !== ' ' || busy) return;
      const due = dueNow(nextOf(moments, shoot, clockNow()));
      if (!due) return;
      event.preventDefault();
      markDone(shoot, due);
    };
    document.addEventListener('keydown', onKeyDown);
    return () => document.removeEventListener('keydown', onKeyDown);
  }, [shoot, moments]);
}

/** The last jump of the phone's clock; it is written into the log. */
function useJump(): [Jump | null, () => void] {
  const [jump, setJump] = useState<Jump | null>(null);
  const jumped = useCallback((byMs: number) => {
    const byS = Math.round(byMs / 1000);
    const { begun } = nowOf(runNow().shoot, clockNow());
    setJump({ byS, frame: begun });
    note(`The phone’s clock jumped ${byS} s`, 'clock');
  }, []);
  useClockJump(jumped);
  return [jump, () => setJump(null)];
}

const HALF_HOUR_MS = 1_800_000;

/** The screen stays on from half an hour before the first frame until the last is done. */
const wantsScreen = ({ phase, nowMs, stretch }: Now): boolean =>
  phase === 'running' ||
  phase === 'paused' ||
  (phase === 'before' && Math.abs(stretch.startMs - nowMs) < HALF_HOUR_MS);

function Cautions({ shoot, now }: { shoot: Shoot; now: Now }) {
  const made = madeOf(now.stretch);
  const ofRig = made.rig.balance ? balanceCautions(made.rig.balance) : [];
  const piecesOf = (caution: string) => ofRig.find(({ text }) => text === caution)?.pieces ?? [caution];
  return (
    <details className="on-cautions" open={now.phase === 'before'}>
      <summary>Cautions</summary>
      <ul>
        {cautionsOf(shoot.plan, made).map((caution) => (
          <li key={caution}>
            <Pieces pieces={piecesOf(caution)} run={() => onSetOf(shoot, now)} />
          </li>
        ))}
      </ul>
    </details>
  );
}

/** What is to come, before the first frame: nothing of it can be overdue. */
function Ahead({ shoot, now, moments }: { shoot: Shoot; now: Now; moments: Moment[] }) {
  const nowMs = Math.min(now.nowMs, now.stretch.startMs);
  return <Moments all={nextOf(moments, shoot, nowMs)} shoot={shoot} now={now} />;
}

/** Sound and buzz, if they are wanted. */
function Signal({ shoot, now, moments }: { shoot: Shoot; now: Now; moments: Moment[] }) {
  const [on, setOn] = useState(false);
  const due = now.phase === 'running' ? announcedOf(nextOf(moments, shoot, now.nowMs)) : null;
  useSignal(on, due && `${due.standing} ${due.moment.key}`);
  const toggle = () => {
    if (!on) signal();
    setOn(!on);
  };
  return (
    <button type="button" className="btn on-wide" aria-pressed={on} onClick={toggle}>
      {on ? 'Beep and buzz: on' : 'Beep and buzz: off'}
    </button>
  );
}

function TimeLapse({ desk }: { desk: Plan }) {
  const shoot = useRun((state) => state.shoot);
  const stored = useRun((state) => state.stored);
  const now = useNow(shoot);
  const { phase } = now;
  const moments = useMoments(shoot, now.stretch);
  const awake = useAwake(wantsScreen(now));
  const [jump, seen] = useJump();
  useSpace(shoot, moments);
  // A run that is over by the clock is over, whatever else happens.
  // biome-ignore lint/correctness/useExhaustiveDependencies: of the instant only what it is called counts
  useEffect(markRunning, [shoot, phase]);
  const notes = <Notes shoot={shoot} now={now} desk={desk} awake={awake} stored={stored} />;
  return (
    <>
      <Head title={shoot.plan.title} clock={clockText(now.nowMs, shoot.plan.place)} />
      <div className="on-body">
        <div className="on-main">
          {jump && <JumpNote jump={jump} onSeen={seen} />}
          {phase === 'before' && notes}
          {phase === 'before' && <Before shoot={shoot} now={now} />}
          {(phase === 'running' || phase === 'paused') && <Running shoot={shoot} now={now} />}
          {phase === 'after' && (
            <>
              <After shoot={shoot} now={now} />
              <Progress shoot={shoot} now={now} />
            </>
          )}
          {phase === 'before' && !isLongPast(now) && <Ahead shoot={shoot} now={now} moments={moments} />}
          <Undo />
        </div>
        <div className="on-side">
          {phase !== 'before' && notes}
          <Signal shoot={shoot} now={now} moments={moments} />
          <Log plan={shoot.plan} desk={desk} canClear={phase === 'after' || phase === 'before'} />
          <Cautions shoot={shoot} now={now} />
          {phase === 'running' && (
            <p className="s">
              <Pieces
                run={() => onSetOf(shoot, now)}
                pieces={[
                  'Ends ',
                  { text: clockText(overMs(shoot), shoot.plan.place), of: ofOnset('doneAt') },
                  '. This page only counts: the trigger fires the frames.',
                ]}
              />
            </p>
          )}
        </div>
      </div>
    </>
  );
}

/** Waits until the run has come from where it is kept: nothing may be shown that is not so. */
function Fetched({ plan }: { plan: Plan }) {
  const desk = useRun((state) => state.desk);
  useEffect(() => void fetchRun(plan), [plan]);
  return desk === null ? null : <TimeLapse desk={plan} />;
}

export default function OnSetView() {
  const plan = usePlan((present) => present);
  return (
    <main className="onset">
      {plan.technique === 'stopMotion' ? (
        <>
          <Head title={plan.title} clock={null} />
          <div className="on-body">
            <div className="on-main">
              <Suspense>
                <StopMotion />
              </Suspense>
            </div>
          </div>
        </>
      ) : (
        <Fetched plan={plan} />
      )}
    </main>
  );
}
