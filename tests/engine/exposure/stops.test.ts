import { describe, expect, test } from 'vitest';
import {
  exactShutterS,
  fullStops,
  markSeconds,
  SHUTTER_THIRDS,
  shutterStop,
} from '../../../src/engine/exposure/stops.ts';

describe('marks of the shutter dial', () => {
  test.each([
    ['1/60', 1 / 60],
    ['0.5', 0.5],
    ['30', 30],
  ])('%s names %d s', (mark, seconds) => expect(markSeconds(mark)).toBe(seconds));

  test('a mark typed as a rounded decimal is still that mark', () => {
    for (const typed of [1 / 60, 0.0167, 0.01667]) expect(shutterStop(typed)?.mark).toBe('1/60');
    expect(exactShutterS(0.0167)).toBe(1 / 64);
  });

  test('third stops come before half stops where both have the mark', () => {
    expect(exactShutterS(20)).toBeCloseTo(20.159, 3);
    expect(exactShutterS(0.7)).toBeCloseTo(Math.SQRT1_2, 12);
    expect(exactShutterS(1 / 45)).toBeCloseTo(2 ** -5.5, 12);
  });

  test('between marks there is none', () => {
    for (const seconds of [7, 45, 60, 0.07, 1 / 55]) {
      expect(shutterStop(seconds)).toBeNull();
      expect(exactShutterS(seconds)).toBe(seconds);
    }
  });

  test('no two marks of a dial can be taken for each other', () => {
    const found = SHUTTER_THIRDS.map(({ mark }) => shutterStop(markSeconds(mark))?.mark);
    expect(found).toEqual(SHUTTER_THIRDS.map(({ mark }) => mark));
  });

  test('full stops', () => {
    expect(
      fullStops(SHUTTER_THIRDS)
        .map(({ mark }) => mark)
        .slice(0, 8),
    ).toEqual(['30', '15', '8', '4', '2', '1', '0.5', '1/4']);
  });
});
