/** What stands under the figures of the pacing strip. */
import { neighbouringSettings } from '../../engine/pacing/pacing.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import type { Schedule } from '../../engine/schedule-types.ts';
import { atLeastText, colonText, durationText } from '../format/durations.ts';
import { numberText, plural, shortNumber, withUnit } from '../format/numbers.ts';

/** A note; `bad` if the figure cannot be met. */
export interface Note {
  text: string;
  bad: boolean;
  /** The figure that it says, if that has a working. */
  of?: string;
}

const fine = (text: string, of: string): Note => ({ text, bad: false, of });

/** Shortest interval, or by how much the present one is too short, or what the trigger offers instead. */
export function intervalNote(plan: Plan, { totals, findings }: Schedule): Note {
  const shortS = totals.shortestIntervalS - plan.cycle.guardS - totals.intervalS;
  if (shortS > 1e-9) return { text: `${durationText(shortS)} too short`, bad: true };
  if (findings.some(({ id }) => id === 'interval-not-settable')) {
    const offered = neighbouringSettings(plan, totals.dialS).map((s) => numberText(s, 3));
    return {
      text: offered.length > 0 ? `trigger has ${withUnit(offered.join(' or '), 's')}` : 'not settable',
      bad: true,
    };
  }
  return fine(`at least ${atLeastText(totals.shortestIntervalS)}`, 'totals.shortestIntervalS');
}

/** The interval before it was rounded down, and what to dial, where they are not the interval itself. */
export function dialNote(plan: Plan, { totals }: Schedule): string {
  const notes = [];
  const { rawIntervalS: raw, intervalS, dialS } = totals;
  const differs = (a: number, b: number) => Math.abs(a - b) > 1e-9;
  if (plan.pacing.workedOut === 'interval' && differs(raw, intervalS))
    notes.push(`raw ${durationText(raw, 3)}`);
  if (differs(dialS, intervalS)) notes.push(`dial ${durationText(dialS, 3)}`);
  return notes.join(', ');
}

/** First to last frame, where it differs from the event asked for. */
export function eventNote(plan: Plan, { totals }: Schedule): string {
  const same = Math.abs(totals.eventDurationS - plan.pacing.eventS) < 0.5;
  if (plan.pacing.workedOut === 'event' || same) return 'first to last';
  return `${colonText(totals.eventDurationS)} first to last`;
}

/** How long the clip really gets, where it is not as typed; else how much faster it runs than the event. */
export function clipNote(plan: Plan, { totals }: Schedule): Note {
  const typed = plan.pacing.workedOut !== 'clip';
  if (typed && Math.abs(totals.clipLengthS - plan.pacing.clipLengthS) >= 0.005) {
    const text = `${durationText(totals.clipLengthS, 2)} with ${plural(totals.clipFrames, 'frame')}`;
    return fine(text, 'totals.clipLengthS');
  }
  return fine(`${shortNumber(totals.speedUp)} times faster`, 'totals.speedUp');
}

/** Handles and holds, which make the counts differ. */
export function framesNote({ clip }: Plan): string {
  const notes = [];
  if (clip.holdFrames > 1) notes.push(`each held for ${clip.holdFrames}`);
  if (clip.handlesFrames > 0) notes.push(`handles 2 × ${clip.handlesFrames}`);
  return notes.join(', ');
}

const HOLDS = ['ones', 'twos', 'threes', 'fours'] as const;

/** `on twos`, `on 6s`. */
export const holdText = (frames: number): string => `on ${HOLDS[frames - 1] ?? `${frames}s`}`;
