/**
 * What a photograph says of itself: settings, time, place. Only the head of the file is read, and nothing leaves the
 * machine.
 *
 * Tag numbers: Exif 2.32 (CIPA DC-008), tables 4, 8 and 15.
 */
import { parse } from 'exifr/src/core.mjs';
import 'exifr/src/file-parsers/jpeg.mjs';
import 'exifr/src/file-parsers/tiff.mjs';
import 'exifr/src/file-parsers/heif.mjs';
import 'exifr/src/segment-parsers/tiff-exif.mjs';
import { bytesText } from '../format/bytes.ts';
import type { TestFrame } from './testFrame.ts';

/** The tags stand at the beginning of the file, before the picture. */
const HEAD_BYTES = 1_000_000;

// Far above any single frame; a film dropped by mistake is no frame.
const LARGEST_BYTES = 150_000_000;

const OPTIONS = {
  translateKeys: false,
  translateValues: false,
  reviveValues: false,
  mergeOutput: false,
  silentErrors: true,
};

const TAG = {
  exposureTime: 0x829a,
  fNumber: 0x829d,
  iso: 0x8827,
  recommendedExposureIndex: 0x8832,
  taken: 0x9003,
  offset: 0x9011,
  shutterApex: 0x9201,
  apertureApex: 0x9202,
  focalLength: 0x920a,
  widthPx: 0xa002,
  heightPx: 0xa003,
} as const;

type Tags = Readonly<Record<string, unknown>>;

const positive = (value: unknown): number | null =>
  typeof value === 'number' && Number.isFinite(value) && value > 0 ? value : null;

const numberAt = (tags: Tags, tag: number): number | null => {
  const value = tags[tag];
  // A few cameras write two equal values where one is meant.
  return positive(value ?? null) ?? positive((value as ArrayLike<unknown> | undefined)?.[0]);
};

/** APEX time value to seconds, `t = 2^-Tv`; tenths of a microsecond are beyond any shutter. */
function shutterS(tags: Tags): number | null {
  const apex = tags[TAG.shutterApex];
  const worked =
    typeof apex === 'number' && Number.isFinite(apex) ? Number((2 ** -apex).toPrecision(6)) : null;
  return numberAt(tags, TAG.exposureTime) ?? worked;
}

/** APEX aperture value to the f-number, `N = 2^(Av/2)`. */
function apertureF(tags: Tags): number | null {
  const apex = numberAt(tags, TAG.apertureApex);
  return numberAt(tags, TAG.fNumber) ?? (apex === null ? null : Number((2 ** (apex / 2)).toFixed(1)));
}

/** The tag has 16 bits: 65535 says that the number stands elsewhere. */
function isoOf(tags: Tags): number | null {
  const iso = numberAt(tags, TAG.iso);
  return iso === 65_535 ? (numberAt(tags, TAG.recommendedExposureIndex) ?? iso) : iso;
}

/** `2026-08-08T19:40:05` and `+02:00` of `2026:08:08 19:40:05` and `+02:00`. */
function takenOf(tags: Tags): TestFrame['taken'] {
  const match = /^(\d{4}):(\d\d):(\d\d) (\d\d:\d\d:\d\d)/.exec(String(tags[TAG.taken] ?? ''));
  if (!match || match[1] === '0000') return null;
  const offset = /^[+-]\d\d:\d\d$/.exec(String(tags[TAG.offset] ?? ''))?.[0] ?? null;
  return { date: `${match[1]}-${match[2]}-${match[3]}`, time: match[4] ?? '', offset };
}

function positionOf(gps: Tags): TestFrame['position'] {
  const { latitude, longitude } = gps;
  if (typeof latitude !== 'number' || typeof longitude !== 'number') return null;
  if (!(Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180)) return null;
  // A receiver that has found nothing writes zeros.
  if (latitude === 0 && longitude === 0) return null;
  return { latitudeDeg: Number(latitude.toFixed(6)), longitudeDeg: Number(longitude.toFixed(6)) };
}

const NO_PHOTOGRAPH =
  'is no photograph that can be read here. Allowed: JPEG, HEIC, AVIF, TIFF, and raw files built like TIFF.';

/** The blocks of tags in the head of a file; a sentence if there are none. */
async function blocksOf(head: Uint8Array): Promise<Record<string, Tags> | string> {
  try {
    const blocks = (await parse(head, OPTIONS)) ?? {};
    const { exif, gps, errors } = blocks;
    if (!exif && !gps && errors) return 'is damaged: its EXIF cannot be read.';
    return { exif: exif ?? {}, gps: gps ?? {} };
  } catch {
    return NO_PHOTOGRAPH;
  }
}

/**
 * Reads a photograph.
 * @param file - as picked or dropped
 * @returns what it says, with null for what it does not say; or a sentence on why it was not read
 */
export async function readFrame(file: File): Promise<TestFrame | { error: string }> {
  const fault = (what: string) => ({ error: `${file.name} ${what} Nothing was changed.` });
  if (file.size === 0) return fault('is empty.');
  if (file.size > LARGEST_BYTES)
    return fault(
      `has ${bytesText(file.size)}. Allowed: a single frame of at most ${bytesText(LARGEST_BYTES)}.`,
    );
  let head: Uint8Array;
  try {
    head = new Uint8Array(await file.slice(0, HEAD_BYTES).arrayBuffer());
  } catch {
    return fault('cannot be read: it was moved, or this page may not read it.');
  }
  const blocks = await blocksOf(head);
  if (typeof blocks === 'string') return fault(blocks);
  const { exif = {}, gps = {} } = blocks;
  return {
    fileName: file.name,
    fileBytes: file.size,
    shutterS: shutterS(exif),
    apertureF: apertureF(exif),
    iso: isoOf(exif),
    focalLengthMm: numberAt(exif, TAG.focalLength),
    widthPx: numberAt(exif, TAG.widthPx),
    heightPx: numberAt(exif, TAG.heightPx),
    taken: takenOf(exif),
    position: positionOf(gps),
  };
}
