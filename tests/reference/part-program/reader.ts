/** Reads RS-274 text by the rules of NISTIR 6556, and refuses what breaks them. See README.md for the sections. */

/** Axis words, lengths first. */
export const LETTERS = ['X', 'Y', 'Z', 'A', 'B', 'C'] as const;
export type Letter = (typeof LETTERS)[number];
export type Place = Record<Letter, number>;

/** Something that the program does, in order. Lengths in millimetres, angles in degrees. */
export type Act =
  /** `seconds` at the feed, ramps left out. */
  | { kind: 'move'; from: Place; to: Place; seconds: number }
  | { kind: 'dwell'; seconds: number }
  | { kind: 'M'; code: number; at: Place }
  | { kind: 'end' };

interface Word {
  letter: string;
  value: number;
}

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)/;

/** Words of a line; comments are checked and left out. */
export function wordsOn(line: string): Word[] {
  if (line.length > 256) throw new Error(`${line.length} characters`);
  if (!/^[\t\x20-\x7E]*$/.test(line)) throw new Error('not ASCII');
  const bare = line.replace(/\([^()]*\)/g, '').replace(/[\t ]/g, '');
  const words: Word[] = [];
  for (let rest = bare; rest !== ''; ) {
    const [letter = ''] = rest;
    const [number] = NUMBER.exec(rest.slice(1)) ?? [];
    if (!/[ABCDFGHIJKLMPQRSTXYZ]/i.test(letter) || number === undefined) throw new Error(`no word: ${rest}`);
    words.push({ letter: letter.toUpperCase(), value: Number(number) });
    rest = rest.slice(1 + number.length);
  }
  return words;
}

const G_GROUPS = [
  [0, 1, 2, 3, 38.2, 80],
  [90, 91],
  [93, 94],
  [20, 21],
  [61, 61.1, 64],
  [4, 10, 28, 30, 53, 92],
];
const M_GROUPS = [[0, 1, 2, 30, 60], [6], [3, 4, 5], [7, 8, 9], [48, 49]];

function checkRepeats(words: readonly Word[]): void {
  const of = (wanted: string) => words.filter(({ letter }) => letter === wanted).map(({ value }) => value);
  for (const [letter, groups] of [
    ['G', G_GROUPS],
    ['M', M_GROUPS],
  ] as const)
    for (const value of of(letter)) {
      const group = groups.find((codes) => codes.includes(value));
      if (!group) throw new Error(`unknown ${letter}${value}`);
      if (of(letter).filter((code) => group.includes(code)).length > 1) throw new Error('two of one group');
    }
  if (of('M').length > 4) throw new Error('more than four M words');
  for (const { letter } of words)
    if (!'GM'.includes(letter) && of(letter).length > 1) throw new Error(`two words of ${letter}`);
}

/** The interpreter's modes. */
class Machine {
  readonly at: Place = { X: 0, Y: 0, Z: 0, A: 0, B: 0, C: 0 };
  #unitMm: number | null = null;
  #absolute = false;
  #inverse = false;
  #feed = 0;
  ended = false;

  *line(text: string): Generator<Act> {
    const words = wordsOn(text);
    checkRepeats(words);
    if (words.length === 0) return;
    if (this.ended) throw new Error('something after the end');
    const one = (letter: string) => words.find((word) => word.letter === letter)?.value;
    const g = words.filter(({ letter }) => letter === 'G').map(({ value }) => value);
    const f = one('F');
    if (f !== undefined) this.#feed = f;
    if (g.includes(93)) this.#inverse = true;
    if (g.includes(94)) this.#inverse = false;
    if (g.includes(20)) this.#unitMm = 25.4;
    if (g.includes(21)) this.#unitMm = 1;
    if (g.includes(90)) this.#absolute = true;
    if (g.includes(4)) yield { kind: 'dwell', seconds: this.#dwell(one('P')) };
    if (g.includes(1)) yield this.#move(words, f !== undefined);
    for (const { letter, value } of words) {
      if (letter !== 'M') continue;
      this.ended = value === 2 || value === 30;
      yield this.ended ? { kind: 'end' } : { kind: 'M', code: value, at: { ...this.at } };
    }
  }

  #dwell(seconds: number | undefined): number {
    if (seconds === undefined || seconds < 0) throw new Error('G4 without P, or a negative one');
    return seconds;
  }

  #move(words: readonly Word[], hasFeed: boolean): Act {
    if (this.#unitMm === null || !this.#absolute)
      throw new Error('no units, or no distance mode, before a move');
    if (this.#inverse && !hasFeed) throw new Error('G1 in G93 without F');
    if (this.#feed <= 0) throw new Error('G1 with no feed');
    const from = { ...this.at };
    const axes = words.filter(({ letter }) => (LETTERS as readonly string[]).includes(letter));
    if (axes.length === 0) throw new Error('G1 without an axis word');
    for (const { letter, value } of axes)
      this.at[letter as Letter] = 'XYZ'.includes(letter) ? value * this.#unitMm : value;
    return { kind: 'move', from, to: { ...this.at }, seconds: this.#seconds(from, this.#unitMm) };
  }

  #seconds(from: Place, unitMm: number): number {
    if (this.#inverse) return 60 / this.#feed;
    const way = (letters: readonly Letter[]) => Math.hypot(...letters.map((l) => this.at[l] - from[l]));
    const lengths = way(['X', 'Y', 'Z']) / unitMm;
    return ((lengths > 0 ? lengths : way(['A', 'B', 'C'])) / this.#feed) * 60;
  }
}

/** Reads a program to its end. @throws Error with the line at fault */
export function* readProgram(chunks: Iterable<string>): Generator<Act> {
  const machine = new Machine();
  for (const chunk of chunks) {
    for (const line of chunk.split(/\r\n|\r|\n/)) {
      try {
        yield* machine.line(line);
      } catch (error) {
        throw new Error(`${line}: ${error instanceof Error ? error.message : error}`);
      }
    }
  }
  if (!machine.ended) throw new Error('no end');
}
