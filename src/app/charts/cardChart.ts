/** How full the card in use is, and where the next one goes in. */
import type { CardSummary, Schedule } from '../../engine/schedule-types.ts';
import { ofFrame } from '../../engine/working/names.ts';
import { bytesUnit } from '../format/bytes.ts';
import { numberText } from '../format/numbers.ts';
import {
  breaksAt,
  type ChartModel,
  dotsOf,
  type Level,
  paddedDomain,
  type Reading,
  xOfFrame,
  yScale,
} from './chart.ts';
import { digitsFor, fixed } from './format.ts';
import { type Moment, markBoxes, placeMarks } from './marks.ts';
import { placeNames } from './names.ts';
import type { RunView } from './runView.ts';
import { labelledTicks } from './scale.ts';
import { type Series, traceOf } from './trace.ts';

const HEIGHT_PX = 80;

type UsedCard = CardSummary & { firstFrame: number; lastFrame: number };

/** The chart of the cards; null if no frame fits on any. */
export function cardChart(view: RunView): ChartModel | null {
  const { schedule, widthPx } = view;
  const used = schedule.cards.filter(isUsed);
  const last = used.at(-1);
  if (!last) return null;
  const amounts = amountsOf(used, schedule.totals.frameBytes);
  const series = fillSeries(schedule, used, amounts);
  const domain = [0, amounts.most] as const;
  const y = yScale(domain, HEIGHT_PX);
  const trace = traceOf(view, series, y, y(0));
  const marks = placeMarks([...changes(used, view), ...fullMoment(last, view)], {
    traces: [trace],
    widthPx,
    heightPx: HEIGHT_PX,
  });
  const named = { ...trace, name: `${amounts.short(last.usedBytes)} ${amounts.unit}` };
  const cardAt = (index: number) => schedule.cards[Number(schedule.columns.cardIndex[index])];
  const filled = (index: number) => amounts.say(Number(schedule.columns.cardBytes[index]));
  return {
    id: 'card',
    title: 'Card',
    unit: `${amounts.unit} filled`,
    heightPx: HEIGHT_PX,
    domain: paddedDomain(domain, HEIGHT_PX),
    ticks: labelledTicks(domain, 3, 3),
    traces: [trace],
    names: placeNames([named], markBoxes(marks), { widthPx, heightPx: HEIGHT_PX }),
    bands: [],
    levels: used.map((card) => capacity(card, view, amounts)),
    marks,
    summary: used.map((card) => cardInWords(card, amounts)).join(' '),
    note: null,
    read: (index) => [
      {
        style: series,
        name: cardAt(index)?.name ?? 'Card',
        value: filled(index),
        unit: amounts.unit,
        of: ofFrame(index, 'cardBytes'),
      },
      usableOf(cardAt(index), amounts),
    ],
    dots: (index) => dotsOf([series], y, index),
    table: [
      { heading: 'Card', cell: (index) => cardAt(index)?.name ?? '' },
      {
        heading: `Filled, ${amounts.unit}`,
        cell: filled,
        of: (index) => ofFrame(index, 'cardBytes'),
      },
    ],
  };
}

function usableOf(card: CardSummary | undefined, { short, unit }: Amounts): Reading {
  const shown = { style: null, name: 'Of', value: short(card?.usableBytes ?? 0), unit };
  return card ? { ...shown, of: `cards.${card.name}.usableBytes` } : shown;
}

const isUsed = (card: CardSummary): card is UsedCard => card.firstFrame !== null && card.lastFrame !== null;

/** Amounts of data in the one unit that suits the largest card. */
interface Amounts {
  unit: string;
  /** Bytes of the unit. */
  size: number;
  /** Largest card, in the unit. */
  most: number;
  /** With fixed decimals, for what changes; and without needless ones. */
  say(bytes: number): string;
  short(bytes: number): string;
}

function amountsOf(used: readonly UsedCard[], frameBytes: number): Amounts {
  const mostBytes = Math.max(...used.map((card) => card.usableBytes));
  const { unit, size } = bytesUnit(mostBytes);
  // Enough decimals to see the first frame arrive, no more than can be read at a glance.
  const digits = Math.min(2, Math.max(1, digitsFor(frameBytes / size)));
  return {
    unit,
    size,
    most: mostBytes / size,
    say: (bytes) => fixed(bytes / size, digits),
    short: (bytes) => numberText(bytes / size, digits),
  };
}

function fillSeries(schedule: Schedule, used: readonly UsedCard[], { size }: Amounts): Series {
  return {
    name: 'Filled',
    values: schedule.columns.cardBytes,
    factor: 1 / size,
    breaks: breaksAt(used.map((card) => card.firstFrame)),
    filled: true,
    tone: 'green',
    dash: '',
  };
}

/** What a card takes, over the frames it is in use. */
const capacity = (card: UsedCard, view: RunView, { size }: Amounts): Level => ({
  value: card.usableBytes / size,
  fromX: card.firstFrame === 1 ? null : xOfFrame(view, card.firstFrame),
  toX: card.lastFrame === view.elapsedS.length ? null : xOfFrame(view, card.lastFrame),
  kind: 'limit',
});

const changes = (used: readonly UsedCard[], view: RunView): Moment[] =>
  used.slice(1).map((card) => ({
    kind: 'change',
    x: xOfFrame(view, card.firstFrame),
    label: `${card.name}, frame ${card.firstFrame}`,
  }));

/** Where the last card is full before the run ends. */
function fullMoment({ lastFrame }: UsedCard, view: RunView): Moment[] {
  const frame = lastFrame + 1;
  if (frame > view.elapsedS.length) return [];
  return [{ kind: 'end', x: xOfFrame(view, frame), label: `No room, frame ${frame}` }];
}

function cardInWords(card: UsedCard, { short, unit }: Amounts): string {
  const amounts = `${short(card.usedBytes)} of ${short(card.usableBytes)} ${unit}`;
  return `${card.name} takes frames ${card.firstFrame} to ${card.lastFrame}, ${amounts}.`;
}
