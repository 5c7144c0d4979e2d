import { expect, test } from 'vitest';
import { readOptions } from '../../src/cli/options.ts';

test.each([
  [['--run-sheet', 'a.json'], { file: 'a.json', print: 'run-sheet', outDir: null, page: '' }],
  [['--calendar', 'a.json'], { file: 'a.json', print: 'calendar', outDir: null, page: '' }],
  [['--positions', 'a.json'], { file: 'a.json', print: 'positions', outDir: null, page: '' }],
  [['--rs274', 'a.json'], { file: 'a.json', print: 'rs274', outDir: null, page: '' }],
  [['a.json'], { file: 'a.json', print: 'summary', outDir: null, page: '' }],
  [['-'], { file: '-', print: 'summary', outDir: null, page: '' }],
  [['--json', 'a.json'], { file: 'a.json', print: 'json', outDir: null, page: '' }],
  [['a.json', '--frames', '--out', 'b'], { file: 'a.json', print: 'frames', outDir: 'b', page: '' }],
  [
    ['a.json', '--link', '--page', 'https://example.org/'],
    { file: 'a.json', print: 'link', outDir: null, page: 'https://example.org/' },
  ],
  [['--help', 'a.json'], 'help'],
])('%j asks for %j', (words, options) => expect(readOptions(words)).toEqual(options));

test.each([
  [[], 'plan files: found 0; allowed: one'],
  [['a.json', 'b.json'], 'plan files: found 2; allowed: one'],
  [['--colour', 'a.json'], '--colour'],
  [['a.json', '--out'], '--out'],
  [['a.json', '--out', ''], '--out: found nothing; allowed: the name of a folder'],
  [['a.json', '--link', '--page', 'javascript:x'], '--page: found javascript:x; allowed: a web address'],
  [['a.json', '--json', '--frames'], '--json --frames: found 2; allowed: one of them'],
])('%j cannot be followed', (words, message) => expect(() => readOptions(words)).toThrow(message));
