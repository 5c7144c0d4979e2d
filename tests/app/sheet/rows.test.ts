import { describe, expect, test } from 'vitest';
import { pausesOf } from '../../../src/app/sheet/pauses.ts';
import { rowsOf, type SheetRows } from '../../../src/app/sheet/rows.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { sheetOf } from '../../../src/engine/sheet/sheet.ts';
import { production } from './production.ts';

const HEIGHTS = { shot: 40, action: 44, exposure: 28, next: 36, pause: 32 };

function laidOut(isOpen: (action: number) => boolean, sheetFields: object = {}) {
  const plan = production(sheetFields);
  const sheet = sheetOf(plan);
  const pauses = pausesOf(plan, sheet);
  return { plan, sheet, pauses, rows: rowsOf(sheet, pauses, isOpen, 1, HEIGHTS) };
}

const textOf = (rows: SheetRows): string[] =>
  Array.from({ length: rows.count }, (_, row) => {
    const { kind, index } = rows.spotAt(row);
    return `${kind} ${index}`;
  });

describe('breaks and ends of days', () => {
  // 09:00 one, a little under 09:30 two; the third does not fit before 10:00 and waits until 10:30.
  test('a break stands after the exposure before it, the end of a day after its last', () => {
    const { pauses, sheet } = laidOut(() => true);
    expect(pauses[0]).toMatchObject({ kind: 'break', index: 0 });
    const { startMs } = sheet.columns;
    for (const { kind, after, ms } of pauses) {
      expect(startMs[after]).toBeLessThan(ms + 1);
      if (kind === 'break') expect(startMs[after + 1]).toBeGreaterThanOrEqual(ms + 30 * 60_000);
      else expect(new Date(startMs[after + 1] ?? 0).getUTCDate()).not.toBe(new Date(ms).getUTCDate());
    }
    expect(pauses.filter(({ kind }) => kind === 'day')).toHaveLength(sheet.days.length - 1);
  });

  // The clocks of Europe/Berlin go on from 02:00 to 03:00 on 29 March 2026 (IANA): from then on 04:00 is 02:00 UTC.
  test('a break after the clocks have changed is where the clock shows it', () => {
    const night = production({
      workFrom: '00:00',
      workTo: '08:00',
      daysOff: [],
      breaks: [{ from: '04:00', to: '04:30' }],
    });
    const plan: Plan = {
      ...night,
      start: { ...night.start, date: '2026-03-29', time: '00:00:00' },
      place: { ...night.place, zone: 'Europe/Berlin' },
    };
    const [pause] = pausesOf(plan, sheetOf(plan));
    expect(new Date(pause?.ms ?? 0).toISOString()).toBe('2026-03-29T02:00:00.000Z');
    expect(new Date(pause?.toMs ?? 0).toISOString()).toBe('2026-03-29T02:30:00.000Z');
  });

  test('no break shows where none of the work lies after it', () => {
    const { pauses } = laidOut(() => true, {
      shots: [{ name: 'One', actions: [{ text: 'Wakes', frames: 2, holds: [2] }] }],
    });
    expect(pauses).toEqual([]);
  });
});

describe('rows', () => {
  test('shots, their actions, and the exposures of those that are open', () => {
    const { rows, pauses } = laidOut((action) => action === 1);
    const kept = textOf(rows).filter((text) => !text.startsWith('pause'));
    expect(kept).toEqual([
      'shot 0',
      'action 0',
      'action 1',
      'exposure 4',
      'exposure 5',
      'exposure 6',
      'exposure 7',
      'shot 1',
      'action 2',
    ]);
    const shown = pauses.filter(({ after }) => after >= 4 && after <= 7).length;
    expect(rows.count).toBe(kept.length + shown);
  });

  test('every row is found again, and an exposure of a closed action at its heading', () => {
    for (const isOpen of [() => true, () => false, (action: number) => action !== 1]) {
      const { rows, sheet } = laidOut(isOpen);
      for (let row = 0; row < rows.count; row += 1) {
        const spot = rows.spotAt(row);
        expect(rows.rowOf(spot)).toBe(row);
      }
      for (let i = 0; i < sheet.exposures; i += 1) {
        const action = sheet.columns.action[i] ?? 0;
        const found = rows.spotAt(rows.rowOf({ kind: 'exposure', index: i }));
        expect(found).toEqual(
          isOpen(action) ? { kind: 'exposure', index: i } : { kind: 'action', index: action },
        );
      }
    }
  });

  test('one shot alone has no heading', () => {
    const { rows } = laidOut(() => false, {
      shots: [{ name: 'One', actions: [{ text: 'Wakes', frames: 8, holds: [2] }] }],
    });
    expect(textOf(rows)).toEqual(['action 0']);
  });

  test('heights add up, the next exposure being taller', () => {
    const { rows, pauses } = laidOut(() => true);
    expect(rows.ladder.totalPx).toBe(2 * 40 + 3 * 44 + 9 * 28 + 36 + pauses.length * 32);
  });
});
