/** Sentences with figures in them. */

/** A part of a sentence: words, or a figure with the name of its working. */
export type Piece = string | { text: string; of: string };

/** The sentence as it is read. */
export const plainText = (pieces: readonly Piece[]): string =>
  pieces.map((piece) => (typeof piece === 'string' ? piece : piece.text)).join('');
