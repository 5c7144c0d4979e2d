/** Builds the prompts once for all tests of a run: started from source, each start would take four times as long. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Folder of the built prompts. */
    prompts: string;
  }
}

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Around all tests of a run. */
export default async function setup(project: TestProject): Promise<() => void> {
  const folder = mkdtempSync(join(tmpdir(), 'escapement-prompts-'));
  await build({
    root,
    configFile: false,
    logLevel: 'error',
    publicDir: false,
    ssr: { noExternal: true },
    build: {
      ssr: true,
      outDir: folder,
      rolldownOptions: { input: ['main', 'sky'].map((name) => join(root, 'src/cli', `${name}.ts`)) },
    },
  });
  writeFileSync(join(folder, 'package.json'), '{"type":"module"}');
  project.provide('prompts', folder);
  return () => rmSync(folder, { recursive: true, force: true });
}
