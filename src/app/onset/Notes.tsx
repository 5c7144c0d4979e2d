/** What the operator should know besides: another day, another zone, a clock that jumped, a plan that has changed. */
import { type ReactNode, useMemo, useState } from 'react';
import type { Plan } from '../../engine/plan/schema.ts';
import { serialisePlan } from '../../engine/plan/serialise.ts';
import { SUNRISE_ALTITUDE_DEG } from '../../engine/sky/day.ts';
import { sunAt } from '../../engine/sky/position.ts';
import { isoIn } from '../../engine/time/clock.ts';
import { dateOf } from '../format/clock.ts';
import { STANDING, type Standing, StandingIcon } from '../icons.tsx';
import { setTheme, useTheme } from '../theme.ts';
import type { Now, Shoot } from './shoot.ts';
import { happen } from './store.ts';
import type { Awake } from './useAwake.ts';
import { clockText } from './words.ts';

export function Note({ standing = 'note', children }: { standing?: Standing; children: ReactNode }) {
  return (
    <div className="on-note-line">
      <StandingIcon standing={standing} />
      <span className="vh">{STANDING[standing]}: </span>
      <div>{children}</div>
    </div>
  );
}

const HALF_DAY_MS = 43_200_000;
const AHEAD_MS = 120_000;

/** The plan's date is another one: it can be run as if it were that day. */
function OtherDay({ shoot, now }: { shoot: Shoot; now: Now }) {
  const { startMs } = now.stretch;
  const { plan, shiftMs } = shoot;
  if (shiftMs !== 0) {
    return (
      <Note>
        As if it were {dateOf(isoIn(now.nowMs, plan.place))}, {clockText(now.nowMs, plan.place)}: light and
        clock are of that day, not of today.
      </Note>
    );
  }
  if (now.phase !== 'before' || Math.abs(startMs - now.nowMs) < HALF_DAY_MS) return null;
  const asIf = () => {
    const next = startMs - AHEAD_MS - Date.now();
    happen({ ...shoot, shiftMs: next }, 'as if', `Run as if it were ${dateOf(isoIn(startMs, plan.place))}`);
  };
  return (
    <Note standing="warning">
      <p>
        The plan is for {dateOf(isoIn(startMs, plan.place))}; today is {dateOf(isoIn(now.nowMs, plan.place))}.
        Started today, the light is today’s.
      </p>
      <button type="button" className="btn" onClick={asIf}>
        Run it as if now: first frame in 2 min
      </button>
    </Note>
  );
}

/** Offset of the phone's own zone from UTC, minutes east, at an instant. */
const phoneOffsetMin = (ms: number): number => -new Date(ms).getTimezoneOffset();

/** Offset that stands at the end of ISO text, minutes. */
function offsetOf(iso: string): number {
  const [, sign = '+', hours = '0', minutes = '0'] = /([+-])(\d\d):(\d\d)$/.exec(iso) ?? [];
  return (sign === '-' ? -1 : 1) * (Number(hours) * 60 + Number(minutes));
}

function OtherZone({ shoot, now }: { shoot: Shoot; now: Now }) {
  const { place } = shoot.plan;
  // Of a run as if on another day, the two are compared on that day.
  if (phoneOffsetMin(now.nowMs) === offsetOf(isoIn(now.nowMs, place))) return null;
  const phone = Intl.DateTimeFormat().resolvedOptions().timeZone;
  return (
    <Note>
      This phone’s clock is set to {phone}; times here are those of {place.zone}: now{' '}
      {clockText(now.nowMs, place)}. Is that right?
    </Note>
  );
}

const OFFERED = 'escapement-dim-offered';
const wasOffered = (): boolean => {
  try {
    return sessionStorage.getItem(OFFERED) !== null;
  } catch {
    return false;
  }
};

/** After sunset the dim theme is offered once; nothing is changed by itself. */
function OfferDim({ plan: { place }, nowMs }: { plan: Plan; nowMs: number }) {
  const [theme] = useTheme();
  const [answered, setAnswered] = useState(wasOffered);
  const { latitudeDeg, longitudeDeg } = place;
  if (theme === 'dim' || answered || latitudeDeg === null || longitudeDeg === null) return null;
  // The sun moves on slowly: by the minute is often enough.
  const minuteMs = Math.floor(nowMs / 60_000) * 60_000;
  if (sunAt(minuteMs, latitudeDeg, longitudeDeg).geometricAltitudeDeg > SUNRISE_ALTITUDE_DEG) return null;
  const answer = (dim: boolean) => {
    if (dim) setTheme('dim');
    setAnswered(true);
    try {
      sessionStorage.setItem(OFFERED, 'yes');
    } catch {
      // Then it is offered again.
    }
  };
  return (
    <Note>
      <p>The sun is down. The dim theme spares your eyes.</p>
      <div className="row">
        <button type="button" className="btn" onClick={() => answer(true)}>
          Use the dim theme
        </button>
        <button type="button" className="btn" onClick={() => answer(false)}>
          Stay {theme}
        </button>
      </div>
    </Note>
  );
}

interface NotesProps {
  shoot: Shoot;
  now: Now;
  desk: Plan;
  awake: Awake;
  stored: boolean;
}

/** How far the phone's clock has jumped, seconds, and the frame then. */
export interface Jump {
  byS: number;
  frame: number;
}

/** Stands before everything else: what is on screen may not be so. */
export const JumpNote = ({ jump, onSeen }: { jump: Jump; onSeen: () => void }) => (
  <Note standing="warning">
    <p role="alert">
      This phone’s clock jumped {Math.abs(jump.byS)} s {jump.byS < 0 ? 'back' : 'forward'}.{' '}
      {jump.frame > 0 && `Check frame ${jump.frame}.`}
    </p>
    <button type="button" className="btn" onClick={onSeen}>
      Checked
    </button>
  </Note>
);

export function Notes({ shoot, now, desk, awake, stored }: NotesProps) {
  const { plan } = shoot;
  const differs = useMemo(() => plan !== desk && serialisePlan(plan) !== serialisePlan(desk), [plan, desk]);
  return (
    <section aria-label="Worth knowing" className="on-notes">
      {!stored && (
        <Note standing="warning">
          This browser keeps nothing: if the tab is closed, the run and its log are lost. Save the log.
        </Note>
      )}
      {differs && (
        <Note>
          A run of “{shoot.plan.title}” is under way, as it was planned when it began. What is on the desk is
          another plan; it counts once this run is cleared.
        </Note>
      )}
      <OtherDay shoot={shoot} now={now} />
      <OtherZone shoot={shoot} now={now} />
      <OfferDim plan={shoot.plan} nowMs={now.nowMs} />
      {awake === 'no' && (
        <Note>This browser cannot keep the screen on: set the phone’s own screen time to its longest.</Note>
      )}
    </section>
  );
}
