/**
 * Draws the icons of the installed page into `public/`, with the browser that the tests use: `node --import tsx
 * src/dev/icons.ts`. The pictures are committed, so that nothing else needs a browser.
 *
 * An escape wheel: what lets a train of gears go on by one tooth at a time.
 */
import { writeFileSync } from 'node:fs';
import { deflateSync } from 'node:zlib';
import { chromium, type Page } from 'playwright-core';
import { BROWSER_ARGS, browserPath } from '../../tests/browser/launch.ts';

const PUBLIC = new URL('../../public/', import.meta.url);
const TEETH = 15;
const TILE = '#0B5E6B';
const LINE = '#FFFFFF';

const at = (radius: number, turn: number): string =>
  `${(radius * Math.sin(turn * 2 * Math.PI)).toFixed(2)} ${(-radius * Math.cos(turn * 2 * Math.PI)).toFixed(2)}`;

/** Pointed teeth that lean forward, as those of an escape wheel do; radii in units of the wheel's own, 100. */
function wheel(): string {
  const points = Array.from({ length: TEETH }, (_, tooth) => {
    const foot = tooth / TEETH;
    return `${at(76, foot)} L ${at(100, foot + 0.62 / TEETH)} L ${at(76, foot + 0.5 / TEETH)}`;
  });
  return `M ${points.join(' L ')} Z`;
}

const spokes = (): string =>
  [0, 0.25, 0.5, 0.75].map((turn) => `M ${at(14, turn)} L ${at(66, turn)}`).join(' ');

/**
 * The icon as SVG.
 * @param corner - radius of the tile's corners, share of its side
 * @param size - share of the tile's side that the wheel takes up
 */
export function iconSvg(corner: number, size: number): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" width="512" height="512" viewBox="-128 -128 256 256">
  <rect x="-128" y="-128" width="256" height="256" rx="${256 * corner}" fill="${TILE}"/>
  <g transform="scale(${size * 1.28})" fill="none" stroke="${LINE}" stroke-width="7">
    <path d="${wheel()}" fill="${LINE}" stroke="none"/>
    <circle r="62" fill="${TILE}" stroke="none"/>
    <circle r="14"/>
    <path d="${spokes()}"/>
  </g>
</svg>`;
}

/** Systems cut a maskable icon to any shape that holds a circle of 80 % of its side. */
const ICONS = [
  { file: 'icon-192.png', side: 192, svg: iconSvg(0.125, 0.8) },
  { file: 'icon-512.png', side: 512, svg: iconSvg(0.125, 0.8) },
  { file: 'icon-maskable-192.png', side: 192, svg: iconSvg(0, 0.62) },
  { file: 'icon-maskable-512.png', side: 512, svg: iconSvg(0, 0.62) },
];

/** Shades between tile and line; one more place in the palette is for what shows through. */
const SHADES = 15;

/** Red, green, blue and alpha of every pixel, row by row: the picture as the browser draws it. */
const drawn = (page: Page, svg: string, side: number): Promise<number[]> =>
  page.evaluate(
    async ([source, edge]) => {
      const image = new Image();
      image.src = `data:image/svg+xml,${encodeURIComponent(source)}`;
      await image.decode();
      const context = new OffscreenCanvas(edge, edge).getContext('2d') as OffscreenCanvasRenderingContext2D;
      context.drawImage(image, 0, 0, edge, edge);
      return [...context.getImageData(0, 0, edge, edge).data];
    },
    [svg, side] as const,
  );

/** Places in the palette: red tells tile and line apart. */
function indexesOf(rgba: readonly number[]): number[] {
  const [tile = 0, line = 0] = [channels(TILE)[0], channels(LINE)[0]];
  return Array.from({ length: rgba.length / 4 }, (_, pixel) => {
    const [red = 0, , , alpha = 0] = rgba.slice(pixel * 4, pixel * 4 + 4);
    const shade = Math.round(((red - tile) / (line - tile)) * (SHADES - 1));
    return alpha < 128 ? 0 : 1 + Math.max(0, shade);
  });
}

/** PNG's checksum, ISO 3309. */
function crc32(bytes: Buffer): number {
  let crc = ~0;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit += 1) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return ~crc >>> 0;
}

function chunk(name: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), data]);
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  sum.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, sum]);
}

const channels = (colour: string): number[] =>
  [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));

function palette(): Buffer {
  const [tile, line] = [channels(TILE), channels(LINE)];
  const shades = Array.from({ length: SHADES }, (_, shade) =>
    tile.map((low, i) => Math.round(low + ((line[i] ?? 0) - low) * (shade / (SHADES - 1)))),
  );
  return Buffer.from([tile, ...shades].flat());
}

/** A PNG of four bits a pixel (W3C PNG, colour type 3): a quarter of what the browser's own would weigh. */
function png(indexes: readonly number[], side: number): Buffer {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(side, 0);
  header.writeUInt32BE(side, 4);
  header.set([4, 3, 0, 0, 0], 8);
  const rows = Buffer.alloc(side * (1 + side / 2));
  indexes.forEach((index, pixel) => {
    const at = Math.floor(pixel / side) * (1 + side / 2) + 1 + ((pixel % side) >> 1);
    rows[at] = (rows[at] ?? 0) | (pixel % 2 === 0 ? index << 4 : index);
  });
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', header),
    chunk('PLTE', palette()),
    chunk('tRNS', Buffer.from([0])),
    chunk('IDAT', deflateSync(rows, { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

const browser = await chromium.launch({ executablePath: await browserPath(), args: [...BROWSER_ARGS] });
const page = await browser.newPage();
for (const { file, side, svg } of ICONS) {
  writeFileSync(new URL(file, PUBLIC), png(indexesOf(await drawn(page, svg, side)), side));
}
await browser.close();
