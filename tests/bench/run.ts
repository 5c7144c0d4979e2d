/**
 * `npm run bench`: ratios measured side by side in one run. Milliseconds do not travel; ratios do.
 * `npm run bench -- engine page` measures only those parts. Ends with 1 if a figure is over its budget.
 */
import { execFileSync } from 'node:child_process';
import { measureSizes } from '../../src/dev/sizes.ts';
import { engineFigures } from './engine.ts';
import { pageFigures } from './page.ts';
import { type Figure, figureLine, isOver } from './report.ts';
import { spreadsheetFigures } from './spreadsheet.ts';

const sizeFigures = (): Figure[] =>
  measureSizes().map(({ what, bytes, budgetBytes }) => ({
    what,
    value: bytes / 1000,
    unit: 'kB gzip',
    budget: budgetBytes / 1000,
  }));

const PARTS: Readonly<Record<string, () => Figure[] | Promise<Figure[]>>> = {
  engine: engineFigures,
  page: pageFigures,
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
let over = 0;
for (const [name, measure] of Object.entries(PARTS)) {
  if (asked.length > 0 && !asked.includes(name)) continue;
  console.log(`\n${name}`);
  for (const figure of await measure()) {
    console.log(figureLine(figure));
    if (isOver(figure)) over += 1;
  }
}
console.log(over === 0 ? '\nAll within budget.' : `\n${over} over budget.`);
process.exitCode = over === 0 ? 0 : 1;
