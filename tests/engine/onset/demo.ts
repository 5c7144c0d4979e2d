/** The harbour demo, read from its file: a run with a rig, a ramp, a swap and a sunset. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parsePlan } from '../../../src/engine/plan/parse.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';

export function harbour(): Plan {
  const path = fileURLToPath(new URL('../../../public/examples/harbour-at-dusk.json', import.meta.url));
  const read = parsePlan(readFileSync(path, 'utf8'));
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.plan;
}
