/**
 * `npm run bench`: ratios measured side by side in one run. Milliseconds do not travel; ratios do.
 * `npm run bench -- engine page` measures only those parts. Ends with 1 if a figure is over its budget.
 */
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { measureSizes } from '../../src/dev/sizes.ts';
import { engineFigures } from './engine.ts';
import { engineAlone } from './engine-alone.ts';
import { engineInBrowser } from './engine-browser.ts';
import { fixesFigures } from './fixes.ts';
import { pageFigures } from './page.ts';
import { type Figure, figureLine, isOver } from './report.ts';
import { skyFigures } from './sky.ts';
import { spreadsheetFigures } from './spreadsheet.ts';

const sizeFigures = (): Figure[] =>
  measureSizes().map(({ what, bytes, budgetBytes }) => ({
    what,
    value: bytes / 1000,
    unit: 'kB gzip',
    budget: budgetBytes / 1000,
  }));

const PARTS: Readonly<Record<string, () => Figure[] | Promise<Figure[]>>> = {
  engine: async () => [...engineFigures(), ...(await engineInBrowser()), ...engineAlone()],
  fixes: fixesFigures,
  page: pageFigures,
  sky: skyFigures,
  size: sizeFigures,
  spreadsheet: spreadsheetFigures,
};

const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !Object.hasOwn(PARTS, name));
if (unknown.length > 0) {
  console.error(`parts: found ${unknown.join(', ')}; allowed: ${Object.keys(PARTS).join(', ')}`);
  process.exit(2);
}

execFileSync('npm', ['run', '--silent', 'build', '--', '--logLevel', 'error'], {
  shell: process.platform === 'win32',
});
const README = new URL('../../README.md', import.meta.url);

/** A whole run replaces the figures between the markers of the README, whatever they say. */
function intoReadme(text: string): void {
  const [head, rest = ''] = readFileSync(README, 'utf8').split('<!-- bench:start -->');
  const [, tail] = rest.split('<!-- bench:end -->');
  if (tail === undefined) throw new Error('README.md: found no markers for the bench');
  writeFileSync(README, `${head}<!-- bench:start -->\n\`\`\`\n${text}\n\`\`\`\n<!-- bench:end -->${tail}`);
}

const lines: string[] = [];
const tell = (line: string): void => {
  console.log(line);
  lines.push(line);
};

let over = 0;
for (const [name, measure] of Object.entries(PARTS)) {
  if (asked.length > 0 && !asked.includes(name)) continue;
  tell(`${lines.length === 0 ? '' : '\n'}${name}`);
  for (const figure of await measure()) {
    tell(figureLine(figure));
    if (isOver(figure)) over += 1;
  }
}
tell(over === 0 ? '\nAll within budget.' : `\n${over} over budget.`);
if (asked.length === 0) intoReadme(lines.join('\n'));
process.exitCode = over === 0 ? 0 : 1;
