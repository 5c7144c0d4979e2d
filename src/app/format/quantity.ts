/** How each unit of the plan is shown in a field and read back from one. */
import type { Codec } from './allowed.ts';
import { bytesUnit, readBytes } from './bytes.ts';
import { offsetText } from './clock.ts';
import { colonText, durationText, exactDuration, readDuration } from './durations.ts';
import { shutterMark } from './exposure.ts';
import { NBSP, numberText, readNumber } from './numbers.ts';
import { readOffset } from './offset.ts';

const plain = (unit: string): Codec => ({
  text: (value) => numberText(value),
  unit: (value) => (value === 1 ? unit.replace(/^(frame|stop)s$/, '$1') : unit),
  read: (text) =>
    readNumber(unit === '' ? text : text.replace(new RegExp(`\\s*${escapeRegExp(unit)}$`, 'i'), '')),
  kind: 'a number',
});

const escapeRegExp = (text: string): string => text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');

// Below two minutes a plain number of seconds is easier to edit than '1 min 30 s'.
const inSeconds = (value: number): boolean => value < 120;

// What is longer than a field is wide is written with colons.
const LONGEST = 9;

function durationInField(value: number): string {
  if (inSeconds(value)) return numberText(value);
  const text = exactDuration(value);
  return text.length > LONGEST && Number.isInteger(value) ? colonText(value) : text;
}

const duration: Codec = {
  text: durationInField,
  unit: (value) => (inSeconds(value) ? 's' : ''),
  read: readDuration,
  kind: 'a length of time',
};

const shutter: Codec = {
  text: shutterMark,
  unit: (value) => (/[a-z]/.test(shutterMark(value)) ? '' : 's'),
  read: readDuration,
  kind: 'a shutter time',
};

const share: Codec = {
  text: (value) => numberText(value * 100),
  unit: () => '%',
  read: (text) => {
    const percent = readNumber(text.replace(/\s*%$/, ''));
    return percent === null ? null : Number((percent / 100).toPrecision(12));
  },
  kind: 'a percentage',
};

/** A place in the run: its last digits would be of no frame. */
const place: Codec = { ...share, text: (value) => numberText(value * 100, 4) };

const bytes = (per: '' | '/s'): Codec => ({
  text: (value) => numberText(value / bytesUnit(value).size),
  unit: (value) => `${bytesUnit(value).unit}${per}`,
  read: (text, present) => readBytes(text, bytesUnit(present).size),
  kind: 'an amount of data',
});

const offset: Codec = {
  text: offsetText,
  unit: () => '',
  read: readOffset,
  kind: 'an offset such as +05:45',
};

const aperture: Codec = {
  text: (value) => `f/${numberText(value)}`,
  unit: () => '',
  read: (text) => readNumber(text.replace(/^f\/?/i, '')),
  kind: 'an f-number',
};

const compass = (positive: string, negative: string): Codec => ({
  text: (value) => numberText(value),
  unit: () => '°',
  read: (text) => {
    const match = /^(.*?)\s*°?\s*([a-z]?)$/i.exec(text.trim());
    const value = readNumber(match?.[1] ?? '');
    const side = match?.[2]?.toUpperCase() ?? '';
    if (value === null || !['', positive, negative].includes(side)) return null;
    return side === negative ? -value : value;
  },
  kind: `degrees, such as 43.3 ${positive}`,
});

const FROM_EVENT = /^\s*([+\-\u2212\u2013]?)\s*(.*?)\s*(before|after)?\s*$/i;

/** Minutes from an event of the sky: `50 min before`, `1 h 10 min after`; a bare number keeps its side. */
const fromEvent: Codec = {
  text: (value) => {
    if (value === 0) return `0${NBSP}min`;
    return `${durationText(Math.abs(value) * 60)}${NBSP}${value < 0 ? 'before' : 'after'}`;
  },
  unit: () => '',
  read: (text, present) => {
    const [, sign = '', amount = '', side = ''] = FROM_EVENT.exec(text) ?? [];
    const seconds = readDuration(amount);
    const minutes = readNumber(amount) ?? (seconds === null ? null : seconds / 60);
    if (minutes === null) return null;
    const before = side + sign === '' ? present < 0 : side.toLowerCase() === 'before' || /[^+]/.test(sign);
    return before ? 0 - minutes : minutes;
  },
  kind: 'a time from the event, such as 50 min before',
};

const BY_PATH: Readonly<Record<string, Codec>> = {
  'exposure.shutterS': shutter,
  'move.tracks.0.keyframes.0.share': place,
  'start.offsetMin': fromEvent,
  'light.meteredShutterS': shutter,
  'place.utcOffsetMin': offset,
  'place.latitudeDeg': compass('N', 'S'),
  'place.longitudeDeg': compass('E', 'W'),
};

const BY_UNIT: Readonly<Record<string, Codec>> = {
  s: duration,
  share,
  bytes: bytes(''),
  'bytes/s': bytes('/s'),
  'f/': aperture,
};

/**
 * The codec of a field.
 * @param path - the field's path, list places as `0`
 * @param unit - its unit as the plan's table of fields says
 * @param axisUnit - what an axis's own unit is, for fields counted in it
 */
export function codecOf(path: string, unit = '', axisUnit: 'mm' | 'deg' = 'mm'): Codec {
  const known = BY_PATH[path] ?? BY_UNIT[unit];
  if (known) return known;
  // The positions of a track and its shares carry the units of the run.
  if (path.endsWith('hare')) return share;
  return plain(unit.replace('axis', axisUnit === 'deg' ? '°' : 'mm'));
}
