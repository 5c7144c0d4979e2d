/** The times of `schedule()` where it is used most: built as for the page, in the browser. */
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { startBrowser } from '../browser/visit.ts';
import type { dayFiguresIn } from './engine.ts';
import type { Figure } from './report.ts';

const NAME = 'engineBench';
const entry = fileURLToPath(new URL('engine.ts', import.meta.url));

/** The bench of the engine as one script. */
async function script(): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: 'error',
    build: { write: false, lib: { entry, name: NAME, formats: ['iife'], fileName: NAME } },
  });
  const outputs = (Array.isArray(built) ? built : [built]).flatMap((made) =>
    'output' in made ? made.output : [],
  );
  return outputs.map((file) => (file.type === 'chunk' ? file.code : '')).join('\n');
}

/** Times of a day of frames, each kind of plan. */
export async function engineInBrowser(): Promise<Figure[]> {
  const browser = await startBrowser();
  try {
    const page = await browser.newPage();
    await page.addScriptTag({ content: await script() });
    return await page.evaluate((name) => {
      const bench = (globalThis as unknown as Record<string, { dayFiguresIn: typeof dayFiguresIn }>)[name];
      return bench?.dayFiguresIn('in the browser') ?? [];
    }, NAME);
  } finally {
    await browser.close();
  }
}
