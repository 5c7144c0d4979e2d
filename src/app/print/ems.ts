/** How wide text gets, in parts of the type's size: a little more than the face needs, measured in a browser. */

/** Tabular figures and signs of the sheet's face. */
const FIGURE = 0.63;
const NARROW = 0.27;
const CAPITAL = 0.72;
const OTHER = 0.52;

function emOf(sign: string): number {
  if (/[\d+\u2212\u2013]/.test(sign)) return FIGURE;
  if (/[.,:;'il\s|()]/.test(sign)) return NARROW;
  return /[\p{Lu}mw%\u2026]/u.test(sign) ? CAPITAL : /[^\p{ASCII}]/u.test(sign) ? 1 : OTHER;
}

const known = new Map<string, number>();

/** Width of a text in one line. */
export function emsOf(text: string): number {
  let sum = 0;
  for (const sign of text) {
    const em = known.get(sign) ?? emOf(sign);
    known.set(sign, em);
    sum += em;
  }
  return sum;
}
