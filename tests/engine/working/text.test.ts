/** Formulas as people read them, worked by hand. */
import { expect, test } from 'vitest';
import { schedule } from '../../../src/engine/schedule.ts';
import { evaluate, parseFormula } from '../../../src/engine/working/expression.ts';
import { formulaText, numbersText, workingOf, workingText } from '../../../src/engine/working/working.ts';
import { planOf } from '../../outputs/plans.ts';
import { byMathjs } from './judge.ts';

const words = (expression: string, names: Readonly<Record<string, string>> = {}): string => {
  const terms = Object.entries(names).map(([symbol, said]) => ({
    symbol,
    words: said,
    value: 1,
    unit: '',
    figure: null,
  }));
  return formulaText({ expression, terms });
};

test('a formula is written in the signs of the trade', () => {
  expect(words('floor(a / b) * b', { a: 'raw interval', b: 'step' })).toBe('⌊raw interval ÷ step⌋ × step');
  expect(words('ceil(a) - (b - a)', { a: 'x', b: 'y' })).toBe('⌈x⌉ − (y − x)');
  expect(words('sqrt(a ^ 2 + b ^ 2)', { a: 'peak speed', b: 'y' })).toBe('√((peak speed)² + y²)');
  expect(words('a / (b * c)', { a: 'p', b: 'q', c: 'r' })).toBe('p ÷ (q × r)');
  expect(words('2 ^ (a / 3)', { a: 'n' })).toBe('2^(n ÷ 3)');
  expect(words('-a ^ 2 * log(b)', { a: 'n', b: 'm' })).toBe('−n² × ln (m)');
  expect(words('abs(cos(pi * a))', { a: 'n' })).toBe('|cos (π × n)|');
});

test('numbers are put in with their units, negative ones in brackets', () => {
  const terms = [
    { symbol: 'a', words: 'x', value: 5400, unit: 's', figure: null },
    { symbol: 'b', words: 'y', value: -3.123_456_789, unit: 'mm', figure: null },
    { symbol: 'c', words: 'z', value: 1, unit: 'frames', figure: null },
  ];
  expect(numbersText({ expression: 'a - b * c', terms }).replaceAll('\u00A0', ' ')).toBe(
    '5400 s − (−3.12346 mm) × 1 frame',
  );
});

test('the engine works a formula out as mathjs does', () => {
  const terms = [
    { symbol: 'a', value: 2.5 },
    { symbol: 'b', value: -0.75 },
  ];
  for (const expression of [
    '-a ^ 2 + b * a / 3 - -b',
    '2 ^ 3 ^ 2 - a',
    'a - b - 1 - (a - 1)',
    'a / b / 2 * 3',
    'max(a, b, 3e-2) + min(a, b) - round(a * b) + floor(b) + ceil(b)',
    'atan2(a, b) + asin(b) + acos(b) + atan(a) + tan(a) + sin(a) + cos(b) + exp(b) + log(a) + log2(a)',
    '(a + 1) ^ (1 / 3) * pi + abs(b) + sqrt(a)',
  ]) {
    const got = evaluate(
      parseFormula(expression),
      (name) => terms.find(({ symbol }) => symbol === name)?.value,
    );
    expect(got, expression).toBeCloseTo(byMathjs(expression, terms), 12);
  }
});

test.each(['', 'a +', 'a b', '(a', 'f(a', 'a , b', '#'])('%j is no formula', (expression) => {
  expect(() => parseFormula(expression)).toThrow(SyntaxError);
});

test('what a formula does not know is said', () => {
  expect(() => evaluate(parseFormula('x'), () => undefined)).toThrow('there is no x');
  expect(() => evaluate(parseFormula('gamma(1)'), () => undefined)).toThrow('there is no function gamma');
});

// Worked by hand: 12 s x 25 fps = 300 frames; 2400 s / 299 = 8.0268 s, which is 8 whole seconds of the dial.
test('an interval that was worked out says how, from the event to the dial', () => {
  const plan = planOf({ pacing: { workedOut: 'interval', eventS: 2400, clipLengthS: 12 } });
  const made = schedule(plan);
  const working = (figure: string) => workingOf(plan, made, figure);
  const interval = working('totals.intervalS');
  expect(interval).toMatchObject({ title: 'Interval', value: 8, unit: 's' });
  expect(interval && formulaText(interval)).toBe('⌊steps of the dial⌋ × step of the dial');
  const raw = working('totals.rawIntervalS');
  expect(raw && formulaText(raw)).toBe('event ÷ (largest of (frames for the clip, 2) − 1)');
  expect(raw && workingText(raw)).toContain(
    'framesForClip = 300 frames: frames for the clip [pacing.framesForClip]',
  );
});

// 12.012 s at 24000/1001 fps is 288 frames exactly; in doubles it is 288.00000000000006.
test('a count that doubles would miss is right in its formula too', () => {
  const plan = planOf({
    clip: { frameRate: '24000/1001' },
    pacing: { workedOut: 'event', clipLengthS: 12.012, intervalS: 3 },
  });
  const made = schedule(plan);
  const working = workingOf(plan, made, 'totals.frames');
  expect(12.012 * (24000 / 1001)).toBeGreaterThan(288);
  expect(working?.value).toBe(288);
  expect(working && byMathjs(working.expression, working.terms)).toBe(288);
});
