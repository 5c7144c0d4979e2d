/** Positions as people write them, and what is no position. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readPosition } from '../../../src/app/place/coordinates.ts';
import { positionText, sixtiethsText } from '../../../src/app/place/position.ts';

const at = (latitudeDeg: number, longitudeDeg: number) => ({ latitudeDeg, longitudeDeg });

describe('a position is read from any usual notation', () => {
  test.each([
    '43.3, 6.4',
    '43.3 6.4',
    '43.3,6.4',
    '43,3; 6,4',
    '43,3 6,4',
    '43,3, 6,4',
    "43°18'N 6°24'E",
    '43° 18′ N, 6° 24′ E',
    '43°18′00″ N 006°24′00″ E',
    'N43 18.0 E006 24.0',
    'N 43.3° E 6.4°',
    'E 6.4 N 43.3',
    '6.4E 43.3N',
    '43:18:00 6:24:00',
    '43 18 6 24',
    '43 18 00 N 6 24 00 E',
    '43 deg 18 min North, 6 deg 24 min East',
    'Lat: 43.3 Lon: 6.4',
    '43°18,0′N 6°24,0′E',
    'geo:43.3,6.4;u=10',
  ])('%s', (text) => expect(readPosition(text)).toEqual(at(43.3, 6.4)));

  test.each([
    ['\u221233.5, \u201370.25', at(-33.5, -70.25)],
    ['33.5 S 70.25 W', at(-33.5, -70.25)],
    ['-33,5 -70,25', at(-33.5, -70.25)],
    ['43,-6', at(43, -6)],
    ['0, 0', at(0, 0)],
  ])('%s', (text, position) => expect(readPosition(text)).toEqual(position));

  // Source: GeographicLib's own description of the notation, DMS.Decode: the entries of a line are equivalent.
  test.each([
    ['20d30\'40.5"S', '-20.51125'],
    ['-20:30:40.5', '-20.51125'],
    ['N-20d30\'40.5"', '-20.51125'],
    ['4d0\'9"N', '4.0025'],
    ["4d9''N", '4.0025'],
  ])('%s of the GeographicLib manual', (angle, degrees) => {
    const other = angle.startsWith('N') ? ' E10' : /[NS]/.test(angle) ? ' 10E' : ', 10';
    expect(readPosition(angle + other)).toEqual(at(Number(degrees), 10));
  });
});

describe('geo: URIs of RFC 5870', () => {
  // Source: RFC 5870, sections 1 and 6. The comma of 22.300,-118.44 is printed as a semicolon there.
  test.each([
    ['geo:13.4125,103.8667', at(13.4125, 103.8667)],
    ['geo:48.2010,16.3695,183', at(48.201, 16.3695)],
    ['geo:48.198634,16.371648;crs=wgs84;u=40', at(48.198634, 16.371648)],
    ['geo:90,-22.43;crs=WGS84', at(90, -22.43)],
    ['geo:90,46', at(90, 46)],
    ['geo:22.300,-118.44', at(22.3, -118.44)],
    ['geo:22.3,-118.4400', at(22.3, -118.44)],
    ['geo:66,30;u=6.500;FOo=this%2dthat', at(66, 30)],
    ['geo:66.0,30;u=6.5;foo=this-that', at(66, 30)],
    ['geo:70,20;foo=1.00;bar=white', at(70, 20)],
    ['GEO:47,11;bar=white;foo=blue', at(47, 11)],
  ])('%s', (uri, position) => expect(readPosition(uri)).toEqual(position));

  test.each([
    ['geo:94,0', /Latitude is 94°/],
    ['geo:0,181', /Longitude is 181°/],
    ['geo:43.3', /RFC 5870/],
    ['geo:+43.3,6.4', /RFC 5870/],
    ['geo:0,0?q=43.3,6.4', /RFC 5870/],
    ['geo:43.3,6.4;u=ten', /RFC 5870/],
    ['geo:323482,4306480;crs=nad27', /counts in nad27/],
  ])('%s is refused', (uri, reason) =>
    expect(readPosition(uri)).toEqual({ error: expect.stringMatching(reason) }),
  );
});

describe('what is no position says why', () => {
  test.each([
    ['91, 6', /Latitude is 91°. Allowed: 90° S to 90° N. Are the two swapped/],
    ['100 N 170 E', /Latitude is 100°. Allowed: 90° S to 90° N.$/],
    ['43.3, 181', /Longitude is 181°/],
    ["43°18'N 6°24'N", /Both angles are a latitude/],
    ['43 E 6 W', /Both angles are a longitude/],
    ['43,3', /Not clearly two angles/],
    ['43,3,6,4', /Not clearly two angles/],
    ['43.3', /Not clearly two angles/],
    ['43 18 6', /Not clearly two angles/],
    ['43°75′N 6°24′E', /minutes/],
    ['43.5°18′N 6°24′E', /Not two angles/],
    ['43-18, 6-24', /sign stands inside/],
    ['over there', /Not clearly/],
    ['', /Not clearly/],
  ])('%s', (text, reason) => expect(readPosition(text)).toEqual({ error: expect.stringMatching(reason) }));
});

test('sixtieths carry over, never up to 60', () => {
  expect(sixtiethsText(at(-33.999999, 70.5))).toBe('34° 0′ 0″ S, 70° 30′ 0″ E');
  expect(sixtiethsText(at(43.301234, -6.4))).toBe('43° 18′ 4.4″ N, 6° 24′ 0″ W');
});

test('what is shown of a position is read as the same position', () => {
  const degrees = (most: number) => fc.integer({ min: -most * 1e6, max: most * 1e6 }).map((n) => n / 1e6);
  fc.assert(
    fc.property(degrees(90), degrees(180), (latitude, longitude) => {
      expect(readPosition(positionText(at(latitude, longitude)))).toEqual(at(latitude + 0, longitude + 0));
    }),
  );
});

test('any text gives a position or a reason', () => {
  const signs = fc.constantFrom(...'0123456789.,;:°\'"NSEWnsew+- /geo');
  fc.assert(
    fc.property(fc.array(signs, { maxLength: 30 }), (all) => {
      const read = readPosition(all.join(''));
      if ('error' in read) expect(read.error).toMatch(/Allowed/);
      else {
        expect(Math.abs(read.latitudeDeg)).toBeLessThanOrEqual(90);
        expect(Math.abs(read.longitudeDeg)).toBeLessThanOrEqual(180);
      }
    }),
    { numRuns: 2000 },
  );
});
