/** The sheet as rows: shots and actions with their exposures under them, breaks and ends of days between. */
import { firstWhere } from '../../engine/search.ts';
import type { Sheet } from '../../engine/sheet/types.ts';
import { type Ladder, ladderOf } from './ladder.ts';
import type { Pause } from './pauses.ts';

export const ROW_KINDS = ['shot', 'action', 'exposure', 'pause'] as const;
export type RowKind = (typeof ROW_KINDS)[number];

/** What a row is of; `index` into the sheet's shots, actions or exposures, or into the pauses. */
export interface Spot {
  kind: RowKind;
  index: number;
}

export interface SheetRows {
  count: number;
  spotAt: (row: number) => Spot;
  /** Row of something; of its action where that is closed. */
  rowOf: (spot: Spot) => number;
  isOpen: (action: number) => boolean;
  ladder: Ladder;
}

/** Heights, pixels. */
export interface RowHeights {
  shot: number;
  action: number;
  exposure: number;
  /** Of the exposure that is next. */
  next: number;
  pause: number;
}

/** First pause at or after an exposure. */
const pauseFrom = (pauses: readonly Pause[], exposure: number): number =>
  firstWhere(0, pauses.length, (i) => (pauses[i] as Pause).after >= exposure);

/** Fills a list of rows that is as long as it can get. */
class Builder {
  readonly kinds: Uint8Array;
  readonly refs: Int32Array;
  count = 0;

  constructor(most: number) {
    this.kinds = new Uint8Array(most);
    this.refs = new Int32Array(most);
  }

  add(kind: RowKind, ref: number): number {
    this.kinds[this.count] = ROW_KINDS.indexOf(kind);
    this.refs[this.count] = ref;
    this.count += 1;
    return this.count - 1;
  }
}

/**
 * Lays the rows out.
 * @param next - index of the exposure that is next; -1 if all are done
 */
export function rowsOf(
  sheet: Sheet,
  pauses: readonly Pause[],
  isOpen: (action: number) => boolean,
  next: number,
  heights: RowHeights,
): SheetRows {
  const { shots, actions } = sheet;
  const rows = new Builder(shots.length + actions.length + sheet.exposures + pauses.length);
  const shotRows = new Int32Array(shots.length);
  const actionRows = new Int32Array(actions.length);
  let action = 0;
  shots.forEach((_, s) => {
    shotRows[s] = rows.count;
    if (shots.length > 1) rows.add('shot', s);
    for (; action < actions.length && actions[action]?.shot === s; action += 1) {
      actionRows[action] = rows.add('action', action);
      if (isOpen(action)) addExposures(rows, sheet, action, pauses);
    }
  });
  const rowOf = ({ kind, index }: Spot): number => {
    if (kind === 'shot') return shotRows[index] ?? 0;
    if (kind === 'action') return actionRows[index] ?? 0;
    const exposure = kind === 'pause' ? (pauses[index]?.after ?? 0) : index;
    const own = sheet.columns.action[exposure] ?? 0;
    const head = actionRows[own] ?? 0;
    if (!isOpen(own)) return head;
    const first = (actions[own]?.firstExposure ?? 1) - 1;
    const before = kind === 'pause' ? index + 1 : pauseFrom(pauses, exposure);
    return head + 1 + (exposure - first) + before - pauseFrom(pauses, first);
  };
  return {
    count: rows.count,
    spotAt: (row) => ({ kind: ROW_KINDS[rows.kinds[row] ?? 0] ?? 'shot', index: rows.refs[row] ?? 0 }),
    rowOf,
    isOpen,
    ladder: ladderOf(heightsOf(rows, next, heights)),
  };
}

function addExposures(rows: Builder, sheet: Sheet, action: number, pauses: readonly Pause[]): void {
  const { firstExposure, exposures } = sheet.actions[action] as Sheet['actions'][number];
  const end = firstExposure - 1 + exposures;
  let pause = pauseFrom(pauses, firstExposure - 1);
  for (let i = firstExposure - 1; i < end; i += 1) {
    rows.add('exposure', i);
    for (; pauses[pause]?.after === i; pause += 1) rows.add('pause', pause);
  }
}

function heightsOf({ count, kinds, refs }: Builder, next: number, heights: RowHeights): Uint8Array {
  const byKind = ROW_KINDS.map((kind) => heights[kind]);
  const pixels = new Uint8Array(count);
  for (let row = 0; row < count; row += 1) pixels[row] = byKind[kinds[row] as number] as number;
  const exposure = ROW_KINDS.indexOf('exposure');
  if (next >= 0)
    for (let row = 0; row < count; row += 1)
      if (refs[row] === next && kinds[row] === exposure) {
        pixels[row] = heights.next;
        break;
      }
  return pixels;
}
