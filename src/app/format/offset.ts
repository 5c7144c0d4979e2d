/** Offsets from UTC as people type them: read by the fields, which the page fetches after its first script. */

/**
 * Reads an offset from UTC: `+5:45`, `−03:30`, `+2`.
 * @returns minutes, or null if the text is no offset
 */
export function readOffset(text: string): number | null {
  const match = /^(?:utc|gmt)?\s*([+\-\u2212\u2013]?)(\d{1,2})(?::?([0-5]\d))?$/i.exec(text.trim());
  if (!match) return null;
  const minutes = Number(match[2]) * 60 + Number(match[3] ?? 0);
  return match[1] === '' || match[1] === '+' ? minutes : -minutes;
}
