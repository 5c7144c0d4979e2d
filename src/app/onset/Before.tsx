/** Before the first frame: how long until it, what has to be done by then, and the button that begins. */
import { useState } from 'react';
import type { Plan } from '../../engine/plan/schema.ts';
import { ofOnset } from '../../engine/working/names.ts';
import { BLOCK_WORDS, blocksBefore } from '../../outputs/day-blocks.ts';
import { durationText } from '../format/durations.ts';
import { plural } from '../format/numbers.ts';
import { How } from '../working/How.tsx';
import { Pieces } from '../working/Pieces.tsx';
import { StartedLate, start } from './Questions.tsx';
import { type Now, onSetOf, type Shoot } from './shoot.ts';
import { clockText, countdown, lateText, momentText } from './words.ts';

interface Step {
  name: string;
  fromMs: number;
  toMs: number;
}

/** What the day takes before the first frame, in order, the last one ending with it. */
export const stepsBefore = (plan: Plan, startMs: number): Step[] =>
  blocksBefore(plan, startMs).map(({ kind, fromMs, toMs }) => ({ name: BLOCK_WORDS[kind], fromMs, toMs }));

function Steps({ shoot, now }: { shoot: Shoot; now: Now }) {
  const { plan } = shoot;
  const { nowMs } = now;
  const steps = stepsBefore(plan, now.stretch.startMs);
  if (steps.length === 0) return null;
  return (
    <section aria-label="Until the first frame" className="on-steps">
      <ol className="plain">
        {steps.map(({ name, fromMs, toMs }, n) => {
          const under = nowMs >= fromMs && nowMs < toMs;
          return (
            <li key={name} aria-current={under ? 'step' : undefined} className={nowMs >= toMs ? 'past' : ''}>
              <span className="m">
                <How
                  of={ofOnset(`step.${n + 1}.at`)}
                  what={`${clockText(fromMs, plan.place)}, ${name}`}
                  run={() => onSetOf(shoot, now, steps)}
                >
                  {clockText(fromMs, plan.place)}
                </How>
              </span>
              <b>{name}</b>
              <span className="s">
                {under ? `${countdown((toMs - nowMs) / 1000)} left` : durationText((toMs - fromMs) / 1000)}
              </span>
            </li>
          );
        })}
      </ol>
    </section>
  );
}

const HALF_DAY_MS = 43_200_000;

/** The plan's own evening is over: what it had before its first frame no longer counts. */
export const isLongPast = ({ nowMs, stretch }: Now): boolean => nowMs - stretch.startMs > HALF_DAY_MS;

/** The more places a figure has, the smaller it is. */
const figureClass = (text: string): string => {
  if (text.length < 3) return 'on-figure';
  return text.length > 7 ? 'on-figure long longer' : 'on-figure long';
};

export function Before({ shoot, now }: { shoot: Shoot; now: Now }) {
  const [asking, setAsking] = useState(false);
  const { plan } = shoot;
  const { startMs } = now.stretch;
  const toS = (startMs - now.nowMs) / 1000;
  const longPast = isLongPast(now);
  const run = () => onSetOf(shoot, now);
  const begin = () => start(shoot, Date.now() + shoot.shiftMs);
  return (
    <>
      <section aria-label="First frame" className="on-count">
        <p>
          <How of={ofOnset('toFirstS')} what={toS > 0 ? 'First frame in' : 'First frame was due'} run={run}>
            {toS > 0 ? 'First frame in' : 'First frame was due'}
          </How>
        </p>
        <p className={figureClass(countdown(Math.abs(toS)))} role="timer">
          {countdown(Math.abs(toS))}
          {toS <= 0 && <small>ago</small>}
        </p>
        <p>
          <Pieces
            run={run}
            pieces={[
              { text: plural(now.frames, 'frame'), of: 'totals.frames' },
              ' from ',
              { text: momentText(startMs, plan.place, now.nowMs), of: 'totals.firstFrameAt' },
            ]}
          />
        </p>
      </section>
      <button type="button" className="btn main on-big" onClick={begin}>
        Start: frame 1 fires now
        {Math.abs(toS) >= 1 && Math.abs(toS) < 43_200 && <small>{lateText(-toS)}</small>}
      </button>
      {toS <= 0 && !longPast && (
        <div className="on-actions">
          <button type="button" className="btn" onClick={() => start(shoot, startMs)}>
            It fired on time, {clockText(startMs, plan.place)}
          </button>
          <button type="button" className="btn" onClick={() => setAsking(true)}>
            It fired at another time
          </button>
        </div>
      )}
      {asking && <StartedLate shoot={shoot} now={now} onClose={() => setAsking(false)} />}
      {!longPast && <Steps shoot={shoot} now={now} />}
    </>
  );
}
