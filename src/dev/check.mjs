/**
 * `npm test`: every check there is, one stage after another, up to the first that fails.
 * Ends with one line, 'N passed, N failed', over the tests of all stages.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const reports = mkdtempSync(join(tmpdir(), 'escapement-check-'));
const commandPath = [join(root, 'node_modules', '.bin'), process.env.PATH].join(delimiter);

/** A suite runs in a named zone, so that a zone or a calendar taken from the machine shows. */
const suite = (name, zone, ...options) => ({
  name: `${name}, ${zone}`,
  command: ['vitest', 'run', ...options],
  zone,
  counts: true,
});

const STAGES = [
  { name: 'types', command: ['tsc', '-b'] },
  { name: 'lint and format', command: ['biome', 'check'] },
  // Not `npm run build`: that would rewrite the committed schema, which a test is about to judge.
  { name: 'build', command: ['vite', 'build'] },
  { name: 'size of the page', command: ['node', '--import', 'tsx', 'src/dev/sizes.ts'] },
  suite('tests', 'America/Los_Angeles'),
  suite('tests but for random plans', 'Pacific/Kiritimati', '--exclude', '**/property/**'),
  suite('browser', 'America/Los_Angeles', '--config', 'tests/browser/vitest.config.ts'),
];

const totals = { passed: 0, failed: 0 };

function run({ command: [program, ...words], zone, counts }) {
  const report = join(reports, 'report.json');
  rmSync(report, { force: true });
  const reporting = counts ? ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`] : [];
  const done = spawnSync(program, [...words, ...reporting], {
    cwd: root,
    env: { ...process.env, PATH: commandPath, ...(zone ? { TZ: zone } : {}) },
    stdio: ['ignore', 'pipe', 'pipe'],
    encoding: 'utf8',
    maxBuffer: 2 ** 28,
    shell: process.platform === 'win32',
  });
  const output = `${done.stdout ?? ''}${done.stderr ?? ''}${done.error ? `${done.error.message}\n` : ''}`;
  return { ok: done.status === 0, output, tally: counts ? tally(report) : null };
}

/** What a suite counted; nothing if it broke down before it could count. */
function tally(report) {
  try {
    const { numPassedTests: passed, numFailedTests: failed } = JSON.parse(readFileSync(report, 'utf8'));
    totals.passed += passed;
    totals.failed += failed;
    return { passed, failed };
  } catch {
    return null;
  }
}

/** Runs a stage and says how it went; false if it failed. */
function passes(stage) {
  const started = performance.now();
  process.stdout.write(`${stage.name} … `);
  const { ok, output, tally: counted } = run(stage);
  const seconds = `${((performance.now() - started) / 1000).toFixed(1)} s`;
  const tests = counted ? `, ${counted.passed} passed` : '';
  console.log(ok ? `ok, ${seconds}${tests}` : `FAILED, ${seconds}\n\n${output}`);
  // A suite that ran nothing has proved nothing.
  return ok && (!stage.counts || (counted !== null && counted.passed > 0));
}

const failed = STAGES.find((stage) => !passes(stage));
rmSync(reports, { recursive: true, force: true });
if (failed) console.log(`Stopped at: ${failed.name}.`);
console.log(`${totals.passed} passed, ${totals.failed} failed`);
process.exitCode = failed ? 1 : 0;
