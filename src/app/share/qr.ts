/** A link as a QR code (ISO/IEC 18004), as far as one holds it. */
import { encode } from 'uqr';

/** Bytes that the largest code holds, version 40 with the least correction: ISO/IEC 18004:2015, table 7. */
export const MOST_BYTES = 2953;

/** Codes of this version and more are read only from close by. Common practice, no source. */
const DENSE_VERSION = 25;

/** Light modules around the code that a reader needs: ISO/IEC 18004:2015, 5.3.8. */
export const QUIET_MODULES = 4;

/** A code to draw. */
export interface Code {
  version: number;
  /** Modules along a side, with the quiet zone. */
  size: number;
  /** Dark modules, as an SVG path; one module is 1 by 1. */
  path: string;
  dense: boolean;
}

/** Dark modules of a row in stretches, each `M x y h n v 1 H x z`. */
function rowPath(row: readonly boolean[], y: number): string {
  let path = '';
  for (let x = 0; x < row.length; x += 1) {
    if (!row[x] || row[x - 1]) continue;
    let end = x;
    while (row[end]) end += 1;
    path += `M${x} ${y}h${end - x}v1H${x}z`;
  }
  return path;
}

/**
 * The code of a link, with as much correction as its size has room for.
 * @param link - a URL: ASCII
 * @returns null if it is too long for one
 */
export function codeOf(link: string): Code | null {
  if (link.length > MOST_BYTES) return null;
  const { version, size, data } = encode(link, { ecc: 'L', boostEcc: true, border: QUIET_MODULES });
  return { version, size, path: data.map(rowPath).join(''), dense: version >= DENSE_VERSION };
}
