/** Plain text in lines of a limited width. */

/** Widest line of a text, in characters. */
export const TEXT_WIDTH = 100;

/** Spaces and minus signs that every terminal and every search finds. */
export const plainText = (text: string): string =>
  text.replace(/[\u00A0\u202F]/g, ' ').replaceAll('\u2212', '-');

/** A word of its own line's width and more is cut. */
const cut = (word: string, width: number): string[] => word.match(new RegExp(`.{1,${width}}`, 'gu')) ?? [];

/** Text broken into lines of at most `width` characters, between words where it can be. */
export function wrapped(text: string, width: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(/\s+/).flatMap((piece) => cut(piece, width))) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= width)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/** A label, and a text that hangs beside it from a column on: several lines where it is long. */
export function hanging(label: string, text: string, column: number): string[] {
  const head = `  ${label}`;
  // A long label takes a line of its own.
  const beside = head.length < column;
  const lines = wrapped(text, TEXT_WIDTH - column).map((line) => ' '.repeat(column) + line);
  if (!beside) return [...wrapped(label, TEXT_WIDTH - 2).map((line) => `  ${line}`), ...lines];
  const [first = head, ...rest] = lines;
  return [head.padEnd(column) + first.slice(column), ...rest];
}
