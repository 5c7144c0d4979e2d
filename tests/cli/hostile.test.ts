/** A plan that means harm does none at the prompt: nothing that it says reaches the terminal as a command. */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { expect, test, vi } from 'vitest';
import { serialisePlan } from '../../src/engine/plan/serialise.ts';
import { ACTS, HOSTILE, hostileStop } from '../outputs/hostile.ts';
import { planFile } from '../outputs/plans.ts';

vi.setConfig({ testTimeout: 60_000 });

const root = fileURLToPath(new URL('../..', import.meta.url));
const plan = (words: string[], input: string) =>
  spawnSync(process.execPath, ['--import', 'tsx', 'src/cli/main.ts', '-', ...words], {
    cwd: root,
    input,
    encoding: 'utf8',
  });
const text = HOSTILE.find(([what]) => what.startsWith('a terminal'))?.[1] ?? '';

test.each([[], ['--json'], ['--frames'], ['--sheet'], ['--link']])('printed with %s', (...words) => {
  const { stdout, stderr, status } = plan(words, serialisePlan(hostileStop(text)));
  expect(status).toBeLessThan(2);
  expect(stdout.length).toBeGreaterThan(100);
  expect(stdout).not.toMatch(ACTS);
  expect(stderr).not.toMatch(ACTS);
});

test('a fault is one line', () => {
  const { stderr, status } = plan([], JSON.stringify(planFile({ [`a\n\u001b[2J${text}`]: 1 })));
  expect(status).toBe(2);
  expect(stderr).not.toMatch(ACTS);
  expect(stderr.trim().split('\n')).toHaveLength(1);
});
