import { describe, expect, test } from 'vitest';
import {
  altitudeClause,
  azimuthClause,
  carpetCaption,
  clockClause,
  moonClause,
  namedLights,
  unreachable,
} from '../../../src/app/days/clauses.ts';
import { planOf } from '../../outputs/plans.ts';

const windowOf = (fields: object) => planOf({ window: { used: true, ...fields } }).window;

describe('the parts of the sentence', () => {
  test.each([
    [{}, 'at any height'],
    [{ sunAltitudeMinDeg: -12.5, sunAltitudeMaxDeg: 3 }, 'from −12.5° to 3°'],
    [{ sunAltitudeMinDeg: 6 }, 'at 6° or higher'],
    [{ sunAltitudeMaxDeg: -18 }, 'at −18° or lower'],
  ])('height of %o: %s', (fields, text) => {
    expect(altitudeClause(windowOf(fields))).toBe(text);
  });

  test('direction, clock and moon', () => {
    expect(azimuthClause(windowOf({}))).toBe('in any direction');
    expect(azimuthClause(windowOf({ sunAzimuthFromDeg: 240, sunAzimuthToDeg: 300 }))).toBe(
      'between azimuth 240° and 300°',
    );
    expect(clockClause(windowOf({}))).toBe('at any hour');
    expect(clockClause(windowOf({ clockFrom: '22:00', clockTo: '02:00' }))).toBe('from 22:00 to 02:00');
    expect(clockClause(windowOf({ clockTo: '09:00' }))).toBe('not after 09:00');
    expect(moonClause(windowOf({}))).toBe('anywhere');
    expect(moonClause(windowOf({ moon: 'downOrDim', moonLitMaxShare: 0.25 })).replace('\u00a0', ' ')).toBe(
      'down or at most 25 % lit',
    );
  });

  test('on a picture of the year only what is asked stands', () => {
    const captionOf = (fields: object, runS: number | null = 5400) =>
      carpetCaption(planOf({ window: { used: true, ...fields } }), 2027, runS).replaceAll('\u00a0', ' ');
    expect(captionOf({}, null)).toBe('2027, one line a day');
    expect(captionOf({})).toBe('2027, one line a day: 1 h 30 min');
    expect(captionOf({ sunAltitudeMinDeg: 6, clockFrom: '18:00', moon: 'down' })).toBe(
      '2027, one line a day: 1 h 30 min with the sun at 6° or higher, not before 18:00 and the moon down',
    );
  });

  test('golden and blue hour are the user’s own', () => {
    const lights = namedLights(planOf({ sky: { goldenLowDeg: -1, goldenHighDeg: 8 } }).sky);
    expect(lights[0]?.edits).toContainEqual(['window.sunAltitudeMaxDeg', 8]);
    expect(lights.every(({ edits }) => edits.some(([path, on]) => path === 'window.used' && on))).toBe(true);
  });
});

// Altitude at noon is 90° - latitude + declination, at midnight latitude + declination - 90° (any handbook of
// navigation); the declination reaches 23.44° at the solstices.
describe('what the sun never reaches', () => {
  test('in Tromsø, 69.65° N, it gets to 43.79°', () => {
    expect(unreachable(windowOf({ sunAltitudeMinDeg: 50 }), 69.65)).toEqual({
      text: 'The sun gets no higher than 43.8° here.',
      offer: 'Ask for 43.5° or higher',
      edit: ['window.sunAltitudeMinDeg', 43.5],
    });
    expect(unreachable(windowOf({ sunAltitudeMinDeg: 43.7 }), 69.65)).toBeNull();
  });

  test('nor lower than the same below the horizon, south as north', () => {
    expect(unreachable(windowOf({ sunAltitudeMaxDeg: -60 }), -69.65)?.edit).toEqual([
      'window.sunAltitudeMaxDeg',
      -43.5,
    ]);
    expect(unreachable(windowOf({ sunAltitudeMaxDeg: -40 }), -69.65)).toBeNull();
  });

  test('between the tropics it reaches everything', () => {
    expect(unreachable(windowOf({ sunAltitudeMinDeg: 90 }), 10)).toBeNull();
    expect(unreachable(windowOf({ sunAltitudeMaxDeg: -90 }), -20)).toBeNull();
  });
});
