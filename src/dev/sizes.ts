/** What the page weighs on its way to the browser, gzip, against the budget of the design. */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import { isKept, WORKER_FILE } from './offline.ts';

const DIST = fileURLToPath(new URL('../../dist', import.meta.url));

/** One weight and the most it may be, bytes after gzip (fonts and pictures, which are compressed already, as they are). */
export interface Size {
  what: string;
  bytes: number;
  budgetBytes: number;
}

const SCRIPT = /\.js$/;
/**
 * Parts that are fetched only when they are asked for. A browser test sees to it that opening the page fetches none
 * of them.
 */
const PARTS_ASKED_FOR = [
  // A place looked up or typed, a photograph read.
  'zone',
  'coordinates',
  'readFrame',
  // Views.
  'DaysView',
  'year.worker',
  'SheetView',
  'sheet',
  'sheeted',
  'OnSetView',
  'StopMotion',
  'commands',
  'gridStore',
  'stretch',
  'aim',
  // A sentence as it is read, without its figures.
  'sentence',
  // Tables, and the feet of those whose cells open their workings.
  'FigureTable',
  'CellFoot',
  // The ways out wait for a sign of somebody, or some seconds.
  'wayParts',
  'taking',
  'changes',
  'fixes.worker',
  'LadderBody',
  // Dialogs.
  'kit',
  'KitBody',
  'measures',
  'PlansBody',
  'recover',
  'TakeAlong',
  'CompareBody',
  'WorkingBody',
  // Formulas as text, which the measuring helpers say too.
  'text',
  'ShareDialog',
  'LinkDialog',
  'openLink',
  'share',
  'share-link',
  'clean',
  'csv',
  'texts',
  'savePicture',
  // Paper.
  'runSheetPrint',
  'print',
  'slices',
  // The rig's subjects.
  'rigBodies',
  'PathPanel',
  'rig',
  'cautions',
  'camera-pose',
  // Demos but for the first.
  'loaf-proving',
  'clay-snail',
];

export const ASKED_FOR = new RegExp(`assets/(${PARTS_ASKED_FOR.join('|')})-[^/]*$`);

/** The worker and an icon too: a browser fetches them on its own account, soon after. */
const PART_OF_PAGE = /\.(js|css|html|svg|png|woff2|webmanifest)$/;

/** A browser takes one of the icons: the largest is counted. */
const OTHER_ICONS = /icon-(192|maskable-\d+)\.png$/;

const isOpened = (file: string): boolean =>
  PART_OF_PAGE.test(file) && !ASKED_FOR.test(file) && !OTHER_ICONS.test(file);

function weight(file: string): number {
  const content = readFileSync(join(DIST, file));
  return /\.(woff2|png)$/.test(file) ? content.length : gzipSync(content, { level: 9 }).length;
}

const isFile = (path: string): boolean => statSync(join(DIST, path)).isFile();

const total = (files: readonly string[]): number => files.reduce((sum, file) => sum + weight(file), 0);

/** The entry script and what it imports statically: what the page's head names. */
function firstScripts(): string[] {
  const head = readFileSync(join(DIST, 'index.html'), 'utf8');
  const named = [...head.matchAll(/(?:src|href)="\.?\/?([^"]+)"/g)].map(([, file]) => file ?? '');
  return named.filter((file) => SCRIPT.test(file));
}

/**
 * Weighs the built page in `dist/`.
 * @throws Error if the page is not built
 */
export function measureSizes(): Size[] {
  const files = readdirSync(DIST, { recursive: true, encoding: 'utf8' });
  return [
    { what: 'JavaScript before charts', bytes: total(firstScripts()), budgetBytes: 140_000 },
    {
      what: 'everything that opening the page fetches',
      bytes: total(files.filter(isOpened)),
      budgetBytes: 350_000,
    },
    {
      // Not asked for by the page: the worker fetches it, one file after another, once the page rests.
      what: 'everything that is kept for use without a network',
      bytes: total(files.filter((path) => (path === WORKER_FILE || isKept(path)) && isFile(path))),
      budgetBytes: 750_000,
    },
  ];
}

/** A size in one line; says so if it is over. */
export function sizeLine({ what, bytes, budgetBytes }: Size): string {
  const kilobytes = (value: number) => (value / 1000).toFixed(1);
  const over = bytes > budgetBytes ? '  OVER BUDGET' : '';
  return `${what}: ${kilobytes(bytes)} kB gzip of ${kilobytes(budgetBytes)}${over}`;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const sizes = measureSizes();
  for (const size of sizes) console.log(sizeLine(size));
  if (sizes.some(({ bytes, budgetBytes }) => bytes > budgetBytes)) process.exitCode = 1;
}
