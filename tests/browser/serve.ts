/** Serves the built page on a free port, as `npm start` does. */
import { existsSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { preview } from 'vite';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Origin of the served page, without a slash at the end. */
    origin: string;
  }
}

const root = fileURLToPath(new URL('../..', import.meta.url));

/**
 * Serves the built page.
 * @param folder - where it lies
 * @throws Error if the page is not built
 */
export async function serve(
  folder = join(root, 'dist'),
): Promise<{ origin: string; close: () => Promise<void> }> {
  if (!existsSync(join(root, 'dist/index.html')))
    throw new Error('dist: the page is not built: npm run build');
  const server = await preview({
    root,
    logLevel: 'warn',
    build: { outDir: folder },
    preview: { host: '127.0.0.1', port: 4300, open: false },
  });
  const { port } = server.httpServer.address() as AddressInfo;
  return { origin: `http://localhost:${port}`, close: () => server.close() };
}

/** Around all journeys of a run. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const { origin, close } = await serve();
  project.provide('origin', origin);
  return close;
}
