/**
 * Changing the exposures of a shot, so that what refers to them goes with them: details, ticks, cues and keyframes at
 * frames. What refers to an exposure that is gone goes too.
 */
import { MAX_FRAMES } from '../../plan/constants.ts';
import type { Action, Cue, Keyframe, Plan, Shot, Track } from '../../plan/schema.ts';
import { lastWhere } from '../../search.ts';
import { shotFrames } from '../production.ts';
import { holdsOf } from './pattern.ts';
import { listWithin } from './refused.ts';
import { movedTicks, shotNumbered, shotsWith, withSheet } from './shots.ts';

/** An action after an edit. */
export interface ChangedAction {
  /** Its details are those of its exposures before; null if it is gone. */
  action: Action | null;
  /** For each exposure the one, counted from 0, that it was in the action before; -1 if it is new. */
  was: ArrayLike<number>;
  /** An action put before it. */
  ahead?: Action;
}

/** Where exposures and frames of a shot are after an edit. */
interface Moved {
  /** For each exposure, counted from 0, its place then, or -1. */
  exposure: Int32Array;
  /** First frame of each exposure, counted from 0, and after the last; before and then. */
  oldStart: Int32Array;
  newStart: Int32Array;
}

function movedOf(plan: Plan, old: Shot, changes: ReadonlyMap<number, ChangedAction>): Moved {
  const before = old.actions.map((action) => holdsOf(plan, action));
  const exposure = new Int32Array(before.reduce((sum, holds) => sum + holds.length, 0)).fill(-1);
  const after: Int32Array[] = [];
  let [oldAt, newAt] = [0, 0];
  old.actions.forEach((_, a) => {
    const holds = before[a] as Int32Array;
    const change = changes.get(a + 1);
    if (change?.ahead) {
      const ahead = holdsOf(plan, change.ahead);
      after.push(ahead);
      newAt += ahead.length;
    }
    const then = change ? (change.action ? holdsOf(plan, change.action) : new Int32Array()) : holds;
    for (let k = 0; k < then.length; k += 1) {
      const was = change ? (change.was[k] as number) : k;
      if (was >= 0) exposure[oldAt + was] = newAt + k;
    }
    after.push(then);
    oldAt += holds.length;
    newAt += then.length;
  });
  return { exposure, oldStart: startsOf(before), newStart: startsOf(after) };
}

function startsOf(holds: readonly Int32Array[]): Int32Array {
  const starts = new Int32Array(1 + holds.reduce((sum, own) => sum + own.length, 0));
  let [at, frame] = [1, 0];
  for (const own of holds) {
    for (let k = 0; k < own.length; k += 1) {
      frame += own[k] as number;
      starts[at] = frame;
      at += 1;
    }
  }
  return starts;
}

/** Exposure, counted from 0, that a frame, from 0, lies in. */
const exposureOf = (starts: Int32Array, frame: number): number =>
  lastWhere(0, starts.length - 1, (i) => (starts[i] as number) <= frame);

/** Where a frame, counted from 0, is then, and whether its exposure still is; else the place that has closed over it. */
function frameThen(
  { exposure, oldStart, newStart }: Moved,
  frame: number,
): { frame: number; stays: boolean } {
  const k = exposureOf(oldStart, frame);
  const then = exposure[k] as number;
  if (then >= 0) {
    const start = newStart[then] as number;
    const into = Math.min(frame - (oldStart[k] as number), (newStart[then + 1] as number) - start - 1);
    return { frame: start + into, stays: true };
  }
  let next = k + 1;
  while (next < exposure.length && exposure[next] === -1) next += 1;
  const closed =
    next < exposure.length ? (newStart[exposure[next] as number] as number) : (newStart.at(-1) as number);
  return { frame: closed, stays: false };
}

/** A cue then: over all that is left of its exposures; null if nothing is. */
function cueThen(moved: Moved, cue: Cue): Cue | null {
  const { exposure, oldStart, newStart } = moved;
  const [first, end] = [cue.frame - 1, cue.frame - 1 + cue.frames];
  const last = exposureOf(oldStart, end - 1);
  let stays = false;
  for (let k = exposureOf(oldStart, first); k <= last && !stays; k += 1) stays = (exposure[k] as number) >= 0;
  if (!stays) return null;
  const from = frameThen(moved, first).frame;
  const then = exposure[last] as number;
  // A cue up to the end of an exposure stays up to its end, however long it is held.
  const whole = then >= 0 && end === oldStart[last + 1];
  const lastThen = frameThen(moved, end - 1);
  const to = whole ? (newStart[then + 1] as number) : lastThen.frame + (lastThen.stays ? 1 : 0);
  return { ...cue, frame: from + 1, frames: Math.max(1, to - from) };
}

/** Cues of one kind kept apart, the later ones pushed on; what does not fit into the shot any more is gone. */
function keptApart(cues: readonly Cue[], frames: number): Cue[] {
  const taken = new Map<Cue['kind'], number>();
  const order = cues
    .map((_, c) => c)
    .sort((a, b) => (cues[a] as Cue).frame - (cues[b] as Cue).frame || a - b);
  const placed = new Map<number, Cue>();
  for (const c of order) {
    const cue = cues[c] as Cue;
    const frame = Math.max(cue.frame, (taken.get(cue.kind) ?? 0) + 1);
    const last = Math.min(frames, Math.max(frame, cue.frame + cue.frames - 1));
    if (frame > frames) continue;
    taken.set(cue.kind, last);
    placed.set(c, { ...cue, frame, frames: last - frame + 1 });
  }
  return cues.flatMap((_, c) => placed.get(c) ?? []);
}

/** A track whose keyframes at frames have gone with them; of two that fall together the one whose exposure stays. */
function trackThen(moved: Moved, track: Track): Track {
  const last = Math.min(MAX_FRAMES, Math.max(1, moved.newStart.at(-1) as number));
  const lastOld = moved.oldStart.at(-1) as number;
  const keyframes: Keyframe[] = [];
  let before: { at: number; frame: number; stays: boolean } | null = null;
  for (const keyframe of track.keyframes) {
    if (keyframe.at !== 'frame') {
      keyframes.push(keyframe);
      continue;
    }
    // One beyond the shot stays as far beyond it.
    const beyond = Math.max(0, keyframe.frame - lastOld);
    const then =
      beyond > 0 || lastOld === 0
        ? { frame: last - 1 + beyond, stays: true }
        : frameThen(moved, keyframe.frame - 1);
    const frame = Math.min(then.frame + 1, beyond > 0 ? MAX_FRAMES : last);
    if (before && frame <= before.frame) {
      if (then.stays && !before.stays) keyframes[before.at] = { ...keyframe, frame: before.frame };
      continue;
    }
    before = { at: keyframes.length, frame, stays: then.stays };
    keyframes.push({ ...keyframe, frame });
  }
  return { ...track, keyframes };
}

/** Details of an action's exposures, each with the exposure that it is of then, and those of new exposures. */
function detailsThen(
  details: Action['details'],
  was: ArrayLike<number>,
  added: Action['details'],
): Action['details'] {
  const then = new Map<number, number>();
  if (details.length > 0) for (let k = 0; k < was.length; k += 1) then.set(was[k] as number, k);
  const kept = details.flatMap((detail) => {
    const k = then.get(detail.exposure - 1);
    return k === undefined ? [] : [{ ...detail, exposure: k + 1 }];
  });
  return listWithin('details', [...kept, ...added], 100_000);
}

/**
 * The plan with actions of a shot changed.
 * @param changes - by number of the action; what differs at new exposures comes as `added`
 * @throws Refused if it would not be a plan any more
 */
export function reflow(
  plan: Plan,
  shot: number,
  changes: ReadonlyMap<number, ChangedAction & { added?: Action['details'] }>,
): Plan {
  const old = shotNumbered(plan, shot);
  const moved = movedOf(plan, old, changes);
  const actions = old.actions.flatMap((action, a) => {
    const change = changes.get(a + 1);
    if (!change) return [action];
    const ahead = change.ahead ? [change.ahead] : [];
    if (change.action === null) return ahead;
    return [
      ...ahead,
      { ...change.action, details: detailsThen(change.action.details, change.was, change.added ?? []) },
    ];
  });
  const frames = shotFrames({ ...old, actions }, plan.clip.frameRate);
  const cues = keptApart(
    old.cues.flatMap((cue) => cueThen(moved, cue) ?? []),
    frames,
  );
  const tracks = old.tracks.map((track) => trackThen(moved, track));
  const ticks = movedTicks(plan.sheet.ticks, (tick) => {
    if (tick.shot !== shot || tick.exposure > moved.exposure.length) return tick;
    const then = moved.exposure[tick.exposure - 1] as number;
    return then === -1 ? null : { shot, exposure: then + 1 };
  });
  return withSheet(plan, { shots: shotsWith(plan, shot, { actions, cues, tracks }), ticks });
}
