/**
 * A position on the map, read from text as people write it.
 *
 * Angles are read by geographiclib-dms: degrees, minutes and seconds with signs, marks or colons, and a hemisphere
 * letter before or after. What is done here is to cut the text in two. A geo: URI is read as RFC 5870 writes it.
 * What could mean two places is refused.
 */
import dms from 'geographiclib-dms';
import { type Position, rounded } from './position.ts';

/** What was read, or why nothing was. */
export type PositionRead = Position | { error: string };

const EXAMPLES = 'Allowed: such as 43.3, 6.4 or 43°18′N 6°24′E or geo:43.3,6.4.';

const fault = (what: string): PositionRead => ({ error: `${what} ${EXAMPLES}` });

function checked(latitudeDeg: number, longitudeDeg: number): PositionRead {
  if (Math.abs(latitudeDeg) > 90) {
    const swapped = Math.abs(longitudeDeg) <= 90 ? ' Are the two swapped?' : '';
    return { error: `Latitude is ${rounded(latitudeDeg)}°. Allowed: 90° S to 90° N.${swapped}` };
  }
  if (Math.abs(longitudeDeg) > 180)
    return { error: `Longitude is ${rounded(longitudeDeg)}°. Allowed: 180° W to 180° E.` };
  return { latitudeDeg: rounded(latitudeDeg), longitudeDeg: rounded(longitudeDeg) };
}

const NUMBER = String.raw`-?\d+(?:\.\d+)?`;
const GEO = new RegExp(
  `^geo:(${NUMBER}),(${NUMBER})(?:,${NUMBER})?` +
    String.raw`(?:;crs=([\w-]+))?(?:;u=\d+(?:\.\d+)?)?(?:;(?!u=|crs=)[\w-]+(?:=[^;?#\s]+)?)*$`,
  'i',
);

/** Source: RFC 5870, 3.3 (syntax) and 3.4.2 (ranges). Altitude, uncertainty and other parameters are left. */
function readGeo(text: string): PositionRead {
  const match = GEO.exec(text);
  if (!match) return fault('Not a geo: URI as RFC 5870 writes it.');
  const [, latitude, longitude, crs = 'wgs84'] = match;
  if (crs.toLowerCase() !== 'wgs84')
    return { error: `The geo: URI counts in ${crs}. Allowed: wgs84, as maps and phones do.` };
  return checked(Number(latitude), Number(longitude));
}

/** Words and signs of many pens, made those of one. */
const SAME: readonly (readonly [RegExp, string])[] = [
  [/[\u2010-\u2014\u2212]/g, '-'],
  [/\blat(?:itude)?\b[.:=]?|\blon(?:g|gitude)?\b[.:=]?/gi, ' '],
  [/deg(?:rees?)?\.?/gi, '°'],
  [/min(?:utes?)?\.?/gi, '′'],
  [/sec(?:onds?)?\.?/gi, '″'],
  [/\b([nsew])(?:orth|outh|ast|est)\b/gi, '$1'],
];

/** Cuts between two hemisphere letters, which stand before both angles or behind both. */
function cutByLetters(text: string): string[] | null {
  const [first, second, third] = [...text.matchAll(/[NSEW]/gi)];
  if (!first || !second || third) return null;
  const at = first.index === 0 ? second.index : first.index + 1;
  return [text.slice(0, at), text.slice(at)];
}

const inTwo = (text: string, at: string | RegExp): string[] | null => {
  const parts = text.split(at);
  return parts.length === 2 ? parts : null;
};

/** Cuts half way through an even number of words: `43 18 6 24`. */
function cutByWords(text: string): string[] | null {
  const words = text.split(/\s+/);
  const half = words.length / 2;
  return half === 1 || half === 2 || half === 3
    ? [words.slice(0, half).join(' '), words.slice(half).join(' ')]
    : null;
}

/** The two angles of a text without letters; null if there are not two, or more than one way to see them. */
function cutByMarks(text: string): string[] | null {
  const parted = inTwo(text, /\s*[;/|]\s*/) ?? inTwo(text, /,\s+|\s+,\s*|,(?=[+-])/);
  // A comma between points or marks can only part the two; in '43,3' it may stand for a point.
  return parted ?? (/[.°'′:]/.test(text) ? inTwo(text, ',') : null) ?? cutByWords(text);
}

/** One angle as the library reads it: a decimal point, and colons where only gaps part the sixtieths. */
const clean = (angle: string): string =>
  angle
    .replace(/^[\s,;]+|[\s,;]+$/g, '')
    .replace(/(\d),(\d)/g, '$1.$2')
    .replace(/\s*([°º'′’"″”:NSEW])\s*/gi, '$1')
    .replace(/\s+/g, ':');

function readAngles(cut: readonly string[]): PositionRead {
  const angles = cut.map(clean);
  // The library would take '43-18' for a subtraction.
  if (angles.some((angle) => /\d.*[+-]/.test(angle))) return fault('A sign stands inside an angle.');
  const [a, b] = angles.map((angle) => dms.Decode(angle));
  if (!a || !b) return fault('Not two angles.');
  if (a.ind === b.ind && a.ind !== dms.NONE)
    return fault(`Both angles are a ${a.ind === dms.LATITUDE ? 'latitude' : 'longitude'}.`);
  const longitudeFirst = a.ind === dms.LONGITUDE || b.ind === dms.LATITUDE;
  return longitudeFirst ? checked(b.val, a.val) : checked(a.val, b.val);
}

/**
 * Reads a position: `43.3, 6.4`, `43°18'N 6°24'E`, `N43 18.0 E006 24.0`, `43,3; 6,4`, `geo:43.3,6.4;u=10`.
 * Latitude comes first, unless letters say otherwise.
 */
export function readPosition(text: string): PositionRead {
  const trimmed = text.trim();
  if (/^geo:/i.test(trimmed)) return readGeo(trimmed);
  const same = SAME.reduce((all, [pattern, sign]) => all.replace(pattern, sign), trimmed).trim();
  const cut = /[NSEW]/i.test(same) ? cutByLetters(same) : cutByMarks(same);
  if (!cut) return fault('Not clearly two angles.');
  try {
    return readAngles(cut);
  } catch {
    return fault('Not two angles of degrees, minutes and seconds.');
  }
}
