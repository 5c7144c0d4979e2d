/** A horizon typed or pasted: every usual separation, and named faults. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { horizonText, readHorizon, rowFaultsText } from '../../../src/app/place/horizon.ts';

const THREE = {
  points: [
    { azimuthDeg: 90, altitudeDeg: 4.5 },
    { azimuthDeg: 120.5, altitudeDeg: 10 },
    { azimuthDeg: 180, altitudeDeg: -1 },
  ],
};

describe('two columns are read, however they are parted', () => {
  test.each([
    ['tabs', '90\t4.5\n120.5\t10\n180\t-1'],
    ['commas', '90,4.5\n120.5,10\n180,-1'],
    ['commas and gaps', '90, 4.5\n120.5, 10\n180, -1'],
    ['gaps', '90 4.5\n 120.5   10 \n180 \u22121'],
    ['semicolons with decimal commas', '90;4,5\r\n120,5;10\r\n180;-1'],
    ['tabs with decimal commas', '90\t4,5\r120,5\t10\r180\t-1'],
    ['gaps with decimal commas', '90 4,5\n120,5 10\n180 -1'],
    ['a header and empty rows', 'Azimuth\tAltitude\n\n90\t4.5\n120.5\t10\n\n180\t-1\n'],
    ['remarks and degrees', '# from the roof\n90° 4.5°\n120.5° 10°\n180° -1°'],
  ])('%s', (_name, text) => expect(readHorizon(text)).toEqual(THREE));

  test('no rows are an empty horizon', () => {
    expect(readHorizon('')).toEqual({ points: [] });
    expect(readHorizon('\n \n')).toEqual({ points: [] });
  });
});

describe('rows at fault are named', () => {
  const faults = (text: string): string => {
    const read = readHorizon(text);
    return 'faults' in read ? rowFaultsText(read.faults) : '';
  };

  test.each([
    ['90 4\n80 5', /^Row 2: the horizon doubles back: azimuth 80° comes after 90°/],
    ['90 4\n90 5', /^Row 2: the horizon doubles back/],
    ['Azimuth Altitude\n90 4\n120 ten', /^Row 3: ‘ten’ is no number/],
    ['90 4\n120', /^Row 2: one column/],
    ['90 4 2', /^Row 1: 3 columns/],
    ['361 4', /^Row 1: Azimuth 361°. Allowed: 0° to 360°/],
    ['90 4\n100 91', /^Row 2: Altitude 91°. Allowed: −30° to 90°/],
  ])('%j', (text, reason) => expect(faults(text)).toMatch(reason));

  test('three of many', () => {
    expect(faults('90 x\n91 x\n92 x\n93 x\n94 x').split('\n')).toEqual([
      ...[1, 2, 3].map((row) => `Row ${row}: ‘x’ is no number.`),
      'And 2 more.',
    ]);
  });

  test('too many points', () => {
    const many = Array.from({ length: 721 }, (_, i) => `${i / 2} 3`).join('\n');
    expect(faults(many)).toMatch(/721 points. Allowed: at most 720/);
  });
});

test('what is shown of a horizon is read as the same horizon', () => {
  const point = fc.record({
    azimuthDeg: fc.double({ min: 0, max: 360, noNaN: true }).map((n) => Number(n.toFixed(4)) + 0),
    altitudeDeg: fc.double({ min: -30, max: 90, noNaN: true }).map((n) => Number(n.toFixed(4)) + 0),
  });
  const points = fc
    .uniqueArray(point, { selector: ({ azimuthDeg }) => azimuthDeg, maxLength: 40 })
    .map((all) => all.sort((a, b) => a.azimuthDeg - b.azimuthDeg));
  fc.assert(
    fc.property(points, (all) => {
      expect(readHorizon(horizonText(all))).toEqual({ points: all });
    }),
  );
});
