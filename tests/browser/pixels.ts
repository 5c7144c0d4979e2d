/** Pixels of a picture, decoded by the browser in a page of its own. */
import type { Browser, JSHandle } from 'playwright-core';

/** A picture; `data` has four bytes a pixel: red, green, blue, alpha. */
export interface Pixels {
  data: Uint8ClampedArray;
  width: number;
  height: number;
}

/** Decodes a PNG file and takes from its pixels what is wanted. */
async function decoded<T>(
  browser: Browser,
  png: Buffer,
  take: (pixels: JSHandle<ImageData>) => Promise<T>,
): Promise<T> {
  const page = await browser.newPage();
  const pixels = await page.evaluateHandle(
    async (url) => {
      const image = new Image();
      image.src = url;
      await image.decode();
      const canvas = document.createElement('canvas');
      canvas.width = image.naturalWidth;
      canvas.height = image.naturalHeight;
      const context = canvas.getContext('2d');
      if (!context) throw new Error('no canvas');
      context.drawImage(image, 0, 0);
      return context.getImageData(0, 0, canvas.width, canvas.height);
    },
    `data:image/png;base64,${png.toString('base64')}`,
  );
  const taken = await take(pixels);
  await page.close();
  return taken;
}

/** Decodes a PNG file. */
export async function pixelsOf(browser: Browser, png: Buffer): Promise<Pixels> {
  const { base64, ...size } = await decoded(browser, png, (pixels) =>
    pixels.evaluate(({ data, width, height }) => {
      let binary = '';
      for (let from = 0; from < data.length; from += 30_000)
        binary += String.fromCharCode(...data.subarray(from, from + 30_000));
      return { width, height, base64: btoa(binary) };
    }),
  );
  return { data: new Uint8ClampedArray(Buffer.from(base64, 'base64')), ...size };
}

/** Counts the pixels of each colour of a PNG file, `red green blue alpha`, where it is decoded. */
export async function coloursOf(
  browser: Browser,
  png: Buffer,
): Promise<{ colours: Map<string, number>; width: number; height: number }> {
  const { counted, ...size } = await decoded(browser, png, (pixels) =>
    pixels.evaluate(({ data, width, height }) => {
      const counts = new Map<number, number>();
      for (const pixel of new Uint32Array(data.buffer)) counts.set(pixel, (counts.get(pixel) ?? 0) + 1);
      const counted = [...counts].map(([pixel, count]): [string, number] => [
        [...new Uint8Array(Uint32Array.of(pixel).buffer)].join(' '),
        count,
      ]);
      return { width, height, counted };
    }),
  );
  return { colours: new Map(counted), ...size };
}
