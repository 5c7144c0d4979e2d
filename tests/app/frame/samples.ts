/** Photographs that the tests write themselves: JPEG by piexifjs, TIFF by hand. Neither is the library that reads. */
import piexif from 'piexifjs';

/** Smallest JPEG that the writer takes: start, an empty quantisation table, scan, end. */
const BARE_JPEG = `\xff\xd8\xff\xdb\x00\x43\x00${'\x01'.repeat(64)}\xff\xda\x00\x02\x00\xff\xd9`;

const bytesOf = (binary: string): Uint8Array<ArrayBuffer> =>
  Uint8Array.from(binary, (character) => character.charCodeAt(0));

/** A picture file without any EXIF. */
export const bareJpeg = (): Uint8Array<ArrayBuffer> => bytesOf(BARE_JPEG);

/** A JPEG of 1/60 s, f/8, ISO 100, 35 mm, 6048 x 4032 px, at 43.3 N 6.4 E; changes by block. */
export function jpegWithExif(changes: { exif?: object; gps?: object } = {}): Uint8Array<ArrayBuffer> {
  const { ExifIFD, GPSIFD, ImageIFD } = piexif;
  const exif = {
    [ExifIFD.ExposureTime]: [1, 60],
    [ExifIFD.FNumber]: [80, 10],
    [ExifIFD.ISOSpeedRatings]: 100,
    [ExifIFD.FocalLength]: [350, 10],
    [ExifIFD.PixelXDimension]: 6048,
    [ExifIFD.PixelYDimension]: 4032,
    [ExifIFD.DateTimeOriginal]: '2026:08:08 19:40:05',
    ...changes.exif,
  };
  const gps = {
    [GPSIFD.GPSLatitudeRef]: 'N',
    [GPSIFD.GPSLatitude]: piexif.GPSHelper.degToDmsRational(43.3),
    [GPSIFD.GPSLongitudeRef]: 'E',
    [GPSIFD.GPSLongitude]: piexif.GPSHelper.degToDmsRational(6.4),
    ...changes.gps,
  };
  const block = piexif.dump({ '0th': { [ImageIFD.Make]: 'Invented' }, Exif: exif, GPS: gps });
  return bytesOf(piexif.insert(block, BARE_JPEG));
}

/** A tag of a hand-made TIFF: number, and text, whole number or fraction. */
export type Tag = readonly [tag: number, value: string | number | readonly [number, number]];

const SIZE = { text: 2, whole: 4, fraction: 5 } as const;

/** One directory of tags, with what does not fit into an entry behind it. Source: TIFF 6.0, section 2. */
function directory(view: DataView, at: number, tags: readonly Tag[], little: boolean): number {
  let free = at + 2 + tags.length * 12 + 4;
  view.setUint16(at, tags.length, little);
  tags.forEach(([tag, value], i) => {
    const entry = at + 2 + i * 12;
    view.setUint16(entry, tag, little);
    if (typeof value === 'number') {
      view.setUint16(entry + 2, SIZE.whole, little);
      view.setUint32(entry + 4, 1, little);
      view.setUint32(entry + 8, value, little);
      return;
    }
    const text = typeof value === 'string' ? `${value}\0` : null;
    view.setUint16(entry + 2, text === null ? SIZE.fraction : SIZE.text, little);
    view.setUint32(entry + 4, text?.length ?? 1, little);
    view.setUint32(entry + 8, free, little);
    if (text !== null) for (let k = 0; k < text.length; k += 1) view.setUint8(free + k, text.charCodeAt(k));
    else {
      const [top, bottom] = value as readonly [number, number];
      view.setInt32(free, top, little);
      view.setInt32(free + 4, bottom, little);
    }
    free += text === null ? 8 : text.length + (text.length % 2);
  });
  return free;
}

/** A file built like TIFF, as many raw files are: one directory that points to the EXIF one. */
export function tiffWithExif(exif: readonly Tag[], little = true): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(2000);
  const view = new DataView(bytes.buffer);
  view.setUint16(0, little ? 0x4949 : 0x4d4d);
  view.setUint16(2, 42, little);
  view.setUint32(4, 8, little);
  const exifAt = 8 + 2 + 12 + 4;
  directory(view, 8, [[0x8769, exifAt]], little);
  directory(view, exifAt, exif, little);
  return bytes;
}
