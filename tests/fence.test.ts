/** The fence around the engine, and other promises that the repository makes about itself. */
import { spawnSync } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));
const read = (path: string): string => readFileSync(join(root, path), 'utf8');
const run = (words: string[], cwd = root) => {
  const [program = '', ...rest] = words;
  const done = spawnSync(join(root, 'node_modules/.bin', program), rest, { cwd, encoding: 'utf8' });
  return { status: done.status, output: done.stdout + done.stderr };
};

const engineFiles = readdirSync(join(root, 'src/engine'), { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts'))
  .map((file) => `src/engine/${file}`);

/** A source without its comments, where words such as Date.now() may stand. */
const code = (path: string): string => read(path).replace(/\/\*[\s\S]*?\*\/|(?<!:)\/\/.*$/gm, '');

/** What the engine may not know, each with a line that must be caught. */
const FORBIDDEN: readonly [what: string, pattern: RegExp, planted: string][] = [
  ['the clock', /\bDate\.now\b/, 'const t = Date.now();'],
  ['the clock, as a date', /\bnew Date\s*(\(\s*\)|(?!\s*\())/, 'const d = new Date();'],
  ['the clock, as text', /(?<!new )\bDate\s*\(/, 'const s = Date();'],
  ['the clock, through luxon', /\bDateTime\s*\.\s*(now|local|utc)\b/, 'const l = DateTime.local();'],
  ['the zone of the machine', /\bresolvedOptions\b|\bgetTimezoneOffset\b/, 'x.getTimezoneOffset();'],
  ['chance', /\bMath\s*\.\s*random\b/, 'const r = Math.random();'],
];

const PACKAGES = ['luxon', 'suncalc', 'zod/mini'];
const IMPORT = /^(?:import|export|\}).*\bfrom ['"](.+)['"];?$|\bimport\s*\(?\s*['"]([^'"]+)['"]/gm;
const imported = (source: string): string[] =>
  [...source.matchAll(IMPORT)].map(([, from, bare]) => from ?? bare ?? '');

/** Imports of an engine file that lead out of the engine. */
const strays = (path: string, source: string): string[] =>
  imported(source).filter((name) =>
    name.startsWith('.')
      ? !resolve(root, dirname(path), name).startsWith(join(root, 'src/engine/'))
      : !PACKAGES.includes(name),
  );

describe('the sources of the engine', () => {
  test.each(FORBIDDEN)('do not know %s', (_what, pattern, planted) => {
    expect(planted).toMatch(pattern);
    expect(engineFiles.filter((file) => pattern.test(code(file)))).toEqual([]);
  });

  test('import nothing from outside but luxon, suncalc and zod/mini', () => {
    const planted = [
      "import '../../app/main.tsx';",
      "import { x } from 'react';",
      "import { y } from '../plan/parse.ts';",
      "} from '../../cli/options.ts';",
      "await import('node:fs');",
    ].join('\n');
    expect(strays('src/engine/time/planted.ts', planted)).toEqual([
      '../../app/main.tsx',
      'react',
      '../../cli/options.ts',
      'node:fs',
    ]);
    expect(engineFiles.flatMap((file) => strays(file, code(file)))).toEqual([]);
    expect(engineFiles.length).toBeGreaterThan(10);
  });
});

describe('the type check of the engine', () => {
  const globals = ['document', 'localStorage', 'fetch', 'setTimeout', 'performance', 'console', 'process'];
  let copy = '';
  let output = '';

  const plant = (file: string, source: string) => writeFileSync(join(copy, 'src', file), source);
  beforeAll(() => {
    copy = mkdtempSync(join(tmpdir(), 'escapement-types-'));
    for (const file of ['src/tsconfig.base.json', 'src/engine/tsconfig.json']) {
      cpSync(join(root, file), join(copy, file));
    }
    symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'), 'junction');
    mkdirSync(join(copy, 'src/app'));
    plant('app/screen.ts', 'export const screen = 1;\n');
    plant('engine/stray.ts', "export { screen } from '../app/screen.ts';\n");
    plant(
      'engine/clean.ts',
      "import { IANAZone } from 'luxon';\nexport const zone = new IANAZone('Etc/UTC');\n",
    );
    for (const name of globals) plant(`engine/${name}.ts`, `export const planted: unknown = ${name};\n`);
    ({ output } = run([
      'tsc',
      '-p',
      join(copy, 'src/engine'),
      '--outDir',
      join(copy, 'out'),
      '--pretty',
      'false',
    ]));
  }, 60_000);
  afterAll(() => rmSync(copy, { recursive: true, force: true }));

  const errors = (file: string): string =>
    output
      .split('\n')
      .filter((line) => line.includes(`${file}.ts(`))
      .join('\n');

  test('passes what an engine may hold', () => expect(errors('clean')).toBe(''));

  test.each(globals)('refuses %s', (name) => expect(errors(name)).toContain(`'${name}'`));

  test('refuses an import from the screens', () => {
    // The file from outside is named by where it was imported, or by itself.
    expect(output).toMatch(/error TS6059|error TS6307/);
  });
});

describe('the lint of the engine', () => {
  const imports = [
    '../app/store/store.ts',
    '../outputs/csv.ts',
    '../cli/options.ts',
    'react',
    'recharts',
    'node:fs',
  ];
  const globals = ['document', 'window', 'performance', 'console', 'process'];
  let folder = '';
  let output = '';

  const plant = (file: string, source: string) => writeFileSync(join(folder, 'src/engine', file), source);
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'escapement-fence-'));
    mkdirSync(join(folder, 'src/engine'), { recursive: true });
    for (const file of ['biome.json', '.gitignore']) cpSync(join(root, file), join(folder, file));
    for (const [i, name] of imports.entries()) plant(`import${i}.ts`, `export * from '${name}';\n`);
    for (const name of globals) plant(`${name}.ts`, `export const planted: unknown = ${name};\n`);
    plant('clean.ts', "export { parseRate } from './time/ratio.ts';\n");
    ({ output } = run(['biome', 'lint', '--reporter=github', '--max-diagnostics=none', folder], folder));
  }, 60_000);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  /** Rules that were broken in a file. */
  const rules = (file: string): string[] =>
    [...output.matchAll(/title=([\w/]+),file=([^,]+),/g)]
      .filter(([, , path = '']) => basename(path) === file)
      .map(([, rule = '']) => rule.split('/').at(-1) ?? '');

  test.each([...imports.entries()])('refuses import %i, of %s', (i) => {
    expect(rules(`import${i}.ts`)).toContain('noRestrictedImports');
  });

  test.each(globals)('refuses the global %s', (name) => {
    expect(rules(`${name}.ts`)).toContain('noRestrictedGlobals');
  });

  test('passes what an engine may hold', () => expect(rules('clean.ts')).toEqual([]));
});

describe('the documents', () => {
  const documents = ['README.md', 'DEVELOPERS.md'];
  const anchors = (path: string): string[] =>
    [...read(path).matchAll(/^#+ (.+)$/gm)].map(([, heading = '']) =>
      heading
        .toLowerCase()
        .replace(/[^\p{Letter}\p{Number}\- ]/gu, '')
        .replaceAll(' ', '-'),
    );
  const links = documents.flatMap((document) =>
    [...read(document).matchAll(/\[[^\]]*\]\(([^)\s]+)\)/g)].map(([, target = '']) => ({ document, target })),
  );

  test('have links', () => expect(links.length).toBeGreaterThan(3));

  test.each(links.filter(({ target }) => !/^https?:/.test(target)))(
    '$document: $target leads somewhere',
    (link) => {
      const [file = '', anchor] = link.target.split('#');
      const path = file === '' ? link.document : file;
      expect(existsSync(join(root, path)), path).toBe(true);
      if (anchor !== undefined) expect(anchors(path)).toContain(anchor);
    },
  );
});

test('every package has one exact version', () => {
  const { dependencies, devDependencies } = JSON.parse(read('package.json'));
  const loose = Object.entries({ ...dependencies, ...devDependencies }).filter(
    ([, version]) => !/^\d+\.\d+\.\d+$/.test(String(version)),
  );
  expect(loose).toEqual([]);
});
