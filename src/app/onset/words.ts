/** What the view says, in the operator's words. */

import type { Outcome } from '../../engine/onset/outcome.ts';
import type { Keep } from '../../engine/onset/rest.ts';
import type { Doing } from '../../engine/onset/state.ts';
import type { Moment, Standing } from '../../engine/onset/todo.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { isoIn } from '../../engine/time/clock.ts';
import { clockOf, dateOf } from '../format/clock.ts';
import { durationText } from '../format/durations.ts';
import { MINUS, NBSP, numberText, plural } from '../format/numbers.ts';
import type { Slip } from './shoot.ts';

type Place = Plan['place'];

/** Clock of a place to the second. */
export const clockText = (ms: number, place: Place): string =>
  clockOf(isoIn(Math.floor(ms / 1000) * 1000, place));

/** Clock, with the date where that is another than today. */
export function momentText(ms: number, place: Place, besideMs: number): string {
  const [iso, beside] = [isoIn(Math.floor(ms / 1000) * 1000, place), isoIn(besideMs, place)];
  const clock = clockOf(iso);
  return iso.slice(0, 10) === beside.slice(0, 10) ? clock : `${dateOf(iso)}, ${clock}`;
}

const two = (value: number) => String(value).padStart(2, '0');
const DAY_S = 86_400;

/** A countdown: `6`, `2:54`, `1:00:04`, `3 d 4 h`. Seconds that have begun count in full. */
export function countdown(seconds: number): string {
  const whole = Math.max(0, Math.ceil(seconds - 1e-6));
  if (whole >= DAY_S)
    return `${Math.floor(whole / DAY_S)}${NBSP}d ${Math.floor((whole % DAY_S) / 3600)}${NBSP}h`;
  const [h, m, s] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60, whole % 60];
  if (h > 0) return `${h}:${two(m)}:${two(s)}`;
  return m > 0 ? `${m}:${two(s)}` : String(s);
}

type Sentence = readonly [state: string, whatItMeans: string];

const SENTENCES: Readonly<Record<Doing, Sentence>> = {
  before: ['Waiting.', 'Nothing has been shot yet.'],
  exposing: ['Exposing.', 'Hands off.'],
  moving: ['Moving.', 'Hands off.'],
  settling: ['Settling.', 'Hands off.'],
  writing: ['Writing.', 'Rig still, camera busy.'],
  spare: ['Spare time.', 'Rig still, camera free to touch.'],
  ready: ['Next frame at once.', 'Hands off.'],
  after: ['Done.', 'The last frame is shot.'],
};

/** What rig and camera do, and what hands may do. */
export function stateSentence(doing: Doing, mode: Plan['move']['mode']): Sentence {
  const always = mode === 'continuous' && !['before', 'after'].includes(doing);
  if (!always) return SENTENCES[doing];
  const [state] = SENTENCES[doing];
  return [state, 'The rig moves all the time: hands off it.'];
}

/** How a thing to do stands, in a word; empty while there is time. */
export const STANDING_WORDS: Readonly<Record<Standing, string>> = {
  later: '',
  soon: 'Soon',
  due: 'Now',
  overdue: 'Not done',
  done: 'Done',
};

/** When a thing is to be done. */
export const beforeFrame = ({ frame, kind, byHand }: Moment): string =>
  byHand && kind !== 'sunOnSet' ? `before frame${NBSP}${frame}` : `frame${NBSP}${frame}`;

/** What a choice is called: what is kept comes first. */
export function keepTitle(keep: Keep, slip: Slip['kind']): string {
  if (slip === 'lost') {
    return {
      endAndInterval: 'Only note it',
      clipAndInterval: 'Make up for it at the end',
      endAndClip: 'Make up for it by the planned end',
    }[keep];
  }
  return {
    clipAndInterval: 'Keep clip and interval: end later',
    endAndInterval: 'Keep end and interval: fewer frames',
    endAndClip: 'Keep end and clip: shorter interval',
  }[keep];
}

const signed = (value: number, text: string): string => (value < 0 ? `${MINUS}${text}` : `+${text}`);

const changed = (now: string, by: number, size: string): string =>
  by === 0 ? now : `${now} (${signed(by, size)})`;

/** Figures of an outcome with what changes of each: name, text, and what of its workings it is. */
export function consequences(
  { now, before }: Outcome,
  place: Place,
): [name: string, text: string, what: string][] {
  const by = {
    frames: now.frames - before.frames,
    clipS: Math.round((now.clipS - before.clipS) * 100) / 100,
    endS: Math.round((now.endMs - before.endMs) / 1000),
    dialS: Math.round((now.dialS - before.dialS) * 1000) / 1000,
  };
  const dial = durationText(now.dialS);
  return [
    ['Frames', changed(String(now.frames), by.frames, numberText(Math.abs(by.frames))), 'frames'],
    ['Clip', changed(durationText(now.clipS, 2), by.clipS, durationText(Math.abs(by.clipS), 2)), 'clipS'],
    ['End', changed(clockText(now.endMs, place), by.endS, durationText(Math.abs(by.endS))), 'endAt'],
    [
      'Trigger',
      by.dialS === 0 ? `${dial}, as it is` : `set to ${dial} (was ${durationText(before.dialS)})`,
      'dialS',
    ],
  ];
}

/** `5 min 10 s late`, `2 s early`, `on time`. */
export function lateText(seconds: number): string {
  const whole = Math.round(seconds);
  if (whole === 0) return 'on time';
  return `${durationText(Math.abs(whole))} ${whole > 0 ? 'late' : 'early'}`;
}

/** `3 frames lost`. */
export const lostText = (frames: number): string => `${plural(frames, 'frame')} lost`;
