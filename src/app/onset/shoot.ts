/** A run as it is being shot: what has happened, and what can happen next. Pure, without a clock. */
import type { Given } from '../../engine/onset/outcome.ts';
import { cutTo, type Happened, type Keep, replanned } from '../../engine/onset/rest.ts';
import { frameS, type Instant, stateAt } from '../../engine/onset/state.ts';
import {
  firstStretch,
  framesUpTo,
  lastOpensMs,
  madeOf,
  opensMs,
  type Stretch,
} from '../../engine/onset/stretch.ts';
import { momentsOf } from '../../engine/onset/todo.ts';
import type { OnSet, StepBefore } from '../../engine/onset/working.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { startFor } from '../../engine/schedule.ts';

/** Everything about a run that is not in its plan. Times are milliseconds of the epoch by the run's clock. */
export interface Shoot {
  /** As it was when the run began; before that, as it is on the desk. */
  plan: Plan;
  /** The run's clock, less the phone's: of a run as if it were another day. */
  shiftMs: number;
  /** In order; none before the first frame. */
  stretches: readonly Stretch[];
  /** Since when it is paused; null if it is not. */
  pausedMs: number | null;
  /** Keys of what was acknowledged. */
  done: readonly string[];
  /** Frames lost so far. */
  lost: number;
  /** Put aside: the next run begins afresh. */
  over: boolean;
}

export const newShoot = (plan: Plan, shiftMs = 0): Shoot => ({
  plan,
  shiftMs,
  stretches: [],
  pausedMs: null,
  done: [],
  lost: 0,
  over: false,
});

/** Where a run stands. */
export type Phase = 'before' | 'running' | 'paused' | 'after';

/** A run at an instant. */
export interface Now {
  phase: Phase;
  /** Of the run's clock. */
  nowMs: number;
  /** The stretch under way; before the first frame the one that is planned. */
  stretch: Stretch;
  instant: Instant;
  /** Frames of the whole run that have been begun, and that it has. */
  begun: number;
  frames: number;
}

/** The run as its plan has it, from its own start. */
const planned = new WeakMap<Plan, Stretch>();
export function plannedStretch(plan: Plan): Stretch {
  const known = planned.get(plan) ?? firstStretch(plan, startFor(plan).startMs);
  planned.set(plan, known);
  return known;
}

/** The stretch planned last, which may still be to come; before the first frame the one of the plan. */
export const present = ({ stretches, plan }: Shoot): Stretch => stretches.at(-1) ?? plannedStretch(plan);

/** Index of the stretch under way at an instant. */
const underWayAt = (stretches: readonly Stretch[], ms: number): number =>
  Math.max(
    0,
    stretches.findLastIndex(({ startMs }) => startMs <= ms),
  );

/** The instant of a stretch that another one follows: it goes on to that one's first frame. */
function followed(instant: Instant, next: Stretch | undefined, begun: number, ms: number): Instant {
  if (!next || begun < next.framesBefore) return instant;
  const toNextS = (next.startMs - ms) / 1000;
  return instant.doing === 'after'
    ? { ...instant, doing: 'spare', untilS: toNextS, toNextS }
    : { ...instant, toNextS };
}

/** Where a run stands at an instant of its clock. */
export function nowOf(shoot: Shoot, nowMs: number): Now {
  const { pausedMs, stretches } = shoot;
  const ms = pausedMs ?? nowMs;
  const at = underWayAt(stretches, ms);
  const stretch = stretches[at] ?? plannedStretch(shoot.plan);
  const own = stateAt(madeOf(stretch), stretch.plan.cycle.guardS, ms);
  const begun = stretch.framesBefore + (stretches.length > 0 ? own.begun : 0);
  const instant = followed(own, stretches[at + 1], begun, ms);
  const phase = (): Phase => {
    if (stretches.length === 0) return 'before';
    if (pausedMs !== null) return 'paused';
    return instant.doing === 'after' ? 'after' : 'running';
  };
  return { phase: phase(), nowMs, stretch, instant, begun, frames: framesUpTo(present(shoot)) };
}

/** Whether the camera is at work or about to go on. */
export const isUnderWay = (shoot: Shoot, nowMs: number): boolean =>
  !shoot.over && ['running', 'paused'].includes(nowOf(shoot, nowMs).phase);

/** Frame 1 fires, or has fired, at an instant. */
export const started = (shoot: Shoot, startMs: number): Shoot => ({
  ...shoot,
  stretches: [firstStretch(shoot.plan, startMs)],
  pausedMs: null,
});

export const acknowledged = (shoot: Shoot, key: string): Shoot => ({ ...shoot, done: [...shoot.done, key] });

/** After the frame that is under way nothing more is shot; what was still to come is planned when it goes on. */
export const paused = (shoot: Shoot, atMs: number): Shoot => ({
  ...shoot,
  pausedMs: atMs,
  stretches: shoot.stretches.slice(0, underWayAt(shoot.stretches, atMs) + 1),
});

/** What the rest is planned again for. */
export type Slip = { kind: 'late'; startMs: number } | { kind: 'paused' } | { kind: 'lost'; frames: number };

/** The run with its start put right, if that is what is asked. */
const corrected = (shoot: Shoot, slip: Slip): Shoot =>
  slip.kind === 'late' ? started(shoot, slip.startMs) : shoot;

/** What happened, for the engine: a change counts from the frame after the next, so that there is time to set it. */
function happenedAt(shoot: Shoot, slip: Slip, was: Stretch, nowMs: number): Happened {
  const of = present(shoot);
  const made = madeOf(of);
  const { begun } = stateAt(made, of.plan.cycle.guardS, shoot.pausedMs ?? nowMs);
  const endMs = lastOpensMs(was);
  if (slip.kind === 'paused') return { shot: begun, nextMs: nowMs, endMs, more: 0 };
  const shot = Math.min(made.totals.frames, begun === 0 ? 0 : begun + 1);
  return { shot, nextMs: opensMs(made, shot), endMs, more: slip.kind === 'lost' ? slip.frames : 0 };
}

/** What the engine is asked at an instant. */
export function givenAt(shoot: Shoot, slip: Slip, nowMs: number): Given {
  const then = corrected(shoot, slip);
  const was = slip.kind === 'late' ? plannedStretch(shoot.plan) : present(then);
  const lost = shoot.lost + (slip.kind === 'lost' ? slip.frames : 0);
  return { plan: shoot.plan, of: present(then), was, lost, happened: happenedAt(then, slip, was, nowMs) };
}

/** Whether what is kept leaves the stretch as it is. */
const goesOn = (slip: Slip, keep: Keep): boolean =>
  (slip.kind === 'late' && keep === 'clipAndInterval') || (slip.kind === 'lost' && keep === 'endAndInterval');

/**
 * The run with its rest planned again.
 * @returns null if that cannot be had
 */
export function goneOn(shoot: Shoot, slip: Slip, keep: Keep, nowMs: number): Shoot | null {
  const then = corrected(shoot, slip);
  const { of, happened, lost } = givenAt(shoot, slip, nowMs);
  // What is only noted ends no pause.
  if (goesOn(slip, keep)) return { ...then, lost };
  const rest = replanned(of, happened, keep);
  if ('why' in rest) return null;
  const before = happened.shot === 0 ? then.stretches.slice(0, -1) : then.stretches;
  return { ...then, lost, pausedMs: null, stretches: [...before, rest.stretch] };
}

/** The run ended after a frame of the whole run that is begun or still to come; up to that one a pause goes on. */
export function stoppedAfter(shoot: Shoot, frame: number): Shoot {
  const stretches = shoot.stretches.filter(({ framesBefore }) => framesBefore < frame);
  const last = stretches.at(-1);
  if (!last) return shoot;
  const { pausedMs } = shoot;
  const isOver = pausedMs === null || frame <= nowOf(shoot, pausedMs).begun;
  return {
    ...shoot,
    pausedMs: isOver ? null : pausedMs,
    stretches: [...stretches.slice(0, -1), cutTo(last, frame - last.framesBefore)],
  };
}

/** When a run ends: once camera and rig are done with the last frame. */
export function overMs(shoot: Shoot): number {
  const made = madeOf(present(shoot));
  const last = made.totals.frames - 1;
  return opensMs(made, last) + frameS(made, last) * 1000;
}

/** A run as its workings want it. @param stepsBefore - what is done before the first frame, if that is asked for */
export const onSetOf = (shoot: Shoot, now: Now, stepsBefore: readonly StepBefore[] = []): OnSet => ({
  plan: shoot.plan,
  nowMs: now.nowMs,
  pausedMs: shoot.pausedMs,
  stretch: now.stretch,
  last: present(shoot),
  planned: plannedStretch(shoot.plan),
  instant: now.instant,
  begun: now.begun,
  frames: now.frames,
  moments: momentsOf(shoot.stretches.length > 0 ? shoot.stretches : [now.stretch]),
  stepsBefore,
});
