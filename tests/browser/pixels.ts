/** Pixels of a picture, decoded by the browser in a page of its own. */
import type { Browser } from 'playwright-core';

/** A picture; `data` has four bytes a pixel: red, green, blue, alpha. */
export interface Pixels {
  data: Uint8ClampedArray;
  width: number;
  height: number;
}

/** Decodes a PNG file. */
export async function pixelsOf(browser: Browser, png: Buffer): Promise<Pixels> {
  const page = await browser.newPage();
  const { width, height, base64 } = await page.evaluate(
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
      const { data } = context.getImageData(0, 0, canvas.width, canvas.height);
      let binary = '';
      for (let from = 0; from < data.length; from += 30_000)
        binary += String.fromCharCode(...data.subarray(from, from + 30_000));
      return { width: canvas.width, height: canvas.height, base64: btoa(binary) };
    },
    `data:image/png;base64,${png.toString('base64')}`,
  );
  await page.close();
  return { data: new Uint8ClampedArray(Buffer.from(base64, 'base64')), width, height };
}

/** Counts the pixels of each colour of a PNG file, `red green blue alpha`, where it is decoded. */
export async function coloursOf(
  browser: Browser,
  png: Buffer,
): Promise<{ colours: Map<string, number>; width: number; height: number }> {
  const page = await browser.newPage();
  const { width, height, counted } = await page.evaluate(
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
      const { data } = context.getImageData(0, 0, canvas.width, canvas.height);
      const counts = new Map<number, number>();
      for (const pixel of new Uint32Array(data.buffer)) counts.set(pixel, (counts.get(pixel) ?? 0) + 1);
      const counted = [...counts].map(([pixel, count]) => [
        [...new Uint8Array(Uint32Array.of(pixel).buffer)].join(' '),
        count,
      ]);
      return { width: canvas.width, height: canvas.height, counted: counted as [string, number][] };
    },
    `data:image/png;base64,${png.toString('base64')}`,
  );
  await page.close();
  return { colours: new Map(counted), width, height };
}
