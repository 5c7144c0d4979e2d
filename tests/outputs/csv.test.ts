import { describe, expect, test } from 'vitest';
import { numberCell, textCell } from '../../src/outputs/csv.ts';

describe('a text cell', () => {
  // RFC 4180, section 2, rules 5 to 7.
  test.each([
    ['Boom', 'Boom'],
    ['Boom, long', '"Boom, long"'],
    ['the "big" one', '"the ""big"" one"'],
    ['two\r\nlines', '"two\r\nlines"'],
    ['', ''],
    [' a ', ' a '],
  ])('%j is written %j', (text, cell) => expect(textCell(text)).toBe(cell));

  test.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1'])('%j is no formula', (text) => {
    expect(textCell(text).replace(/^"/, '')).toMatch(/^'/);
  });

  test('is quoted after it was made safe', () => expect(textCell('=A1,"B"')).toBe(`"'=A1,""B"""`));
});

describe('a number cell', () => {
  test.each([
    [0, '0'],
    [-1.5, '-1.5'],
    [0.1 + 0.2, '0.3'],
    [1 / 8000, '0.000125'],
    [1 / 3, '0.333333333'],
    [1234567.891, '1234567.891'],
    [64_000_000_000, '64000000000'],
    [Number.POSITIVE_INFINITY, ''],
    [Number.NaN, ''],
  ])('%d is written %j', (value, cell) => expect(numberCell(value)).toBe(cell));

  test('keeps a negative number a number', () => expect(Number(numberCell(-0.25))).toBe(-0.25));
});
