/**
 * What a fix costs, from the single figures of the plan with it and without.
 *
 * Fixes are put in order by a rank that adds the losses up, each in the units below, which are our own judgement of
 * what an operator would rather give: an hour of waiting, a stop of light, a tenth of the clip or of the event, and
 * two things to see to weigh alike.
 */
import { bytes, seconds, withUnit } from '../findings/words.ts';
import type { Outcome } from './trial.ts';
import type { Cost, CostFigure, CostPart } from './types.ts';

/** Rank of one unit of each loss. */
const RANKS = {
  /** All of the clip, or all of its frames. */
  clip: 10,
  /** All of the event. */
  event: 10,
  /** One stop. */
  light: 1,
  /** One hour that the run begins at another time, or lasts longer. */
  hour: 1,
  /** As much energy, or as many bytes, again. */
  energy: 1,
  storage: 0.5,
  /** One thing that no figure shows. */
  need: 0.5,
} as const;

/** Another day is no worse than so many hours. */
const MOST_HOURS = 3;

/** Less than this share is no loss. */
const NOTHING = 0.005;

interface Loss {
  parts: CostPart[];
  rank: number;
}

const loss = (text: string, of: CostFigure | null, rank: number): Loss => ({ parts: [{ text, of }], rank });

const textOf = ({ parts }: Loss): string => parts.map(({ text }) => text).join(': ');

const DAY_S = 86_400;

/** How long, for a sentence: in days from two on, or where it is just one. */
function spell(durationS: number): string {
  if (durationS < 2 * DAY_S && durationS !== DAY_S) return seconds(durationS);
  // The clocks may change on the way.
  const days = Math.round(durationS / DAY_S);
  return withUnit(days, days === 1 ? 'day' : 'days');
}

const hours = (durationS: number): number => Math.min(MOST_HOURS, Math.abs(durationS) / 3600) * RANKS.hour;

function clipLoss(before: Outcome, after: Outcome): Loss[] {
  const frames = after.totals.frames - before.totals.frames;
  const clipS = after.totals.clipLengthS - before.totals.clipLengthS;
  if (frames >= 0 && clipS >= 0) return [];
  const share = Math.max(-frames / before.totals.frames, -clipS / (before.totals.clipLengthS || 1));
  const clip = `${seconds(after.totals.clipLengthS)} clip`;
  const fewer = withUnit(frames, frames === -1 ? 'frame' : 'frames');
  const parts: CostPart[] = [{ text: clip, of: 'clipS' }];
  if (frames < 0) parts.unshift({ text: fewer, of: 'frames' });
  return [{ parts, rank: share * RANKS.clip }];
}

/** A run that begins at another time, and one that lasts longer or, with as many frames, shows less of the event. */
function timeLoss(before: Outcome, after: Outcome): Loss[] {
  const startS = (after.startMs - before.startMs) / 1000;
  const longerS = after.totals.eventDurationS - before.totals.eventDurationS;
  const moved = Math.abs(startS) >= 1;
  const [verb, more, less] = moved ? ['lasts', 'longer', 'less'] : ['ends', 'later', 'earlier'];
  const starts = `starts ${spell(Math.abs(startS))} ${startS > 0 ? 'later' : 'earlier'}`;
  const ends = `${verb} ${spell(Math.abs(longerS))} ${longerS > 0 ? more : less}`;
  // The last of other intervals ends where it comes to.
  const slack = Math.max(before.totals.intervalS, after.totals.intervalS);
  // What fewer frames show less of is said with them.
  const shown = longerS > slack || (longerS < -slack && after.totals.frames >= before.totals.frames);
  const share = Math.abs(longerS) / (before.totals.eventDurationS || 1);
  return [
    ...(moved ? [loss(starts, 'startS', hours(startS))] : []),
    ...(shown ? [loss(ends, 'eventS', longerS > 0 ? hours(longerS) : share * RANKS.event)] : []),
  ];
}

const lightLoss = (stops: number): Loss[] =>
  stops < 0.05
    ? []
    : [
        loss(
          `light ${withUnit(stops, stops.toFixed(2) === '1.00' ? 'stop' : 'stops')} farther off`,
          'lightStops',
          stops * RANKS.light,
        ),
      ];

const moreOf = (more: number, before: number, text: string, of: CostFigure, rank: number): Loss[] =>
  more <= NOTHING * before || more <= 0 ? [] : [loss(text, of, Math.min(3, more / (before || more)) * rank)];

/** All losses, the most telling first. */
const inOrder = (losses: readonly Loss[]): Loss[] => [...losses].sort((a, b) => b.rank - a.rank);

/** By how much one figure is more than another, without the rounding that sums of many frames carry. */
function more(after: number, before: number): number {
  const difference = after - before;
  return Math.abs(difference) <= 1e-9 * Math.max(1, Math.abs(before)) ? 0 : difference;
}

/**
 * What a change costs.
 * @param needs - what it costs that no figure shows, as its ways say it
 */
export function costOf(before: Outcome, after: Outcome, needs: readonly (string | null)[]): Cost {
  const frames = after.totals.frames - before.totals.frames;
  const startS = (after.startMs - before.startMs) / 1000;
  const endS = startS + more(after.totals.eventDurationS, before.totals.eventDurationS);
  const lightStops = more(after.lightStops, before.lightStops);
  const energyWh = more(after.totals.energyWh, before.totals.energyWh);
  const storageBytes = after.totals.storageBytes - before.totals.storageBytes;
  const losses = inOrder([
    ...needs.flatMap((text) => (text === null ? [] : [loss(text, null, RANKS.need)])),
    ...clipLoss(before, after),
    ...timeLoss(before, after),
    ...lightLoss(lightStops),
    ...moreOf(energyWh, before.totals.energyWh, `+${withUnit(energyWh, 'Wh')}`, 'energyWh', RANKS.energy),
    ...moreOf(
      storageBytes,
      before.totals.storageBytes,
      `+${bytes(storageBytes)}`,
      'storageBytes',
      RANKS.storage,
    ),
  ]);
  return {
    text: losses.map(textOf).join(', ') || 'nothing',
    parts: losses.flatMap(({ parts }) => parts),
    frames,
    clipS: more(after.totals.clipLengthS, before.totals.clipLengthS),
    startS,
    endS,
    lightStops,
    energyWh,
    storageBytes,
    rank: losses.reduce((sum, { rank }) => sum + rank, 0),
  };
}
