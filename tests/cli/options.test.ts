import { expect, test } from 'vitest';
import { readOptions } from '../../src/cli/options.ts';

test.each([
  [['a.json'], { file: 'a.json', print: 'summary', outDir: null }],
  [['-'], { file: '-', print: 'summary', outDir: null }],
  [['--json', 'a.json'], { file: 'a.json', print: 'json', outDir: null }],
  [['a.json', '--frames', '--out', 'b'], { file: 'a.json', print: 'frames', outDir: 'b' }],
  [
    ['a.json', '--working', 'totals.frames'],
    { file: 'a.json', print: 'working', working: 'totals.frames', outDir: null },
  ],
  [['--help', 'a.json'], 'help'],
])('%j asks for %j', (words, options) => expect(readOptions(words)).toEqual(options));

test.each([
  [[], 'plan files: found 0; allowed: one'],
  [['a.json', 'b.json'], 'plan files: found 2; allowed: one'],
  [['--colour', 'a.json'], '--colour'],
  [['a.json', '--out'], '--out'],
  [['a.json', '--out', ''], '--out: found nothing; allowed: the name of a folder'],
  [['a.json', '--working', ''], '--working: found nothing; allowed: the name of a figure, or all'],
  [['a.json', '--json', '--working', 'all'], '--json --working: found 2; allowed: one of them'],
  [['a.json', '--json', '--frames'], '--json --frames: found 2; allowed: one of them'],
])('%j cannot be followed', (words, message) => expect(() => readOptions(words)).toThrow(message));
