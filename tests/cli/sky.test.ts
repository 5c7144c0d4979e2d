/** The sky prompt: the options by themselves, then the real command. */
import { spawnSync } from 'node:child_process';
import { describe, expect, test, vi } from 'vitest';
import { OptionError } from '../../src/cli/options.ts';
import { readSkyOptions } from '../../src/cli/sky-options.ts';
import { faultSentence } from '../../src/engine/plan/faults.ts';
import { root, runSky as run } from './run.ts';

// Each test of the command starts Node, which a busy machine takes seconds for.
vi.setConfig({ testTimeout: 60_000 });

const LONDON = ['--lat', '51.5074', '--lon', '-0.1278', '--zone', 'Europe/London', '--date', '2026-06-21'];

const faults = (words: string[]) => {
  const read = readSkyOptions(words);
  return Array.isArray(read) ? read.map(faultSentence) : [];
};

/** The options for London, one of them another. */
const but = (option: string, value: string) => {
  const words = [...LONDON, '--at', '2026-06-21T12:00Z'];
  words.splice(words.indexOf(option) + 1, 1, value);
  return words;
};

describe('the options', () => {
  test('negative numbers stand behind a space or an equals sign', () => {
    const wanted = {
      latitudeDeg: -33.5,
      longitudeDeg: -0.1,
      zone: 'Etc/UTC',
      date: '2026-01-01',
      atMs: null,
      json: true,
    };
    const rest = ['--zone', 'Etc/UTC', '--date', '2026-01-01', '--json'];
    expect(readSkyOptions(['--lat', '-33.5', '--lon', '-.1', ...rest])).toEqual(wanted);
    expect(readSkyOptions(['--lat=-33.5', '--lon=-.1', ...rest])).toEqual(wanted);
  });

  test.each([
    ['2026-06-21T12:00:00+01:00', Date.UTC(2026, 5, 21, 11)],
    ['2026-06-21T12:00Z', Date.UTC(2026, 5, 21, 12)],
    ['2026-06-21T12:00:00.250-09:30', Date.UTC(2026, 5, 21, 21, 30, 0, 250)],
  ])('--at %s', (at, ms) => expect(readSkyOptions([...LONDON, '--at', at])).toMatchObject({ atMs: ms }));

  test.each([
    ['--lat', '91', '--lat: found 91; allowed: a number from -90 to 90 (°)'],
    ['--lat', '-90.5', '--lat: found -90.5; allowed: a number from -90 to 90 (°)'],
    ['--lon', 'east', '--lon: found "east"; allowed: a number from -180 to 180 (°)'],
    ['--lon', '', '--lon: found ""; allowed: a number from -180 to 180 (°)'],
    ['--lon', 'Infinity', '--lon: found Infinity; allowed: a number from -180 to 180 (°)'],
    ['--zone', 'Mars/Base', '--zone: found "Mars/Base"; allowed: an IANA zone name that this machine knows'],
    ['--date', '2026-02-30', '--date: found "2026-02-30"; allowed: a day of the calendar'],
    ['--date', '21.6.2026', '--date: found "21.6.2026"; allowed: a date such as'],
    ['--at', '2026-06-21T12:00', '--at: found "2026-06-21T12:00"; allowed: an instant such as'],
    ['--at', '2026-02-30T12:00Z', '--at: found "2026-02-30T12:00Z"; allowed: an instant such as'],
    ['--at', '2026-06-21T24:10Z', '--at: found "2026-06-21T24:10Z"; allowed: an instant such as'],
  ])('%s %s is a fault', (option, value, sentence) => {
    const all = faults(but(option, value));
    expect(all).toHaveLength(1);
    expect(all[0]).toContain(sentence);
  });

  test('every option that is missing is named', () => {
    expect(faults([]).map((line) => line.split(';')[0])).toEqual([
      '--lat: found nothing',
      '--lon: found nothing',
      '--zone: found nothing',
      '--date: found nothing',
    ]);
  });

  test.each([[['--colour', ...LONDON]], [['here', ...LONDON]], [[...LONDON, '--at']]])(
    '%j cannot be followed',
    (words) => expect(() => readSkyOptions(words)).toThrow(OptionError),
  );
});

describe('the command', () => {
  // London, midsummer: SPA and ephem agree on these UTC times within a second; no astronomical night (computed).
  const UTC: Readonly<Record<string, string>> = {
    nauticalDawn: '01:40:40',
    civilDawn: '02:55:19',
    sunrise: '03:43:05',
    sunset: '20:21:33',
    civilDusk: '21:09:19',
    nauticalDusk: '22:23:58',
  };

  test('prints events and position as one JSON object', () => {
    const { status, stdout, stderr } = run([...LONDON, '--json', '--at', '2026-06-21T13:02:00+01:00']);
    const sky = JSON.parse(stdout);
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(sky.events.map(({ name }: { name: string }) => name)).toEqual([
      'nauticalDawn',
      'civilDawn',
      'sunrise',
      'solarNoon',
      'sunset',
      'civilDusk',
      'nauticalDusk',
      'astronomicalDawn',
      'astronomicalDusk',
    ]);
    for (const { name, at, noEvent } of sky.events) {
      if (name.startsWith('astronomical'))
        expect({ at, noEvent }).toEqual({ at: null, noEvent: 'above all day' });
      else expect(at).toMatch(/^2026-06-21T\d\d:\d\d:\d\d\+01:00$/);
      const want = UTC[name];
      if (want) expect(Math.abs(Date.parse(at) - Date.parse(`2026-06-21T${want}Z`))).toBeLessThan(15_000);
    }
    // At noon the sun stands 61.929 deg high in the south.
    expect(sky.sun.geometricAltitudeDeg).toBeCloseTo(61.929, 2);
    expect(sky.sun.apparentAltitudeDeg - sky.sun.geometricAltitudeDeg).toBeCloseTo(0.009, 3);
    expect(Math.abs(sky.sun.azimuthDeg - 180)).toBeLessThan(1);
    expect(sky.moon.map(({ name }: { name: string }) => name).sort()).toEqual(['moonrise', 'moonset']);
  });

  test('prints a table without --json', () => {
    const { status, stdout } = run(LONDON);
    expect(status).toBe(0);
    expect(stdout).toMatch(/^sunset +2026-06-21T21:21:\d\d\+01:00$/m);
    expect(stdout).toMatch(/^astronomicalDusk +none \(above all day\)$/m);
    expect(stdout).not.toContain('Sun at');
  });

  test('says every fault on a line of standard error, and ends with 2', () => {
    const { status, stdout, stderr } = run([
      '--lat',
      '91',
      '--lon',
      '0',
      '--zone',
      'Mars/Base',
      '--date',
      '2026-02-30',
    ]);
    const lines = stderr.trimEnd().split('\n');
    expect(lines).toHaveLength(3);
    for (const line of lines) expect(line).toMatch(/^--\w+: found .+; allowed: .+$/);
    expect(stdout).toBe('');
    expect(status).toBe(2);
  });

  test('says what it is for with --help', () => {
    const { status, stdout } = run(['--help']);
    expect(stdout).toMatch(/^Usage: npm run -s sky/);
    expect(status).toBe(0);
  });

  test('is started by npm', () => {
    const { status, stdout } = spawnSync('npm', ['run', '-s', 'sky', '--', '--help'], {
      cwd: root,
      encoding: 'utf8',
      shell: process.platform === 'win32',
    });
    expect(stdout).toMatch(/^Usage: npm run -s sky/);
    expect(status).toBe(0);
  });
});
