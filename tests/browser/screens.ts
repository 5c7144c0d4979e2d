/** Pictures of every view at three widths in three themes: `node --import tsx tests/browser/screens.ts`. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { serve } from './serve.ts';
import { startBrowser, THEMES, visit } from './visit.ts';

const OUTPUT = fileURLToPath(new URL('output', import.meta.url));
const VIEWS = ['plan', 'days', 'sheet', 'onset'];
const WIDTHS = [1440, 768, 390];

mkdirSync(OUTPUT, { recursive: true });
const { origin, close } = await serve();
const browser = await startBrowser();
for (const width of WIDTHS) {
  for (const theme of THEMES) {
    const viewport = { width, height: width < 500 ? 844 : 900 };
    const { page, context, problems } = await visit(browser, origin, { viewport, theme });
    await page.waitForLoadState('networkidle');
    for (const view of VIEWS) {
      await page.evaluate((hash) => {
        location.hash = hash;
      }, view);
      await page.waitForLoadState('networkidle');
      // What a worker has to say comes a moment later.
      await page.waitForTimeout(700);
      const name = `${view}-${width}-${theme}`;
      await page.screenshot({ path: join(OUTPUT, `${name}.png`) });
      await page.screenshot({ path: join(OUTPUT, `${name}-whole.png`), fullPage: true });
      console.log(name, problems.length === 0 ? 'nothing wrong' : problems);
    }
    await context.close();
  }
}
await browser.close();
await close();
