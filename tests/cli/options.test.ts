import { expect, test } from 'vitest';
import { readOptions } from '../../src/cli/options.ts';

test.each([
  [['a.json'], { file: 'a.json', print: 'summary', apply: null, outDir: null }],
  [['-'], { file: '-', print: 'summary', apply: null, outDir: null }],
  [['--json', 'a.json'], { file: 'a.json', print: 'json', apply: null, outDir: null }],
  [['a.json', '--frames', '--out', 'b'], { file: 'a.json', print: 'frames', apply: null, outDir: 'b' }],
  [['--fixes', 'a.json'], { file: 'a.json', print: 'fixes', apply: null, outDir: null }],
  [['--ladder', 'a.json'], { file: 'a.json', print: 'ladder', apply: null, outDir: null }],
  [
    ['--apply', 'cycle-overrun:2', 'a.json'],
    { file: 'a.json', print: 'plan', apply: { id: 'cycle-overrun', n: 2 }, outDir: null },
  ],
  // A name may have colons of its own: the last one counts.
  [
    ['--apply', 'source-short:Pack: 2:12', '-'],
    { file: '-', print: 'plan', apply: { id: 'source-short:Pack: 2', n: 12 }, outDir: null },
  ],
  [['--help', 'a.json'], 'help'],
])('%j asks for %j', (words, options) => expect(readOptions(words)).toEqual(options));

test.each([
  [[], 'plan files: found 0; allowed: one'],
  [['a.json', 'b.json'], 'plan files: found 2; allowed: one'],
  [['--colour', 'a.json'], '--colour'],
  [['a.json', '--out'], '--out'],
  [['a.json', '--out', ''], '--out: found nothing; allowed: the name of a folder'],
  ...['cycle-overrun', 'cycle-overrun:', ':1', 'cycle-overrun:0', 'cycle-overrun:x', 'a:-1', ''].map(
    (word): [string[], string] => [
      ['a.json', `--apply=${word}`],
      `--apply: found '${word}'; allowed: a finding and which of its fixes, as --fixes prints them`,
    ],
  ),
  [['a.json', '--apply', 'a:1', '--fixes'], '--fixes --apply: found 2; allowed: one of them'],
  [['a.json', '--json', '--frames'], '--json --frames: found 2; allowed: one of them'],
])('%j cannot be followed', (words, message) => expect(() => readOptions(words)).toThrow(message));
