/** Runs the prompts as they are run: in a process of their own. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { inject } from 'vitest';

export const root = fileURLToPath(new URL('../..', import.meta.url));

/** A prompt, and what Node needs to start it. */
export const command = (prompt: 'main' | 'sky'): string[] => [join(inject('prompts'), `${prompt}.js`)];

/** What a prompt printed and ended with. */
export interface Ran {
  status: number | null;
  stdout: string;
  stderr: string;
}

function run(prompt: 'main' | 'sky', words: readonly string[], input: string): Ran {
  const { status, stdout, stderr } = spawnSync(process.execPath, [...command(prompt), ...words], {
    cwd: root,
    input,
    encoding: 'utf8',
    maxBuffer: 2 ** 28,
  });
  return { status, stdout, stderr };
}

export const runPlan = (words: readonly string[], input = ''): Ran => run('main', words, input);
export const runSky = (words: readonly string[]): Ran => run('sky', words, '');
