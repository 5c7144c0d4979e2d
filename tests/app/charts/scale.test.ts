import { describe, expect, it } from 'vitest';
import { digitsFor, fixed, secondsText, signed } from '../../../src/app/charts/format.ts';
import { extent, linear, niceStep, niceTicks, padded } from '../../../src/app/charts/scale.ts';

describe('scales', () => {
  it('maps a domain onto pixels, either way round', () => {
    expect(linear([0, 10], [0, 100])(2.5)).toBe(25);
    expect(linear([0, 10], [100, 0])(2.5)).toBe(75);
    expect(linear([3, 3], [0, 100])(3)).toBe(50);
  });

  it('finds the finite extent', () => {
    expect(extent([3, Number.POSITIVE_INFINITY, -2, Number.NaN], 10)).toEqual([-20, 30]);
    expect(extent([Number.POSITIVE_INFINITY])).toBeNull();
    expect(padded([0, 10], 0.1)).toEqual([-1, 11]);
    expect(padded([4, 4], 0.1)).toEqual([3, 5]);
  });

  it.each([
    [0.7, 1],
    [1, 1],
    [1.1, 2],
    [3, 5],
    [60, 100],
    [0.03, 0.05],
    [0, 1],
  ])('least step %d gives %d', (least, step) => expect(niceStep(least)).toBeCloseTo(step, 12));

  it('marks round numbers within the domain', () => {
    expect(niceTicks([-18, 24], 5)).toEqual([-10, 0, 10, 20]);
    expect(niceTicks([0, 620], 5)).toEqual([0, 200, 400, 600]);
    expect(niceTicks([0, 0.3], 3)).toEqual([0, 0.1, 0.2, 0.3]);
  });
});

describe('figures', () => {
  it('have a true minus sign, and none on zero', () => {
    expect(fixed(-1.25, 1)).toBe('\u22121.3');
    expect(fixed(-0.001, 1)).toBe('0.0');
    expect(signed(2, 1)).toBe('+2.0');
    expect(signed(0.001, 1)).toBe('0.0');
  });

  it.each([
    [0.12, '0.12'],
    [0.5, '0.5'],
    [0, '0'],
    [6, '6.0'],
    [12.68, '12.7'],
    [240, '240'],
  ])('%d s reads %s', (seconds, text) => expect(secondsText(seconds)).toBe(text));

  it('show about three figures', () => {
    expect([420, 42, 4.2, 0.42, 0.042, 0.0042].map(digitsFor)).toEqual([0, 1, 1, 2, 3, 4]);
  });
});
