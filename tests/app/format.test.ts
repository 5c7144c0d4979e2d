import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { seriesOf, stepInSeries } from '../../src/app/fields/series.ts';
import { allowedText, fullText } from '../../src/app/format/allowed.ts';
import { bytesText, readBytes } from '../../src/app/format/bytes.ts';
import { clockOf, dateOf, daysBetween, offsetText, readClock } from '../../src/app/format/clock.ts';
import { colonText, durationText, exactDuration, readDuration } from '../../src/app/format/durations.ts';
import { shutterMark, shutterText } from '../../src/app/format/exposure.ts';
import {
  MINUS,
  NBSP,
  numberText,
  plural,
  readNumber,
  shortNumber,
  withUnit,
} from '../../src/app/format/numbers.ts';
import { readOffset } from '../../src/app/format/offset.ts';
import { codecOf } from '../../src/app/format/quantity.ts';
import { rateText, readRate } from '../../src/app/format/rate.ts';
import { infoAt } from '../../src/app/store/infos.ts';
import { parseRate, toNumber } from '../../src/engine/time/ratio.ts';

const spaced = (text: string) => text.replaceAll(NBSP, ' ');

describe('numbers', () => {
  test.each([
    ['2.5', 2.5],
    ['2,5', 2.5],
    ['1/15', 1 / 15],
    ['-3', -3],
    [`${MINUS}3`, -3],
    ['+4', 4],
    ['.5', 0.5],
    ['12 500', 12500],
    [` 7${NBSP}`, 7],
  ])('reads %s', (text, value) => expect(readNumber(text)).toBe(value));

  test.each(['', 'abc', '1..2', '1/0', '2,5,1', '1e300', 'NaN', 'Infinity', '--1', '1/2/3'])(
    'does not read %j',
    (text) => expect(readNumber(text)).toBeNull(),
  );

  test('a minus is as wide as a digit, and zero has none', () => {
    expect(numberText(-1.5)).toBe('\u22121.5');
    expect(numberText(-0)).toBe('0');
    expect(numberText(-0.0000001)).toBe('0');
  });

  test('a number is joined to its unit; degrees stand close, Celsius does not', () => {
    expect(withUnit('5', 'mm')).toBe('5\u00a0mm');
    expect(withUnit('5', '°')).toBe('5°');
    expect(withUnit('5', '°C')).toBe('5\u00a0°C');
    expect(plural(1, 'frame')).toBe('1\u00a0frame');
    expect(plural(2, 'entry', 'entries')).toBe('2\u00a0entries');
  });

  test('about three digits for reading at a glance', () => {
    expect([0.01234, 1.2345, 12.345, 1234.5].map(shortNumber)).toEqual(['0.012', '1.23', '12.3', '1235']);
  });

  test('what is written is read again', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e9, max: 1e9 }), (n) => {
        expect(readNumber(numberText(n / 1e4))).toBe(n / 1e4);
      }),
    );
  });
});

describe('lengths of time', () => {
  test.each([
    ['14', 14],
    ['14 s', 14],
    ['2,5', 2.5],
    ['2.5s', 2.5],
    ['1/15', 1 / 15],
    ['1/60 s', 1 / 60],
    ['90m', 5400],
    ['40 min', 2400],
    ['1h30', 5400],
    ['1 h 30 min', 5400],
    ['1.5 h', 5400],
    ['1:30:00', 5400],
    ['1:30', 90],
    ['0:00:02.5', 2.5],
    ['1 h 29 min 50 s', 5390],
    ['2 d 3 h', 183_600],
    ['3m20', 200],
    ['250 ms', 0.25],
    ['2 HOURS', 7200],
  ])('reads %s', (text, seconds) => expect(readDuration(text)).toBe(seconds));

  test.each([
    '',
    'abc',
    '1h30x',
    '1:60:00',
    '1:30:75',
    '5 parsecs',
    '-3',
    '30 s 1 h',
    '1 s 5',
    '1:2:3:4',
    '3//4',
  ])('does not read %j', (text) => expect(readDuration(text)).toBeNull());

  test.each([
    [0, '0 s'],
    [0.5, '0.5 s'],
    [15.44, '15.4 s'],
    [59.99, '1 min'],
    [90, '1 min 30 s'],
    [5400, '1 h 30 min'],
    [5390, '1 h 29 min 50 s'],
    [86_400, '1 d'],
    [3599.9999, '1 h'],
  ])('writes %d s', (seconds, text) => expect(spaced(durationText(seconds))).toBe(text));

  test('colons drop parts of a second, but not one that binary fractions eat', () => {
    expect(colonText(5390.9)).toBe('1:29:50');
    expect(colonText(59.9999999999)).toBe('0:01:00');
  });

  test('what is written in full is read again', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 4e9 }), (ms) => {
        expect(readDuration(exactDuration(ms / 1000))).toBeCloseTo(ms / 1000, 6);
      }),
    );
  });

  test('any text gives a length or null, never an error', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const seconds = readDuration(text);
        expect(seconds === null || (Number.isFinite(seconds) && seconds >= 0)).toBe(true);
      }),
    );
  });
});

describe('amounts of data, in decimal units as SI has them', () => {
  test('writes and reads', () => {
    expect(spaced(bytesText(52_500_000))).toBe('52.5 MB');
    expect(spaced(bytesText(64e9))).toBe('64 GB');
    expect(spaced(bytesText(0))).toBe('0 MB');
    expect(readBytes('64 GB', 1)).toBe(64e9);
    expect(readBytes('1,5tb', 1)).toBe(1.5e12);
    expect(readBytes('30 MB/s', 1)).toBe(30e6);
    expect(readBytes('128', 1e9)).toBe(128e9);
    expect(readBytes('many', 1)).toBeNull();
    expect(readBytes('5 pints', 1)).toBeNull();
  });
});

describe('marks of a camera', () => {
  test('marked times keep their marks, others are plain seconds', () => {
    expect([1 / 60, 0.5, 30, 1 / 8000, 1.3].map(shutterMark)).toEqual(['1/60', '0.5', '30', '1/8000', '1.3']);
    expect(shutterMark(1 / 70)).toBe('1/70');
    expect(shutterMark(2.7)).toBe('2.7');
    expect(spaced(shutterText(150))).toBe('2 min 30 s');
    expect(spaced(shutterText(30))).toBe('30 s');
  });

  test('steps go from mark to mark and stay on the dial', () => {
    const series = seriesOf('exposure.shutterS') ?? [];
    expect(stepInSeries(series, 4, 1)).toBe(5);
    expect(stepInSeries(series, 4, -1)).toBe(3.2);
    expect(stepInSeries(series, 4.5, 1)).toBe(5);
    expect(stepInSeries(series, 4.5, -1)).toBe(4);
    expect(stepInSeries(series, 30, 1)).toBe(30);
    expect(stepInSeries(series, 100, -1)).toBe(30);
    expect(stepInSeries(series, 1 / 20_000, 1)).toBe(1 / 8000);
  });
});

describe('clock', () => {
  test('reads local clock and date as they stand in the text', () => {
    expect(clockOf('2026-08-08T20:31:10+02:00')).toBe('20:31:10');
    expect(spaced(dateOf('2026-08-08T23:31:10-09:30'))).toBe('Sat 8 Aug 2026');
    expect(daysBetween('2026-08-08T20:31:10+02:00', '2026-08-09T04:00:00+02:00')).toBe(1);
    expect(daysBetween('2026-08-08T00:31:10+14:00', '2026-08-08T23:00:00+14:00')).toBe(0);
  });

  test.each([
    ['20:31', '20:31:00'],
    ['8:05', '08:05:00'],
    ['2031', '20:31:00'],
    ['20.31.10', '20:31:10'],
    ['20h31', '20:31:00'],
  ])('reads %s', (text, clock) => expect(readClock(text)).toBe(clock));

  test.each(['24:00', '20:61', 'noon', '', '20:31:99'])('does not read %j', (text) =>
    expect(readClock(text)).toBeNull(),
  );

  test('offsets go both ways', () => {
    expect(readOffset('+5:45')).toBe(345);
    expect(readOffset(`${MINUS}03:30`)).toBe(-210);
    expect(readOffset('UTC+2')).toBe(120);
    expect(readOffset('east')).toBeNull();
    expect(offsetText(345)).toBe('+05:45');
    expect(offsetText(-210)).toBe(`${MINUS}03:30`);
    expect(offsetText(0)).toBe('+00:00');
  });
});

describe('frame rates', () => {
  test('nicknames are the ratios over 1001 of SMPTE ST 12-1, within their printed digits', () => {
    for (const nickname of ['23.976', '23.98', '29.97', '47.952', '47.95', '59.94', '119.88']) {
      const decimals = nickname.split('.')[1]?.length ?? 0;
      expect(toNumber(parseRate(readRate(nickname))).toFixed(decimals)).toBe(nickname);
    }
  });

  test('reads and writes', () => {
    expect(readRate('23,976 fps')).toBe('24000/1001');
    expect(readRate(' 25 ')).toBe('25');
    expect(readRate('24000 / 1001')).toBe('24000/1001');
    expect(rateText('30000/1001')).toBe('29.97');
    expect(rateText('25')).toBe('25');
  });
});

describe('fields', () => {
  const read = (path: string, text: string, present = 0, axisUnit: 'mm' | 'deg' = 'mm') =>
    codecOf(path, infoAt(path).unit, axisUnit).read(text, present);

  test('each unit is read in its own way', () => {
    expect(read('move.settleS', '2,5s')).toBe(2.5);
    expect(read('camera.compression', '85 %')).toBe(0.85);
    expect(read('move.tracks.0.keyframes.0.share', '33')).toBe(0.33);
    expect(read('camera.bufferBytes', '0.9', 5e9)).toBe(9e8);
    expect(read('exposure.apertureF', 'f/5.6')).toBe(5.6);
    expect(read('exposure.shutterS', '1/60')).toBe(1 / 60);
    expect(read('place.latitudeDeg', '43.3 S')).toBe(-43.3);
    expect(read('place.longitudeDeg', '6.4°')).toBe(6.4);
    expect(read('place.longitudeDeg', '6.4 N')).toBeNull();
    expect(read('place.utcOffsetMin', '+05:45')).toBe(345);
    expect(read('rig.axes.0.travelMax', '620 mm')).toBe(620);
    expect(read('rig.axes.0.maxSpeed', '6 °/s', 0, 'deg')).toBe(6);
    expect(read('power.temperatureC', `${MINUS}5 °C`)).toBe(-5);
  });

  test('what is allowed is said in the units that are shown', () => {
    const said = (path: string) => spaced(allowedText(infoAt(path), codecOf(path, infoAt(path).unit)));
    expect(said('move.settleS')).toBe('Allowed: 0 s to 10 min.');
    expect(said('camera.compression')).toBe('Allowed: 0.5 % to 200 %.');
    expect(said('exposure.bracketCount')).toBe('Allowed: whole numbers from 1 to 15.');
    expect(said('move.moveS')).toBe('Allowed: 0.01 s to 1 h, or nothing.');
  });

  test('long times fit into a field', () => {
    const codec = codecOf('trigger.maxS', 's');
    expect(fullText(codec, 5999)).toBe('1:39:59');
    expect(spaced(fullText(codec, 86_400))).toBe('1 d');
    expect(spaced(fullText(codec, 45))).toBe('45 s');
  });

  test('every number of a plan that is shown in a field is read again as it was', () => {
    const values: [string, number][] = [
      ['trigger.maxS', 5999],
      ['camera.writeS', 0.8],
      ['storage.cards.0.cardBytes', 64e9],
      ['storage.cards.0.writeBytesPerS', 30e6],
      ['camera.compression', 0.55],
      ['exposure.shutterS', 1 / 60],
      ['exposure.apertureF', 5.6],
      ['rig.axes.0.gearRatio', 5.18],
      ['place.utcOffsetMin', -570],
    ];
    for (const [path, value] of values) {
      const codec = codecOf(path, infoAt(path).unit);
      expect(codec.read(codec.text(value), value)).toBeCloseTo(value, 9);
    }
  });
});
