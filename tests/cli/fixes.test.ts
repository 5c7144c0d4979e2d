/** Fixes and the ladder at the real prompt. */
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test, vi } from 'vitest';
import { withChanges } from '../../src/engine/plan/changes.ts';
import { parsePlan } from '../../src/engine/plan/parse.ts';
import type { Plan } from '../../src/engine/plan/schema.ts';
import { schedule } from '../../src/engine/schedule.ts';
import { planFile } from '../outputs/plans.ts';
import { root, runPlan as run } from './run.ts';

// Each test starts Node a few times, which a busy machine takes seconds for.
vi.setConfig({ testTimeout: 120_000 });

const folder = mkdtempSync(join(tmpdir(), 'escapement-fixes-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Printed {
  findings: { id: string; fixes: { n: number; changes: never[] }[]; whyNone: string | null }[];
}

function read(text: string): Plan {
  const parsed = parsePlan(text);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return parsed.plan;
}

const text = (fields: object): string => JSON.stringify(planFile(fields));
const tooFast = text({ pacing: { workedOut: 'event', intervalS: 1 }, camera: { writeS: 5 } });
const fine = text({ title: 'Dough', pacing: { workedOut: 'interval', eventS: 2400, clipLengthS: 12 } });

describe('--fixes and --apply', () => {
  test('print findings with fixes, and the plan file with one of them made', () => {
    const { status, stdout } = run(['-', '--fixes'], tooFast);
    expect(status).toBe(1);
    const { findings }: Printed = JSON.parse(stdout);
    const [finding] = findings;
    expect(finding?.id).toBe('camera-not-ready');
    const fix = finding?.fixes.at(-1);
    if (!fix) throw new Error('no fix');
    const made = run(['-', '--apply', `camera-not-ready:${fix.n}`], tooFast);
    expect([made.status, made.stderr]).toEqual([0, '']);
    const fixed = read(made.stdout);
    expect(fixed).toEqual(withChanges(read(tooFast), fix.changes));
    expect(schedule(fixed).findings.map(({ id }) => id)).not.toContain('camera-not-ready');
  });

  test('end with 1 where the plan that is printed cannot be shot', () => {
    // Ten thousand frames on one small card, too: the write is mended, the card is not.
    const plan = text({
      pacing: { workedOut: 'event', intervalS: 1, clipLengthS: 400 },
      camera: { writeS: 5 },
      storage: { cards: [{ name: 'Small', cardBytes: 1_000_000_000 }] },
    });
    const { status, stdout } = run(['-', '--apply', 'camera-not-ready:1'], plan);
    expect(schedule(read(stdout)).counts.stop).toBeGreaterThan(0);
    expect(status).toBe(1);
  });

  test('write the outputs of the plan with the fix', () => {
    const { status } = run(['-', '--apply', 'camera-not-ready:1', '--out', folder], tooFast);
    expect(status).toBe(0);
    const written = readdirSync(folder).find((name) => name.endsWith('.plan.json'));
    expect(written).toBeDefined();
    const file = readFileSync(join(folder, written ?? ''), 'utf8');
    expect(schedule(read(file)).counts.stop).toBe(0);
  });

  test('say which findings there are if one is asked for that is not', () => {
    const { status, stdout, stderr } = run(['-', '--apply', 'tips-over:1'], tooFast);
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr).toMatch(/^--apply: found the finding 'tips-over'; allowed: camera-not-ready/);
    expect(run(['-', '--apply', 'tips-over:1'], fine).stderr).toMatch(
      "--apply: found the finding 'tips-over'; allowed: nothing, since the plan has no findings",
    );
  });

  test('say how many fixes there are if one is asked for that is not', () => {
    const { status, stdout, stderr } = run(['-', '--apply', 'camera-not-ready:9'], tooFast);
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr).toMatch(/^--apply: found fix 9 of camera-not-ready; allowed: 1 to [1-3]\n/);
  });

  test('take an id with what it is about', () => {
    const plan = text({
      power: { sources: [{ name: 'A: b', energyWh: 0.1 }], loads: [{ name: 'L', source: 'A: b', idleW: 9 }] },
    });
    for (const id of ['source-short', 'source-short:A: b'])
      expect(run(['-', '--apply', `${id}:1`], plan).status).toBe(0);
  });
});

describe('--ladder', () => {
  test('prints a line a setting, the present one marked', () => {
    const { status, stdout } = run(['-', '--ladder'], fine);
    expect(status).toBe(0);
    const lines = stdout.trimEnd().split('\n');
    expect(lines).toHaveLength(14);
    expect(lines.filter((line) => line.startsWith('>'))).toHaveLength(1);
    expect(lines.find((line) => line.startsWith('>'))).toMatch(/^> +8 s +301 /);
  });

  test('ends with 1 if the plan cannot be shot', () => {
    expect(run(['-', '--ladder'], tooFast).status).toBe(1);
  });
});

describe.each(readdirSync(join(root, 'public/examples')))('the demo %s', (name) => {
  const file = join(root, 'public/examples', name);

  test('prints its fixes and its ladder, and each finding’s first fix can be made', () => {
    expect(existsSync(file)).toBe(true);
    expect(run([file, '--ladder']).status).toBe(0);
    const { status, stdout } = run([file, '--fixes']);
    expect(status).toBe(0);
    const { findings }: Printed = JSON.parse(stdout);
    for (const { id, fixes, whyNone } of findings) {
      expect(whyNone === null, id).toBe(fixes.length > 0);
      if (fixes.length === 0) continue;
      const made = run([file, '--apply', `${id}:1`]);
      expect(made.status, id).toBe(0);
      expect(schedule(read(made.stdout)).findings.map((finding) => finding.id)).not.toContain(id);
    }
  });
});
