/**
 * Plans that the page opens without its checker: the build has put them through it.
 *
 * `virtual:plan/default` is the default plan and `virtual:plan/<name>` the demo of that name, each with every field
 * filled in. `virtual:mark` is the mark of the program that filled them in: a hash of the engine's sources, null unless
 * the page is built. What a program of one mark has kept, another of the same mark can take as it is.
 */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Plugin } from 'vite';
import { faultSentence } from '../engine/plan/fault.ts';
import { defaultPlan, parsePlan } from '../engine/plan/parse.ts';
import type { Plan } from '../engine/plan/schema.ts';

const ENGINE = fileURLToPath(new URL('../engine', import.meta.url));
const DEMOS = fileURLToPath(new URL('../../public/examples', import.meta.url));
const PLAN = 'virtual:plan/';
const MARK = 'virtual:mark';

/** @throws Error with its faults if a demo is none */
function planOf(name: string): Plan {
  if (name === 'default') return defaultPlan();
  const read = parsePlan(readFileSync(join(DEMOS, `${name}.json`), 'utf8'));
  if (read.ok) return read.plan;
  throw new Error(`${name}.json: ${read.faults.map(faultSentence).join('; ')}`);
}

/** Changes with every change of the engine: a plan is then read anew once more than need be, but never too seldom. */
function markOfEngine(): string {
  const hash = createHash('sha256');
  for (const file of readdirSync(ENGINE, { recursive: true, encoding: 'utf8' }).sort()) {
    if (file.endsWith('.ts')) hash.update(file).update(readFileSync(join(ENGINE, file)));
  }
  return hash.digest('hex').slice(0, 16);
}

/** The plugin. */
export function readyPlans(): Plugin {
  let building = false;
  return {
    name: 'ready-plans',
    configResolved(config) {
      building = config.command === 'build';
    },
    resolveId: (id) => (id.startsWith(PLAN) || id === MARK ? `\0${id}` : null),
    load(id) {
      if (id === `\0${MARK}`) return `export default ${JSON.stringify(building ? markOfEngine() : null)};`;
      if (!id.startsWith(`\0${PLAN}`)) return null;
      return `export default ${JSON.stringify(planOf(id.slice(PLAN.length + 1)))};`;
    },
  };
}
