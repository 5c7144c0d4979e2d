/** The zone of a place, and the browser's own position. */
import { describe, expect, test } from 'vitest';
import { locate } from '../../../src/app/place/locate.ts';
import { otherZone } from '../../../src/app/place/zone.ts';

const at = (latitudeDeg: number, longitudeDeg: number) => ({ latitudeDeg, longitudeDeg });

describe('the zone at a place', () => {
  // Places well inside their zone. Source: the IANA time zone database, zone1970.tab, which gives each zone with the
  // position of its principal place.
  test.each([
    ['Europe/Paris', at(48.8667, 2.3333)],
    ['Asia/Kathmandu', at(27.7167, 85.3167)],
    ['Pacific/Kiritimati', at(1.8667, -157.3333)],
    ['Australia/Adelaide', at(-34.9167, 138.5833)],
    ['America/St_Johns', at(47.5667, -52.7167)],
  ])('%s', (zone, position) => expect(otherZone(position, 'Etc/UTC')).toBe(zone));

  test('is not offered where the plan has it, by this name or another', () => {
    expect(otherZone(at(48.8667, 2.3333), 'Europe/Paris')).toBeNull();
    expect(otherZone(at(27.7167, 85.3167), 'Asia/Katmandu')).toBeNull();
  });
});

describe('the browser’s position', () => {
  const telling = (latitude: number, longitude: number, accuracy: number): Geolocation =>
    ({
      getCurrentPosition: (told: PositionCallback) =>
        told({ coords: { latitude, longitude, accuracy } } as GeolocationPosition),
    }) as Geolocation;
  const refusing = (code: number): Geolocation =>
    ({
      getCurrentPosition: (_: PositionCallback, refused: PositionErrorCallback) =>
        refused({ code } as GeolocationPositionError),
    }) as Geolocation;

  test('is taken to a metre', async () => {
    expect(await locate(telling(43.301234567, 6.4, 12))).toEqual({ ...at(43.30123, 6.4), withinM: 12 });
  });

  test.each([
    ['a refusal', refusing(1), /may not tell/],
    ['nothing found', refusing(2), /cannot find/],
    ['no answer in time', refusing(3), /20 s/],
    ['a browser that cannot', undefined, /does not tell/],
  ])('%s is said in words', async (_name, geolocation, words) => {
    expect(await locate(geolocation)).toEqual({ error: expect.stringMatching(words) });
  });
});
