// The parts of exifr from which this page puts its own reader together; the package types its bundles only.
declare module 'exifr/src/core.mjs' {
  /** Blocks of the file by name, each with its tags by number. */
  export function parse(
    input: Uint8Array,
    options: object,
  ): Promise<Record<string, Record<string, unknown>> | undefined>;
}
declare module 'exifr/src/file-parsers/jpeg.mjs';
declare module 'exifr/src/file-parsers/tiff.mjs';
declare module 'exifr/src/file-parsers/heif.mjs';
declare module 'exifr/src/segment-parsers/tiff-exif.mjs';
