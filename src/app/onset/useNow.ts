/** The clock of the view: drawn once a second or when something changes, and not at all while nobody looks. */
import { useEffect, useReducer, useState } from 'react';
import { type Now, nowOf, type Shoot } from './shoot.ts';

const SECOND_MS = 1000;
/** Timers wake a little early now and then: then the same second would be drawn twice. */
const LATER_MS = 5;

/** Milliseconds until the figures on screen change: the next second of the countdown, or what is done. */
function untilChangeMs({ instant, phase, nowMs }: Now): number {
  const secondMs = SECOND_MS - (nowMs % SECOND_MS);
  // While it is paused, and once it is over, only the clock goes on.
  if (phase === 'paused' || phase === 'after') return secondMs + LATER_MS;
  const { toNextS, untilS } = instant;
  const countdownMs = toNextS === null ? secondMs : (toNextS * SECOND_MS) % SECOND_MS || SECOND_MS;
  return Math.max(20, Math.min(countdownMs, untilS * SECOND_MS)) + LATER_MS;
}

/** Where the run stands now. */
export function useNow(shoot: Shoot): Now {
  const [, draw] = useReducer((n: number) => n + 1, 0);
  const now = nowOf(shoot, Date.now() + shoot.shiftMs);
  useEffect(() => {
    const timer = document.hidden ? undefined : setTimeout(draw, untilChangeMs(now));
    document.addEventListener('visibilitychange', draw);
    return () => {
      clearTimeout(timer);
      document.removeEventListener('visibilitychange', draw);
    };
  });
  return now;
}

/** A jump of the phone's clock that is worth a word, and how often it is looked for. */
const JUMP_MS = 2000;
const LOOK_MS = 1000;

/**
 * How far the phone's clock has jumped while the view was looked at, milliseconds; null if it has not.
 *
 * The clock of the day is compared with the one that only goes on. That one may stand still while a phone sleeps, so
 * that nothing is said of the time when the page was hidden.
 */
export function useClockJump(jumped: (byMs: number) => void): void {
  const [watch] = useState(() => ({ day: Date.now(), steady: performance.now() }));
  useEffect(() => {
    const anew = () => Object.assign(watch, { day: Date.now(), steady: performance.now() });
    const look = () => {
      const byMs = Date.now() - watch.day - (performance.now() - watch.steady);
      anew();
      if (!document.hidden && Math.abs(byMs) >= JUMP_MS) jumped(byMs);
    };
    anew();
    const timer = setInterval(look, LOOK_MS);
    document.addEventListener('visibilitychange', anew);
    return () => {
      clearInterval(timer);
      document.removeEventListener('visibilitychange', anew);
    };
  }, [jumped, watch]);
}
