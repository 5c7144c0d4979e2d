/** The real command, on plans made here. */
import { spawn, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { evaluate } from 'mathjs';
import { afterAll, describe, expect, test, vi } from 'vitest';
import { readPlan } from '../../src/engine/plan/parse.ts';
import { BARE, production, shotOf } from '../engine/sheet/plans.ts';
import { planFile } from '../outputs/plans.ts';
import { command, root, runPlan as run } from './run.ts';

// Each test starts Node once or twice, which a busy machine takes seconds for.
vi.setConfig({ testTimeout: 60_000 });

const folder = mkdtempSync(join(tmpdir(), 'escapement-prompt-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Writes a plan file and gives its path. */
function saved(name: string, fields: object): string {
  const path = join(folder, name);
  writeFileSync(path, JSON.stringify(planFile(fields)));
  return path;
}

// Worked by hand: 12 s x 25 fps = 300 frames; 2400 s / 299 = 8.03 s, dialled down to 8 s; 2400 / 8 + 1 = 301.
const dough = saved('dough.json', {
  title: 'Dough: rising!',
  pacing: { workedOut: 'interval', eventS: 2400, clipLengthS: 12 },
});
const tooFast = saved('too-fast.json', {
  pacing: { workedOut: 'event', intervalS: 1 },
  camera: { writeS: 5 },
});

// 100 frames on twos: 50 exposures.
const puppet = saved('puppet.json', {
  technique: 'stopMotion',
  place: { latitudeDeg: 48.86, longitudeDeg: 2.35, zone: 'Europe/Paris' },
  sheet: { shots: [{ name: 'One', actions: [{ frames: 100, holds: [2] }] }] },
});

describe('what is printed', () => {
  test('is a summary if nothing else is asked for', () => {
    const { status, stdout, stderr } = run([dough]);
    expect(stdout).toMatch(/^Dough: rising!\nShootable\./);
    expect(stderr).toBe('');
    expect(status).toBe(0);
  });

  test('is one JSON object with --json', () => {
    const { status, stdout } = run(['--json', dough]);
    const { totals, ...others } = JSON.parse(stdout);
    expect(totals).toMatchObject({
      frames: 301,
      intervalS: 8,
      dialS: 8,
      eventDurationS: 2400,
      clipLengthS: 301 / 25,
      firstFrameAt: '2026-06-21T12:00:00+00:00',
      lastFrameAt: '2026-06-21T12:40:00+00:00',
      storageBytes: 301 * 42_000_000,
    });
    expect(Object.keys(others)).toEqual(
      expect.arrayContaining(['sources', 'cards', 'events', 'findings', 'margins']),
    );
    expect(status).toBe(0);
  });

  test('is the table of frames with --frames', () => {
    const { status, stdout } = run([dough, '--frames']);
    const records = stdout.split('\r\n');
    expect(records[0]).toMatch(/^frame,clock,elapsedS,/);
    expect(records[301]).toMatch(/^301,2026-06-21T12:40:00\+00:00,2400,/);
    expect(records.slice(302)).toEqual(['']);
    expect(status).toBe(0);
  });
});

describe('--working', () => {
  // Worked by hand: 2400 s / 299 = 8.0268 s, of which the dial has 8.
  test('prints how a figure came about, and it can be worked out from what is printed', () => {
    const { status, stdout, stderr } = run([dough, '--working', 'totals.intervalS']);
    expect(stdout).toMatch(/^totals\.intervalS: Interval\n/);
    expect(stdout).toContain('= 8 s');
    const [, formula = ''] = /in plain arithmetic: (.+)/.exec(stdout) ?? [];
    const numbers = [...stdout.matchAll(/^ {4}(\w+) = ([^\s:]+)/gm)].map(([, name, number]) => [
      name,
      Number(number),
    ]);
    expect(evaluate(formula, Object.fromEntries(numbers))).toBe(8);
    expect(stderr).toBe('');
    expect(status).toBe(0);
  });

  test('prints the figures of a sheet, and of any date and year', () => {
    const { stdout, status } = run([puppet, '--working', 'sheet.exposures']);
    expect(stdout).toContain('= 50 exposures');
    expect(status).toBe(0);
    const sunset = run([puppet, '--working', 'days.2026-06-21.sunset']);
    expect(sunset.stdout).toMatch(/^days\.2026-06-21\.sunset: Sunset\n/);
    expect(sunset.stdout).toMatch(/ {2}2026-06-21T21:\d\d:[\d.]+\+02:00, by UTC 2026-06-21T19:/);
    const wrong = run([puppet, '--working', 'sky.sunsets']);
    expect(wrong.stderr).toMatch(/allowed, nearest first:\n {2}sky\.sunset\n/);
    expect(wrong.status).toBe(2);
  });

  test('prints all that a finding of the sheet states', () => {
    const short = JSON.stringify(
      production({ ...BARE, shots: [shotOf({ frames: 4 }, { frames: 25 }, { frames: 7 })] }),
    );
    const { stdout, status } = run(['-', '--working', 'sheet.findings.last-short'], short);
    expect(stdout).toMatch(/^The action at exposure 3 has 25\u00A0frames, .* and 1\u00A0action more\.\n\n/);
    expect([...stdout.matchAll(/^(sheet\S+):/gm)].map(([, figure]) => figure)).toEqual([
      'sheet.findings.last-short.actionExposure',
      'sheet.action.2.frames',
      'sheet.findings.last-short.more',
    ]);
    expect(status).toBe(0);
    expect(run(['-', '--working', 'sheet.findings.card-full'], short).status).toBe(2);
  });

  test('prints all of them', () => {
    const { stdout } = run([dough, '--working', 'all']);
    for (const name of ['totals.frames', 'sources.', 'margins.interval.left', 'frame.301.cameraS'])
      expect(stdout.split('\n').some((line) => line.startsWith(name))).toBe(true);
  });

  test('says which figures there are, nearest first, if there is none of that name', () => {
    const { status, stdout, stderr } = run([dough, '--working', 'totals.interval']);
    expect(stderr).toMatch(
      /^--working: found 'totals\.interval'; allowed, nearest first:\n {2}totals\.intervalS\n/,
    );
    expect(stdout).toBe('');
    expect(status).toBe(2);
  });
});

describe('a plan', () => {
  test('comes from standard input with -', () => {
    const { status, stdout } = run(['-', '--json'], readFileSync(dough, 'utf8'));
    expect(JSON.parse(stdout).totals.frames).toBe(301);
    expect(status).toBe(0);
  });

  test('that cannot be shot ends with 1, whatever is printed', () => {
    const { status, stdout } = run([tooFast]);
    expect(stdout).toMatch(/^Not shootable/m);
    expect(status).toBe(1);
    expect(run([tooFast, '--frames']).status).toBe(1);
  });
});

describe('a file at fault ends with 2 and says each fault on a line of standard error', () => {
  const FAULT = /^\S+: found .+; allowed: .+$/;

  test('fields out of range', () => {
    const path = saved('bad.json', {
      cycle: { guardS: -1 },
      rig: { axes: [{ name: 'A', maxSpeed: 'fast' }] },
    });
    const { status, stdout, stderr } = run([path]);
    const lines = stderr.trimEnd().split('\n');
    expect(lines).toHaveLength(2);
    for (const line of lines) expect(line).toMatch(FAULT);
    expect(stderr).toContain('cycle.guardS: found -1; allowed: a number from 0 to 3600 (s)');
    expect(stderr).toContain('rig.axes[0].maxSpeed: found "fast"');
    expect(stdout).toBe('');
    expect(status).toBe(2);
  });

  test('text that is no plan', () => {
    const { status, stdout, stderr } = run(['-'], 'frames: 12');
    expect(stderr.trimEnd()).toMatch(FAULT);
    expect(stdout).toBe('');
    expect(status).toBe(2);
  });

  test('a file that is not there', () => {
    const { status, stderr } = run([join(folder, 'missing.json')]);
    expect(stderr).toMatch(/missing\.json cannot be read/);
    expect(status).toBe(2);
  });
});

describe('what one takes along', () => {
  test('is printed by its options', () => {
    expect(run([dough, '--run-sheet']).stdout).toMatch(/^Dough: rising!\n[\s\S]*\nBring\n[\s\S]*\nClock\n/);
    expect(run([dough, '--positions']).stdout).toMatch(/^frame,clock,elapsedS,intervalS\r\n1,2026-06-21T12/);
    expect(run([dough, '--rs274']).stdout).toMatch(/^\(Escapement: [\s\S]*\r\nM2\r\n$/);
  });

  test('the calendar is stamped with the present', () => {
    const before = Date.now();
    const { stdout } = run([dough, '--calendar']);
    const [, stamp = ''] = /DTSTAMP:(\d{8}T\d{6}Z)/.exec(stdout) ?? [];
    const ms = Date.parse(stamp.replace(/(\d{4})(\d\d)(\d\dT\d\d)(\d\d)(\d\dZ)/, '$1-$2-$3:$4:$5'));
    expect(ms).toBeGreaterThan(before - 1000);
    expect(ms).toBeLessThanOrEqual(Date.now());
  });

  test('a rig of more axes than there are letters has no part program, and no file of one', () => {
    const axes = ['N1', 'N2', 'N3', 'N4'].map((name) => ({ name }));
    const four = saved('four.json', { title: 'Four', rig: { axes } });
    const { status, stdout, stderr } = run([four, '--rs274']);
    expect(stderr).toMatch(/^rig\.axes\[3\]\.word: found "auto".*; allowed: three lengths at most/);
    expect(stdout).toBe('');
    expect(status).toBe(2);
    const out = join(folder, 'four');
    expect(run([four, '--out', out]).status).toBe(0);
    expect(readdirSync(out)).not.toContain('four.program.ngc');
  });
});

test('options that cannot be followed end with 2', () => {
  const { status, stdout, stderr } = run(['--colour', dough]);
  expect(stderr).toMatch(/--colour/);
  expect(stdout).toBe('');
  expect(status).toBe(2);
});

describe('--out', () => {
  test('writes every output into a new folder and says so on standard error', () => {
    const out = join(folder, 'new', 'out');
    const { status, stdout, stderr } = run([dough, '--json', '--out', out]);
    const ends = [
      'calendar.ics',
      'frames.csv',
      'plan.json',
      'positions.csv',
      'program.ngc',
      'run-sheet.txt',
      'schedule.json',
      'summary.txt',
    ];
    const names = ends.map((end) => `dough-rising.${end}`);
    expect(readdirSync(out).sort()).toEqual(names);
    for (const name of names) expect(stderr).toContain(`wrote ${join(out, name)}`);
    expect(readFileSync(join(out, 'dough-rising.schedule.json'), 'utf8')).toBe(stdout);
    expect(readPlan(JSON.parse(readFileSync(join(out, 'dough-rising.plan.json'), 'utf8'))).ok).toBe(true);
    expect(run([dough, '--out', out]).stderr).toContain('replaced ');
    expect(status).toBe(0);
  });

  test('into what is no folder ends with 2', () => {
    const { status, stderr } = run([dough, '--out', dough]);
    expect(stderr).toMatch(/cannot be written to/);
    expect(status).toBe(2);
  });
});

test('a reader that has seen enough is no error', async () => {
  const long = saved('long.json', {
    pacing: { workedOut: 'event', intervalS: 2, clipLengthS: 4000 },
    camera: { frameBytes: 1000 },
    power: { sources: [], loads: [] },
  });
  const reading = spawn(process.execPath, [...command('main'), long, '--frames'], { cwd: root });
  let stderr = '';
  reading.stderr.on('data', (piece) => {
    stderr += piece;
  });
  reading.stdout.once('data', () => reading.stdout.destroy());
  const status = await new Promise((resolve) => reading.once('close', resolve));
  expect(stderr).toBe('');
  expect(status).toBe(0);
});

test('through npm: a path is meant from where one stands, and standard output is clean', () => {
  const inside = join(folder, 'inside');
  mkdirSync(inside);
  const { npm_config_prefix: _prefix, INIT_CWD: _from, ...env } = process.env;
  const { status, stdout } = spawnSync(
    'npm',
    ['--prefix', root, 'run', '-s', 'plan', '--', '../dough.json', '--json'],
    {
      cwd: inside,
      env,
      encoding: 'utf8',
      shell: process.platform === 'win32',
    },
  );
  expect(JSON.parse(stdout).totals.frames).toBe(301);
  expect(status).toBe(0);
});
