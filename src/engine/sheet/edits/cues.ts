/** Cues at exposures. */
import { MAX_FRAMES } from '../../plan/constants.ts';
import { type Cue, memberSchemas, type Plan } from '../../plan/schema.ts';
import { shotFrames } from '../production.ts';
import type { ExposurePlace } from '../texts.ts';
import { holdsOf } from './pattern.ts';
import { listWithin, textWithin, wholeWithin } from './refused.ts';
import { actionNumbered, locate, shotNumbered, shotsWith, withSheet } from './shots.ts';

export const CUE_KINDS: readonly Cue['kind'][] = ['sound', 'word', 'light', 'other'];

/** A cue of a kind that one before it has: an exposure takes one of each. */
export const secondOfKind = <One extends Pick<Cue, 'kind'>>(cues: readonly One[]): One | undefined =>
  cues.find(({ kind }, c) => cues.findIndex((one) => one.kind === kind) < c);

/** A cue to be set. */
export interface NewCue {
  kind: Cue['kind'];
  /** Empty to take it away. */
  text: string;
  /** How long it lasts; one frame if not given. A cue of its kind after it cuts it off. */
  frames?: number;
}

/** First and last frame of an exposure, within its shot, from 1. */
export function framesAt(plan: Plan, place: ExposurePlace): { first: number; last: number } {
  const shot = shotNumbered(plan, place.shot);
  const at = locate(plan, place);
  const before = shotFrames({ ...shot, actions: shot.actions.slice(0, at.action - 1) }, plan.clip.frameRate);
  const holds = holdsOf(plan, actionNumbered(shot, at.action));
  const first = before + 1 + holds.subarray(0, at.exposure - 1).reduce((sum, hold) => sum + hold, 0);
  return { first, last: first + (holds[at.exposure - 1] as number) - 1 };
}

/**
 * Sets the cue of a kind at an exposure: the one that begins within it gets another text; else one begins with it, and
 * one of its kind that is still going on ends there.
 */
export function setCue(plan: Plan, place: ExposurePlace, { kind, text, frames }: NewCue): Plan {
  textWithin('text', text, 200);
  const { first, last } = framesAt(plan, place);
  const shot = shotNumbered(plan, place.shot);
  const begins = shot.cues.find((cue) => cue.kind === kind && cue.frame >= first && cue.frame <= last);
  const others = shot.cues.filter((cue) => cue !== begins);
  const at = begins?.frame ?? first;
  const cues =
    text === ''
      ? others
      : [
          ...cutOff(others, kind, at),
          cueAt(plan, place, others, { kind, text, at, frames: frames ?? begins?.frames ?? 1 }),
        ];
  return withSheet(plan, { shots: shotsWith(plan, place.shot, { cues: listWithin('cues', cues, 5000) }) });
}

const cutOff = (cues: readonly Cue[], kind: Cue['kind'], at: number): Cue[] =>
  cues.map((cue) =>
    cue.kind === kind && cue.frame < at && cue.frame + cue.frames > at
      ? { ...cue, frames: at - cue.frame }
      : cue,
  );

function cueAt(
  plan: Plan,
  { shot }: ExposurePlace,
  others: readonly Cue[],
  { kind, text, at, frames }: { kind: Cue['kind']; text: string; at: number; frames: number },
): Cue {
  wholeWithin('frames', frames, 1, MAX_FRAMES);
  wholeWithin('frame of a cue', at, 1, MAX_FRAMES);
  const next = others.filter((cue) => cue.kind === kind && cue.frame > at).map((cue) => cue.frame);
  const end = Math.min(shotFrames(shotNumbered(plan, shot), plan.clip.frameRate) + 1, ...next);
  return memberSchemas.cue.parse({ kind, text, frame: at, frames: Math.min(frames, end - at) });
}
