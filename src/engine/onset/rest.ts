/**
 * What is left of a run, planned again: the end, the clip or the interval gives way, the other two are kept.
 *
 * Frames that are shot stay as they are. The rest begins with full knowledge of them: the rig stands where they left
 * it, cards and packs hold what they left, and the light is that of the hour at which the rest is shot.
 */

import { fullWh } from '../energy/battery.ts';
import { drawOf } from '../energy/energy.ts';
import { seconds } from '../findings/words.ts';
import { paceOf } from '../pacing/pacing.ts';
import type { Card, Plan, Source } from '../plan/schema.ts';
import type { Schedule } from '../schedule-types.ts';
import { parseRate, toNumber } from '../time/ratio.ts';
import { restTracks } from './rest-tracks.ts';
import { madeOf, opensMs, type Stretch } from './stretch.ts';

/** What is kept: the third gives way. */
export type Keep = 'clipAndInterval' | 'endAndInterval' | 'endAndClip';
export const KEEPS: readonly Keep[] = ['clipAndInterval', 'endAndInterval', 'endAndClip'];

/** What has happened to a stretch. */
export interface Happened {
  /** Its frames that stay as they were shot. */
  shot: number;
  /** Opening of the next frame, milliseconds of the epoch. */
  nextMs: number;
  /** When the last frame was to open, milliseconds of the epoch. */
  endMs: number;
  /** Frames to be shot besides those that are left: to make up for lost ones. */
  more: number;
}

/** The rest as a stretch of its own, or in one sentence why it cannot be had. */
export type Replanned = { stretch: Stretch } | { why: string };

/** Pacing of so many frames at an interval; half a clip frame less keeps decimals from asking for one more. */
function framesAt(plan: Plan, frames: number, intervalS: number, handlesFrames: number): Plan {
  const { frameRate, holdFrames } = plan.clip;
  const clipFrames = frames * holdFrames - 2 * handlesFrames;
  const handles = clipFrames >= 1 ? handlesFrames : 0;
  const wanted = clipFrames >= 1 ? clipFrames : frames * holdFrames;
  const clipLengthS = (wanted - 0.5) / toNumber(parseRate(frameRate));
  return {
    ...plan,
    clip: { ...plan.clip, handlesFrames: handles },
    pacing: { ...plan.pacing, workedOut: 'event', intervalS, clipLengthS: Number(clipLengthS.toFixed(9)) },
  };
}

/** The interval that a dial setting makes with the plan's own exposure. */
function intervalAt(plan: Plan, dialS: number): number {
  const pace = paceOf(plan);
  return Number((pace.intervalS - pace.dialS + dialS).toFixed(9));
}

/** Cards with the room that is left on them; those that are full are left out. */
function cardsLeft(plan: Plan, made: Schedule, shot: number): Card[] {
  const { cards } = plan.storage;
  if (shot === 0) return cards;
  const inUse = made.columns.cardIndex[shot - 1] ?? 0;
  const used = made.columns.cardBytes[shot - 1] ?? 0;
  const left = cards.slice(inUse).map((card, i): Card => {
    if (i > 0) return card;
    const usable = Math.round(card.cardBytes * (1 - card.reserveShare)) - used;
    // The plan knows no card of less than a megabyte.
    return { ...card, cardBytes: Math.max(1_000_000, usable / (1 - card.reserveShare)) };
  });
  return left.length > 0 ? left : cards.slice(-1);
}

const WH_PER_WS = 1 / 3600;

/** What the pack in use has given when the next frame opens, and how many packs are left with it. */
function packLeft(of: Stretch, made: Schedule, source: Source, { shot, nextMs }: Happened) {
  const { plan, usedWh } = of;
  const waitS = Math.max(0, (nextMs - opensMs(made, shot)) / 1000);
  const waitedWh = drawOf(plan, source).periodW * waitS * WH_PER_WS;
  const full = fullWh(source, plan.power.temperatureC);
  if (source.kind === 'mains') return { usedWh: 0, count: source.count };
  if (shot === 0) return { usedWh: (usedWh[source.name] ?? 0) + waitedWh, count: source.count };
  const summary = made.sources.find(({ name }) => name === source.name);
  const left = made.columns.sources.find(({ name }) => name === source.name)?.leftWh;
  const frames = left?.length ?? 0;
  const swaps = (summary?.swapFrames ?? []).filter((frame) => frame <= shot).length;
  // A swap that is due just now has not been made: the pack is used up to its reserve.
  const due = summary?.swapFrames.includes(shot + 1) ?? false;
  const usable = full * (1 - source.reserveShare);
  const drawn = due ? usable : full - (left?.[Math.min(shot, frames - 1)] ?? full);
  return { usedWh: drawn + waitedWh, count: Math.max(1, source.count - swaps) };
}

/** The plan of what is left after the frames that are shot, its pacing still as it was. */
function leftOver(of: Stretch, happened: Happened): Stretch {
  const { plan } = of;
  const made = madeOf(of);
  const { shot, nextMs } = happened;
  const packs = plan.power.sources.map((source) => ({ source, ...packLeft(of, made, source, happened) }));
  const tracks = shot === 0 ? plan.move.tracks : restTracks(plan, made, shot, made.totals.frames - 1);
  return {
    plan: {
      ...plan,
      move: { ...plan.move, tracks },
      storage: { ...plan.storage, cards: cardsLeft(plan, made, shot) },
      power: { ...plan.power, sources: packs.map(({ source, count }) => ({ ...source, count })) },
    },
    startMs: nextMs,
    framesBefore: of.framesBefore + shot,
    usedWh: Object.fromEntries(packs.map(({ source, usedWh }) => [source.name, usedWh])),
  };
}

/** Seconds to the end, a millisecond more: sums of intervals carry roundings. Negative once it is past. */
const secondsTo = ({ nextMs, endMs }: Happened): number => (Math.round(endMs - nextMs) + 1) / 1000;

const PAST = 'The end that was planned is past.';

/** The interval, settable and worked out, at which so many frames fit until the end. */
function fitting(rest: Stretch, frames: number, eventS: number): { intervalS: number } | { why: string } {
  if (frames < 2) return { why: 'One frame has no interval.' };
  const asked = framesAt(rest.plan, frames, rest.plan.pacing.intervalS, 0);
  const probe: Plan = { ...asked, pacing: { ...asked.pacing, workedOut: 'interval', eventS } };
  const { trigger } = probe;
  const { dialS, rawIntervalS } = madeOf({ ...rest, plan: probe }).totals;
  if (!paceOf(probe).settable) {
    const shortest = intervalAt(probe, trigger.minS);
    return {
      why: `It would take an interval of ${seconds(rawIntervalS)}; the shortest that ${trigger.name} can be set to is ${seconds(shortest)}.`,
    };
  }
  return { intervalS: intervalAt(probe, dialS) };
}

/** Findings that an option must not bring: the run would not be what it says. */
const REFUSED = ['cycle-overrun', 'camera-not-ready', 'interval-not-settable'];

/**
 * The rest of a stretch, planned again.
 * @param of - the stretch under way
 * @param happened - what has happened to it
 * @param keep - what is kept
 */
export function replanned(of: Stretch, happened: Happened, keep: Keep): Replanned {
  const made = madeOf(of);
  const { shot, more } = happened;
  const frames = made.totals.frames - shot + more;
  if (frames < 1) return { why: 'All frames are shot.' };
  const rest = leftOver(of, happened);
  const handles = shot === 0 ? of.plan.clip.handlesFrames : 0;
  const intervalS = intervalAt(of.plan, made.totals.dialS);
  const asItWas = { ...rest, plan: framesAt(rest.plan, frames, intervalS, handles) };
  if (keep === 'clipAndInterval') return { stretch: asItWas };
  const eventS = secondsTo(happened);
  if (eventS <= 0) return { why: PAST };
  // With time in hand nothing has to give way.
  if (madeOf(asItWas).totals.eventDurationS <= eventS) return { stretch: asItWas };
  if (keep === 'endAndInterval') return { stretch: fewerFrames(asItWas, intervalS, eventS) };
  const fit = fitting(rest, frames, eventS);
  if ('why' in fit) return fit;
  const stretch = { ...rest, plan: framesAt(rest.plan, frames, fit.intervalS, handles) };
  const had = new Set(madeOf(asItWas).findings.map(({ id }) => id));
  const refused = madeOf(stretch).findings.find(({ id }) => REFUSED.includes(id) && !had.has(id));
  return refused ? { why: refused.message } : { stretch };
}

/** As many frames as open within an event, at the interval. */
function fewerFrames(rest: Stretch, intervalS: number, eventS: number): Stretch {
  const pacing = {
    ...rest.plan.pacing,
    workedOut: 'clip' as const,
    intervalS,
    eventS: Math.max(0.01, eventS),
  };
  return { ...rest, plan: { ...rest.plan, pacing } };
}

/**
 * A stretch that ends sooner. The rig goes as it would have gone, and stops on the way.
 * @param frames - that it shall have, from 1 to as many as it has
 */
export function cutTo(of: Stretch, frames: number): Stretch {
  const made = madeOf(of);
  const handles = of.framesBefore === 0 ? of.plan.clip.handlesFrames : 0;
  const paced = framesAt(of.plan, frames, intervalAt(of.plan, made.totals.dialS), handles);
  const tracks = restTracks(of.plan, made, 0, frames - 1);
  return { ...of, plan: { ...paced, move: { ...paced.move, tracks } } };
}
