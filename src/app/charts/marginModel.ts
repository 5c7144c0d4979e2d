/** One resource as a bar: how much of it is used, and where the part begins that you asked to keep. */
import type { Margin } from '../../engine/findings/types.ts';
import { bytesUnit } from '../format/bytes.ts';
import { NBSP, numberText } from '../format/numbers.ts';
import type { Piece } from '../working/sentence.ts';
import { digitsFor } from './format.ts';

/** A margin ready to draw. Shares are of what is available, 0 to 1. */
export interface MarginRow {
  id: string;
  label: string;
  /** `12.7 of 14.0 s, 91 %`. */
  usedOf: Piece[];
  /** What is left, or missing, and the words behind that figure. */
  left: string;
  leftUnit: string;
  usedShare: number;
  /** Where the reserve begins; null without one. */
  reserveShare: number | null;
  standing: 'fine' | 'warning' | 'stop';
  when: Piece[];
  /** The bar in words. */
  summary: string;
}

/** Works a margin out for drawing. */
export function marginRow(margin: Margin): MarginRow {
  const { used, available, reserve, left } = margin;
  const standing = left < 0 ? 'stop' : left < reserve ? 'warning' : 'fine';
  const { unit, size } = unitOf(margin);
  const say = (value: number) => figure(value / size, left / size);
  const percent = available > 0 ? Math.round((used / available) * 100) : 100;
  const behind = unit.startsWith('°') ? '' : NBSP;
  // Of what is a share itself another would only confuse.
  const share = unit === '%' ? '' : `${percent}${NBSP}%`;
  const stated = pieceOf(margin);
  return {
    id: margin.id,
    label: margin.label,
    usedOf: [
      stated('used', say(used)),
      ' of ',
      stated('available', `${say(available)}${behind}${unit}`),
      ...(share === '' ? [] : [', ', available > 0 ? stated('share', share) : share]),
    ],
    left: figure(Math.abs(left) / size, left / size),
    leftUnit: `${behind}${unit} ${standing === 'stop' ? 'too much' : 'left'}`,
    usedShare: available > 0 ? Math.min(1, used / available) : 1,
    reserveShare: reserve > 0 && available > 0 ? (available - reserve) / available : null,
    standing,
    when: whenPieces(margin),
    summary: `${percent} percent used${reserve > 0 ? `, ${say(reserve)}${behind}${unit} of it to keep` : ''}`,
  };
}

/** A piece of words that states a figure of a margin. */
const pieceOf =
  ({ id }: Margin) =>
  (what: string, text: string): Piece => ({ text, of: `margins.${id}.${what}` });

function whenPieces(margin: Margin): Piece[] {
  const { id, when } = margin;
  const stated = pieceOf(margin);
  const [, from, to] = /^from (.+) to (.+)$/.exec(when) ?? [];
  if (from !== undefined && to !== undefined)
    return ['from ', stated('from', from), ' to ', stated('to', to)];
  const [, room] = /^room for (.+)$/.exec(when) ?? [];
  if (room !== undefined) return ['room for ', stated('room', room)];
  const [frame] = /frame [\d,]+$/.exec(when) ?? [];
  if (frame === undefined) return [when];
  return [when.slice(0, -frame.length), stated(id.startsWith('source:') ? 'lastFrame' : 'frame', frame)];
}

/** The unit to show a margin in, and how much of the margin's own unit it is. */
function unitOf({ unit, used, available }: Margin): { unit: string; size: number } {
  if (unit === 'bytes') return bytesUnit(Math.max(used, available));
  if (unit === 'share') return { unit: '%', size: 0.01 };
  return { unit: unit.replace(/^deg/, '°'), size: 1 };
}

/** A number with the decimals of its own size, and more where what is left would not show otherwise. */
function figure(value: number, left: number): string {
  const close = left === 0 ? 0 : Math.min(2, digitsFor(left));
  return numberText(value, Math.max(close, Math.min(3, digitsFor(value))));
}
