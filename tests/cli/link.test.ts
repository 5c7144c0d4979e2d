/** The prompt prints a link, and reads one. */
import { expect, test, vi } from 'vitest';
import { planFile } from '../outputs/plans.ts';
import { runPlan as plan } from './run.ts';

// Each run starts Node, which a busy machine takes seconds for.
vi.setConfig({ testTimeout: 60_000 });

const dough = JSON.stringify(
  planFile({ title: 'Dough', pacing: { workedOut: 'interval', eventS: 2400, clipLengthS: 12 } }),
);

test('a link goes out and comes in again, as a word or as a text', () => {
  const made = plan(['-', '--link', '--page', 'https://example.org/rig/'], dough);
  expect(made.stderr).toBe('');
  expect(made.stdout).toMatch(/^https:\/\/example\.org\/rig\/#p1\.[\w-]+\n$/);
  // Worked by hand: 12 s x 25 fps = 300 frames; 2400 s / 299 = 8.03 s, dialled down to 8 s; 2400 / 8 + 1 = 301.
  expect(plan([made.stdout.trim()]).stdout).toContain('301 frames');
  expect(plan(['-'], made.stdout).stdout).toContain('301 frames');
});

test('a link at fault is named', () => {
  const { status, stderr } = plan(['#p1.AAAA']);
  expect(stderr).toMatch(/^link: found a piece that is damaged or cut off; allowed: the whole link/);
  expect(status).toBe(2);
});
