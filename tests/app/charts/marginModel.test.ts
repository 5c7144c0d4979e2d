import { describe, expect, it } from 'vitest';
import { combTicks } from '../../../src/app/charts/combTicks.ts';
import { marginRow } from '../../../src/app/charts/marginModel.ts';
import { plainText } from '../../../src/app/working/sentence.ts';
import type { Margin } from '../../../src/engine/findings/types.ts';

const margin = (used: number, available: number, reserve = 0, unit = 's'): Margin => ({
  id: 'interval',
  subject: 'cycle',
  label: 'Interval',
  used,
  available,
  unit,
  reserve,
  left: available - used,
  frame: 1,
  when: 'tightest at frame 1',
});

/** The row, its words as they are read. */
function read(of: Margin) {
  const row = marginRow(of);
  return { ...row, usedOf: plainText(row.usedOf) };
}

describe('a margin', () => {
  it('is fine, into its reserve, or exceeded', () => {
    expect(marginRow(margin(5, 14, 2)).standing).toBe('fine');
    expect(marginRow(margin(12, 14, 2)).standing).toBe('fine');
    expect(marginRow(margin(12.7, 14, 2)).standing).toBe('warning');
    expect(marginRow(margin(14, 14)).standing).toBe('fine');
    expect(marginRow(margin(14.1, 14)).standing).toBe('stop');
  });

  it('says used, available and left', () => {
    expect(read(margin(12.68, 14, 2))).toMatchObject({
      usedOf: '12.7 of 14\u00A0s, 91\u00A0%',
      left: '1.3',
      leftUnit: '\u00A0s left',
      summary: '91 percent used, 2\u00A0s of it to keep',
    });
    expect(read(margin(15, 14))).toMatchObject({
      left: '1',
      leftUnit: '\u00A0s too much',
      usedShare: 1,
    });
  });

  it('marks where the reserve begins', () => {
    expect(marginRow(margin(5, 20, 5)).reserveShare).toBe(0.75);
    expect(marginRow(margin(5, 20)).reserveShare).toBeNull();
    expect(marginRow(margin(5, 20)).usedShare).toBe(0.25);
  });

  it('shows bytes, shares and degrees in their units', () => {
    expect(read(margin(20.072e9, 32e9, 1.6e9, 'bytes'))).toMatchObject({
      usedOf: '20.1 of 32\u00A0GB, 63\u00A0%',
      leftUnit: '\u00A0GB left',
    });
    expect(read(margin(0.66, 0.85, 0, 'share')).usedOf).toBe('66 of 85\u00A0%');
    expect(read(margin(42, 360, 0, 'deg'))).toMatchObject({
      usedOf: '42 of 360°, 12\u00A0%',
      leftUnit: '° left',
    });
    expect(read(margin(0.02, 6, 0, 'deg/s')).usedOf).toBe('0.02 of 6°/s, 0\u00A0%');
  });

  it('shows the difference where it is small', () => {
    expect(read(margin(31.25e9, 32e9, 0, 'bytes'))).toMatchObject({
      usedOf: '31.25 of 32\u00A0GB, 98\u00A0%',
      left: '0.75',
    });
  });

  it('draws nothing available as all used', () => {
    expect(marginRow(margin(1, 0))).toMatchObject({ usedShare: 1, standing: 'stop', reserveShare: null });
  });
});

describe('the comb', () => {
  it('closes up from left to right', () => {
    const ticks = combTicks(1000, 386);
    const gaps = ticks.slice(1).map((x, i) => x - Number(ticks[i]));
    expect(ticks[0]).toBe(0);
    expect(ticks.at(-1)).toBeLessThan(1000);
    expect(gaps.every((gap, i) => i === 0 || gap < Number(gaps[i - 1]))).toBe(true);
    expect(gaps[0]).toBeGreaterThan(20);
    expect(gaps.at(-1)).toBeLessThan(4.5);
  });

  it('has no more teeth than frames', () => {
    expect(combTicks(1000, 12)).toHaveLength(12);
    expect(combTicks(1000, 0)).toEqual([]);
    expect(combTicks(0, 100)).toEqual([]);
  });
});
