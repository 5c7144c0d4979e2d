/** Text of a plan where it could do something: on a terminal, in a table, in a drawing. */

/**
 * Characters that are not seen but act: control characters (ECMA-48) but for tab and line ends, marks that turn the
 * direction of what follows (Unicode Annex 9), halves of a pair, and what XML 1.0 does not allow.
 */
const ACTING =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
  /[\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F-\u009F\u202A-\u202E\u2066-\u2069\u2028\u2029\uFFFE\uFFFF]|\p{Surrogate}/gu;

/** Stands for what cannot be shown. */
const REPLACEMENT = '\uFFFD';

/** The text with each character that acts replaced by U+FFFD: what is in it is seen, and nothing happens. */
export const cleanText = (text: string): string => text.replace(ACTING, REPLACEMENT);

/** The same in one line. */
export const cleanLine = (text: string): string => cleanText(text).replace(/\s+/g, ' ');

/** JSON text with those characters escaped: it reads the same. */
export const cleanJson = (json: string): string =>
  json.replace(ACTING, (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`);
