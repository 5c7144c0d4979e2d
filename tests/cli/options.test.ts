import { expect, test } from 'vitest';
import { type Options, readOptions } from '../../src/cli/options.ts';

const PLAIN: Options = {
  file: 'a.json',
  print: 'summary',
  apply: null,
  working: null,
  outDir: null,
  page: '',
};

test.each([
  [['a.json'], PLAIN],
  [['-'], { ...PLAIN, file: '-' }],
  [['--json', 'a.json'], { ...PLAIN, print: 'json' }],
  [['a.json', '--frames', '--out', 'b'], { ...PLAIN, print: 'frames', outDir: 'b' }],
  [['--run-sheet', 'a.json'], { ...PLAIN, print: 'run-sheet' }],
  [['--calendar', 'a.json'], { ...PLAIN, print: 'calendar' }],
  [['--positions', 'a.json'], { ...PLAIN, print: 'positions' }],
  [['--rs274', 'a.json'], { ...PLAIN, print: 'rs274' }],
  [
    ['a.json', '--link', '--page', 'https://example.org/'],
    { ...PLAIN, print: 'link', page: 'https://example.org/' },
  ],
  [['--fixes', 'a.json'], { ...PLAIN, print: 'fixes' }],
  [['--ladder', 'a.json'], { ...PLAIN, print: 'ladder' }],
  [
    ['--apply', 'cycle-overrun:2', 'a.json'],
    { ...PLAIN, print: 'apply', apply: { id: 'cycle-overrun', n: 2 } },
  ],
  // A name may have colons of its own: the last one counts.
  [
    ['--apply', 'source-short:Pack: 2:12', '-'],
    { ...PLAIN, file: '-', print: 'apply', apply: { id: 'source-short:Pack: 2', n: 12 } },
  ],
  [['a.json', '--working', 'totals.frames'], { ...PLAIN, print: 'working', working: 'totals.frames' }],
  [['--help', 'a.json'], 'help'],
] as [string[], Options | 'help'][])('%j asks for %j', (words, options) =>
  expect(readOptions(words)).toEqual(options),
);

test.each([
  [[], 'plan files: found 0; allowed: one'],
  [['a.json', 'b.json'], 'plan files: found 2; allowed: one'],
  [['--colour', 'a.json'], '--colour'],
  [['a.json', '--out'], '--out'],
  [['a.json', '--out', ''], '--out: found nothing; allowed: the name of a folder'],
  [['a.json', '--link', '--page', 'javascript:x'], '--page: found javascript:x; allowed: a web address'],
  ...['cycle-overrun', 'cycle-overrun:', ':1', 'cycle-overrun:0', 'cycle-overrun:x', 'a:-1', ''].map(
    (word): [string[], string] => [
      ['a.json', `--apply=${word}`],
      `--apply: found '${word}'; allowed: a finding and which of its fixes, as --fixes prints them`,
    ],
  ),
  [['a.json', '--working', ''], '--working: found nothing; allowed: the name of a figure, or all'],
  [['a.json', '--json', '--working', 'all'], '--json --working: found 2; allowed: one of them'],
  [['a.json', '--apply', 'a:1', '--fixes'], '--fixes --apply: found 2; allowed: one of them'],
  [['a.json', '--json', '--frames'], '--json --frames: found 2; allowed: one of them'],
])('%j cannot be followed', (words, message) => expect(() => readOptions(words)).toThrow(message));
