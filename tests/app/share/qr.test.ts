/** QR codes are read back by jsqr, which shares nothing with what draws them. */
import jsQR from 'jsqr';
import { describe, expect, test } from 'vitest';
import { codeOf, MOST_BYTES, QUIET_MODULES } from '../../../src/app/share/qr.ts';
import { defaultPlan } from '../../../src/engine/plan/parse.ts';
import { planFragment, readLink } from '../../../src/outputs/share-link.ts';

/** The drawn path on white, one module `scale` pixels wide, as a camera might see it. */
function raster(path: string, size: number, scale = 4): { data: Uint8ClampedArray; side: number } {
  const side = size * scale;
  const data = new Uint8ClampedArray(side * side * 4).fill(255);
  for (const [, x, y, width] of path.matchAll(/M(\d+) (\d+)h(\d+)v1H\1z/g)) {
    for (let row = 0; row < scale; row += 1) {
      const from = (Number(y) * scale + row) * side + Number(x) * scale;
      for (let at = from; at < from + Number(width) * scale; at += 1) data.fill(0, at * 4, at * 4 + 3);
    }
  }
  return { data, side };
}

function readBack(link: string): string | undefined {
  const code = codeOf(link);
  if (!code) throw new Error('no code');
  const { data, side } = raster(code.path, code.size);
  return jsQR(data, side, side)?.data;
}

const linkOf = (length: number): string => 'https://example.org/#p1.'.padEnd(length, 'Az0-_9');

describe('a code holds its link', () => {
  test.each([40, 100, 500, 1500, 2331, 2332, MOST_BYTES])('of %i characters', (length) => {
    expect(readBack(linkOf(length))).toBe(linkOf(length));
  });

  test('of a plan', async () => {
    const read = readBack(`https://example.org/rig/${await planFragment(defaultPlan())}`);
    expect(await readLink(read ?? '')).toEqual({ ok: true, plan: defaultPlan() });
  });
});

test('a link that no code holds has none', () => {
  expect(codeOf(linkOf(MOST_BYTES + 1))).toBeNull();
  expect(codeOf(linkOf(MOST_BYTES))?.version).toBe(40);
});

// ISO/IEC 18004:2015: a code of version V has 17 + 4 V modules a side (5.3.1), and four light ones around (5.3.8).
test.each([60, 700, 2900])('the code of %i characters has its size and its quiet zone', (length) => {
  const code = codeOf(linkOf(length));
  if (!code) throw new Error('no code');
  expect(code.size).toBe(17 + 4 * code.version + 2 * QUIET_MODULES);
  const stretches = [...code.path.matchAll(/M(\d+) (\d+)h(\d+)/g)];
  const ends = stretches.flatMap(([, x, , width]) => [Number(x), Number(x) + Number(width)]);
  expect([Math.min(...ends), Math.max(...ends)]).toEqual([4, code.size - 4]);
  const rows = stretches.map(([, , y]) => Number(y));
  expect([Math.min(...rows), Math.max(...rows)]).toEqual([4, code.size - 5]);
});

test('a code that is read only from close by is called dense', () => {
  expect(codeOf(linkOf(300))?.dense).toBe(false);
  expect(codeOf(linkOf(2000))?.dense).toBe(true);
});
