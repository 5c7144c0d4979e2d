/** A plan that means harm does none at the prompt: nothing that it says reaches the terminal as a command. */
import { expect, test, vi } from 'vitest';
import { serialisePlan } from '../../src/engine/plan/serialise.ts';
import { ACTS, HOSTILE, hostileStop } from '../outputs/hostile.ts';
import { planFile } from '../outputs/plans.ts';
import { runPlan } from './run.ts';

vi.setConfig({ testTimeout: 60_000 });

const plan = (words: string[], input: string) => runPlan(['-', ...words], input);
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
