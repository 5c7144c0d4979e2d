/** Links that carry a plan: made, read, and refused. */
import { readdirSync, readFileSync } from 'node:fs';
import { inflateSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { defaultPlan, parsePlan } from '../../src/engine/plan/parse.ts';
import type { Plan } from '../../src/engine/plan/schema.ts';
import { serialisePlan } from '../../src/engine/plan/serialise.ts';
import { packed } from '../../src/outputs/deflate.ts';
import { isPlanLink, LONGEST_FRAGMENT, planFragment, readLink } from '../../src/outputs/share-link.ts';
import { litPlans, plans, rigPlans } from '../property/plans.ts';
import { PATIENCE_MS, settings } from '../property/settings.ts';
import { planFile, planOf } from './plans.ts';

vi.setConfig({ testTimeout: PATIENCE_MS });

const DEMOS = new URL('../../public/examples/', import.meta.url);
const LINKS = new URL('links/', import.meta.url);

function read(file: URL): Plan {
  const parsed = parsePlan(readFileSync(file, 'utf8'));
  if (!parsed.ok) throw new Error(`${file}: ${JSON.stringify(parsed.faults)}`);
  return parsed.plan;
}

/** The plan that comes out of a link again. */
async function back(link: string): Promise<Plan> {
  const parsed = await readLink(link);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return parsed.plan;
}

/** A plan as it is after it was a file: -0 is 0. */
const filed = (plan: Plan): Plan => JSON.parse(serialisePlan(plan));

/** The only fault of a link. */
async function faultOf(link: string) {
  const parsed = await readLink(link);
  if (parsed.ok) throw new Error('read as a plan');
  return parsed.faults[0];
}

const linkOf = async (file: unknown): Promise<string> =>
  `#p1.${await packed(typeof file === 'string' ? file : JSON.stringify(file))}`;

describe('a plan goes into a link and comes out again', () => {
  test.each(readdirSync(DEMOS))('%s', async (name) => {
    const plan = read(new URL(name, DEMOS));
    const fragment = await planFragment(plan);
    expect(fragment).toMatch(/^#p1\.[\w-]+$/);
    expect(await back(fragment)).toEqual(filed(plan));
    expect(await back(`https://example.org/rig/?x=1${fragment}\n`)).toEqual(filed(plan));
  });

  test.each([
    ['plans', plans.map(({ plan }) => plan)],
    ['plans with a rig', rigPlans.map(({ plan }) => plan)],
    ['plans under a sky', litPlans],
  ])('random %s', async (_, drawn) => {
    await fc.assert(
      fc.asyncProperty(drawn, async (plan) => {
        expect(await back(await planFragment(plan))).toEqual(filed(plan));
      }),
      settings(),
    );
  });

  test('without what the defaults say', async () => {
    expect((await planFragment(defaultPlan())).length).toBeLessThan(80);
    const titled = (await planFragment(planOf({ title: 'Dough' }))).length;
    expect(titled).toBeLessThan(100);
    // A demo with a boom, a pan, a sky and a ramp; the code of such a link is still read from a screen.
    expect((await planFragment(read(new URL('harbour-at-dusk.json', DEMOS)))).length).toBeLessThan(2000);
  });
});

// Node's own zlib and base64url; the page uses the streams of the Compression Standard.
test('another reader of zlib reads it', async () => {
  const fragment = await planFragment(planOf({ title: 'Dough' }));
  const text = inflateSync(Buffer.from(fragment.slice('#p1.'.length), 'base64url')).toString('utf8');
  expect(JSON.parse(text)).toEqual(planFile({ title: 'Dough' }));
});

// Links that people have do not change with the program. If one of these fails, a default has changed: that is a
// migration, which puts the old value into files and links of before.
describe('a link that was made before', () => {
  test.each(readdirSync(LINKS))('%s holds the same plan as then', async (name) => {
    const [link = '', then = ''] = readFileSync(new URL(name, LINKS), 'utf8').split('\n');
    expect(await back(link)).toMatchObject(JSON.parse(then));
  });
});

describe('a link at fault is named', () => {
  test('of no plan', async () => {
    expect(isPlanLink('#days')).toBe(false);
    expect(isPlanLink('{"notes":"#p1.abc"}')).toBe(false);
    expect(isPlanLink(' https://example.org/#p1.abc\n')).toBe(true);
    expect(await faultOf('#days')).toMatchObject({ path: 'link', found: 'no plan' });
  });

  test('too long, before it is decoded', async () => {
    const found = await faultOf(`#p1.${'!'.repeat(LONGEST_FRAGMENT)}`);
    expect(found).toEqual({ path: 'link', found: '64004 characters', allowed: 'at most 64000 characters' });
  });

  test('of another version', async () => {
    expect(isPlanLink('#p2.abc')).toBe(true);
    expect((await faultOf('#p2.abc'))?.found).toBe('a link of version 2');
  });

  test('with foreign characters', async () => {
    expect((await faultOf('#p1.ab%3C'))?.found).toBe('"%" at character 3');
    expect((await faultOf('#p1.abcé'))?.found).toBe('"é" at character 4');
  });

  test('cut off anywhere, and with a character changed', async () => {
    const fields = { title: 'Dough', pacing: { eventS: 4321 } };
    const whole = await planFragment(planOf(fields));
    for (let length = '#p1.'.length; length < whole.length; length += 1)
      expect((await faultOf(whole.slice(0, length)))?.path, `cut to ${length}`).toBe('link');
    let refused = 0;
    for (let at = '#p1.'.length; at < whole.length; at += 1) {
      const other = whole[at] === 'A' ? 'B' : 'A';
      const parsed = await readLink(whole.slice(0, at) + other + whole.slice(at + 1));
      if (parsed.ok) expect(parsed.plan, `changed at ${at}`).toEqual(planOf(fields));
      else refused += 1;
    }
    // The last bits of the stream and of base64 may stand for nothing.
    expect(refused).toBeGreaterThan(whole.length - 8);
  });

  test('that would fill the memory: it is given up in time', async () => {
    // 40 million characters in 40 kilobytes: ten times the most a plan may have.
    const bomb = await linkOf(`{"notes":"${'a'.repeat(40_000_000)}"}`);
    expect(bomb.length).toBeLessThan(LONGEST_FRAGMENT);
    expect((await faultOf(bomb))?.found).toBe('more than 4000000 characters of plan');
  });

  test('and little more is inflated than a plan may have', async () => {
    let inflated = 0;
    const Inflater = DecompressionStream;
    const counted = class {
      readonly readable: ReadableStream;
      readonly writable: WritableStream;
      constructor(format: CompressionFormat) {
        const { readable, writable } = new Inflater(format);
        const counter = new TransformStream<Uint8Array, Uint8Array>({
          transform(chunk, sink) {
            inflated += chunk.length;
            sink.enqueue(chunk);
          },
        });
        this.readable = readable.pipeThrough(counter as never);
        this.writable = writable;
      }
    };
    vi.stubGlobal('DecompressionStream', counted);
    await faultOf(await linkOf(`{"notes":"${'a'.repeat(40_000_000)}"}`));
    vi.unstubAllGlobals();
    expect(inflated).toBeGreaterThan(4_000_000);
    // A piece of 1024 bytes makes a megabyte at most, and a few are on their way.
    expect(inflated).toBeLessThan(12_000_000);
  });

  test('that is no text', async () => {
    const { deflateSync } = await import('node:zlib');
    const word = deflateSync(Buffer.from([0xff, 0xfe, 0xc3])).toString('base64url');
    expect((await faultOf(`#p1.${word}`))?.found).toContain('damaged');
  });

  test.each([
    ['no JSON', 'plan', '', 'text that is not JSON'],
    ['another format', { format: 'x', version: 1 }, 'format', '"x"'],
    ['another version', { format: 'escapement-plan', version: 99 }, 'version', '99'],
    ['a value out of range', planFile({ cycle: { guardS: -3 } }), 'cycle.guardS', '-3'],
    ['a field that plans do not have', planFile({ onload: 'x' }), 'onload', 'a field that plans do not have'],
    ['a script where a date belongs', planFile({ start: { date: '<script>' } }), 'start.date', '"<script>"'],
    [
      'a prototype',
      '{"format":"escapement-plan","version":1,"__proto__":{"polluted":1},"constructor":{"prototype":{"polluted":1}}}',
      'constructor',
      'a field that plans do not have',
    ],
  ])('with a plan at fault: %s', async (_, file, path, found) => {
    const parsed = await readLink(await linkOf(file));
    if (parsed.ok) throw new Error('read as a plan');
    expect(parsed.faults).toContainEqual(expect.objectContaining({ path, found }));
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
  });
});
