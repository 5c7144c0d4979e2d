/** When the sun reaches the set, and when it is in the picture: dimension lines at the foot of the sky. */
import { textWidth } from './names.ts';
import { EDGE_PX } from './runView.ts';
import type { PlacedWindow, SkyBand } from './skyBand.ts';

/** A dimension line with its words, pixels of the plot. */
export interface LaneStretch {
  fromX: number;
  toX: number;
  /** Empty if there is no room for words, or others say it. */
  label: string;
  labelX: number;
}

/** One kind of stretch, in a row of its own. */
export interface SunLane {
  name: string;
  /** Middle of the row, from the top of the plot. */
  y: number;
  stretches: LaneStretch[];
}

/** Height of a row. */
export const LANE_PX = 22;
const GAP_PX = 8;

interface Words {
  name: string;
  placed: readonly PlacedWindow[];
}

const kindsOf = ({ setHits, inFrame }: SkyBand): Words[] =>
  [
    { name: 'Sun on the set', placed: setHits },
    { name: 'Sun in frame', placed: inFrame },
  ].filter(({ placed }) => placed.length > 0);

/** Room that the rows need at the foot of the sky; none if the sun does neither. */
export const lanesHeight = (band: SkyBand): number => kindsOf(band).length * LANE_PX;

/**
 * The rows, one under the other.
 * @param topPx - where the first one begins
 */
export const sunLanes = (band: SkyBand, topPx: number, widthPx: number): SunLane[] =>
  kindsOf(band).map(({ name, placed }, row) => ({
    name,
    y: topPx + (row + 0.5) * LANE_PX,
    stretches: labelled(name, placed, widthPx),
  }));

/** Words go into a stretch, behind it or before it; if no stretch has room for any, its name stands in front. */
function labelled(name: string, placed: readonly PlacedWindow[], widthPx: number): LaneStretch[] {
  let freeFrom = EDGE_PX;
  const stretches = placed.map(({ fromX, toX, words }, i) => {
    const freeTo = placed[i + 1]?.fromX ?? widthPx - EDGE_PX;
    const text = [words, name].find((each) => roomFor(each, { fromX, toX }, freeFrom, freeTo) !== null);
    const labelX = text === undefined ? null : roomFor(text, { fromX, toX }, freeFrom, freeTo);
    if (text === undefined || labelX === null) {
      freeFrom = toX;
      return { fromX, toX, label: '', labelX: 0 };
    }
    freeFrom = Math.max(toX, labelX + textWidth(text) + GAP_PX);
    return { fromX, toX, label: text, labelX };
  });
  const [first] = stretches;
  if (first && stretches.every(({ label }) => label === '')) {
    first.label = name;
    first.labelX = EDGE_PX + GAP_PX;
  }
  return stretches;
}

/** Where words begin; null if there is no room. */
function roomFor(
  words: string,
  { fromX, toX }: { fromX: number; toX: number },
  freeFrom: number,
  freeTo: number,
): number | null {
  const width = textWidth(words);
  if (toX - fromX >= width + 4 * GAP_PX) return fromX + 2 * GAP_PX;
  if (toX + GAP_PX + width <= freeTo) return toX + GAP_PX;
  return fromX - GAP_PX - width >= freeFrom ? fromX - GAP_PX - width : null;
}

/** The same in words, for a chart's summary. */
export const lanesInWords = (band: SkyBand): string[] =>
  kindsOf(band).flatMap(({ placed }) => placed.map(({ words }) => `${words}.`));
