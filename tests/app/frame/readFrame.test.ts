/** What a photograph says of itself, and files that say nothing or are none. */
import { describe, expect, test } from 'vitest';
import { readFrame } from '../../../src/app/frame/readFrame.ts';
import type { TestFrame } from '../../../src/app/frame/testFrame.ts';
import { bareJpeg, jpegWithExif, type Tag, tiffWithExif } from './samples.ts';

const file = (content: BlobPart, name = 'frame.jpg') => new File([content], name);

async function read(content: BlobPart, name?: string): Promise<TestFrame> {
  const frame = await readFrame(file(content, name));
  if ('error' in frame) throw new Error(frame.error);
  return frame;
}

const SETTINGS: Tag[] = [
  [0x829a, [1, 60]],
  [0x829d, [80, 10]],
  [0x8827, 100],
  [0x9003, '2026:08:08 19:40:05'],
  [0x9011, '+02:00'],
  [0x920a, [350, 10]],
];

describe('a photograph says', () => {
  test('its settings, size, time and place (JPEG)', async () => {
    const content = jpegWithExif();
    expect(await read(content)).toEqual({
      fileName: 'frame.jpg',
      fileBytes: content.length,
      shutterS: 1 / 60,
      apertureF: 8,
      iso: 100,
      focalLengthMm: 35,
      widthPx: 6048,
      heightPx: 4032,
      taken: { date: '2026-08-08', time: '19:40:05', offset: null },
      position: { latitudeDeg: 43.3, longitudeDeg: 6.4 },
    });
  });

  test.each([
    ['little', true],
    ['big', false],
  ] as const)(
    'the same in a raw file built like TIFF, %s end first, with its offset from UTC',
    async (_, little) => {
      const frame = await read(tiffWithExif(SETTINGS, little), 'frame.nef');
      expect(frame).toMatchObject({ shutterS: 1 / 60, apertureF: 8, iso: 100, focalLengthMm: 35 });
      expect(frame.taken).toEqual({ date: '2026-08-08', time: '19:40:05', offset: '+02:00' });
      expect(frame.position).toBeNull();
    },
  );

  // Source: Exif 2.32, Annex C: Tv 6 is 1/64 s, Av 6 is f/8.
  test('APEX values where the plain ones are missing', async () => {
    const apex: Tag[] = [
      [0x8827, 65_535],
      [0x8832, 102_400],
      [0x9201, [6, 1]],
      [0x9202, [6, 1]],
    ];
    expect(await read(tiffWithExif(apex))).toMatchObject({ shutterS: 1 / 64, apertureF: 8, iso: 102_400 });
  });

  test('south and west as negative', async () => {
    const frame = await read(jpegWithExif({ gps: { 1: 'S', 3: 'W' } }));
    expect(frame.position).toEqual({ latitudeDeg: -43.3, longitudeDeg: -6.4 });
  });

  test('nothing of what is not sensible', async () => {
    const frame = await read(
      jpegWithExif({
        exif: { 33434: [0, 0], 33437: [0, 1], 36867: '0000:00:00 00:00:00' },
        gps: {
          2: [
            [0, 1],
            [0, 1],
            [0, 1],
          ],
          4: [
            [0, 1],
            [0, 1],
            [0, 1],
          ],
        },
      }),
    );
    expect(frame).toMatchObject({ shutterS: null, apertureF: null, taken: null, position: null, iso: 100 });
  });

  test('its size alone, if it has no EXIF', async () => {
    const frame = await read(bareJpeg());
    const { fileName: _, fileBytes, ...rest } = frame;
    expect(fileBytes).toBe(bareJpeg().length);
    expect(new Set(Object.values(rest))).toEqual(new Set([null]));
  });
});

describe('a file that cannot be read says why', () => {
  const error = async (given: File) => {
    const frame = await readFrame(given);
    return 'error' in frame ? frame.error : '';
  };

  test.each([
    ['text', 'Dough, second try', /no photograph.*Allowed: JPEG/],
    [
      'text that begins like a raw file',
      'MMXXVI was the year of it, and no photograph',
      /damaged|no photograph/,
    ],
    ['an empty file', '', /is empty/],
    ['two bytes', '\x00\x00', /no photograph/],
  ])('%s', async (_name, content, reason) => {
    expect(await error(file(content, 'x.jpg'))).toMatch(reason);
  });

  test('EXIF that breaks off', async () => {
    expect(await error(file(tiffWithExif(SETTINGS).slice(0, 20)))).toMatch(/damaged/);
    expect(await error(file(jpegWithExif().slice(0, 200)))).toMatch(/damaged/);
  });

  test('a file of 200 MB is not read at all', async () => {
    const huge = file(jpegWithExif(), 'film.mov');
    Object.defineProperty(huge, 'size', { value: 200_000_000 });
    huge.slice = () => {
      throw new Error('was read');
    };
    expect(await error(huge)).toMatch(/film.mov has 200.MB. Allowed: a single frame of at most 150.MB/);
  });

  test('of a large one only the head is read', async () => {
    const large = file(new Uint8Array(40_000_000));
    const asked: number[] = [];
    const { slice } = large;
    large.slice = (start, end) => {
      asked.push((end ?? large.size) - (start ?? 0));
      return slice.call(large, start, end);
    };
    await readFrame(large);
    expect(Math.max(...asked)).toBeLessThanOrEqual(1_000_000);
  });

  test('a file that went away', async () => {
    const gone = file(jpegWithExif());
    gone.slice = () => ({ arrayBuffer: () => Promise.reject(new Error('gone')) }) as unknown as Blob;
    expect(await error(gone)).toMatch(/cannot be read/);
  });

  test('whatever the bytes, nothing is thrown', async () => {
    const whole = jpegWithExif();
    for (let i = 0; i < whole.length; i += 3) {
      const broken = whole.slice();
      broken[i] = (broken[i] ?? 0) ^ 0x15;
      await readFrame(file(broken));
      await readFrame(file(whole.slice(0, i)));
    }
  });
});
