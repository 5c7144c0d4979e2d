/**
 * Puts the worker beside the built page that serves it without a network (`src/offline/worker.ts`), as `sw.js`, with the
 * list of every file that the page may fetch.
 */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, type Plugin } from 'vite';

const WORKER = fileURLToPath(new URL('../offline/worker.ts', import.meta.url));

/** Name of the worker's file. */
export const WORKER_FILE = 'sw.js';

/** What the page never asks for: the worker itself, what describes plan files to editors, and the demos as files. */
const NOT_KEPT = /^(?:plan\.schema\.json$|examples[\\/])/;

/** Whether a built file, by its path in the folder, is kept for use without a network. */
export const isKept = (path: string): boolean => path !== WORKER_FILE && !NOT_KEPT.test(path);

/** Digits of a hash that tell files and versions apart. */
const DIGITS = 16;

type Hashed = [path: string, hash: string];

const hashOf = (content: string | Buffer): string =>
  createHash('sha256').update(content).digest('hex').slice(0, DIGITS);

/** Every file in a folder that is kept, by the path it is fetched at. */
function filesIn(folder: string): Hashed[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => isKept(path) && statSync(join(folder, path)).isFile())
    .sort()
    .map((path) => [path.replaceAll('\\', '/'), hashOf(readFileSync(join(folder, path)))]);
}

/** The text of the worker for these files. */
async function workerText(files: readonly Hashed[]): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: 'warn',
    define: { FILES: JSON.stringify(files), VERSION: JSON.stringify(hashOf(JSON.stringify(files))) },
    build: {
      write: false,
      rolldownOptions: { input: WORKER, output: { format: 'iife', codeSplitting: false } },
    },
  });
  const { output } = [built].flat()[0] as { output: { code: string }[] };
  return output[0]?.code ?? '';
}

/** Writes the worker of the page in a folder. */
export async function writeWorker(folder: string): Promise<void> {
  writeFileSync(join(folder, WORKER_FILE), await workerText(filesIn(folder)));
}

/** The plugin. */
export function offline(): Plugin {
  return {
    name: 'offline',
    apply: 'build',
    writeBundle: {
      order: 'post',
      sequential: true,
      handler: ({ dir }) => (dir ? writeWorker(dir) : undefined),
    },
  };
}
