/** Whatever a plan says, every output holds it as text, and its files have names that any system takes. */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { csvParseRows } from 'd3-dsv';
import { afterAll, describe, expect, test, vi } from 'vitest';
import { workedOut, writeOutputs } from '../../src/cli/write-outputs.ts';
import { parsePlan, readPlan } from '../../src/engine/plan/parse.ts';
import type { Plan } from '../../src/engine/plan/schema.ts';
import { schedule } from '../../src/engine/schedule.ts';
import { cleanText } from '../../src/outputs/clean.ts';
import { ACTS, HOSTILE, hostileLapse, hostileStop } from './hostile.ts';
import { planFile } from './plans.ts';

vi.setConfig({ testTimeout: 60_000 });

const folder = mkdtempSync(join(tmpdir(), 'escapement-hostile-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

let runs = 0;

/** Every output of a plan, by the ending of its file. */
async function outputsOf(plan: Plan): Promise<{ name: string; text: string }[]> {
  runs += 1;
  const into = join(folder, String(runs));
  for await (const said of writeOutputs(into, workedOut(plan, schedule(plan))))
    expect(said).not.toMatch(ACTS);
  return readdirSync(into).map((name) => ({ name, text: readFileSync(join(into, name), 'utf8') }));
}

const MADE = [
  ['a time-lapse', hostileLapse],
  ['stop-motion', hostileStop],
] as const;

/** What a spreadsheet works out: OWASP, CSV Injection (from memory), whatever unseen stands before it. */
const FORMULA = /^[\s\p{Cf}\p{Cc}]*[=+\-@＝＋－＠]/u;
const NUMBER = /^-?\d+(\.\d+)?$/;

describe.each(MADE)('%s', (_, make) => {
  describe.each(HOSTILE)('of %s', (_what, text) => {
    test('is written as text', async () => {
      const outputs = await outputsOf(make(text));
      expect(outputs.length).toBeGreaterThan(3);
      for (const { name, text: written } of outputs) {
        // Letters and digits of any script, points and hyphens; ext4, APFS and NTFS take 255 bytes or units.
        expect(name).toMatch(/^[\p{L}\p{M}\p{N}]+([.-][\p{L}\p{M}\p{N}]+)+$/u);
        expect(Buffer.byteLength(name)).toBeLessThan(256);
        expect(name).not.toMatch(/^(con|prn|aux|nul|com[\d¹²³]|lpt[\d¹²³])\./i);
        if (name.endsWith('.plan.json')) {
          expect(parsePlan(written)).toEqual({ ok: true, plan: make(text) });
          continue;
        }
        expect(written, name).not.toMatch(ACTS);
        if (name.endsWith('.json')) expect(JSON.parse(written).title).toBe(text);
        if (name.endsWith('.csv')) {
          const cells = csvParseRows(written).flat();
          expect(cells.filter((cell) => FORMULA.test(cell) && !NUMBER.test(cell))).toEqual([]);
        }
        if (name.endsWith('.txt'))
          expect(Math.max(...written.split('\n').map((line) => line.length))).toBeLessThanOrEqual(100);
      }
    });
  });
});

test('what is said is still there', async () => {
  const text = '<b>"7"</b>, then';
  const sheet = (await outputsOf(hostileStop(text))).find(({ name }) => name.endsWith('.sheet.csv'));
  const cells = csvParseRows(sheet?.text ?? '').flat();
  expect(cells).toContain(text);
  const frames = (await outputsOf(hostileLapse('a\u001bb'))).find(({ name }) => name.endsWith('.frames.csv'));
  expect(csvParseRows(frames?.text ?? '')[0]).toContain('a\ufffdb.steps');
});

test('letters of every script and what they are joined with stay', () => {
  const text = 'Grüße, 夕暮れ, हिन्दी, עברית \u200f, 👩‍🎨 🎞️\tx\r\ny';
  expect(cleanText(text)).toBe(text);
});

describe('faults of a file that means harm', () => {
  const longKey = 'k'.repeat(1_000_000);

  test('are short, however long its names are', () => {
    const read = readPlan(planFile({ [longKey]: 1, title: longKey }));
    if (read.ok) throw new Error('read as a plan');
    expect(read.faults).toHaveLength(2);
    expect(Math.max(...read.faults.map(({ path, found }) => path.length + found.length))).toBeLessThan(200);
  });

  test('are few, however many there are', () => {
    const many = Object.fromEntries(Array.from({ length: 100_000 }, (_, n) => [`k${n}`, 1]));
    const read = readPlan(planFile(many));
    if (read.ok) throw new Error('read as a plan');
    expect(read.faults).toHaveLength(201);
    expect(read.faults.at(-1)).toMatchObject({ found: '99800 more faults' });
  });
});
