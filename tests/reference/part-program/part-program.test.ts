import { describe, expect, test } from 'vitest';
import { checkRows } from '../check-rows.ts';
import { measurePartProgram } from './measure.ts';
import { readProgram } from './reader.ts';

checkRows(measurePartProgram());

describe('the reader', () => {
  test.each([
    ['no units before a move', 'G90\nG1 X1 F1\nM2'],
    ['no feed', 'G21\nG90\nG1 X1\nM2'],
    ['inverse time without F on the line', 'G21 G90 G93\nG1 X1 F1\nG1 X2\nM2'],
    ['G1 without an axis', 'G21 G90\nG1 F1\nM2'],
    ['a nested comment', '(a (b) c)\nM2'],
    ['a comment that does not end', '(a\nM2'],
    ['two words of a modal group', 'G20 G21\nM2'],
    ['a letter twice', 'G21 G90\nG1 X1 X2 F1\nM2'],
    ['an exponent', 'G4 P1e-7\nM2'],
    ['a letter outside ASCII', '(\u00fcber)\nM2'],
    ['257 characters', `(${'x'.repeat(255)})\nM2`],
    ['a negative dwell', 'G4 P-1\nM2'],
    ['no end', 'G21'],
    ['something after the end', 'M2\nG21'],
  ])('refuses %s', (_what, text) => expect(() => [...readProgram([text])]).toThrow());

  test('takes a line as the report writes it', () => {
    const [move] = readProgram(['g21 g90 (modes)\r\n g1 x+0. 12 34y 7 f60\r\nm2']);
    expect(move).toMatchObject({ to: { X: 0.1234, Y: 7 } });
  });
});
